import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { buildDocuments } from '../../src/pipeline.ts'
import type { SourceFile } from '../../src/problem.ts'
import { ownChain } from '../../src/records/own-chain.ts'
import { pageOf, siteOf } from '../documents/demo.ts'

const files = readdirSync('content', { recursive: true, encoding: 'utf8' })
  .filter(path => path.endsWith('.yaml'))
  .map(path => ({
    path: join('content', path).replaceAll('\\', '/'),
    text: readFileSync(join('content', path), 'utf8')
  }))

const namesIn = (chain: readonly { path: string }[] | undefined, folder: string) =>
  (chain ?? [])
    .filter(({ path }) => path.includes(`/${folder}/`))
    .map(({ path }) => path.split('/').at(-1)!.replace('.yaml', ''))

test('a foil lot rests on its run, the run’s batch, its materials and its certificate', () => {
  const chain = ownChain(files, 'FL-26-003')
  expect(namesIn(chain, 'foils')).toEqual(['FL-26-003'])
  expect(namesIn(chain, 'expansions')).toEqual(['XR-26-02'])
  expect(namesIn(chain, 'batches').length).toBeGreaterThan(0)
  expect(namesIn(chain, 'certificates')).toEqual(['CT-26-005-r1'])
  expect(namesIn(chain, 'shipments')).toEqual([])
  expect(namesIn(chain, 'grades')).toContain('foil-100-r1')
})

test('its papers say the same as in the whole site', () => {
  const certificatesFrom = (records: readonly SourceFile[]) =>
    pageOf(siteOf(records, { edition: 'workshop' }), 'FL-26-003').certificates
  const own = certificatesFrom(ownChain(files, 'FL-26-003')!)
  expect(own.length).toBeGreaterThan(0)
  expect(own).toEqual(certificatesFrom(files))
})

test('a broken record elsewhere is in nobody’s way, one in the chain is', () => {
  const broken = (path: string) =>
    files.map(file => (file.path === path ? { ...file, text: 'lot: [' } : file))
  const elsewhere = ownChain(broken('content/foils/FL-26-007.yaml'), 'FL-26-003')!
  expect(buildDocuments(elsewhere, { edition: 'workshop' }).problems).toEqual([])
  const within = ownChain(broken('content/expansions/XR-26-02.yaml'), 'FL-26-003')!
  const { problems } = buildDocuments(within, { edition: 'workshop' })
  expect(problems.map(({ file }) => file.path)).toContain('content/expansions/XR-26-02.yaml')
})

test('a lot nobody recorded has no chain', () => {
  expect(ownChain(files, 'FL-99')).toBeUndefined()
})
