/** A batch's bench sheet in words. Private throughout. */

import { chargeLimitOn, exceeded, overLimitText } from '../evaluate/charge-limits.ts'
import { isUnreadable, readQuantity } from '../metrology/written.ts'
import { cautionsOf } from '../plan/cautions.ts'
import { quantityOf, quantities } from '../quantities.ts'
import type { BenchView } from '../records/bench-view.ts'
import { versionOn } from '../records/references.ts'
import type { Content, Grade } from '../records/types.ts'
import type { BenchSheet } from './bench-sheet-types.ts'
import { cautionTexts, planStatements } from './plan.ts'
import { producerText } from './certificate.ts'
import { dateText } from './words.ts'

/** Common practice, no source; what the substances themselves ask for stands under the cautions. */
const ready: readonly string[] = [
  'Extraction running; face shield, acid gloves and apron on',
  'Quench water weighed and cold, within reach, before the acid is opened',
  'Neutraliser weighed; eyewash and shower tried today; spill kit open',
  'Thermometer in the vessel; cooling bath cold; a second person within call'
]

/** The sheet of a batch, on the paper asked for. */
export function benchSheet(
  content: Content,
  view: BenchView,
  record: string,
  paper: BenchSheet['paper']
): BenchSheet {
  const grade = versionOn(content.grades.get(view.grade), view.made)?.record
  const materials = view.charge.flatMap(
    ({ material }) => content.materials.get(material)?.record ?? []
  )
  return {
    title: 'Bench sheet',
    lot: view.lot,
    language: 'en',
    paper,
    dated: view.made,
    producer: producerText(content.producer.record),
    facts: [
      { label: 'Grade', text: grade ? `${grade.id}, revision ${grade.revision}` : view.grade },
      { label: 'Day', text: dateText(view.made) },
      { label: 'Vessel', text: view.vessel || 'not named in the record' }
    ],
    amounts: view.charge.map(({ material, as, container, amount }) => ({
      as,
      what: content.materials.get(material)?.record.title ?? 'not recorded',
      lot: container === '' ? material : `${material}, ${container}`,
      planned: amount
    })),
    steps: view.steps,
    readings: grade ? readingsOf(content, grade, view.made) : [],
    ready,
    cautions: cautionTexts(cautionsOf(materials), grade?.cautions ?? []),
    statements: planStatements,
    signatures: ['Weighed by', 'Checked by', 'Quench and neutralising watched by', 'Day and time'],
    record
  }
}

/**
 * Why no sheet is made of a charge still to be weighed in: it is beyond its vessel's documented limit,
 * or without one. What was run already is printed as it was.
 */
export function sheetRefusals(content: Content, { charge, vessel, made }: BenchView): string[] {
  const limit = chargeLimitOn(content.producer.record, vessel, made)
  if (!limit)
    return [`vessel ${vessel || 'of this charge'} has no documented limit in force on ${made}`]
  const measured = charge.filter(({ amount }) => !isUnreadable(readQuantity(amount, 'mL')))
  if (measured.length > 0)
    return measured.map(
      ({ material, amount }) =>
        `${material} is to be measured out, ${amount}: write 'planned:' with its mass, which the limit is held against`
    )
  const of = (role: string) =>
    charge.filter(({ as }) => as === role).reduce((sum, { amount }) => sum + gramsOf(amount), 0)
  const [graphite, acid, oxidiser] = [of('graphite'), of('acid'), of('oxidiser')]
  const masses = { graphite, acid, oxidiser, total: graphite + acid + oxidiser }
  const over = exceeded(masses, limit)
  return over.length > 0 ? [overLimitText({ limit, exceeded: over })] : []
}

/** An amount as written, g; a blank one counts nothing yet. */
function gramsOf(amount: string): number {
  const reading = readQuantity(amount, 'g')
  return isUnreadable(reading) ? 0 : reading.value
}

/** Every reading the grade asks for, its method in one line. */
function readingsOf(content: Content, grade: Grade, day: string): BenchSheet['readings'] {
  const rows = { ...grade.measured, ...grade.limits }
  return Object.entries(rows).flatMap(([key, row]) => {
    const method = versionOn(content.methods.get(row?.method ?? ''), day)?.record
    const quantity = quantityOf(key)
    return quantity && method && method.quantity === key
      ? [{ what: quantities[quantity].title, how: `${method.id}: ${method.conditions}` }]
      : []
  })
}
