/**
 * The words record schemas are written in.
 *
 * A record's field is `mass: 25.00 g`; the typed record's is `mass_g`. The renaming happens here, at
 * run time and in the types alike: kebab-case becomes camelCase, and a quantity's field ends in the
 * suffix of the unit its schema names.
 */

import * as z from 'zod'
import { type UnitName, units } from '../metrology/units.ts'
import {
  acceptedUnits,
  type AnyQuantity,
  isUnreadable,
  readAnyQuantity,
  readQuantity,
  type Reading
} from '../metrology/written.ts'
import { type FieldPath, type ProblemCode, quoted } from '../problem.ts'
import {
  ABSOLUTE_ZERO_C,
  type Bounds,
  type Condition,
  type ConditionName,
  conditions,
  marked
} from './conditions.ts'
import { explain, type FaultDetails } from './explain.ts'
import { once, oncePer } from './once.ts'

export type { FaultDetails }

type Camel<Text extends string> = Text extends `${infer Head}-${infer Tail}`
  ? `${Head}${Capitalize<Camel<Tail>>}`
  : Text

type Suffixed<Key extends string, Unit extends UnitName> = (typeof units)[Unit]['suffix'] extends ''
  ? Camel<Key>
  : `${Camel<Key>}_${(typeof units)[Unit]['suffix']}`

type TypedName<Key, Schema> = Key extends string
  ? Schema extends { readonly fieldUnit: infer Unit extends UnitName }
    ? Suffixed<Key, Unit>
    : Camel<Key>
  : never

type Renamed<Shape extends z.ZodRawShape, Value> = {
  [Key in keyof Value as TypedName<Key, Key extends keyof Shape ? Shape[Key] : never>]: Value[Key]
}

/** The typed record a set of fields yields. */
export type Typed<Shape extends z.ZodRawShape> = Renamed<Shape, z.output<z.ZodObject<Shape>>>

/** A record or part of one: exactly these fields, in their typed names. */
export function fields<Shape extends z.ZodRawShape>(shape: Shape) {
  const names = new Map(Object.entries(shape).map(([key, schema]) => [key, typedName(key, schema)]))
  return z.strictObject(shape).transform(value => {
    const typed: Record<string, unknown> = {}
    for (const key of Object.keys(value))
      typed[names.get(key) ?? key] = (value as Record<string, unknown>)[key]
    return typed as Typed<Shape>
  })
}

/** kebab-case to camelCase. */
export const camel = (key: string): string =>
  key.replace(/-(\w)/gu, (_, letter: string) => letter.toUpperCase())

function typedName(key: string, schema: unknown): string {
  const unit = (schema as { fieldUnit?: UnitName }).fieldUnit
  const suffix = unit ? units[unit].suffix : ''
  return suffix ? `${camel(key)}_${suffix}` : camel(key)
}

type QuantityField<Unit extends UnitName> = z.ZodType<Reading, string> & {
  readonly fieldUnit: Unit
}

/** Values a quantity can have, where not every number makes sense. */
const spans = {
  any: [-Infinity, Infinity],
  'above 0': [Number.MIN_VALUE, Infinity],
  'at least 0': [0, Infinity],
  'at least 1': [1, Infinity],
  'from 0 to 100': [0, 100]
} as const
export type Span = keyof typeof spans

/** What a value of a field must lie between, told as `is`. */
interface Possible {
  readonly bounds: Bounds
  readonly is: string
}

/** A span, and of temperatures absolute zero at least. */
function possibleIn(unit: UnitName, span: Span): Possible {
  if (units[unit].dimension !== 'temperature' || span !== 'any')
    return { bounds: spans[span], is: span }
  return { bounds: [ABSOLUTE_ZERO_C, Infinity], is: 'at least −273.15 °C, absolute zero' }
}

const isWithin = (value: number, [least, most]: Bounds) => value >= least && value <= most

const outside = (written: string, is: string) => ({
  message: `must be ${is}, got ${quoted(written)}`,
  params: {
    code: 'INVALID_VALUE',
    hint: 'check the sign, the digits and the unit'
  } satisfies FaultDetails
})

/** @param of the condition it is: a reading beyond what is usual of it is marked */
const amountIn = (
  unit: UnitName,
  { bounds, is }: Possible,
  of?: ConditionName
): z.ZodType<Reading, string> =>
  z
    .string()
    .transform((text, context): Reading => {
      const result = readQuantity(text, unit)
      if (!isUnreadable(result) && isWithin(result.value, bounds))
        return of === undefined ? result : marked(result, of)
      const fault = isUnreadable(result) ? explain(result, text, unit) : outside(text, is)
      context.addIssue({ code: 'custom', ...fault })
      return z.NEVER
    })
    .meta({
      description: unit === '1' ? 'a plain number' : `quantity in ${acceptedUnits(unit)}`,
      lotfolioUnit: unit
    })

const plainAmount = once((unit: UnitName, span: Span) => amountIn(unit, possibleIn(unit, span)))
const namedAmount = once((unit: UnitName, span: Span) =>
  Object.assign(amountIn(unit, possibleIn(unit, span)), { fieldUnit: unit })
)
const namedCondition = once((name: ConditionName) => {
  const { unit, possible }: Condition = conditions[name]
  const within = possible ? between(unit, possible) : ABOVE_0
  return Object.assign(amountIn(unit, within, name), { fieldUnit: unit })
})

