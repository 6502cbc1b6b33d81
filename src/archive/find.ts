/** Which lots a query finds, and in what order: a plain scan, which takes a few milliseconds. */

import uFuzzy from '@leeoniya/ufuzzy'
import type { Figures } from './figures.ts'
import { type LotList, type Words } from './lots.ts'
import { boundOf, type Query, type Sorting } from './query.ts'

/** Figures by the quantity's key, as far as they were loaded. */
export type Columns = ReadonlyMap<string, Figures>

/** How closely a lot answers the text: the lower the closer, NONE where it does not. */
const NONE = 255

/** Only letters and digits count when a number is typed off a label: 'eb 26.1' is 'EB-26-1'. */
const bare = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '')

/** Looks through one list of lots again and again. */
export interface Finder {
  /** Rows found, closest first, then as sorted. */
  find(query: Query, columns: Columns): Uint32Array
}

/** Letters of every script, one slip a word. */
const fuzzy = new uFuzzy({ unicode: true, intraMode: 1, interSplit: '\\s+' })

export function finderOf(list: LotList): Finder {
  const texts = textsOf(list)
  const orders = orderKeeper(list)
  return {
    find({ text, grade, year, state, ranges, sort }, columns) {
      const closeness = closenessOf(text, list, texts)
      const filters = [
        wordFilter(list.grade, grade),
        wordFilter(list.state, state),
        year === '' ? undefined : (row: number) => list.made[row]!.startsWith(year),
        ...[...ranges].map(([key, { from, to }]) =>
          rangeFilter(columns.get(key), boundOf(from), boundOf(to))
        )
      ].filter(filter => filter !== undefined)
      const found = passing(orders(sort, columns), [row => closeness[row] !== NONE, ...filters])
      return text.trim() === '' ? found : closestFirst(found, closeness)
    }
  }
}

type Filter = (row: number) => boolean

/** Rows that pass every filter; a loop by hand takes a tenth of the time of the array's own. */
function passing(rows: Uint32Array, filters: readonly Filter[]): Uint32Array {
  const found = new Uint32Array(rows.length)
  let count = 0
  next: for (const row of rows) {
    for (const filter of filters) if (!filter(row)) continue next
    found[count++] = row
  }
  return found.subarray(0, count)
}

function wordFilter({ words, codes }: Words, word: string): Filter | undefined {
  if (word === '') return undefined
  const code = words.indexOf(word)
  return row => codes[row] === code
}

/**
 * Figures are taken as printed, so that nobody finds 1.05 left out of 'at most 1.05'. One that is only
 * known to be below a bound is at most that, and at least nothing.
 */
function rangeFilter(
  figures: Figures | undefined,
  from: number | undefined,
  to: number | undefined
): Filter | undefined {
  if (from === undefined && to === undefined) return undefined
  if (!figures) return () => false
  const { numbers, below } = figures
  return row => {
    const number = numbers[row]!
    if (from !== undefined && !(below[row] === 0 && number >= from)) return false
    return to === undefined ? !Number.isNaN(number) : number <= to
  }
}

interface Texts {
  readonly lots: readonly string[]
  readonly bareLots: readonly string[]
  /** Certificates, the lots it was made from, the day: found by any part. */
  readonly linked: readonly string[]
  /** What lots of one kind, grade, state and answer all say, and which of these each lot says. */
  readonly said: string[]
  readonly saidBy: Uint32Array
}

function textsOf(list: LotList): Texts {
  const { kind, grade, state, answer } = list
  const places = new Map<string, number>()
  const saidBy = new Uint32Array(list.count)
  const said: string[] = []
  for (let row = 0; row < list.count; row += 1) {
    const codes = [kind, grade, state, answer].map(column => column.codes[row]!)
    const key = codes.join(' ')
    const place = places.get(key) ?? said.length
    if (place === said.length) {
      places.set(key, place)
      const words = [kind, grade, state, answer].map((column, at) => column.words[codes[at]!]!)
      const shown = list.grades.find(({ id }) => id === words[1])
      said.push([...words, shown?.title, shown?.description].join(' ').toLowerCase())
    }
    saidBy[row] = place
  }
  return {
    lots: list.lots.map(lot => lot.toLowerCase()),
    bareLots: list.lots.map(bare),
    linked: list.made.map((day, row) =>
      [day, ...list.certificates[row]!, ...list.from[row]!].join(' ').toLowerCase()
    ),
    said,
    saidBy
  }
}

