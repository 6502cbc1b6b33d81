/**
 * A composition to classify, and what a rule finds in it.
 *
 * Rows of one substance count as one, in an order of their own: how a record writes them down makes
 * no difference.
 */

import { SIGNIFICANT_DIGITS, toDecimal } from '../metrology/rounding.ts'
import type { ClassName } from './classes.ts'
import type { Clause } from './clauses.ts'
import type { Edition } from './editions.ts'
import { inEnglish, type Saying } from './sayings.ts'
import type { Substance } from './substances.ts'

/** A figure with its expanded uncertainty. */
export interface Uncertain {
  readonly value: number
  readonly U: number
}

/** A substance's part of a mixture, in % by mass, with its expanded uncertainty. */
export interface Ingredient {
  readonly substance: Substance
  readonly percent: number
  readonly U?: number
}

/** A mixture at one set of values: what a rule sees. */
export interface Point {
  readonly shares: readonly Share[]
  /** pH of the mixture, or of its slurry in water. */
  readonly pH?: number
  /** Whose categories and limits hold; CLP's where nothing is said. */
  readonly edition?: Edition
}

export interface Share {
  readonly substance: Substance
  readonly percent: number
}

/** Why a class applies: which ingredients, against what, by which clause. */
export interface Reason {
  readonly parts: readonly { readonly name: string; readonly percent: number }[]
  /** What it rests on, for whoever words it. */
  readonly said: Saying
  /** The same in English: one sentence without a full stop, figures included. */
  readonly text: string
  /** The rule, then the sources of ingredients' own limits. */
  readonly clauses: readonly Clause[]
}

/** A class a rule gives a mixture. */
export interface Finding {
  readonly class: ClassName
  /** A closer statement than the class's own. */
  readonly statement?: string
  readonly fill?: string
  readonly reasons: readonly Reason[]
}

export type Rule = (point: Point) => Finding[]

/** One share a substance, sorted by the substance's id; nothing of what is not there. */
export function mergeIngredients(ingredients: readonly Ingredient[]): Required<Ingredient>[] {
  const merged = new Map<string, Required<Ingredient>>()
  for (const { substance, percent, U = 0 } of ingredients) {
    const before = merged.get(substance.id)
    merged.set(substance.id, {
      substance,
      percent: sumOf([before?.percent ?? 0, percent]),
      U: sumOf([before?.U ?? 0, U])
    })
  }
  return [...merged.values()]
    .filter(({ percent, U }) => percent > 0 || U > 0)
    .sort((a, b) => (a.substance.id < b.substance.id ? -1 : 1))
}

/** Sum in decimal, to 12 digits: 0.1 + 0.2 is 0.3, in whatever order. */
export function sumOf(values: readonly number[]): number {
  const [first = 0, ...others] = values.filter(value => value !== 0)
  // Most sums have one part that is not 0, of few digits; a decimal costs much.
  if (others.length === 0 && isShort(first)) return first
  const sum = others.reduce((sum, value) => sum.plus(toDecimal(value)), toDecimal(first))
  return others.length === 0 ? sum.toNumber() : toDecimal(sum.toNumber()).toNumber()
}

/** Whether 12 digits write a float whole: then it is its own decimal. */
const isShort = (value: number): boolean => Number(value.toPrecision(SIGNIFICANT_DIGITS)) === value

/** Σ a / b in decimal, to 12 digits. */
export const sumOfRatios = (pairs: readonly (readonly [number, number])[]): number =>
  toDecimal(
    pairs.reduce((sum, [a, b]) => sum.plus(toDecimal(a).div(toDecimal(b))), toDecimal(0)).toNumber()
  ).toNumber()

/** Digits a figure in a sentence starts with. */
const SHOWN = 4

/** A figure for a sentence, with so many digits that it stands on its own side of the limit. */
export function shown(value: number, limit?: number): string {
  for (let digits = SHOWN; digits < 12; digits += 1) {
    const text = toDecimal(value).toSignificantDigits(digits)
    if (limit === undefined || Math.sign(text.minus(limit).toNumber()) === Math.sign(value - limit))
      return text.toFixed()
  }
  return toDecimal(value).toFixed()
}

export const nameOf = ({ names }: Substance): string => names[0]!

/** A reason from shares, what it rests on, and clauses. */
export const reason = (
  shares: readonly Share[],
  said: Saying,
  clauses: readonly Clause[]
): Reason => ({
  parts: shares.map(({ substance, percent }) => ({ name: nameOf(substance), percent })),
  said,
  text: inEnglish(said),
  clauses
})
