/** The day a content folder speaks of: no clock is asked. */

import type { Batch, Records, Foil } from './types.ts'

/**
 * The latest date anything was made, tested, decided, regraded, sent or issued on; before the first
 * lot, the day the workshop was set up.
 */
export function latestDate({
  batches,
  expansions,
  foils,
  certificates,
  shipments,
  materials,
  grades
}: Records): string {
  const decided = ({ status = [], regraded = [], asFound = [] }: Batch | Foil) =>
    [...status, ...regraded, ...asFound].map(({ on }) => on)
  const foundingDays = [
    ...[...materials.values()].map(({ record }) => record.received),
    ...[...grades.values()].flat().map(({ record }) => record.validFrom)
  ]
  const days = [
    ...[...batches.values()].flatMap(({ record }) => [
      record.made,
      ...Object.values(record.tests ?? {}).flatMap(test => test?.tested ?? []),
      ...decided(record)
    ]),
    ...[...expansions.values()].map(({ record }) => record.made),
    ...[...foils.values()].flatMap(({ record }) => [
      record.made,
      ...(record.measured ? [record.measured.tested] : []),
      ...decided(record)
    ]),
    ...certificates.map(({ record }) => record.issued),
    ...[...shipments.values()].map(({ record }) => record.sent)
  ]
  return (days.length > 0 ? days : foundingDays).sort().at(-1) ?? ''
}