/** How closely each lot answers: its number, part of it, what it is linked to, or all of the words. */
function closenessOf(text: string, { count }: LotList, texts: Texts): Uint8Array {
  const closeness = new Uint8Array(count)
  const whole = text.trim().toLowerCase()
  if (whole === '') return closeness
  const plain = bare(whole)
  const words = wordsFilter(whole.split(/\s+/u), texts)
  for (let row = 0; row < count; row += 1)
    closeness[row] = numberCloseness(texts.lots[row]!, texts.bareLots[row]!, whole, plain)
  for (let row = 0; row < count; row += 1)
    if (closeness[row] === NONE && words(row)) closeness[row] = 5
  return closeness
}

function numberCloseness(lot: string, bareLot: string, whole: string, plain: string): number {
  if (lot === whole) return 0
  if (plain !== '' && bareLot === plain) return 1
  if (lot.startsWith(whole)) return 2
  if (lot.includes(whole)) return 3
  return plain !== '' && bareLot.includes(plain) ? 4 : NONE
}

/** Rows in which every word is found, in whatever place. */
function wordsFilter(words: readonly string[], { lots, linked, said, saidBy }: Texts): Filter {
  const hits = words.map(word => {
    const found = new Uint8Array(said.length)
    const plain = word.replace(/[^\p{L}\p{N}]+/gu, ' ').trim()
    // Nothing but signs says nothing in words.
    for (const place of (plain && fuzzy.filter(said, plain)) || []) found[place] = 1
    return { word, found }
  })
  return row =>
    hits.every(
      ({ word, found }) =>
        found[saidBy[row]!] === 1 || linked[row]!.includes(word) || lots[row]!.includes(word)
    )
}

/** The same rows, each closeness apart, in the order they came. */
function closestFirst(rows: Uint32Array, closeness: Uint8Array): Uint32Array {
  const groups: number[][] = []
  for (const row of rows) (groups[closeness[row]!] ??= []).push(row)
  return Uint32Array.from(groups.flat())
}

/** Gives all rows in an order, and keeps the last one asked for. */
function orderKeeper(list: LotList): (sort: Sorting, columns: Columns) => Uint32Array {
  let kept: { name: string; figures: Figures | undefined; rows: Uint32Array } | undefined
  return (sort, columns) => {
    const figures = columns.get(sort.by)
    const name = `${sort.by} ${sort.down}`
    if (kept?.name !== name || kept.figures !== figures)
      kept = { name, figures, rows: ordered(list, sort, figures) }
    return kept.rows
  }
}

/** Lots without the figure stand last, whichever way; equal ones stay newest first. */
function ordered(list: LotList, { by, down }: Sorting, figures: Figures | undefined): Uint32Array {
  const rows = Uint32Array.from({ length: list.count }, (_, row) => row)
  const way = down ? -1 : 1
  if (figures) {
    const { numbers } = figures
    return rows.sort((a, b) => {
      const [one, other] = [numbers[a]!, numbers[b]!]
      if (Number.isNaN(one) || Number.isNaN(other))
        return Number(Number.isNaN(one)) - Number(Number.isNaN(other)) || a - b
      return way * (one - other) || a - b
    })
  }
  // The list itself is newest first.
  const ranks = by === 'made' && down ? undefined : ranksBy(list, by)
  return ranks ? rows.sort((a, b) => way * (ranks[a]! - ranks[b]!) || a - b) : rows
}

function ranksBy(list: LotList, by: string): ArrayLike<number> | undefined {
  if (by === 'made') return rankedTexts(list.made)
  if (by === 'lot') return rankedTexts(list.lots)
  if (by !== 'grade' && by !== 'state' && by !== 'answer') return undefined
  const { words, codes } = list[by]
  const ranks = rankedTexts(words)
  return codes.map(code => ranks[code]!)
}

/** Each text's rank in the order of their signs, the same in every locale. */
function rankedTexts(texts: readonly string[]): Uint32Array {
  const ranks = new Uint32Array(texts.length)
  const order = [...new Set(texts)].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0))
  const rankOf = new Map(order.map((text, rank) => [text, rank]))
  texts.forEach((text, row) => (ranks[row] = rankOf.get(text)!))
  return ranks
}
