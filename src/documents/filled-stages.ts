/** What a batch took up, beside what graphite takes up when a stage is filled. */

import {
  acidPerAnion,
  guestFraction_percent,
  stageUptake_percent,
  sulfurFraction_percent
} from '../chemistry/intercalation.ts'
import type { Results } from '../evaluate/types.ts'
import { expand } from '../metrology/coverage.ts'
import { resultFigures, significant } from './figure.ts'
import type { Table } from './types.ts'

/** Stages worth comparing with: beyond them the steps are smaller than what washing changes. */
const STAGES = [1, 2, 3, 4]

const number = (title: string) => ({ title, numeric: true })

/** A table of the batch and of filled stages; undefined without an uptake to compare. */
export function filledStagesTable({
  uptake_percent: uptake,
  lossCeiling_percent: guest
}: Results): Table | undefined {
  if (!uptake || !guest) return undefined
  const printed = ({ estimate }: typeof uptake) =>
    resultFigures(estimate.value, expand(estimate).U).value.printed
  return {
    caption:
      'Uptake beside that of filled stages, for 2 to 2.5 mol of acid to each mol of hydrogensulfate; sulfur of the batch if all it took up is that compound',
    columns: [
      { title: 'Of', numeric: false },
      number('Uptake, %'),
      number('Guest in the product, %'),
      number('Sulfur in the product, %')
    ],
    rows: [
      [
        'This batch',
        printed(uptake),
        printed(guest),
        significant(guest.estimate.value * sulfurOfGuest(), 2).printed
      ],
      ...STAGES.map(stage => [
        `Stage ${stage}`,
        range(x => stageUptake_percent(stage, x)),
        range(x => guestFraction_percent(stage, x)),
        range(x => sulfurFraction_percent(stage, x))
      ])
    ]
  }
}

/** Sulfur as part of the guest: to two digits the same whatever the stage and the acid beside it. */
const sulfurOfGuest = () =>
  sulfurFraction_percent(1, acidPerAnion[0]) / guestFraction_percent(1, acidPerAnion[0])

const range = (of: (x: number) => number) =>
  acidPerAnion.map(x => significant(of(x), 3).printed).join(' to ')
