/** Whether the decisions taken on a lot could be taken. */

import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import { isSellable, refusedStep } from '../quality/status.ts'
import { titleInSentence } from '../quantities.ts'
import type { Records } from '../records/types.ts'
import { overLimit, overLimitText } from '../evaluate/charge-limits.ts'
import { oxidiserHolds } from '../evaluate/oxidiser.ts'
import { wasOxidised } from './charged.ts'
import { gradeOf, judgeRows } from './judge-lot.ts'
import { decisionsOn, type LotHazards, lotHazards } from './lot-hazards.ts'
import type { Decision, JudgedLot } from './types.ts'
import { checkVisual, judgeVisual, visualRefusal } from './visual.ts'
import { demandRefusal } from './visual-demand.ts'
import { checkVisualSize } from './visual-size.ts'

/**
 * Everything that speaks against the decisions recorded on a lot. Each is held to the grade the lot
 * had on the day it was taken: regrading it afterwards does not undo what was decided.
 */
export function checkRelease(content: Records, lot: JudgedLot): Problem[] {
  const { entry } = lot.evaluated
  const decisions = entry.record.status ?? []
  return [
    ...decisions.flatMap((decision, index) => [
      ...checkStep(lot, decisions.slice(0, index), decision, index),
      ...(decision.is === 'released'
        ? checkReleased(gradedOn(content, lot, decision.on), decision, index)
        : []),
      ...(decision.is === 'concession' ? checkConcession(lot, decision, index) : []),
      ...(isSellable(decision.is) ? checkTested(lot, decision, index) : []),
      ...(isSellable(decision.is) ? checkOverLimit(content, lot, decision, index) : []),
      ...(isSellable(decision.is) ? checkOxidiser(content, lot, decision, index) : []),
      ...(isSellable(decision.is)
        ? checkHazards(lot, hazardsIn(content, lot), decision, index)
        : [])
    ]),
    ...checkMethods(lot),
    ...(lot.evaluated.kind === 'foil'
      ? [...checkVisual(lot.evaluated.entry), ...checkVisualSize(lot.evaluated.entry)]
      : [])
  ]
}

/** The lot as its grade of a day judges it. */
function gradedOn(content: Records, lot: JudgedLot, day: string): JudgedLot {
  const grade = gradeOf(content, lot.evaluated.entry.record, day)
  return grade === lot.grade ? lot : { ...lot, grade, rows: judgeRows(lot.evaluated, grade) }
}

const fault = (
  { evaluated }: JudgedLot,
  field: FieldPath,
  code: Problem['code'],
  message: string,
  hint: string
): Problem => problemAt(evaluated.entry.at(field), code, message, hint)

function checkStep(
  lot: JudgedLot,
  earlier: readonly Decision[],
  decision: Decision,
  index: number
): Problem[] {
  const refused = refusedStep(earlier, decision)
  const made = lot.evaluated.entry.record.made
  return [
    ...(refused
      ? [
          fault(
            lot,
            ['status', index, 'is'],
            'DATE_ORDER',
            refused,
            'list decisions in the order they were taken'
          )
        ]
      : []),
    ...(decision.on < made
      ? [
          fault(
            lot,
            ['status', index, 'on'],
            'DATE_ORDER',
            `was decided on ${decision.on}, before the lot was made on ${made}`,
            'check the two dates'
          )
        ]
      : []),
    ...(decision.is === 'withdrawn' || decision.is === 'rejected'
      ? needBecause(lot, decision, index)
      : [])
  ]
}

function needBecause(lot: JudgedLot, { is, because }: Decision, index: number): Problem[] {
  return because === undefined
    ? [
        fault(
          lot,
          ['status', index, 'is'],
          'MISSING_FIELD',
          `a lot that is ${is} needs the reason`,
          "add 'because:' with one sentence"
        )
      ]
    : []
}

