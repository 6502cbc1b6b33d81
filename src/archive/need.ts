/** How a grade stands to a need: by its certified limits, by what is typical, or by single lots. */

import { type ScriptWords, scriptWords } from './words.ts'
import type { Figures } from './figures.ts'
import { boundOf } from './query.ts'

/** Between which values something lies, or is wanted; an absent end is open, or not known. */
export interface Span {
  readonly from?: number
  readonly to?: number
}

/** What is asked, by the quantity's key, in that quantity's unit. */
export type Needs = ReadonlyMap<string, Span>

/** What is known of one grade, by the quantity's key. */
export interface Offer {
  readonly limits: ReadonlyMap<string, Span>
  readonly typical: ReadonlyMap<string, Span>
  /** Released lots; a figure's span is what its expanded uncertainty leaves open. */
  readonly lots: readonly OfferedLot[]
}

export interface OfferedLot {
  readonly lot: string
  readonly figures: ReadonlyMap<string, Span>
}

/** Answers, the surest first. */
export const answers = ['certified', 'typical', 'some lots', 'not known', 'not met'] as const
export type Answer = (typeof answers)[number]

export interface Match {
  readonly answer: Answer
  /** What answers each need by itself. */
  readonly each: ReadonlyMap<string, Answer>
  /** Released lots that answer to all of them. */
  readonly lots: readonly string[]
}

/** What a lot's figure leaves open; one without a stated uncertainty answers nothing. */
export function spanAt(figures: Figures | undefined, row: number): Span | undefined {
  const printed = figures?.printed[row]
  const value = figures?.numbers[row]
  if (!printed || value === undefined) return undefined
  if (figures?.below[row] === 1) return { to: value }
  const U = boundOf(printed.uncertainty ?? '')
  return U === undefined ? undefined : { from: value - U, to: value + U }
}

/** Whether whatever lies in a span is wanted. */
export const liesWithin = (span: Span | undefined, { from, to }: Span): boolean =>
  span !== undefined &&
  (from === undefined || (span.from !== undefined && span.from >= from)) &&
  (to === undefined || (span.to !== undefined && span.to <= to))

/** Whether nothing that lies in a span is wanted. */
const liesOutside = (span: Span | undefined, { from, to }: Span): boolean =>
  span !== undefined &&
  ((from !== undefined && span.to !== undefined && span.to < from) ||
    (to !== undefined && span.from !== undefined && span.from > to))

/**
 * How a grade stands to all that is asked. A lot must answer every need by its own figure; where it has
 * none, the grade's limit speaks for it.
 */
export function matchOf(offer: Offer, needs: Needs): Match {
  const each = new Map([...needs].map(([key, want]) => [key, answerTo(offer, key, want)]))
  const standings = offer.lots.map(lot => ({ lot: lot.lot, is: standingOf(offer, lot, needs) }))
  const lots = standings.filter(({ is }) => is === 'met').map(({ lot }) => lot)
  const found = [...each.values()]
  const match = (answer: Answer): Match => ({ answer, each, lots })
  if (found.every(answer => answer === 'certified')) return match('certified')
  if (found.every(answer => answer === 'certified' || answer === 'typical')) return match('typical')
  if (lots.length > 0) return match('some lots')
  const isRefused = standings.length > 0 && standings.every(({ is }) => is === 'not met')
  return match(isRefused || found.includes('not met') ? 'not met' : 'not known')
}

function answerTo({ limits, typical, lots }: Offer, key: string, want: Span): Answer {
  if (liesWithin(limits.get(key), want)) return 'certified'
  if (liesWithin(typical.get(key), want)) return 'typical'
  const figures = lots.flatMap(lot => lot.figures.get(key) ?? [])
  if (figures.some(span => liesWithin(span, want))) return 'some lots'
  return figures.length > 0 || liesOutside(limits.get(key), want) ? 'not met' : 'not known'
}

function standingOf(
  { limits }: Offer,
  { figures }: OfferedLot,
  needs: Needs
): 'met' | 'not known' | 'not met' {
  let isKnown = true
  for (const [key, want] of needs) {
    const span = figures.get(key)
    if (span && !liesWithin(span, want)) return 'not met'
    if (!span && !liesWithin(limits.get(key), want)) isKnown = false
  }
  return isKnown ? 'met' : 'not known'
}

/** 'Ash, dry basis: every lot is judged by a limit within it. …', from titles by key. */
export function reasonOf(
  { answer, each }: Match,
  titles: ReadonlyMap<string, string>,
  words: ScriptWords = scriptWords
): string {
  const texts = [...each].map(([key, one]) => `${titles.get(key) ?? key}: ${words.reasons[one]}`)
  const isShared = [...each.values()].every(one => one !== 'not met' && one !== 'not known')
  const noSingle =
    isShared && answer === 'not met'
      ? [words.noSingle]
      : isShared && answer === 'not known'
        ? [words.noSingleKnown]
        : []
  return [...texts, ...noSingle].map(text => `${capital(text)}.`).join(' ')
}

/** A title keeps its own first letter where it is a sign: pH. */
const capital = (text: string): string =>
  /^\p{Ll}{2}/u.test(text) ? text.charAt(0).toUpperCase() + text.slice(1) : text