const ABOVE_0: Possible = { bounds: spans['above 0'], is: 'above 0' }

function between(unit: UnitName, bounds: Bounds): Possible {
  const [least, most] = bounds.map(bound => String(bound).replace('-', '−'))
  if (bounds[1] === Infinity) return possibleIn(unit, 'any')
  return { bounds, is: `from ${least} to ${most}${unit === '1' ? '' : ` ${unit}`}` }
}

/** A quantity in a unit that the field's surroundings fix, such as the limit of a known quantity. */
export const amount = (unit: UnitName, span: Span = 'any') => plainAmount(unit, span)

/** A quantity written with its unit, held in `unit` whatever unit of the kind it was written in. */
export const quantity = <Unit extends UnitName>(unit: Unit, span: Span = 'any') =>
  namedAmount(unit, span) as QuantityField<Unit>

/** What something was set to, held to what is possible and, by a warning, to what is usual. */
export const condition = <Name extends ConditionName>(name: Name) =>
  namedCondition(name) as QuantityField<(typeof conditions)[Name]['unit']>

/** A quantity above 0 in whatever unit the table knows: an instrument's resolution, a tolerance. */
export const anyQuantity = once(() =>
  z.string().transform((written, context): AnyQuantity => {
    const result = readAnyQuantity(written)
    if (!isUnreadable(result) && !/^[-−]|^\+?[0.]+(e|$)/iu.test(result.digits)) return result
    const fault = isUnreadable(result) ? explain(result, written) : outside(written, 'above 0')
    context.addIssue({ code: 'custom', ...fault })
    return z.NEVER
  })
)

/** A field that may be left out; keeps the unit of its quantity. */
export const maybe = <Schema extends z.ZodType>(schema: Schema) =>
  optional(schema) as z.ZodOptional<Schema> & UnitOf<Schema>

const optional = oncePer((schema: z.ZodType) => withUnitOf(schema, schema.optional()))

/** A list of at least one; keeps the unit of its quantities. */
export const list = <Schema extends z.ZodType>(schema: Schema) =>
  listed(schema) as z.ZodArray<Schema> & UnitOf<Schema>

const listed = oncePer((schema: z.ZodType) => withUnitOf(schema, z.array(schema).min(1)))

function withUnitOf<Outer extends z.ZodType>(schema: z.ZodType, outer: Outer): Outer {
  const unit = (schema as { fieldUnit?: UnitName }).fieldUnit
  return unit ? Object.assign(outer, { fieldUnit: unit }) : outer
}

type UnitOf<Schema> = Schema extends { readonly fieldUnit: infer Unit }
  ? { readonly fieldUnit: Unit }
  : unknown

/** Printable text, as a person reads it: no control characters, not empty. */
export const text = once(() =>
  z
    .string()
    .trim()
    .min(1)
    .regex(
      /^[^\p{Cc}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}\u202A-\u202E\u2066-\u2069]*$/u,
      'holds a character that cannot be printed'
    )
)

/** A number that names a record: it becomes part of file names and addresses. */
export const identifier = once(() =>
  z
    .string()
    .regex(
      /^(?!(?:con|prn|aux|nul|com\d|lpt\d)$)[A-Za-z0-9](?:[A-Za-z0-9._-]{0,38}[A-Za-z0-9])?$/iu,
      'must be 1 to 40 letters, digits, hyphens, dots or underscores, and start and end with a letter or digit'
    )
)

/** A calendar date, YYYY-MM-DD. */
export const date = once(() =>
  z.string().transform((value, context): string => {
    if (isCalendarDate(value)) return value
    context.addIssue({
      code: 'custom',
      message: `must be a date of the calendar, got ${quoted(value)}`,
      params: { code: 'BAD_DATE', hint: 'write year, month and day as 2026-03-14' }
    })
    return z.NEVER
  })
)

/** A fault that concerns several fields at once, told at one of them. */
export const refuse = (
  context: z.RefinementCtx,
  field: FieldPath,
  code: ProblemCode,
  [message, hint]: readonly [string, string]
): void =>
  context.addIssue({
    code: 'custom',
    path: [...field],
    message,
    params: { code, hint } satisfies FaultDetails
  })

/** yes or no. */
export const yesNo = once(() => z.enum(['yes', 'no']).transform(word => word === 'yes'))

/** A whole number, written in digits. */
export const whole = once((least: number) =>
  z.string().transform((value, context): number => {
    if (/^\d{1,6}$/u.test(value) && Number(value) >= least) return Number(value)
    context.addIssue({
      code: 'custom',
      message: `must be a whole number of at least ${least}, got ${quoted(value)}`,
      params: { code: 'INVALID_VALUE', hint: `write it in digits, such as ${Math.max(least, 1)}` }
    })
    return z.NEVER
  })
)

function isCalendarDate(value: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(value)
  if (!match) return false
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number]
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1]
  return year >= 1900 && days !== undefined && day >= 1 && day <= days
}
