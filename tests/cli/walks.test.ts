import { join } from 'node:path'
import { expect, test } from 'vitest'
import { lotfolio, namesIn, workplace } from '../site/workplace.ts'
import { firstBatch, oldList, type Walked } from '../walk.ts'

const taken = (runs: Walked) =>
  runs.flatMap(({ line, run }) => (run.status === 0 ? [] : [line, run.stdout, run.stderr]))

const lastOf = (runs: Walked, name: string) =>
  runs.findLast(({ line }) => line.startsWith(`npm run ${name} `))!.run.stdout

test('a first batch, from plan to foil, as the README says', async () => {
  const place = workplace()
  const runs = await firstBatch(place, lotfolio)
  expect(taken(runs)).toEqual([])
  expect(lastOf(runs, 'plan')).toMatch(/acid +sulfuric acid, 96 % +SA-1 +60\.00/u)
  expect(lastOf(runs, 'check')).toContain('13 files read: no errors')
  // 5.13 g on 100.0 mm by 100.0 mm by 0.5017 mm, and 5.07 g on 100.1 mm by 100.0 mm by 0.4960 mm.
  const mean = (5.13 / (100 * 100 * 0.50166667) + 5.07 / (100.1 * 100 * 0.496)) * 500
  expect(lastOf(runs, 'explain')).toContain(`\n${mean.toFixed(2)}`)
  expect(namesIn(join(place, 'archive'))).toEqual(['C-2-r1.pdf'])
  expect(namesIn(join(place, 'private', 'sheets'))).toEqual(['EB-2.pdf'])
})

test('the first hour from an old spreadsheet, as the README says', async () => {
  const place = workplace()
  const runs = await oldList(place, lotfolio)
  expect(taken(runs)).toEqual([])
  expect(namesIn(join(place, 'archive'))).toEqual(['C-1-r1.pdf'])
  expect(namesIn(join(place, 'labels'))).toEqual(['TG-25-04-pail-5L-en.pdf'])
})
