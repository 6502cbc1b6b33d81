/**
 * The classification of a mixture, with every reason, and with what keeps it from being final.
 *
 * Each value is tried as measured, at its upper and at its lower end: a class reached anywhere on the
 * way applies, and where a limit lies within the uncertainty it says so.
 */

import { unknownToxicity } from './acute-toxicity.ts'
import type { ClassName } from './classes.ts'
import { classifyExtremePH } from './extreme-ph.ts'
import type { Edition } from './editions.ts'
import { findingsAt, isCorrosive, namesOf } from './findings.ts'
import {
  type Finding,
  type Ingredient,
  mergeIngredients,
  nameOf,
  type Point,
  shown,
  sumOf,
  type Uncertain
} from './mixture.ts'
import { corrosive } from './skin.ts'
import { type Form, hasClass, isKnown, mayTell } from './substances.ts'
import { type Supplement, supplementsOf } from './supplements.ts'
import { type Answer, classifyAnswers, type Question, questionsOf } from './tests-only.ts'

export interface Mixture {
  readonly ingredients: readonly Ingredient[]
  /** Of the mixture, or of its slurry in water. */
  readonly pH?: Uncertain
  readonly answers?: readonly Answer[]
  /** Which side a competent person took where concentration limit and pH rule disagree. */
  readonly settled?: 'limits' | 'pH'
  /** Whose categories and limits hold; CLP's where nothing is said. */
  readonly edition?: Edition
  /** The main part is a registered substance, and small rests of its making belong to it. */
  readonly registered?: boolean
}

export interface Classified extends Finding {
  /** Set where a limit lies within the uncertainty of what was measured. */
  readonly margin?:
    'reached only with the uncertainty added' | 'not reached with the uncertainty taken off'
}

/** Two rules that do not agree, the stricter of which is applied. */
export interface Conflict {
  /** What the concentration limits give; nothing where they give no class. */
  readonly byLimits?: Finding
  readonly byPH: Finding
  readonly settled?: 'limits' | 'pH'
}

export interface Classification {
  readonly classes: readonly Classified[]
  readonly supplements: readonly Supplement[]
  /** Only a test or a recorded reason can tell: open until then. */
  readonly questions: readonly Question[]
  readonly conflicts: readonly Conflict[]
  /** Missing data, as sentences without a full stop. */
  readonly gaps: readonly string[]
  /** Parts of unknown acute toxicity, from 1 % on. */
  readonly unknown: readonly { readonly form: Form; readonly percent: number }[]
  /** 'incomplete' is never 'not classified'. */
  readonly state: 'complete' | 'incomplete'
}

/** By how much rows may miss 100 % for being rounded. */
const ROUNDED_PERCENT = 0.1

/** Classify a mixture: order of rows and how they are split make no difference. */
export function classify(mixture: Mixture): Classification {
  const { answers = [], settled } = mixture
  const merged = mergeIngredients(mixture.ingredients)
  const { isExact, pointAt } = pointsOf(mixture, merged)
  const measured = pointAt(0)
  const upper = isExact ? measured : pointAt(1)
  const more = classifyAnswers(answers)
  const at = (point: Point) => findingsAt(point, more, settled !== 'limits')
  const strict = at(upper)
  // Most of a bench's lots reach no class at their strict end, and none at any other then.
  const isClear = strict.length === 0
  const nominal = isClear || isExact ? strict : at(measured)
  const mild = isClear || isExact ? nominal : at(pointAt(-1))
  const classes = withMargins(strict, nominal, namesOf(mild))
  const questions = questionsOf(upper, classes, answers, measured)
  const conflicts = conflictsOf(upper, more, settled, measured)
  const gaps = gapsOf(merged)
  const open =
    gaps.length > 0 || questions.length > 0 || conflicts.some(conflict => !conflict.settled)
  return {
    classes,
    supplements: supplementsOf(upper, classes, mixture.registered),
    questions,
    conflicts,
    gaps,
    unknown: unknownToxicity(measured),
    state: open ? 'incomplete' : 'complete'
  }
}

