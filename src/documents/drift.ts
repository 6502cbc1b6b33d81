/** Whether the records still say what the issued certificates say. */

import type { Wordings } from '../hazards/statements.ts'
import type { JudgedLot } from '../judge/types.ts'
import { type Place, type Problem, problemAt } from '../problem.ts'
import type { CertificateOrder, Content, Entry } from '../records/types.ts'
import { documentName } from '../register/compare.ts'
import { certificateDocument } from './certificate.ts'
import { changesBetween, changesInShort } from './changes.ts'
import type { Issued, IssuedRegister } from './issued.ts'
import { groupedBy } from './grouped.ts'
import { languageOf, tongueFor } from './languages/records.ts'
import { viewLot } from './lot-view.ts'
import { openRewordings, wordingsIn } from './rewordings.ts'
import type { CertificateDocument } from './types.ts'

/** What stands on a lot, and the records it was ordered in. */
export interface DriftCheck {
  /** Compare the certificates on a lot with what its records come to now. */
  readonly of: (lot: JudgedLot) => Problem[]
  /** Certificates on lots that are not there, or of which the record is gone. */
  readonly gone: (lots: readonly JudgedLot[]) => Problem[]
  /** Statements that the law, or this program, words otherwise since; of the lots compared so far. */
  readonly reworded: () => Problem[]
}

/**
 * Hold every certificate that stands against its records, lot by lot while each has its figures.
 *
 * @param asOf certificates issued later are left alone
 */
export function driftCheck(
  content: Content,
  { issued, problems }: IssuedRegister,
  asOf: string
): DriftCheck {
  const standing = issued.filter(
    ({ state, revision }) => problems.length === 0 && state === 'current' && revision.date <= asOf
  )
  const onLot = groupedBy(standing, ({ revision }) => revision.lot)
  const orders = new Map(content.certificates.map(entry => [documentName(entry.record), entry]))
  const orderOf = ({ revision }: Issued) => orders.get(documentName(revision))
  const rewordings = openRewordings()
  const compare = (lot: JudgedLot, one: Issued): Problem[] => {
    const entry = orderOf(one)
    if (!entry) return []
    const wordings = wordingsIn(one.frozen.certificate.hazards)
    const now = certificateNow(content, lot, entry.record, wordings)
    if (wordings.size > 0)
      rewordings.note(entry, now.hazards, certificateNow(content, lot, entry.record).hazards)
    return [...differs(entry, one, now), ...standsOn(entry, lot)]
  }
  return {
    of: lot => (onLot.get(lot.evaluated.lot) ?? []).flatMap(one => compare(lot, one)),
    gone: lots => {
      const there = new Set(lots.map(({ evaluated }) => evaluated.lot))
      return standing
        .filter(one => !orderOf(one) || !there.has(one.revision.lot))
        .map(one => goneFrom(content, one))
    },
    reworded: () => rewordings.problems()
  }
}

/**
 * The certificate the records would make today, as if it were issued now.
 *
 * @param wordings of the statements, where it was worded before: what the law says otherwise since is no
 * change of the records
 */
export const certificateNow = (
  content: Content,
  lot: JudgedLot,
  order: CertificateOrder,
  wordings?: Wordings
): CertificateDocument =>
  certificateDocument(
    viewLot(content, lot, [], tongueFor(content, languageOf(order))),
    content.producer.record,
    order,
    {
      paper: content.producer.record.paper ?? 'A4',
      ...(wordings ? { wordings } : {})
    }
  )

function differs(
  entry: Entry<CertificateOrder>,
  { revision, frozen }: Issued,
  now: CertificateDocument
): Problem[] {
  const changes = changesBetween(frozen.certificate, now)
  if (changes.length === 0) return []
  return [
    problemAt(
      entry.at(['number']),
      'CERTIFICATE_DIFFERS',
      `revision ${revision.revision} of ${revision.number} was issued saying otherwise than the records do now. ${changesInShort(changes)}`.replace(
        /\.$/u,
        ''
      ),
      `put the records back as they were, or issue a revision that says why: npm run issue -- ${revision.lot} --reason "..."`
    )
  ]
}

/** A lot called back whose certificate nobody withdrew. */
function standsOn(entry: Entry<CertificateOrder>, { state }: JudgedLot): Problem[] {
  if (state !== 'withdrawn' && state !== 'rejected' && state !== 'scrapped') return []
  const { number, lot } = entry.record
  return [
    problemAt(
      entry.at(['lot']),
      'CERTIFICATE_STANDS',
      `certificate ${number} still stands, though ${lot} is ${state}`,
      `whoever checks a copy reads that it is good: npm run withdraw -- ${number} --reason "..."`
    )
  ]
}

function goneFrom({ producer }: Content, { revision, frozen }: Issued): Problem {
  const { number, lot } = frozen.certificate
  const place: Place = producer.at(['name'])
  return problemAt(
    place,
    'CERTIFICATE_DIFFERS',
    `certificate ${number} revision ${revision.revision} on ${lot} was issued, and the records no longer have it or its lot`,
    'put the two records back: what was issued stays answerable'
  )
}
