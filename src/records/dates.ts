/** The day a content folder speaks of: no clock is asked. */

import type { Content } from './types.ts'

/** The latest date anything was made, tested, decided or issued on; '' for a workshop without lots. */
export function latestDate({ batches, expansions, foils, certificates }: Content): string {
  const decided = (status: readonly { on: string }[] | undefined) =>
    (status ?? []).map(({ on }) => on)
  const days = [
    ...[...batches.values()].flatMap(({ record }) => [
      record.made,
      ...Object.values(record.tests ?? {}).flatMap(test => test?.tested ?? []),
      ...decided(record.status)
    ]),
    ...[...expansions.values()].map(({ record }) => record.made),
    ...[...foils.values()].flatMap(({ record }) => [
      record.made,
      ...(record.measured ? [record.measured.tested] : []),
      ...decided(record.status)
    ]),
    ...certificates.map(({ record }) => record.issued)
  ]
  return days.sort().at(-1) ?? ''
}
