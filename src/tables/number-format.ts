/**
 * What a spreadsheet shows of the numbers it keeps.
 *
 * Source: ISO/IEC 29500-1, 18.8.30 numFmt: codes 1 to 4 and 14 to 22, 45 to 47 (from memory, not
 * checked against the print).
 */

/** Codes every spreadsheet knows without writing them down. */
const builtIn: Readonly<Record<number, string>> = {
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  14: 'yyyy-mm-dd',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm',
  19: 'h:mm:ss',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'yyyy-mm-dd h:mm',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  47: 'mm:ss'
}

export interface Shown {
  readonly text: string
  /** A number, and no day or time. */
  readonly isNumber: boolean
  /** How many decimals it was shown with is not known. */
  readonly isBare: boolean
}

/** A number as the code of its cell shows it; one without a code keeps its shortest digits. */
export function shownNumber(
  raw: string,
  id: number,
  code: string | undefined,
  from1904: boolean
): Shown {
  const format = bareCode(code ?? builtIn[id] ?? '')
  const value = Number(raw)
  if (/[dyhs]/iu.test(format))
    return { text: momentText(value, format, from1904), isNumber: false, isBare: false }
  const places = /^[#,]*0+(?:\.(0+))?$/u.exec(format)
  if (!places || !Number.isFinite(value))
    return { text: shortest(value, raw), isNumber: true, isBare: true }
  const shown = value.toFixed(places[1]?.length ?? 0)
  // More digits are kept than shown: which of them were read, nobody can tell.
  const isWhole = Math.abs(Number(shown) - value) <= 1e-9 * Math.max(1, Math.abs(value))
  return isWhole
    ? { text: shown, isNumber: true, isBare: false }
    : { text: shortest(value, raw), isNumber: true, isBare: true }
}

/** The code for positive numbers, without colours, texts and space of a character's width. */
const bareCode = (code: string): string =>
  (code.split(';', 1)[0] ?? '')
    .replace(/"[^"]*"|\\.|_.|\*.|\[(?!h+\]|m+\]|s+\])[^\]]*\]/giu, '')
    .trim()

/** The fewest digits that are this number: 0.1 + 0.2 was kept as 0.30000000000000004. */
function shortest(value: number, raw: string): string {
  if (!Number.isFinite(value)) return raw
  const text = String(Number(value.toPrecision(15)))
  return /e/iu.test(text) ? text.replace('e+', 'e') : text
}

const DAY_ms = 86_400_000

/** A day, a time, or both, as its code asks for. */
function momentText(value: number, format: string, from1904: boolean): string {
  const base = from1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30)
  const moment = new Date(base + Math.round((value * DAY_ms) / 1000) * 1000)
  if (Number.isNaN(moment.valueOf())) return String(value)
  const [day = '', time = ''] = moment.toISOString().slice(0, 19).split('T')
  const hasDay = /[dy]/iu.test(format)
  const hasTime = /[hs]/iu.test(format)
  const clock = /s/iu.test(format) ? time : time.slice(0, 5)
  return [...(hasDay ? [day] : []), ...(hasTime ? [clock] : [])].join(' ')
}
