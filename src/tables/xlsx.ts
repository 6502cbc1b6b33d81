/**
 * A spreadsheet (.xlsx) as a sheet of cells, with the digits that it shows.
 *
 * Libraries that turn spreadsheets into values drop what matters here: decimals as shown, and whether
 * a formula worked the value out. So the parts are read as they are.
 *
 * Source: ISO/IEC 29500-1, 18.3 worksheets, 18.4 shared strings (from memory, not checked against the
 * print).
 */

import type { Problem, SourceFile } from '../problem.ts'
import { shownNumber } from './number-format.ts'
import { type Cell, fileProblem, type Sheet } from './sheet.ts'
import { attribute, children, type Element, elementsOf, inside, textOf } from './xml-nodes.ts'
import { zipParts } from './zip-parts.ts'

/** Whether bytes begin as a packed file does. */
export const isPacked = (bytes: Uint8Array): boolean => startsWith(bytes, [0x50, 0x4b, 3, 4])

/** Whether bytes begin as older spreadsheets and locked ones do. */
export const isOldSpreadsheet = (bytes: Uint8Array): boolean =>
  startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0])

const startsWith = (bytes: Uint8Array, signs: readonly number[]) =>
  signs.every((sign, at) => bytes[at] === sign)

/** The cells of the sheet named, or of the only one. */
export function xlsxSheet(path: string, bytes: Uint8Array, named?: string): Sheet | Problem {
  const refuse = (message: string, hint: string) => fileProblem({ path, text: '' }, [message, hint])
  const parts = zipParts(bytes)
  if (parts === 'too large')
    return refuse('is larger unpacked than any list of readings', 'export the part needed as CSV')
  if (!parts) return refuse('is no .xlsx spreadsheet, or a broken one', 'save it as .xlsx or CSV')
  const sheets = sheetNames(parts)
  const wanted =
    named === undefined && sheets.length === 1
      ? sheets[0]
      : sheets.find(({ name }) => name === named)
  if (!wanted)
    return refuse(
      named === undefined ? 'has several sheets' : `has no sheet ${named}`,
      `write 'sheet:' in the mapping: ${sheets.map(({ name }) => name).join(', ')}`
    )
  const elements = elementsOf(parts.get(wanted.part) ?? '')
  if (!elements) return refuse(`its sheet ${wanted.name} cannot be read`, 'save it anew, or as CSV')
  return sheetOf(`${path}, sheet ${wanted.name}`, cellTexts(elements, contextOf(parts)))
}

function sheetNames(parts: ReadonlyMap<string, string>): { name: string; part: string }[] {
  const book = inside(elementsOf(parts.get('xl/workbook.xml') ?? ''), 'workbook', 'sheets')
  const links = inside(elementsOf(parts.get('xl/_rels/workbook.xml.rels') ?? ''), 'Relationships')
  const targets = new Map(
    children(links, 'Relationship').map(link => [attribute(link, 'Id'), attribute(link, 'Target')])
  )
  return children(book, 'sheet').map(sheet => {
    const target = targets.get(attribute(sheet, 'id')) ?? ''
    return {
      name: attribute(sheet, 'name') ?? '',
      part: target.startsWith('/') ? target.slice(1) : `xl/${target}`
    }
  })
}

/** What cells refer to: texts kept once, and the codes of their formats. */
interface Context {
  readonly texts: readonly string[]
  readonly formats: readonly { readonly id: number; readonly code: string | undefined }[]
  readonly from1904: boolean
}

function contextOf(parts: ReadonlyMap<string, string>): Context {
  const strings = inside(elementsOf(parts.get('xl/sharedStrings.xml') ?? ''), 'sst')
  const styles = inside(elementsOf(parts.get('xl/styles.xml') ?? ''), 'styleSheet')
  const codes = new Map(
    children(inside(styles, 'numFmts'), 'numFmt').map(format => [
      Number(attribute(format, 'numFmtId')),
      attribute(format, 'formatCode')
    ])
  )
  const book = inside(elementsOf(parts.get('xl/workbook.xml') ?? ''), 'workbook', 'workbookPr')
  return {
    texts: children(strings, 'si').map(richText),
    formats: children(inside(styles, 'cellXfs'), 'xf').map(xf => {
      const id = Number(attribute(xf, 'numFmtId') ?? 0)
      return { id, code: codes.get(id) }
    }),
    from1904: /^(?:1|true)$/u.test((book && attribute(book, 'date1904')) ?? '')
  }
}

/** A text, in one piece or in runs of different looks. */
const richText = (element: Element): string =>
  textOf(element['t'] ?? '') +
  children(element, 'r')
    .map(run => textOf(run['t'] ?? ''))
    .join('')

type Written = Omit<Cell, 'range'>

/** Texts by row and column, both from 0. */
function cellTexts(elements: Element, context: Context): Written[][] {
  const rows: Written[][] = []
  for (const row of children(inside(elements, 'worksheet', 'sheetData'), 'row')) {
    const at = Number(attribute(row, 'r') ?? rows.length + 1) - 1
    while (rows.length <= at) rows.push([])
    for (const cell of children(row, 'c')) {
      const cells = rows[at]!
      const column = columnOf(attribute(cell, 'r')) ?? cells.length
      while (cells.length < column) cells.push({ text: '' })
      cells[column] = cellOf(cell, context)
    }
  }
  return rows
}

/** 'C7' → 2. */
function columnOf(reference: string | undefined): number | undefined {
  const letters = /^[A-Z]{1,3}/u.exec(reference ?? '')?.[0]
  return letters === undefined
    ? undefined
    : [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1
}

function cellOf(cell: Element, { texts, formats, from1904 }: Context): Written {
  const raw = textOf(cell['v'] ?? '')
  const computed = 'f' in cell ? { isComputed: true } : {}
  switch (attribute(cell, 't') ?? 'n') {
    case 's':
      return { text: (texts[Number(raw)] ?? '').trim(), ...computed }
    case 'inlineStr':
      return { text: children(cell, 'is').map(richText).join('').trim(), ...computed }
    case 'n': {
      if (raw === '') return { text: '', ...computed }
      const { id, code } = formats[Number(attribute(cell, 's') ?? 0)] ?? { id: 0, code: undefined }
      return { ...shownNumber(raw, id, code, from1904), ...computed }
    }
    case 'b':
      return { text: raw === '1' ? 'TRUE' : 'FALSE', ...computed }
    default:
      return { text: raw.trim(), ...computed }
  }
}

/** Rows as lines of one text, so that a place in it is a row and a column. */
function sheetOf(path: string, rows: readonly (readonly Written[])[]): Sheet {
  let at = 0
  const placed = rows.map(row => {
    const cells = row.map((cell, index): Cell => {
      if (index > 0) at += 1
      const start = at
      at += cell.text.length
      return { ...cell, range: [start, Math.max(at, start + 1)] }
    })
    at += 1
    return cells
  })
  const lines = rows.map(row => row.map(({ text }) => text.replace(/[\t\n\r]/gu, ' ')).join('\t'))
  const file: SourceFile = { path, text: lines.join('\n') }
  return { file, rows: placed }
}
