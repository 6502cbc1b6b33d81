/** Foil that was looked at: what was found and how often such a plan accepts. */

import type { AppliedPlan, VisualVerdict } from '../judge/visual.ts'
import { isPrinted } from '../quality/sampling-plan.ts'
import { significant } from './figure.ts'
import { plainFormula, readFormula } from './formula.ts'
import type { GradeView, LotView } from './lot-view.ts'
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
  const { level, letter, takenFrom, acceptance, rejection } = plan
  return foil.visual({
    ...withoutPlan,
    plan: {
      level,
      aql: shown(plan.aql),
      letters: [...new Set([letter, takenFrom])],
      isPrinted: isPrinted(plan.aql),
      acceptance,
      rejection,
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
export function visualWorking(found: VisualVerdict): Working | undefined {
  const { plan, defects } = found
  if (!plan) return undefined
  return {
    key: 'visual-inspection',
    title: 'Visual inspection',
    formula: plainFormula(FORMULA),
    statements: readFormula(FORMULA),
    source: `hypergeometric distribution; ISO 2859-1, single sampling, normal inspection, numbers as in MIL-STD-105E, table II-A${isPrinted(plan.aql) ? '' : ' (from memory, not checked against the print)'}`,
    outcome: `${found.nonconforming} of ${found.inspected} nonconforming, Ac ${plan.acceptance}, Re ${plan.rejection}: ${found.isAccepted ? 'accepted' : 'not accepted'}`,
    readings: table(
      'What was seen',
      'Defect',
      'Count',
      defects.map(({ kind, count }) => [kind, String(count)])
    ),
    inputs: planTable(found, plan),
    budget: table(
      'How often the plan accepts this lot',
      'Nonconforming in the lot',
      'Accepted',
      plan.odds.map(({ nonconforming, accepted }) => [
        `${nonconforming} of ${found.lotSize}`,
        percent(accepted)
      ])
    ),
    notes: ['A lot that is accepted may hold units that do not conform.']
  }
}

const FORMULA =
  'P = Σ f · g / h, f ways to draw k of the D that do not conform, g ways to draw the other n − k of the N − D that do, h ways to draw n of N, k from 0 to Ac'

const planTable = ({ lotSize, unit }: VisualVerdict, plan: AppliedPlan): Table =>
  table(
    'Plan',
    'Input',
    'Value',
    [
      [`Lot, in ${unit}s`, String(lotSize)],
      ['Inspection level', plan.level],
      ['AQL', `${plan.aql} %`],
      ['Letter', [...new Set([plan.letter, plan.takenFrom])].join(' → ')],
      ['Sample', String(plan.sampleSize)],
      ['Acceptance number', String(plan.acceptance)],
      ['Accepted at the AQL', percent(plan.acceptedAtAql)],
      ['Accepted one time in ten', `${percent(plan.acceptedOnceInTen)} nonconforming`]
    ],
    false
  )

const table = (
  caption: string,
  first: string,
  second: string,
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