type Merged = ReturnType<typeof mergeIngredients>

/** The mixture as measured (0), at its strict (1) and at its mild end (-1). */
function pointsOf({ pH, edition }: Mixture, merged: Merged) {
  // Water and graphite take no part in any rule: most of a lot need not be gone through.
  const telling = merged.filter(({ substance }) => mayTell(substance))
  const pointAt = (toward: -1 | 0 | 1): Point => ({
    shares: telling.flatMap(({ substance, percent, U }) => {
      const moved = toward === 0 ? percent : sumOf([percent, toward * U])
      const held = Math.min(100, Math.max(0, moved))
      return held > 0 ? [{ substance, percent: held }] : []
    }),
    ...(edition === undefined ? {} : { edition }),
    ...(pH ? { pH: sumOf([pH.value, (pH.value <= NEUTRAL_PH ? -toward : toward) * pH.U]) } : {})
  })
  return { pointAt, isExact: merged.every(({ U }) => U === 0) && (pH?.U ?? 0) === 0 }
}

/** Below, lower is stricter; above, higher. */
const NEUTRAL_PH = 7

/** The strict end's classes, each told by the measured values where they reach it themselves. */
function withMargins(
  strict: readonly Finding[],
  nominal: readonly Finding[],
  mild: ReadonlySet<ClassName>
): Classified[] {
  const asMeasured = new Map(nominal.map(finding => [finding.class, finding]))
  return strict.map(finding => {
    const measured = asMeasured.get(finding.class)
    if (!measured) return { ...finding, margin: 'reached only with the uncertainty added' }
    return mild.has(finding.class)
      ? measured
      : { ...measured, margin: 'not reached with the uncertainty taken off' }
  })
}

/**
 * A pH that makes it corrosive, where limits of ingredients that are there say otherwise.
 *
 * @param measured what is told where the figures as measured say so already
 */
function conflictsOf(
  point: Point,
  more: readonly Finding[],
  settled: 'limits' | 'pH' | undefined,
  measured: Point
): Conflict[] {
  const [byPH] = classifyExtremePH(point)
  const bySkin = point.shares.some(({ substance }) =>
    hasClass(substance, [...corrosive, 'Skin Irrit. 2'])
  )
  if (!byPH || !bySkin) return []
  const found = findingsAt(point, more, false)
  if (found.some(isCorrosive)) return []
  const irritating = (findings: readonly Finding[]) =>
    findings.find(({ class: name }) => name === 'Skin Irrit. 2')
  const strict = irritating(found)
  const byLimits = strict && (irritating(findingsAt(measured, more, false)) ?? strict)
  return [
    {
      byPH: classifyExtremePH(measured)[0] ?? byPH,
      ...(byLimits ? { byLimits } : {}),
      ...(settled ? { settled } : {})
    }
  ]
}

/** What is not known of a composition. */
function gapsOf(merged: Merged): string[] {
  const total = sumOf(merged.map(({ percent }) => percent))
  return [
    ...merged.flatMap(({ substance, percent }) => [
      ...(isKnown(substance)
        ? []
        : [`nothing is known of ${nameOf(substance)} (${shown(percent)} %)`]),
      ...(percent > (substance.most_percent ?? Infinity) || percent < (substance.least_percent ?? 0)
        ? [
            `${nameOf(substance)} ${shown(percent)} % is outside what its entry is for (${substance.state})`
          ]
        : [])
    ]),
    ...(total < 100 - ROUNDED_PERCENT
      ? [`${shown(sumOf([100, -total]))} % of the composition is not accounted for`]
      : []),
    ...(total > 100 + ROUNDED_PERCENT ? [`the composition adds up to ${shown(total, 100)} %`] : [])
  ]
}