/** A batch run above its documented limit is held until a role has reviewed it. */
function checkOverLimit(
  content: Records,
  { evaluated }: JudgedLot,
  decision: Decision,
  index: number
): Problem[] {
  if (evaluated.kind !== 'batch') return []
  const { record } = evaluated.entry
  const over = overLimit(content, record)
  if (!over || (record.overLimit && record.overLimit.on <= decision.on)) return []
  return [
    problemAt(
      evaluated.entry.at(['status', index, 'is']),
      'NOT_RELEASABLE',
      `cannot be let go: it was charged with ${overLimitText(over)}, and nobody has reviewed that by ${decision.on}`,
      "let a role review it, and record it under 'over-limit: { by, on, because }'"
    )
  ]
}

/** Flake with oxidiser left in it is for nobody: no concession lets it go. */
const checkOxidiser = (
  content: Records,
  { evaluated }: JudgedLot,
  { on }: Decision,
  index: number
): Problem[] =>
  evaluated.kind !== 'batch' || !wasOxidised(content, evaluated.entry.record)
    ? []
    : oxidiserHolds(content, evaluated, on).map(why =>
        problemAt(
          evaluated.entry.at(['status', index, 'is']),
          'NOT_RELEASABLE',
          `cannot be let go: ${why}`,
          'wash it and test it again: oxidiser left in dry graphite is an energetic mixture'
        )
      )

/** What keeps a lot from plain release: a missing result, a verdict, an instrument out of date. */
function checkReleased(lot: JudgedLot, decision: Decision, index: number): Problem[] {
  const field = ['status', index, 'is']
  const reasons = [
    ...missingResults(lot),
    ...badVerdicts(lot),
    ...failedChecks(lot),
    ...badVisual(lot)
  ]
  return [
    ...reasons.map(reason =>
      fault(
        lot,
        field,
        'NOT_RELEASABLE',
        `cannot be released: ${reason}`,
        'test it, rework it, reject it, or record a concession naming customer, quantity, reason and expiry'
      )
    ),
    ...overdueUses(lot, decision).map(reason =>
      fault(
        lot,
        field,
        'NOT_RELEASABLE',
        `cannot be released: ${reason}`,
        "measure it again, or record under 'as-found' what the next calibration found"
      )
    )
  ]
}

const missingResults = ({ rows, grade }: JudgedLot): string[] =>
  rows
    .filter(row => row.limit && !row.result)
    .map(
      ({ quantity }) =>
        `grade ${grade.id} limits ${titleInSentence(quantity)}, which was not measured`
    )

const badVerdicts = ({ rows }: JudgedLot): string[] =>
  rows.flatMap(({ quantity, verdict }) =>
    verdict && !['pass', 'conditional pass'].includes(verdict.word)
      ? [`the verdict on ${titleInSentence(quantity)} is ${verdict.word}`]
      : []
  )

/** A look that the grade asks for and nobody took, or units that were looked at and did not conform. */
function badVisual({ evaluated, grade }: JudgedLot): string[] {
  if (evaluated.kind !== 'foil') return []
  const { record } = evaluated.entry
  const asked = grade.visual && demandRefusal(grade.id, grade.visual, judgeVisual(record))
  return [asked, visualRefusal(record)].filter(reason => reason !== undefined)
}

/** Days on which the instrument's own check was out of bounds: those readings prove nothing. */
function failedChecks({ evaluated }: JudgedLot): string[] {
  const tests =
    evaluated.kind === 'batch'
      ? Object.values(evaluated.entry.record.tests ?? {})
      : [
          evaluated.entry.record.measured,
          ...Object.values(evaluated.entry.record.tests ?? {}),
          evaluated.entry.record.visual
        ]
  return tests.flatMap(test =>
    (test?.checks ?? [])
      .filter(({ within }) => !within)
      .map(({ what }) => `the check of the ${what} was out of bounds on ${test!.tested}`)
  )
}

