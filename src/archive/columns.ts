/** Long lists of alike texts, written small for a page to load, and read back as they were. */

/**
 * Names that mostly count on, such as lot numbers.
 *
 * 'EB-26-009' is the head 'EB-26-', three digits and the number 9; what is written is the step from
 * the number last seen behind that head.
 */
export interface NameColumn {
  readonly heads: readonly string[]
  /** Digits behind each head; 0 where there is no number. */
  readonly digits: readonly number[]
  /** One sign a name: which head it has. */
  readonly which: string
  /** Steps, a comma between. */
  readonly steps: string
}

/** Texts of which there are few different ones. */
export interface CodeColumn {
  readonly words: readonly string[]
  /** One sign a text: its place among the words, counted from '0'. */
  readonly codes: string
}

/** Any number of names a row. */
export interface NamesColumn {
  readonly counts: string
  readonly names: NameColumn
}

const FIRST_SIGN = 0x30

/** More digits than a float holds for certain count as text. */
const NUMBERED = /^(?<head>.*?)(?<digits>\d{0,15})$/su

export function writeNames(names: readonly string[]): NameColumn {
  const heads: string[] = []
  const digits: number[] = []
  const places = new Map<string, number>()
  const last: number[] = []
  let which = ''
  const steps = names.map(name => {
    const { head = '', digits: end = '' } = NUMBERED.exec(name)?.groups ?? {}
    const key = `${end.length} ${head}`
    const place = places.get(key) ?? heads.length
    if (place === heads.length) {
      places.set(key, place)
      heads.push(head)
      digits.push(end.length)
      last.push(0)
    }
    which += String.fromCharCode(FIRST_SIGN + place)
    const step = Number(end) - last[place]!
    last[place] = Number(end)
    return step
  })
  return { heads, digits, which, steps: steps.join(',') }
}

export function readNames({ heads, digits, which, steps }: NameColumn): string[] {
  const last = heads.map(() => 0)
  const each = steps === '' ? [] : steps.split(',')
  return each.map((step, row) => {
    const place = which.charCodeAt(row) - FIRST_SIGN
    const number = (last[place] = last[place]! + Number(step))
    const width = digits[place]!
    return heads[place]! + (width === 0 ? '' : String(number).padStart(width, '0'))
  })
}

export function writeCodes(texts: readonly string[]): CodeColumn {
  const places = new Map<string, number>()
  let codes = ''
  for (const text of texts) {
    const place = places.get(text) ?? places.size
    places.set(text, place)
    codes += String.fromCharCode(FIRST_SIGN + place)
  }
  return { words: [...places.keys()], codes }
}

/** Each row's place among the words. */
export const readCodes = ({ codes }: CodeColumn): Uint16Array =>
  Uint16Array.from(codes, sign => sign.charCodeAt(0) - FIRST_SIGN)

export const writeLists = (lists: readonly (readonly string[])[]): NamesColumn => ({
  counts: lists.map(list => String.fromCharCode(FIRST_SIGN + list.length)).join(''),
  names: writeNames(lists.flat())
})

export function readLists({ counts, names }: NamesColumn): string[][] {
  const all = readNames(names)
  let at = 0
  return Array.from(counts, sign => all.slice(at, (at += sign.charCodeAt(0) - FIRST_SIGN)))
}

const DAY_ms = 86_400_000

/** Days as YYYY-MM-DD, each as the step from the one before. */
export function writeDays(days: readonly string[]): string {
  let last = 0
  return days
    .map(day => {
      const number = Date.parse(day) / DAY_ms
      const step = number - last
      last = number
      return step
    })
    .join(',')
}

export function readDays(steps: string): string[] {
  let number = 0
  return (steps === '' ? [] : steps.split(',')).map(step => {
    number += Number(step)
    return new Date(number * DAY_ms).toISOString().slice(0, 10)
  })
}
