import { strToU8, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { xlsxSheet } from '../../src/tables/xlsx.ts'
import { takenOver } from '../intake/taking-over.ts'

/** A spreadsheet of one sheet or more, out of its rows as XML. */
function spreadsheet(
  rows: string,
  sheets: readonly string[] = ['Readings'],
  more = ''
): Uint8Array {
  const names = sheets.map(
    (name, n) => `<sheet name="${name}" sheetId="${n + 1}" r:id="rId${n + 1}"/>`
  )
  const links = sheets.map(
    (_, n) => `<Relationship Id="rId${n + 1}" Target="worksheets/sheet${n + 1}.xml"/>`
  )
  const parts: Record<string, string> = {
    'xl/workbook.xml': `<workbook xmlns:r="x">${more}<sheets>${names.join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships>${links.join('')}</Relationships>`,
    'xl/sharedStrings.xml':
      '<sst><si><t>m</t></si><si><r><t>V </t></r><r><t>[mL]</t></r></si></sst>',
    'xl/styles.xml':
      '<styleSheet><numFmts><numFmt numFmtId="164" formatCode="0.000"/><numFmt numFmtId="165" formatCode="dd/mm/yyyy\\ hh:mm"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="2"/></cellXfs></styleSheet>'
  }
  for (const [n] of sheets.entries())
    parts[`xl/worksheets/sheet${n + 1}.xml`] =
      `<worksheet><sheetData>${rows}</sheetData></worksheet>`
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)]))
  )
}

/** Texts of the cells, row by row. */
function texts(bytes: Uint8Array, named?: string): string[][] | string {
  const sheet = xlsxSheet('a.xlsx', bytes, named)
  return 'rows' in sheet ? sheet.rows.map(row => row.map(({ text }) => text)) : sheet.message
}

const cell = (value: string, style = 0) => `<row><c s="${style}"><v>${value}</v></c></row>`

describe('a spreadsheet', () => {
  test.for([
    ['as many decimals as it shows', cell('1.5', 1), '1.500'],
    ['binary noise as what was meant', cell('1.0029999999999999', 1), '1.003'],
    ['a number without a format by its digits', cell('0.30000000000000004'), '0.3'],
    ['a day with its time', cell('46095.58', 2), '2026-03-14 13:55'],
    ['a text kept once', '<row><c t="s"><v>1</v></c></row>', 'V [mL]'],
    ['a text of its own', '<row><c t="inlineStr"><is><t> a &amp; b </t></is></c></row>', 'a & b'],
    ['a yes', '<row><c t="b"><v>1</v></c></row>', 'TRUE'],
    ['a fault of a formula', '<row><c t="e"><f>1/0</f><v>#DIV/0!</v></c></row>', '#DIV/0!'],
    ['more digits than shown as they are', cell('1.23456', 3), '1.23456']
  ] as const)('gives %s', ([, row, text]) => {
    expect(texts(spreadsheet(row))).toEqual([[text]])
  })

  test('keeps cells in their columns and rows', () => {
    const rows = '<row r="2"><c r="B2"><v>1</v></c></row><row r="4"><c r="AA4"><v>2</v></c></row>'
    const found = texts(spreadsheet(rows)) as string[][]
    expect([found.length, found[1], found[3]!.length, found[3]!.at(-1)]).toEqual([
      4,
      ['', '1'],
      27,
      '2'
    ])
  })

  test('counts days from 1904 where it says so', () => {
    const bytes = spreadsheet(cell('44633.5', 2), ['A'], '<workbookPr date1904="1"/>')
    expect(texts(bytes)).toEqual([['2026-03-14 12:00']])
  })

  test('asks which of its sheets is meant', () => {
    const bytes = spreadsheet(cell('1'), ['Monday', 'Tuesday'])
    expect(texts(bytes)).toBe('has several sheets')
    expect(texts(bytes, 'Tuesday')).toEqual([['1']])
    expect(texts(bytes, 'Friday')).toBe('has no sheet Friday')
  })
})

const heads = '<row><c t="s"><v>0</v></c><c t="s"><v>1</v></c></row>'
const readings = (row: string, places = '') =>
  takenOver({
    folder: 'batches',
    record: 'lot: X-1\ntests:\n  expansion-volume:\n    tested: 2026-03-14\n    readings:\n',
    mapping: `fills: expansion-volume\ncolumns:\n  - { column: m, to: mass, unit: g${places} }\n  - { column: V, to: volume }\n`,
    file: spreadsheet(heads + row)
  })

test('readings of a spreadsheet keep the decimals shown, or those of the mapping', () => {
  const shown = readings('<row><c s="1"><v>0.5</v></c><c><v>131</v></c></row>')
  // 131 was kept without saying how it was shown.
  expect(shown.problems.map(({ code, file }) => [code, file.path])).toEqual([
    ['AMBIGUOUS_NUMBER', 'export.csv, sheet Readings']
  ])
  const stated = readings('<row><c><v>0.5</v></c><c s="3"><v>131</v></c></row>', ', places: 4')
  expect(stated.ok && stated.value.text).toContain('- { mass: 0.5000 g, volume: 131.00 mL }')
  const finer = readings('<row><c><v>0.50123</v></c><c s="3"><v>131</v></c></row>', ', places: 3')
  expect(finer.problems.map(({ code }) => code)).toEqual(['INVALID_VALUE'])
})

test('what a formula worked out is no reading', () => {
  const { problems } = readings(
    '<row><c s="1"><f>A1*2</f><v>0.5</v></c><c s="3"><v>131</v></c></row>'
  )
  expect(problems.map(({ code }) => code)).toEqual(['COMPUTED_VALUE'])
})
