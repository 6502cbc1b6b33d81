/**
 * Numbers as instruments and spreadsheets write them, whatever mark sets off decimals.
 *
 * `1,234` is a thousand or a bit over one: which, only the file or its mapping can say. What neither
 * says is ambiguous and never read.
 */

export const decimalMarks = { point: '.', comma: ',' } as const
export type DecimalMark = keyof typeof decimalMarks

export const thousandsMarks = ['point', 'comma', 'space', 'apostrophe'] as const
export type ThousandsMark = (typeof thousandsMarks)[number]

/** How a file writes numbers, as far as it is known. */
export interface NumberStyle {
  readonly decimal?: DecimalMark | undefined
  readonly thousands?: ThousandsMark | undefined
}

export type NumberFault = 'no number' | 'ambiguous' | 'other mark'

/** A number and what stands behind it: '1 234,50 mm' → '1 234,50' and 'mm'. */
const WITH_UNIT =
  /^([+\-−]?\s?(?:\d[\d.,'’ \u00A0\u202F]*|[.,]\d*)?\d(?:[eE][+-]?\d{1,3})?)\s*(.*)$/su

export function numberAndUnit(text: string): { number: string; unit: string } | undefined {
  const match = WITH_UNIT.exec(text)
  return match ? { number: match[1]!, unit: match[2]! } : undefined
}

interface Parts {
  readonly sign: string
  readonly body: string
  readonly exponent: string
}

function partsOf(number: string): Parts {
  const match = /^([+\-−]?)\s?(.*?)([eE][+-]?\d+)?$/su.exec(number)!
  return {
    sign: match[1] === '+' ? '' : match[1]!.replace('−', '-'),
    body: match[2]!,
    exponent: match[3] ?? ''
  }
}

/** What a number by itself shows of the marks of its file. */
type Shown = 'nothing' | 'either' | DecimalMark | 'no number'

const other = (mark: DecimalMark): DecimalMark => (mark === 'point' ? 'comma' : 'point')

/** A mark followed by exactly three digits, behind one to three: thousands, or three decimals. */
const EITHER = /^[1-9]\d{0,2}[.,]\d{3}$/u

/** The mark that must set off the decimals of this number, if it shows which. */
export function shownBy(number: string): Shown {
  const { body } = partsOf(number)
  if (/^\d+$/u.test(body)) return 'nothing'
  const ungrouped = body.replace(/(?<=\d)['’\u00A0\u202F ](?=\d{3}(?!\d))/gu, '')
  if (ungrouped === body && EITHER.test(body)) return 'either'
  if (/^\d*$/u.test(ungrouped)) return 'nothing'
  for (const mark of ['point', 'comma'] as const) {
    const [decimal, group] = mark === 'point' ? ['\\.', ','] : [',', '\\.']
    if (new RegExp(`^\\d*${decimal}\\d+$`, 'u').test(ungrouped)) return mark
    if (new RegExp(`^[1-9]\\d{0,2}(?:${group}\\d{3})+${decimal}\\d+$`, 'u').test(body)) return mark
    if (new RegExp(`^[1-9]\\d{0,2}(?:${group}\\d{3}){2,}$`, 'u').test(body)) return mark
  }
  return 'no number'
}

/**
 * The digits of a number as a record writes them, every written zero kept: '1.234,50' → '1234.50'.
 *
 * @param style the decimal mark that the file shows or its mapping states, and the mapping's thousands
 */
export function plainDigits(
  number: string,
  style: NumberStyle
): { digits: string } | { fault: NumberFault } {
  const { sign, body, exponent } = partsOf(number)
  const shown = shownBy(number)
  if (shown === 'no number') return { fault: 'no number' }
  if (/[ \u00A0\u202F]/u.test(body) && style.thousands !== 'space') return { fault: 'ambiguous' }
  const mark = shown === 'either' ? markOfEither(body, style) : shown
  if (mark === undefined) return { fault: 'ambiguous' }
  if (mark !== 'nothing' && style.decimal !== undefined && mark !== style.decimal)
    return { fault: 'other mark' }
  const digits = body.replace(/['’\u00A0\u202F ]/gu, '')
  const plain =
    mark === 'nothing'
      ? digits
      : digits.replaceAll(decimalMarks[other(mark)], '').replace(decimalMarks[mark], '.')
  return { digits: `${sign}${plain.startsWith('.') ? '0' : ''}${plain}${exponent}` }
}

/** What the one mark of '1,234' is; undefined where nothing says. */
function markOfEither(body: string, { decimal, thousands }: NumberStyle): DecimalMark | undefined {
  const mark: DecimalMark = body.includes(',') ? 'comma' : 'point'
  if (decimal === mark) return mark
  return thousands === mark && decimal === other(mark) ? other(mark) : undefined
}
