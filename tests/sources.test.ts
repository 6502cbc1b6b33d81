/** The count of rows from outside, and how it is counted. */

import { expect, test } from 'vitest'
import { outsideRows, rowsIn, rowsOfCsv, tableRows } from './sources.ts'

test('at least 400 rows of tables and files come from outside, from a dozen sources', () => {
  const found = outsideRows()
  expect(tableRows(found)).toBeGreaterThanOrEqual(400)
  expect(new Set(found.map(({ source }) => source)).size).toBeGreaterThanOrEqual(12)
})

const counted = (text: string) =>
  rowsIn('tests/a.test.ts', text).map(({ source, rows, isSingle }) => [source, rows, isSingle])

test.for([
  [
    "// ASTM C561: rows.\ntest.for([[1], [2]] as const)('a', () => {})",
    [['ASTM standards', 2, false]]
  ],
  ["// GUM, H.1.\ntest('a', () => {})", [['GUM, JCGM 100', 1, true]]],
  ["describe('GUM, H.1', () => { test('a', () => {}); test('b', () => {}) })", 'two'],
  ["const t = [[1], [2], [3]]\n// GUM\ntest.for(t)('a', () => {})", [['GUM, JCGM 100', 3, false]]],
  ["// GUM\ntest.for(t.map(x => x))('a', () => {})", [['GUM, JCGM 100', 1, false]]],
  ["test('a', () => {})", []],
  ["// GUM, worked by hand.\ntest.for([[1]])('a', () => {})", []],
  ["// GUM\nconst a = 1\ntest('a', () => {})", []]
] as const)('%s', ([text, expected]) => {
  if (expected === 'two') expect(counted(text)).toHaveLength(2)
  else expect(counted(text)).toEqual(expected)
})

test('lines of a file count by its first line, input data do not', () => {
  expect(rowsOfCsv('a.csv', '# source: NIST StRD\nn\n1\n2\n')).toMatchObject([
    { source: 'NIST StRD', rows: 2 }
  ])
  expect(rowsOfCsv('a.csv', '# input: NIST StRD\nn\n1\n2\n')).toEqual([])
})
