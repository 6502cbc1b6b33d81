/**
 * Acute toxicity of mixtures by the estimate ATEmix.
 *
 *     100 / ATEmix = Σ Cᵢ / ATEᵢ
 *
 * Where more than 10 % is of unknown toxicity, that part is taken off the 100. Ingredients that are
 * known not to be toxic stay in the 100 and out of the sum. Vapours, mists and gases have scales of
 * their own: each is summed for itself, and the most severe outcome holds.
 *
 * Source: CLP Annex I, 3.1.3.6.1 and 3.1.3.6.2.3, Tables 3.1.1 and 3.1.2.
 */

import { toDecimal } from '../metrology/rounding.ts'
import { type ClassName, placeOf } from './classes.ts'
import { type Clause, clauses } from './clauses.ts'
import {
  type Finding,
  nameOf,
  type Point,
  reason,
  type Share,
  shown,
  sumOf,
  sumOfRatios
} from './mixture.ts'
import type { Saying } from './sayings.ts'
import type { Form, Substance } from './substances.ts'

/** Upper ends of categories 1 to 4, and the point estimate of each. */
const scales: Record<Form, { unit: string; most: readonly number[]; points: readonly number[] }> = {
  oral: { unit: 'mg/kg', most: [5, 50, 300, 2000], points: [0.5, 5, 100, 500] },
  dermal: { unit: 'mg/kg', most: [50, 200, 1000, 2000], points: [5, 50, 300, 1100] },
  gas: { unit: 'ppmV', most: [100, 500, 2500, 20000], points: [10, 100, 700, 4500] },
  vapour: { unit: 'mg/L', most: [0.5, 2, 10, 20], points: [0.05, 0.5, 3, 11] },
  mist: { unit: 'mg/L', most: [0.05, 0.5, 1, 5], points: [0.005, 0.05, 0.5, 1.5] }
}

export const forms = Object.keys(scales) as Form[]

/** Upper ends of the categories an edition has; of inhalation, category 5 has no figures. */
const mostOf = ({ edition }: Point, form: Form): readonly number[] =>
  edition === 'un' && (form === 'oral' || form === 'dermal')
    ? [...scales[form].most, FIFTH_MOST_MG_PER_KG]
    : scales[form].most

const routeOf = (form: Form) => (form === 'oral' || form === 'dermal' ? form : 'inhalation')

/** Category 5, of the UN alone: UN GHS, Table 3.1.1 (from memory, not checked against the print). */
const FIFTH_MOST_MG_PER_KG = 5000

/** Ingredients below count only where they are of category 1 to 3: Table 1.1 of Annex I. */
const RELEVANT_PERCENT = 1
const RELEVANT_IF_SEVERE_PERCENT = 0.1

/** Above this much of unknown toxicity, it is taken off the 100. */
const UNKNOWN_PERCENT = 10
/** From here on a label says so. */
const TOLD_PERCENT = 1

interface Estimated extends Share {
  readonly ate: number
  readonly clause: Clause
}

/** ATEmix of one form, with what it was made from; undefined where nothing toxic is in it. */
export function mixtureATE(point: Point, form: Form) {
  const toxic = point.shares.flatMap(share => {
    const estimate = estimateOf(share.substance, form)
    return estimate && share.percent >= cutOff(estimate.ate, form)
      ? [{ ...share, ...estimate }]
      : []
  })
  if (toxic.length === 0) return undefined
  const unknown = unknownPercent(point, form)
  const counted = unknown > UNKNOWN_PERCENT ? sumOf([100, -unknown]) : 100
  const sum = sumOfRatios(toxic.map(({ percent, ate }) => [percent, ate]))
  // A quotient of two rounded figures: two digits fewer stand for it, so that ends of categories hold.
  const ate = toDecimal(sumOfRatios([[counted, sum]]))
    .toSignificantDigits(10)
    .toNumber()
  return { ate, toxic, unknown, counted }
}

/** % of the mixture of which nobody knows how toxic it is in this form. */
const unknownPercent = ({ shares }: Point, form: Form): number =>
  sumOf(
    shares.flatMap(({ substance, percent }) =>
      substance.unknownForms?.includes(form) && !estimateOf(substance, form) ? [percent] : []
    )
  )

/** Forms of which at least 1 % of the mixture is of unknown toxicity, where anything is toxic. */
export const unknownToxicity = (point: Point): { form: Form; percent: number }[] =>
  forms.flatMap(form => {
    const percent = unknownPercent(point, form)
    return percent >= TOLD_PERCENT ? [{ form, percent }] : []
  })

/**
 * Its own estimate, else the point estimate of its category. Where the law gives the category, an
 * estimate that is milder than the category reaches gives way to it: CLP Annex VI, 1.2.1.
 */
function estimateOf(substance: Substance, form: Form): { ate: number; clause: Clause } | undefined {
  const line = substance.classes
    .filter(one => one.class.startsWith('Acute Tox.') && formIn(one) === form)
    .sort((a, b) => placeOf(a.class) - placeOf(b.class))[0]
  const own = substance.ates
    .filter(one => one.form === form)
    .reduce<{ ate: number; clause: Clause } | undefined>(
      (least, one) => (least && least.ate <= one.ate ? least : { ate: one.ate, clause: one }),
      undefined
    )
  if (!line) return own
  const { most, points } = scales[form]
  const index = categoryIn(line.class) - 1
  const gives = own && (substance.basis !== 'harmonised' || own.ate <= most[index]!)
  return gives ? own : { ate: points[index]!, clause: line }
}

const formIn = (line: { class: ClassName; form?: Form }) => line.form ?? line.class.split(' ')[3]

const categoryIn = (name: ClassName) => Number(name.split(' ')[2])

const cutOff = (ate: number, form: Form) =>
  ate <= scales[form].most[2]! ? RELEVANT_IF_SEVERE_PERCENT : RELEVANT_PERCENT

/** The most severe category of each route. */
export function classifyAcute(point: Point): Finding[] {
  const found = forms.flatMap(form => classifyForm(point, form))
  return found.filter(
    ({ class: name }, index) =>
      !found.some(
        ({ class: other }, place) =>
          other.split(' ')[3] === name.split(' ')[3] &&
          (placeOf(other) < placeOf(name) || (other === name && place < index))
      )
  )
}

function classifyForm(point: Point, form: Form): Finding[] {
  const mixture = mixtureATE(point, form)
  const most = mostOf(point, form)
  const { unit } = scales[form]
  const category = mixture ? most.findIndex(limit => mixture.ate <= limit) + 1 : 0
  if (!mixture || category === 0) return []
  const limit = most[category - 1]!
  const clause = mixture.counted < 100 ? clauses.acuteUnknown : clauses.acuteKnown
  const said: Saying = {
    is: 'toxicity',
    parts: mixture.toxic.map(({ substance, percent, ate }: Estimated) => ({
      name: nameOf(substance),
      percent: shown(percent),
      ate: shown(ate)
    })),
    unit,
    form,
    mixture: shown(mixture.ate, limit),
    most: toDecimal(limit).toFixed(),
    ...(mixture.counted < 100 ? { unknown: shown(mixture.unknown) } : {})
  }
  const own = mixture.toxic.map(({ clause: line }: Estimated) => line)
  return [
    {
      class: `Acute Tox. ${category} ${routeOf(form)}` as ClassName,
      reasons: [reason(mixture.toxic, said, [clause, ...own])]
    }
  ]
}
