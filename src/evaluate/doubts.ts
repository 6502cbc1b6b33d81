/** Things in a batch record that do not fit together: told as warnings, the figures stand. */

import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import { versionOn } from '../records/references.ts'
import type { Batch, Entry, Records } from '../records/types.ts'
import { doubtCharge } from './charge-limits.ts'
import { doubtConditions } from './condition-doubts.ts'
import { predictedPH } from './filtrate.ts'
import { doubtFlake } from './flake-doubts.ts'
import { doubtFoil } from './foil-doubts.ts'
import { doubtSuppliers } from './incoming.ts'
import { doubtHeated, doubtResidues } from './oxidiser.ts'
import { doubtHeat, doubtProcess } from './process-doubts.ts'
import type { EvaluatedBatch, EvaluatedLot, EvaluatedLots } from './types.ts'

/** Two figures of one filtrate further apart than this contradict each other. */
const PH_TOLERANCE = 0.5

/** Every doubt that a lot's figures raise, by themselves or beside those of lots made before it. */
export function doubtFigures(lot: EvaluatedLot, all: EvaluatedLots<Records>): Problem[] {
  if (lot.kind === 'expansion') return doubtHeated(lot, all)
  return lot.kind === 'foil'
    ? doubtFoil(lot)
    : [...doubtPH(lot), ...doubtFlake(lot), ...doubtHeat(lot), ...doubtResidues(lot, all.content)]
}

/** Every doubt about the records of a workshop that their figures do not raise. */
export function findDoubts(content: Records): Problem[] {
  return [
    ...doubtConditions(content),
    ...doubtSuppliers(content),
    ...[...content.batches.values()].flatMap(entry => [
      ...doubtAmmonium(content, entry),
      ...doubtDrying(content, entry),
      ...doubtProcess(content, entry),
      ...doubtCharge(content, entry),
      ...Object.entries(entry.record.tests ?? {}).flatMap(([key, test]) =>
        failedChecks(entry, ['tests', key], test?.checks)
      )
    ]),
    ...[...content.panels.values()].flatMap(entry => failedChecks(entry, [], entry.record.checks)),
    ...[...content.foils.values()].flatMap(entry => [
      ...failedChecks(entry, ['measured'], entry.record.measured?.checks),
      ...Object.entries(entry.record.tests ?? {}).flatMap(([key, test]) =>
        failedChecks(entry, ['tests', key], test?.checks)
      )
    ])
  ]
}

/** Titrated acid predicts the pH of the same slurry; a reading far from it means one is wrong. */
function doubtPH(lot: EvaluatedBatch): Problem[] {
  const { entry, product } = lot
  const measured = product.slurryPH
  const predicted = predictedPH(lot)
  if (!measured || predicted === undefined) return []
  if (Math.abs(predicted - measured.estimate.value) <= PH_TOLERANCE) return []
  const shown = (pH: number) => Number(pH.toPrecision(3))
  return [
    problemAt(
      entry.at(measured.field),
      'CONTRADICTION',
      `a pH of ${shown(measured.estimate.value)} does not go with the acid titrated, which makes it about ${shown(predicted)}`,
      'check the blank, the titrant and the electrode; both belong to one filtrate'
    )
  ]
}

/** Ammonium is an acid itself: a titration past neutral counts it in. */
function doubtAmmonium(content: Records, entry: Entry<Batch>): Problem[] {
  const end = entry.record.tests?.freeAcid?.endPointPh
  if (!end || end.value <= 7) return []
  const source = (entry.record.charge ?? []).find(({ material }) => {
    const record = content.materials.get(material)?.record
    return /ammoni/iu.test(
      [record?.title, ...(record?.composition ?? []).map(({ substance }) => substance)].join(' ')
    )
  })
  return source
    ? [
        problemAt(
          entry.at(['tests', 'freeAcid', 'endPointPh']),
          'AMMONIUM_TITRATED',
          `titrated to pH ${end.written} although ${source.material} brought ammonium into the process: it counts as acid above pH 7`,
          'titrate to pH 7 or below, or say so as a deviation'
        )
      ]
    : []
}

/** Flake dried near its onset starts to expand. */
function doubtDrying(content: Records, entry: Entry<Batch>): Problem[] {
  const { grade, made, steps = [] } = entry.record
  const onset = versionOn(content.grades.get(grade), made)?.record.onset_C
  if (!onset) return []
  return steps.flatMap(({ what, temperature_C }, index) =>
    /\bdr(y|ied|ying)\b/iu.test(what) && temperature_C && temperature_C.value >= onset.value
      ? [
          problemAt(
            entry.at(['steps', index, 'temperature_C']),
            'HOT_DRYING',
            `was dried at ${temperature_C.written}, not below the grade's onset of ${onset.written}`,
            'check the temperature; flake dried so hot may have begun to expand'
          )
        ]
      : []
  )
}

function failedChecks(
  entry: Entry<unknown>,
  field: FieldPath,
  checks: readonly { what: string; found: string; within: boolean }[] | undefined
): Problem[] {
  return (checks ?? []).flatMap(({ what, found, within }, index) =>
    within
      ? []
      : [
          problemAt(
            entry.at([...field, 'checks', index, 'within']),
            'FAILED_CHECK',
            `the day's check of the ${what} was out of bounds: ${found}`,
            'the readings of that test are in doubt: measure again once it is mended'
          )
        ]
  )
}
