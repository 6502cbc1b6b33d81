import { test } from 'vitest'
import { buildDocuments } from '../../src/pipeline.ts'
import { workplace } from '../site/workplace.ts'
import { generateWorkshop } from './generate.ts'
import { requireSamePages } from './html.ts'

test('both sides of the bench of pages write the same pages', async () => {
  const { site } = buildDocuments(generateWorkshop(3), { edition: 'public' })
  await requireSamePages(site!, workplace())
})
