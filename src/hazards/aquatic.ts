/**
 * Hazards to the aquatic environment by summation, with M-factors.
 *
 *     Acute 1:    Σ M·A1 ≥ 25 %
 *     Chronic 1:  Σ M·C1 ≥ 25 %
 *     Chronic 2:  Σ 10·M·C1 + C2 ≥ 25 %
 *     Chronic 3:  Σ 100·M·C1 + 10·C2 + C3 ≥ 25 %
 *     Chronic 4:  Σ C1 + C2 + C3 + C4 ≥ 25 %
 *
 * Source: CLP Annex I, Tables 4.1.1 and 4.1.2; cut-offs of Table 1.1 (from memory, not checked
 * against the print). The UN has Acute 2 and 3 besides, by the weights of Chronic 2 and 3.
 */

import type { ClassName } from './classes.ts'
import { type Clause, clauses } from './clauses.ts'
import { isIn } from './editions.ts'
import { type Finding, nameOf, type Point, reason, type Share, shown, sumOf } from './mixture.ts'
import type { Saying } from './sayings.ts'
import { hasClass, type Substance } from './substances.ts'

const SUM_PERCENT = 25
const RELEVANT_PERCENT = 1
/** Category 1 counts from here on, divided by its M-factor. */
const RELEVANT_CATEGORY_1_PERCENT = 0.1

type Weights = Partial<Record<ClassName, number>>

const acute: readonly (readonly [ClassName, Weights])[] = [
  ['Aquatic Acute 1', { 'Aquatic Acute 1': 1 }],
  ['Aquatic Acute 2', { 'Aquatic Acute 1': 10, 'Aquatic Acute 2': 1 }],
  ['Aquatic Acute 3', { 'Aquatic Acute 1': 100, 'Aquatic Acute 2': 10, 'Aquatic Acute 3': 1 }]
]

const chronic: readonly (readonly [ClassName, Weights])[] = [
  ['Aquatic Chronic 1', { 'Aquatic Chronic 1': 1 }],
  ['Aquatic Chronic 2', { 'Aquatic Chronic 1': 10, 'Aquatic Chronic 2': 1 }],
  [
    'Aquatic Chronic 3',
    { 'Aquatic Chronic 1': 100, 'Aquatic Chronic 2': 10, 'Aquatic Chronic 3': 1 }
  ],
  [
    'Aquatic Chronic 4',
    {
      'Aquatic Chronic 1': 1,
      'Aquatic Chronic 2': 1,
      'Aquatic Chronic 3': 1,
      'Aquatic Chronic 4': 1
    }
  ]
]

/** The most severe acute category the edition has, and the most severe chronic one. */
export function classifyAquatic(point: Point): Finding[] {
  const { edition = 'clp' } = point
  const first = (categories: typeof acute, clause: (name: ClassName) => Clause) => {
    for (const [name, weights] of categories) {
      const found = isIn(edition, name) ? weigh(point, name, weights, clause(name)) : []
      if (found.length > 0) return found
    }
    return []
  }
  return [
    ...first(acute, name =>
      name === 'Aquatic Acute 1' ? clauses.aquaticAcute : clauses.aquaticAcuteUN
    ),
    ...first(chronic, () => clauses.aquaticChronic)
  ]
}

interface Weighed extends Share {
  readonly weight: number
  readonly product: number
}

function weigh({ shares }: Point, name: ClassName, weights: Weights, clause: Clause): Finding[] {
  const weighed = shares.flatMap((share): Weighed[] => {
    const weight = weightOf(share, name, weights)
    return weight === 0 ? [] : [{ ...share, weight, product: sumOf([weight * share.percent]) }]
  })
  if (weighed.length === 0) return []
  const sum = sumOf(weighed.map(({ product }) => product))
  if (!(sum >= SUM_PERCENT)) return []
  const said: Saying = {
    is: 'weighed',
    parts: weighed.map(({ substance, percent, weight }) => ({
      name: nameOf(substance),
      percent: shown(percent),
      ...(weight === 1 ? {} : { weight: shown(weight) })
    })),
    sum: shown(sum, SUM_PERCENT),
    limit: String(SUM_PERCENT)
  }
  const own = weighed.flatMap(({ substance }) => factorLines(substance, name))
  return [{ class: name, reasons: [reason(weighed, said, [clause, ...own])] }]
}

/** How often an ingredient counts: its class's weight times its M-factor; 0 below the cut-off. */
function weightOf({ substance, percent }: Share, name: ClassName, weights: Weights): number {
  const found = (Object.keys(weights) as ClassName[]).find(wanted => hasClass(substance, [wanted]))
  if (!found) return 0
  const isFirst = found === 'Aquatic Acute 1' || found === 'Aquatic Chronic 1'
  const m = isFirst ? mFactor(substance, found) : 1
  const relevant = isFirst ? RELEVANT_CATEGORY_1_PERCENT / m : RELEVANT_PERCENT
  // The safety net of Chronic 4 counts no M-factors.
  return percent < relevant ? 0 : weights[found]! * (name === 'Aquatic Chronic 4' ? 1 : m)
}

const kindOf = (name: ClassName) => (name === 'Aquatic Acute 1' ? 'acute' : 'chronic')

const factorLines = ({ mFactors }: Substance, name: ClassName) =>
  mFactors.filter(({ kind }) => kind === kindOf(name))

/** Its M-factor, the largest where several are given; 1 where none is. */
const mFactor = (substance: Substance, name: ClassName): number =>
  Math.max(1, ...factorLines(substance, name).map(({ m }) => m))
