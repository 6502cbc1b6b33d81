/** A lot's figures against the limits of its grade. */

import { Decimal } from 'decimal.js'
import type { EvaluatedBatch, EvaluatedFoil, Result } from '../evaluate/types.ts'
import { expand } from '../metrology/coverage.ts'
import { type Estimate, uncertaintyOf } from '../metrology/estimate.ts'
import { placesOf } from '../metrology/rounding.ts'
import {
  type Bounds,
  type DecisionRule,
  judge,
  type Judgeable,
  type Verdict,
  worstOf
} from '../quality/judge.ts'
import { decisionOn } from '../quality/status.ts'
import { quantities, type QuantityName, quantityNames } from '../quantities.ts'
import { versionOn } from '../records/references.ts'
import type { Limit } from '../records/schemas/grade.ts'
import type { Grade, Records } from '../records/types.ts'
import { lotHazards } from './lot-hazards.ts'
import { judgeReported } from './reported.ts'
import type { JudgedLot, JudgedRow, Scope } from './types.ts'
import { judgeVisual } from './visual.ts'
import { type DemandStanding, standingOf } from './visual-demand.ts'

/** Judge one lot by its grade's revision of the day it was made, in the state of day `asOf`. */
export function judgeLot(
  content: Records,
  evaluated: EvaluatedBatch | EvaluatedFoil,
  asOf: string
): JudgedLot {
  const { record } = evaluated.entry
  const grade = gradeOf(content, record, asOf)
  const rows = judgeRows(evaluated, grade)
  const decision = decisionOn(record.status ?? [], asOf)
  const hazards = lotHazards(content, evaluated, grade, asOf)
  return {
    evaluated,
    grade,
    rule: grade.decisionRule ?? 'simple',
    asOf,
    rows,
    word: withLook(wordOf(rows), lookOf(evaluated, grade)),
    state: decision?.is ?? 'quarantine',
    ...(decision ? { decision } : {}),
    ...(hazards ? { hazards } : {})
  }
}

/**
 * The same lot, which keeps no figures: its rows are judged again each time they are asked for.
 *
 * @param evaluated the lot as evaluation keeps it
 */
export function judgedOnDemand(lot: JudgedLot, evaluated: JudgedLot['evaluated']): JudgedLot {
  const { grade } = lot
  return {
    ...lot,
    evaluated,
    get rows() {
      return judgeRows(evaluated, grade)
    }
  }
}

/** Every quantity of a lot that was measured or that a grade limits, judged by that grade. */
export function judgeRows({ product }: EvaluatedBatch | EvaluatedFoil, grade: Grade): JudgedRow[] {
  const rule = grade.decisionRule ?? 'simple'
  return quantityNames
    .filter(name => product[name] !== undefined || grade.limits[quantities[name].key] !== undefined)
    .map(name => judgeRow(name, product[name], grade, rule))
}

interface Graded {
  readonly grade: string
  readonly made: string
  readonly regraded?: readonly { readonly to: string; readonly on: string }[] | undefined
}

/** The grade a lot is judged by on a day: its own when made, or the one it was regraded to since. */
export function gradeOf(content: Records, { grade, made, regraded }: Graded, day: string): Grade {
  const inOrder = [...(regraded ?? [])].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
  const last = inOrder.findLast(({ on }) => on <= day)
  const [id, since] = last ? [last.to, last.on] : [grade, made]
  return versionOn(content.grades.get(id), since)!.record
}

/** Bounds of a limit as decimals; target ± tolerance keeps the finer of their written digits. */
export function boundsOf({ min, max, target, tolerance }: Limit): Bounds {
  if (target && tolerance) {
    const places = Math.max(placesOf(target.decimal), placesOf(tolerance.decimal))
    return {
      min: new Decimal(target.decimal).minus(tolerance.decimal).toFixed(places),
      max: new Decimal(target.decimal).plus(tolerance.decimal).toFixed(places)
    }
  }
  return {
    ...(min ? { min: min.decimal } : {}),
    ...(max ? { max: max.decimal } : {})
  }
}

