/** What stands in each cell of the results: three groups that are never mixed. */

import type { Basis, MethodText, ResultRow } from '../documents/types.ts'
import { type AnswerWord, isAdverse } from './marks.ts'
import type { Words } from './words.ts'

export type ColumnKey = 'unit' | 'n' | 'value' | 'uncertainty' | 'limit' | 'verdict'

export interface Cell {
  readonly text: string
  /** A second, smaller line. */
  readonly under?: string
  readonly mark?: AnswerWord
  readonly weight?: 'strong' | 'quiet'
}

/** A smaller line below a row: it belongs to the property, or says why a verdict is what it is. */
export interface Note {
  readonly text: string
  readonly of: 'property' | 'verdict'
  readonly strong: boolean
}

export interface TableRow {
  readonly title: string
  readonly cells: Readonly<Partial<Record<ColumnKey, Cell>>>
  readonly notes: readonly Note[]
}

export interface Group {
  readonly heading: string
  /** Titles from left to right, after the property. */
  readonly columns: readonly { readonly key: ColumnKey; readonly title: string }[]
  readonly rows: readonly TableRow[]
}

/** The groups that have rows, measured ones first. */
export function groupResults(results: readonly ResultRow[], words: Words): Group[] {
  const order: readonly Basis[] = ['measured', 'typical', 'not measured']
  return order.flatMap(basis => {
    const rows = results.filter(row => row.basis === basis)
    return rows.length === 0 ? [] : [groupOf(basis, rows, words)]
  })
}

function groupOf(basis: Basis, rows: readonly ResultRow[], words: Words): Group {
  const titles = words.columns
  const all = {
    unit: titles.unit,
    n: titles.n,
    value: basis === 'typical' ? titles.typical : titles.value,
    uncertainty: titles.uncertainty,
    limit: titles.limit,
    verdict: basis === 'measured' ? titles.verdict : titles.status
  }
  return {
    heading: words.groups[basis],
    columns: columnsOf[basis].map(key => ({ key, title: all[key] })),
    rows: rows.map(row => rowOf(row, words))
  }
}

const columnsOf: Record<Basis, readonly ColumnKey[]> = {
  measured: ['unit', 'n', 'value', 'uncertainty', 'limit', 'verdict'],
  typical: ['unit', 'value', 'limit', 'verdict'],
  'not measured': ['unit', 'limit', 'verdict']
}

const quiet = (text: string): Cell => ({ text, weight: 'quiet' })

const titleOf = ({ title, report }: ResultRow, { external, earlier }: Words) =>
  report ? `${title} (${report.own ? earlier : external})` : title

function rowOf(row: ResultRow, words: Words): TableRow {
  return {
    title: titleOf(row, words),
    cells: {
      unit: { text: row.unit.printed || words.noUnit },
      n: { text: row.n === undefined ? words.notCounted : String(row.n) },
      value: row.value ? { text: row.value.printed, weight: 'strong' } : quiet(words.notStated),
      uncertainty: uncertaintyCell(row, words),
      limit: row.limit ? { text: row.limit.printed, under: row.limit.of } : quiet(words.noLimit),
      verdict: verdictCell(row, words)
    },
    notes: notesOf(row, words)
  }
}

function uncertaintyCell(row: ResultRow, words: Words): Cell {
  if (!row.expandedUncertainty) return quiet(words.notStated)
  const text = `± ${row.expandedUncertainty.printed}`
  return row.coverageFactor ? { text, under: `k = ${row.coverageFactor.printed}` } : { text }
}

function verdictCell(row: ResultRow, words: Words): Cell {
  if (row.basis !== 'measured') return { text: words.bases[row.basis] }
  if (!row.verdict) return quiet(words.notJudged)
  const { word } = row.verdict
  return { text: words.verdicts[word], mark: word, ...(isAdverse(word) && { weight: 'strong' }) }
}

function notesOf(row: ResultRow, words: Words): Note[] {
  const property = (text: string, strong = false): Note => ({ text, of: 'property', strong })
  const notes: Note[] = []
  if (row.report) notes.push(property(row.report.sentence, true))
  else if (row.method) notes.push(property(methodText(row.method, row.testedOn, words)))
  else if (row.basis === 'measured') notes.push(property(words.noMethod))
  if (row.method?.deviation)
    notes.push(property(`${words.deviation}: ${ended(row.method.deviation)}`, true))
  if (row.spread) notes.push(property(row.spread))
  if (row.basis === 'measured' && row.verdict && row.verdict.word !== 'pass')
    notes.push({
      text: `${words.verdicts[row.verdict.word]}: ${ended(row.verdict.sentence)}`,
      of: 'verdict',
      strong: false
    })
  else if (row.decidedBy)
    notes.push({
      text: `${words.decidedBy} ${ended(row.decidedBy.printed)}`,
      of: 'verdict',
      strong: false
    })
  return notes
}

/** 'TM-01, edition 3, Expansion volume at 950 °C: 0.5 g into …; tested 2026-03-16.' */
function methodText(method: MethodText, testedOn: string | undefined, words: Words): string {
  const name = `${method.id}, ${words.edition} ${method.edition}, ${method.title}: `
  const parts = [method.conditions, method.reference, testedOn && words.tested(testedOn)]
  return ended(`${name}${parts.filter(part => part).join('; ')}`)
}

/** A sentence with its full stop, once. */
const ended = (text: string) => (/[.!?]$/u.test(text) ? text : `${text}.`)
