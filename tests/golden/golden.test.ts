/**
 * Each folder below this one, but for `workshop`, is a case: records in `content`, laid over those of
 * `workshop`, and what they must come to. A case is added without writing TypeScript:
 *
 * 1. Make a folder, named for what it shows, and put the records into its `content`. A record of the
 *    same path as one in `workshop` stands in its place.
 * 2. Run the tests with LOTFOLIO_UPDATE=1. They write `problems.txt` and one `<lot>.txt` a lot.
 * 3. Read those files, check the figures by hand, and keep them.
 *
 * Where a case comes out differently later, the new text is left beside the old one as `*.actual`.
 */

import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { describe, expect, test } from 'vitest'
import { buildDocuments } from '../../src/pipeline.ts'
import { formatProblem } from '../../src/problem.ts'
import { readRecords } from '../records-on-disk.ts'
import { root } from '../root.ts'
import { lotText } from './lot-text.ts'

const folder = join(root, 'tests/golden')
const update = process.env.LOTFOLIO_UPDATE === '1'

const cases = readdirSync(folder, { withFileTypes: true })
  .filter(entry => entry.isDirectory() && entry.name !== 'workshop')
  .map(({ name }) => name)

/** Everything a case comes to, by the name of the file that holds it. */
function outcomeOf(name: string): Map<string, string> {
  const own = readRecords(join(folder, name, 'content'))
  const paths = new Set(own.map(({ path }) => path))
  const shared = readRecords(join(folder, 'workshop')).filter(({ path }) => !paths.has(path))
  const { site, problems } = buildDocuments([...shared, ...own], { edition: 'workshop' })
  const texts = new Map([
    ['problems.txt', `${problems.map(formatProblem).join('\n\n') || 'none'}\n`]
  ])
  for (const page of site?.lots ?? []) texts.set(`${page.document.lot}.txt`, lotText(page))
  return texts
}

const expectedFiles = (name: string) =>
  readdirSync(join(folder, name)).filter(file => file.endsWith('.txt'))

/** Compare a text with its file; the text is left beside it where they differ. */
function compare(path: string, text: string | undefined): string[] {
  const kept = existsSync(path) ? readFileSync(path, 'utf8').replaceAll('\r\n', '\n') : undefined
  const actual = `${path}.actual`
  rmSync(actual, { force: true })
  if (kept === text) return []
  if (text !== undefined) writeFileSync(actual, text)
  return [
    text === undefined
      ? `${relative(root, path)} is kept, but nothing comes to it any more`
      : `${relative(root, path)} differs: see ${relative(root, actual)}`
  ]
}

test('there are cases', () => {
  expect(cases.length).toBeGreaterThanOrEqual(6)
})

describe.each(cases)('%s', name => {
  test('comes to what is kept', () => {
    const texts = outcomeOf(name)
    const files = [...new Set([...texts.keys(), ...expectedFiles(name)])]
    if (update)
      for (const file of files)
        if (texts.has(file)) writeFileSync(join(folder, name, file), texts.get(file)!)
        else rmSync(join(folder, name, file))
    expect(files.flatMap(file => compare(join(folder, name, file), texts.get(file)))).toEqual([])
  })
})
