/** The day a content folder speaks of: no clock is asked. */

import type { Batch, Complaint, Records, Foil } from './types.ts'

/**
 * The latest date anything was made, tested, decided, regraded, counted, sent, sent back or issued on; before the first
 * lot, the day the workshop was set up.
 */
export function latestDate({
  batches,
  expansions,
  foils,
  certificates,
  shipments,
  complaints,
  materials,
  grades
}: Records): string {
  const decided = ({ status = [], regraded = [], asFound = [], counted = [] }: Batch | Foil) =>
    [...status, ...regraded, ...asFound, ...counted].map(({ on }) => on)
  const foundingDays = [
    ...[...materials.values()].map(({ record }) => record.received),
    ...[...grades.values()].flat().map(({ record }) => record.validFrom)
  ]
  const days = [
    ...[...batches.values()].flatMap(({ record }) => [
      record.made,
      ...Object.values(record.tests ?? {}).flatMap(test => test?.tested ?? []),
      ...(record.hazards?.decisions ?? []).map(({ on }) => on),
      ...decided(record)
    ]),
    ...[...expansions.values()].flatMap(({ record: { made, counted = [] } }) => [
      made,
      ...counted.map(({ on }) => on)
    ]),
    ...[...foils.values()].flatMap(({ record }) => [
      record.made,
      ...(record.measured ? [record.measured.tested] : []),
      ...decided(record)
    ]),
    ...certificates.map(({ record }) => record.issued),
    ...[...shipments.values()].map(({ record }) => record.sent),
    ...[...complaints.values()].flatMap(({ record }) => daysOf(record))
  ]
  return (days.length > 0 ? days : foundingDays).sort().at(-1) ?? ''
}

const daysOf = ({ received, told = [], returned = [], decision }: Complaint): string[] => [
  received,
  ...told.map(({ on }) => on),
  ...returned.flatMap(part => [part.on, ...(part.decision ? [part.decision.on] : [])]),
  ...(decision ? [decision.on] : [])
]
