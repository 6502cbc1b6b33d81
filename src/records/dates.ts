/** The day a content folder speaks of: no clock is asked. */

import type { Batch, Complaint, Records, Foil } from './types.ts'

/**
 * The latest date anything was made, tested, decided, regraded, counted, sent, sent back, collected as
 * waste, painted on a panel or issued on, went wrong, or was told or closed after that; before the first lot, the day the
 * workshop was set up.
 */
export function latestDate(records: Records): string {
  const { batches, expansions, foils, certificates, shipments, complaints } = records
  const { materials, grades } = records
  const decided = (lot: Batch | Foil) => {
    const { status = [], regraded = [], asFound = [], counted = [], retested = [] } = lot
    return [...status, ...regraded, ...asFound, ...counted, ...retested].map(({ on }) => on)
  }
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
      ...(record.hazards?.decisions ?? []).map(({ on }) => on),
      ...decided(record)
    ]),
    ...certificates.map(({ record }) => record.issued),
    ...[...shipments.values()].flatMap(({ record: { sent, safetyDataSheets = [] } }) => [
      sent,
      ...safetyDataSheets.map(sheet => sheet.sent)
    ]),
    ...[...complaints.values()].flatMap(({ record }) => daysOf(record)),
    ...daysOfUpkeep(records)
  ]
  return (days.length > 0 ? days : foundingDays).sort().at(-1) ?? ''
}

const daysOfUpkeep = ({
  waste,
  incidents,
  panels
}: Pick<Records, 'waste' | 'incidents' | 'panels'>): string[] => [
  ...[...panels.values()].flatMap(({ record: { made, tested } }) => [
    made,
    ...(tested === undefined ? [] : [tested])
  ]),
  ...[...waste.values()].flatMap(({ record: { collected, gone } }) => [
    collected,
    ...(gone ? [gone.on] : [])
  ]),
  ...[...incidents.values()].flatMap(({ record: { happened, told = [], closed } }) => [
    happened,
    ...told.map(({ on }) => on),
    ...(closed ? [closed.on] : [])
  ])
]

const daysOf = ({ received, told = [], returned = [], decision }: Complaint): string[] => [
  received,
  ...told.map(({ on }) => on),
  ...returned.flatMap(part => [part.on, ...(part.decision ? [part.decision.on] : [])]),
  ...(decision ? [decision.on] : [])
]

/** The day some months later; the last of the month where it has no such day. */
export function monthsLater(date: string, months: number): string {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number]
  const count = year * 12 + (month - 1) + months
  const [laterYear, laterMonth] = [Math.floor(count / 12), (count % 12) + 1]
  const lastDay = new Date(Date.UTC(laterYear, laterMonth, 0)).getUTCDate()
  const two = (part: number) => String(part).padStart(2, '0')
  return `${laterYear}-${two(laterMonth)}-${two(Math.min(day, lastDay))}`
}
