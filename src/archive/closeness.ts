/** How closely lots answer what is typed: by their number, by what they are linked to, in words. */

import uFuzzy from '@leeoniya/ufuzzy'
import { type Lines, linesOf } from './lines.ts'
import type { LotList } from './lots.ts'

/** The lower the closer: the number itself, part of it, or all of the words. */
export const closenesses = {
  number: 0,
  /** The number but for the signs between its parts. */
  bareNumber: 1,
  beginning: 2,
  part: 3,
  barePart: 4,
  words: 5,
  /** Does not answer. */
  none: 6
} as const

/** Each lot's closeness to a text, row by row; undefined for a blank text, which every lot answers. */
export type ClosenessTo = (text: string) => Uint8Array | undefined

interface Texts {
  readonly numbers: Lines
  readonly bareNumbers: Lines
  /** Certificates, the lots it was made from, the day: found by any part. */
  readonly linked: Lines
  /** What lots of one kind, grade, state and answer all say, and which of these each lot says. */
  readonly said: string[]
  readonly saidBy: Uint32Array
}

/** Only letters and digits count when a number is typed off a label: 'eb 26.1' is 'EB-26-1'. */
const bare = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '')

/** Letters of every script, one slip a word. */
const fuzzy = new uFuzzy({ unicode: true, intraMode: 1, interSplit: '\\s+' })

/** Ready a list for being asked again and again. */
export function closenessIn(list: LotList): ClosenessTo {
  const texts = textsOf(list)
  return text => {
    const whole = text.trim().toLowerCase()
    if (whole === '') return undefined
    const closeness = new Uint8Array(list.count).fill(closenesses.none)
    markWords(closeness, whole.split(/\s+/u), texts)
    // The closest last: it stands.
    const plain = bare(whole)
    if (plain !== '')
      texts.bareNumbers.having(plain, (row, length) => {
        const isAll = length === plain.length
        closeness[row] = isAll ? closenesses.bareNumber : closenesses.barePart
      })
    texts.numbers.having(whole, (row, length, at) => {
      if (length === whole.length) closeness[row] = closenesses.number
      else if (closeness[row] !== closenesses.bareNumber)
        closeness[row] = at === 0 ? closenesses.beginning : closenesses.part
    })
    return closeness
  }
}

/** Mark the rows in which every word is found, in whatever place. */
function markWords(closeness: Uint8Array, words: readonly string[], texts: Texts): void {
  const { numbers, linked, said, saidBy } = texts
  const all = new Uint8Array(closeness.length).fill(1)
  for (const word of words) {
    const found = new Uint8Array(all.length)
    const here = (row: number) => {
      found[row] = 1
    }
    numbers.having(word, here)
    linked.having(word, here)
    const saying = placesSaying(word, said)
    for (let row = 0; row < all.length; row += 1)
      if (found[row] === 0 && saying[saidBy[row]!] === 0) all[row] = 0
  }
  for (let row = 0; row < all.length; row += 1)
    if (all[row] === 1) closeness[row] = closenesses.words
}

/** 1 where a word is said, even with a slip. */
function placesSaying(word: string, said: string[]): Uint8Array {
  const saying = new Uint8Array(said.length)
  const plain = word.replace(/[^\p{L}\p{N}]+/gu, ' ').trim()
  // Nothing but signs says nothing in words.
  for (const place of (plain && fuzzy.filter(said, plain)) || []) saying[place] = 1
  return saying
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
    numbers: linesOf(list.lots.map(lot => lot.toLowerCase())),
    bareNumbers: linesOf(list.lots.map(bare)),
    linked: linesOf(
      list.made.map((day, row) =>
        [day, ...list.certificates[row]!, ...list.from[row]!].join(' ').toLowerCase()
      )
    ),
    said,
    saidBy
  }
}
