/** Foil that was looked at: what was found and how often such a plan accepts. */

import type { AppliedPlan, VisualVerdict } from '../judge/visual.ts'
import { isPrinted } from '../quality/sampling-plan.ts'
import { significant } from './figure.ts'
import { plainFormula, readFormula } from './formula.ts'
import type { GradeView, LotView } from './lot-view.ts'
import type { PlanParts, PlanText } from './languages/parts.ts'
import type { Tongue } from './languages/tongue.ts'
import type { Table, Working } from './types.ts'

/** Rounding of the sums alone keeps a probability this far from all or nothing. */
const CERTAIN = 1e-9

/** '91.2 %' of a probability or fraction; only what is certain is told as all or nothing. */
export function percent(fraction: number): string {
  if (fraction < CERTAIN) return '0 %'
  if (fraction > 1 - CERTAIN) return '100 %'
  const value = 100 * fraction
  if (value < 0.1) return '< 0.1 %'
  if (value > 99.9) return '> 99.9 %'
  return `${significant(value, value >= 10 ? 3 : 2).printed} %`
}

/** One or two sentences: the plan, what was found, and what acceptance says. */
export function visualText(found: VisualVerdict, { foil, numbers }: Tongue): string {
  const { plan, ...withoutPlan } = found
  const shown = (text: string) => numbers.number(text)
  if (!plan) return foil.visual(withoutPlan)
  return foil.visual({
    ...withoutPlan,
    plan: {
      ...planText(plan, shown),
      acceptedAtAql: shown(percent(plan.acceptedAtAql)),
      onceInTen: shown(percent(plan.acceptedOnceInTen))
    }
  })
}

/** What the grade asks to be looked at, and that it was not where it was not; '' where it asks nothing. */
export function demandText(
  { visual: demand }: GradeView,
  { look }: NonNullable<LotView['foil']>,
  tongue: Tongue
): string {
  if (!demand) return ''
  const { asked, notDone } = tongue.foil
  const plan = planAsked(demand, tongue)
  return look === 'not done' ? notDone(plan) : asked(plan)
}

/** 'the whole lot', or 'level II, AQL 4.0 %'. */
export const planAsked = (
  { aql, level = 'II' }: NonNullable<GradeView['visual']>,
  { foil, numbers }: Tongue
): string => (aql === undefined ? foil.wholeLot : foil.plan(level, numbers.number(aql)))

/** The plan with its odds, as other figures have their working. */
export function visualWorking(found: VisualVerdict, tongue: Tongue): Working | undefined {
  const { plan, ...withoutPlan } = found
  if (!plan) return undefined
  const { visual: words } = tongue.working
  const shown = tongue.numbers.number
  const parts: PlanParts = { ...withoutPlan, ...planText(plan, shown) }
  const odd = (fraction: number) => shown(percent(fraction))
  return {
    key: 'visual-inspection',
    title: words.title,
    formula: plainFormula(words.formula),
    statements: readFormula(words.formula),
    source: words.source(parts.isPrinted),
    outcome: words.outcome(parts),
    readings: table(
      words.seen,
      [words.defect, words.count],
      found.defects.map(({ kind, count }) => [words.defects(kind), String(count)])
    ),
    inputs: table(
      words.plan,
      [tongue.working.columns.input, tongue.working.columns.value],
      words.rows(parts, odd(plan.acceptedAtAql), odd(plan.acceptedOnceInTen)),
      false
    ),
    budget: table(
      words.odds,
      [words.nonconforming, words.accepted],
      plan.odds.map(({ nonconforming, accepted }) => [
        words.of(nonconforming, found.lotSize),
        odd(accepted)
      ])
    ),
    notes: [words.note]
  }
}

const planText = (
  { level, aql, letter, takenFrom, sampleSize, acceptance, rejection }: AppliedPlan,
  shown: (text: string) => string
): PlanText => ({
  level,
  aql: shown(aql),
  letters: [...new Set([letter, takenFrom])],
  sampleSize,
  isPrinted: isPrinted(aql),
  acceptance,
  rejection
})

const table = (
  caption: string,
  [first, second]: readonly [string, string],
  rows: readonly (readonly string[])[],
  numeric = true
): Table => ({
  caption,
  columns: [
    { title: first, numeric: false },
    { title: second, numeric }
  ],
  rows
})