function judgeRow(
  quantity: QuantityName,
  result: Result | undefined,
  grade: Grade,
  rule: DecisionRule
): JudgedRow {
  const { key } = quantities[quantity]
  const limit = grade.limits[key]
  const places = limit?.places ?? grade.measured?.[key]?.places
  const scope = limit?.of ?? 'lot mean'
  const row = {
    quantity,
    scope,
    ...(result ? { result } : {}),
    ...(places === undefined ? {} : { places })
  }
  if (!limit) return row
  const bounds = boundsOf(limit)
  return { ...row, limit, bounds, ...(result ? judgeScope(result, bounds, scope, rule) : {}) }
}

/** The verdict on a result, and which of its figures decides where the limit holds for each of them. */
export function judgeScope(
  result: Result,
  bounds: Bounds,
  scope: Scope,
  rule: DecisionRule
): Pick<JudgedRow, 'verdict' | 'worst'> {
  const reported = judgeReported(result, bounds, scope, rule)
  if (reported) return { verdict: reported }
  const figures =
    scope === 'every sheet' ? result.each : scope === 'every reading' ? readingsOf(result) : []
  if (figures.length === 0)
    return { verdict: judge(judgeable(result.estimate, result.below), bounds, rule) }
  const judged = figures.map(({ label, estimate }) => {
    const figure = judgeable(estimate)
    return { label, figure, verdict: judge(figure, bounds, rule) }
  })
  const word = worstOf(judged.map(({ verdict }) => verdict.word))
  const worst = judged
    .filter(({ verdict }) => verdict.word === word)
    .reduce((a, b) => (isWorse(b.verdict, a.verdict) ? b : a))
  return {
    verdict: worst.verdict,
    worst: {
      label: worst.label,
      value: worst.figure.value,
      expandedUncertainty: worst.figure.expandedUncertainty,
      count: judged.length
    }
  }
}

const readingsOf = ({ readings, each }: Result) => (readings.length > 0 ? readings : each)

/** Less probable to conform or, where both surely do or surely do not, nearer to failing. */
function isWorse(a: Verdict, b: Verdict): boolean {
  const [p, q] = [a.probability ?? 1, b.probability ?? 1]
  return p === q ? (a.margin ?? 0) < (b.margin ?? 0) : p < q
}

const judgeable = (estimate: Estimate, below?: number): Judgeable => ({
  value: estimate.value,
  standardUncertainty: uncertaintyOf(estimate),
  expandedUncertainty: expand(estimate).U,
  ...(below === undefined ? {} : { below })
})

/** How a lot stands to the look its grade asks for; undefined where it asks for none. */
export const lookOf = (
  evaluated: EvaluatedBatch | EvaluatedFoil,
  grade: Grade
): DemandStanding | undefined =>
  grade.visual && evaluated.kind === 'foil'
    ? standingOf(grade.visual, judgeVisual(evaluated.entry.record))
    : undefined

/** A look asked for counts as a limit does: without it nothing is judged, and it can fail. */
function withLook(word: JudgedLot['word'], look: DemandStanding | undefined): JudgedLot['word'] {
  if (look === undefined || look === 'met') return word
  if (look === 'not accepted') return 'fail'
  return word === 'fail' || word === 'conditional fail' ? word : 'not judged'
}

/** Worst of the verdicts against limits alone. */
export function wordOf(rows: readonly JudgedRow[]): JudgedLot['word'] {
  const limited = rows.filter(row => row.limit)
  if (limited.length === 0) return 'not judged'
  const judged = limited.flatMap(({ verdict }) => (verdict ? [verdict.word] : []))
  const worst = worstOf(judged)
  const failing = worst === 'fail' || worst === 'conditional fail'
  return judged.length < limited.length && !failing ? 'not judged' : worst
}