/** Uses of instruments out of date that no later check cleared by the day of the decision. */
export function overdueUses({ evaluated }: JudgedLot, decision?: Decision): string[] {
  const cleared = evaluated.entry.record.asFound ?? []
  return evaluated.overdue
    .filter(
      use =>
        !cleared.some(
          check =>
            check.within &&
            check.instrument === use.instrument &&
            check.on >= use.used &&
            (decision === undefined || check.on <= decision.on)
        )
    )
    .map(use => `${use.instrument} was used on ${use.used}, its calibration was due on ${use.due}`)
}

function checkConcession(lot: JudgedLot, decision: Decision, index: number): Problem[] {
  const needed = {
    customer: 'customer',
    quantity_g: 'quantity',
    until: 'until',
    because: 'because'
  } as const
  const missing = Object.entries(needed)
    .filter(([name]) => decision[name as keyof typeof needed] === undefined)
    .map(([, key]) => key)
  return missing.length === 0
    ? []
    : [
        fault(
          lot,
          ['status', index, 'is'],
          'MISSING_FIELD',
          `a concession needs ${missing.join(', ')}`,
          'name the accepting customer, the quantity, the expiry and the reason'
        )
      ]
}

/** A lot is decided on after its tests and after it was looked at, not before. */
function checkTested(lot: JudgedLot, decision: Decision, index: number): Problem[] {
  const days = lot.rows.flatMap(({ result }) =>
    result?.tested === undefined ? [] : [result.tested]
  )
  const { evaluated } = lot
  const seen = evaluated.kind === 'foil' ? evaluated.entry.record.visual?.tested : undefined
  const last = [...days, ...(seen === undefined ? [] : [seen])].sort().at(-1)
  return last !== undefined && last > decision.on
    ? [
        fault(
          lot,
          ['status', index, 'on'],
          'DATE_ORDER',
          `was let go on ${decision.on}, before its last test on ${last}`,
          'check the two dates'
        )
      ]
    : []
}

/** Its hazards with every decision on them: a day in the past knows fewer than its releases rest on. */
function hazardsIn(content: Records, lot: JudgedLot): LotHazards | undefined {
  const { evaluated, grade, hazards } = lot
  const all = decisionsOn(evaluated)
  return hazards === undefined || hazards.decisions.length === all.length
    ? hazards
    : lotHazards(content, evaluated, grade, all.at(-1)!.on)
}

/** What is open about its hazards, and decisions on them taken only after it was let go. */
function checkHazards(
  lot: JudgedLot,
  hazards: LotHazards | undefined,
  decision: Decision,
  index: number
): Problem[] {
  if (!hazards) return []
  const field = ['status', index, 'is']
  const late = hazards.decisions.filter(({ on }) => on > decision.on)
  return [
    ...hazards.open.map(({ about, text }) =>
      fault(
        lot,
        field,
        'NOT_RELEASABLE',
        `cannot be let go: ${text}`,
        `test it, or let who may decide record why under 'hazards: decisions:' with 'about: ${about}'`
      )
    ),
    ...late.map(({ about, on }) =>
      fault(
        lot,
        ['status', index, 'on'],
        'DATE_ORDER',
        `was let go on ${decision.on}, before the decision about '${about}' on ${on}`,
        'check the two dates'
      )
    )
  ]
}

/** A method so uncertain that no value could pass, and a method other than the grade's. */
function checkMethods(lot: JudgedLot): Problem[] {
  return lot.rows.flatMap(({ quantity, limit, result, verdict }) => [
    ...(result && verdict?.undecidableMethod
      ? [
          fault(
            lot,
            result.field,
            'CANNOT_DECIDE',
            `the uncertainty of ${titleInSentence(quantity)} leaves no value that could pass`,
            'a more certain method, more readings, or wider limits agreed with the customer'
          )
        ]
      : []),
    ...(result?.method && limit?.method !== undefined && result.method.id !== limit.method
      ? [
          fault(
            lot,
            result.field,
            'METHOD_MISMATCH',
            `${titleInSentence(quantity)} was measured by ${result.method.id}, the grade names ${limit.method}`,
            'the paper names the method that was used'
          )
        ]
      : [])
  ])
}
