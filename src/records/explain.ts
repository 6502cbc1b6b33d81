/** Why a text is no quantity, in the words of whoever wrote it, and how to write it instead. */

import { type UnitName, unitNamed, units } from '../metrology/units.ts'
import {
  acceptedUnits,
  isUnreadable,
  readAnyQuantity,
  readQuantity,
  type Unreadable
} from '../metrology/written.ts'
import { type ProblemCode, quoted } from '../problem.ts'

/** What a schema says of a fault beyond zod's own issue: our code and our hint. */
export interface FaultDetails {
  readonly code: ProblemCode
  readonly hint: string
}

type Explained = readonly [code: ProblemCode, message: string, hint: string]

/**
 * An unreadable quantity as an issue of its schema.
 *
 * @param unit unit of the field; absent where any unit will do
 */
export function explain(fault: Unreadable, written: string, unit?: UnitName) {
  const [code, message, hint] = explained(fault, written, unit)
  return { message, params: { code, hint } satisfies FaultDetails }
}

function explained({ fault, part }: Unreadable, written: string, unit?: UnitName): Explained {
  switch (fault) {
    case 'comma decimal':
      return explainComma(written)
    case 'not a quantity':
      return [
        'NOT_A_QUANTITY',
        `must be a number${unit === '1' ? '' : ' with its unit'}, got ${quoted(written)}`,
        plainHint(written, unit) ?? signHint(written) ?? exampleHint(unit)
      ]
    case 'no unit':
      return [
        'MISSING_UNIT',
        `has no unit, got ${quoted(written)}`,
        `add the unit: ${unitHint(unit)}`
      ]
    case 'unknown unit':
      return explainUnit(part, written, unit)
    case 'wrong dimension':
      return [
        'WRONG_DIMENSION',
        `${quoted(part)} is a unit of ${dimensionOf(part)}, not of ${unit ? units[unit].dimension : 'this'}`,
        unit === '1' ? 'write the number alone' : `units for this field: ${unitHint(unit)}`
      ]
    case 'out of range':
      return [
        'INVALID_VALUE',
        `is larger than any instrument shows, got ${quoted(written)}`,
        'check the digits and the unit'
      ]
    case 'too fine':
      return [
        'INVALID_VALUE',
        `is finer than any instrument shows, got ${quoted(written)}`,
        'check the digits and the unit'
      ]
  }
}

function explainComma(written: string): Explained {
  const grouped = written.includes('.')
  return [
    'COMMA_DECIMAL',
    grouped
      ? `has a comma among its digits, got ${quoted(written)}`
      : `has a comma where the decimal point belongs, got ${quoted(written)}`,
    `write ${quoted(written.replace(',', grouped ? '' : '.'))}`
  ]
}

function explainUnit(part: string, written: string, unit?: UnitName): Explained {
  const plain = plainHint(written, unit)
  // No unit begins with a sign and a digit, or has a digit after a space.
  if (/^[^\p{L}°%]*\d|\s\d/u.test(part))
    return [
      'NOT_A_QUANTITY',
      `must be one number with its unit, got ${quoted(written)}`,
      plain ??
        (/^[\d.,'’]/u.test(part)
          ? 'write the digits together, with a point for decimals and nothing between thousands'
          : 'write one value; in what bounds it stayed is said in words, in a text field')
    ]
  if (unit === '1')
    return ['UNKNOWN_UNIT', `takes a plain number, got ${quoted(written)}`, 'leave the unit out']
  return [
    'UNKNOWN_UNIT',
    `${quoted(part)} is not a unit known here`,
    plain ?? `units for this field: ${unitHint(unit)}`
  ]
}

/** The same text in plain digits and letters, where that is all it lacks. */
function plainHint(written: string, unit?: UnitName): string | undefined {
  const plain = written
    .normalize('NFKC')
    .replace(/[\p{Cf}\p{Cc}]/gu, '')
    .trim()
  if (plain === written) return undefined
  const read = unit === undefined ? readAnyQuantity(plain) : readQuantity(plain, unit)
  return isUnreadable(read)
    ? undefined
    : `type ${quoted(plain)} anew: it holds characters that only look like these, or cannot be seen`
}

const signHint = (written: string) =>
  /^[<>≤≥=~≈±]/u.test(written) ? "write the number alone; a limit is 'min:' or 'max:'" : undefined

const exampleHint = (unit?: UnitName) =>
  `write it as on the instrument, such as ${unit === '1' ? '3.42' : `25.0 ${unit ?? 'g'}`}`

const unitHint = (unit?: UnitName) => (unit ? acceptedUnits(unit) : 'g, mL, mm, % and others')

const dimensionOf = (text: string) => {
  const unit = unitNamed(text)
  return unit ? units[unit].dimension : 'something else'
}
