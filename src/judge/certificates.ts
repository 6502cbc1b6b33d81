/** Whether certificates could be issued on their lots, and are numbered as they must be. */

import { type Problem, problemAt } from '../problem.ts'
import { decisionOn, isSellable } from '../quality/status.ts'
import type { CertificateOrder, Entry, Records } from '../records/types.ts'
import { checkInspection } from './inspection.ts'
import type { JudgedLot } from './types.ts'

/** Everything that speaks against the certificates ordered on the lots. */
export function checkCertificates(
  records: Records,
  lots: ReadonlyMap<string, JudgedLot>
): Problem[] {
  const { certificates } = records
  return certificates.flatMap((entry, index) => {
    const lot = lots.get(entry.record.lot)
    const before = certificates[index - 1]
    const last = before?.record.number === entry.record.number ? before.record : undefined
    return lot
      ? [
          ...checkIssued(entry, lot),
          ...checkRevision(entry, last),
          ...checkInspection(records, entry, lot)
        ]
      : []
  })
}

/** A certificate is entered in the register only while its lot may leave the workshop. */
export function checkSellable(
  entry: Entry<CertificateOrder>,
  lot: JudgedLot,
  day: string
): Problem[] {
  if (isSellable(lot.state)) return []
  const { number, lot: name } = entry.record
  return [
    problemAt(
      entry.at(['lot']),
      'NOT_CERTIFIABLE',
      `certificate ${number} cannot be issued on ${day}: ${name} is ${lot.state === 'quarantine' ? 'in quarantine' : lot.state}`,
      'a certificate needs a lot that is released, or let go under concession'
    )
  ]
}

function checkIssued(entry: Entry<CertificateOrder>, lot: JudgedLot): Problem[] {
  const { issued, number } = entry.record
  const state = decisionOn(lot.evaluated.entry.record.status ?? [], issued)?.is ?? 'quarantine'
  if (isSellable(state)) return []
  return [
    problemAt(
      entry.at(['lot']),
      'NOT_CERTIFIABLE',
      `certificate ${number} is dated ${issued}, when ${entry.record.lot} was ${state === 'quarantine' ? 'in quarantine' : state}`,
      'a certificate needs a lot that is released, or let go under concession, by that day'
    )
  ]
}

function checkRevision(
  entry: Entry<CertificateOrder>,
  last: CertificateOrder | undefined
): Problem[] {
  const { revision, reason, number, lot, issued } = entry.record
  const faults: readonly (readonly [field: string, message: string, hint: string])[] = [
    ...(revision > 1 && reason === undefined
      ? [
          [
            'revision',
            `revision ${revision} needs the reason it was made`,
            "add 'reason:' with one sentence"
          ] as const
        ]
      : []),
    ...(revision !== (last?.revision ?? 0) + 1
      ? [
          [
            'revision',
            `certificate ${number} has no revision ${revision - 1}`,
            'number revisions 1, 2, 3 and keep every one'
          ] as const
        ]
      : []),
    ...(last && last.lot !== lot
      ? [
          [
            'lot',
            `revision ${last.revision} of ${number} is on ${last.lot}`,
            'a certificate stays with its lot'
          ] as const
        ]
      : []),
    ...(last && issued < last.issued
      ? [['issued', `is dated before revision ${last.revision}`, 'check the two dates'] as const]
      : [])
  ]
  return faults.map(([field, message, hint]) =>
    problemAt(entry.at([field]), 'NOT_CERTIFIABLE', message, hint)
  )
}
