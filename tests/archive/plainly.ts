/** What finding lots means, each lot asked by itself, however long that takes. */

import uFuzzy from '@leeoniya/ufuzzy'
import type { Figures } from '../../src/archive/figures.ts'
import { type LotList, wordAt } from '../../src/archive/lots.ts'
import { boundOf, type Query, type Range } from '../../src/archive/query.ts'

const bare = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '')

const fuzzy = new uFuzzy({ unicode: true, intraMode: 1, interSplit: '\\s+' })

/** 0 for the number itself, higher for what is less close; undefined where the lot does not answer. */
function closeness(list: LotList, row: number, text: string): number | undefined {
  const whole = text.trim().toLowerCase()
  if (whole === '') return 0
  const lot = list.lots[row]!.toLowerCase()
  const plain = bare(whole)
  if (lot === whole) return 0
  if (plain !== '' && bare(lot) === plain) return 1
  if (lot.startsWith(whole)) return 2
  if (lot.includes(whole)) return 3
  if (plain !== '' && bare(lot).includes(plain)) return 4
  return whole.split(/\s+/u).every(word => says(list, row, word)) ? 5 : undefined
}

function says(list: LotList, row: number, word: string): boolean {
  const links = [list.made[row]!, ...list.certificates[row]!, ...list.from[row]!, list.lots[row]!]
  if (links.some(link => link.toLowerCase().includes(word))) return true
  const grade = list.grades.find(({ id }) => id === wordAt(list.grade, row))
  const columns = [list.kind, list.grade, list.state, list.answer]
  const words = [...columns.map(column => wordAt(column, row)), grade?.title, grade?.description]
  const plain = word.replace(/[^\p{L}\p{N}]+/gu, ' ').trim()
  return plain !== '' && fuzzy.filter([words.join(' ').toLowerCase()], plain)!.length > 0
}

function liesIn(figures: Figures | undefined, row: number, { from, to }: Range): boolean {
  const [least, most] = [boundOf(from), boundOf(to)]
  if (least === undefined && most === undefined) return true
  const figure = figures?.printed[row]?.value
  if (figure === undefined) return false
  const isBelow = figure.startsWith('< ')
  const number = Number(figure.replace('< ', '').replace('−', '-'))
  if (least !== undefined && (isBelow || number < least)) return false
  return most === undefined || number <= most
}

/** What a lot is sorted by; undefined where it has no such figure. */
function rankIn(list: LotList, columns: ReadonlyMap<string, Figures>, by: string, row: number) {
  const figures = columns.get(by)
  if (figures) return Number.isNaN(figures.numbers[row]) ? undefined : figures.numbers[row]
  if (by === 'made') return list.made[row]
  if (by === 'lot') return list.lots[row]
  return by === 'grade' || by === 'state' || by === 'answer' ? wordAt(list[by], row) : 0
}

/** Rows found, in order. */
export function foundPlainly(
  list: LotList,
  { text, grade, year, state, ranges, sort }: Query,
  columns: ReadonlyMap<string, Figures>
): number[] {
  const close = list.lots.map((_, row) => closeness(list, row, text))
  const ranks = list.lots.map((_, row) => rankIn(list, columns, sort.by, row))
  const isFound = (row: number) =>
    close[row] !== undefined &&
    (grade === '' || wordAt(list.grade, row) === grade) &&
    (state === '' || wordAt(list.state, row) === state) &&
    list.made[row]!.startsWith(year) &&
    [...ranges].every(([key, range]) => liesIn(columns.get(key), row, range))
  const before = (a: number, b: number): number => {
    const [one, other] = [ranks[a], ranks[b]]
    if (close[a] !== close[b]) return close[a]! - close[b]!
    if (one === undefined || other === undefined)
      return Number(one === undefined) - Number(other === undefined) || a - b
    if (one === other) return a - b
    return one < other === sort.down ? 1 : -1
  }
  return list.lots
    .map((_, row) => row)
    .filter(isFound)
    .sort(before)
}
