/** What a certificate would say if it were issued now. */

import { givesOwnResults } from '../judge/inspection.ts'
import type { JudgedLot } from '../judge/types.ts'
import type { CertificateOrder, Content, Entry, Grade } from '../records/types.ts'
import { revisionOf } from '../register/standing.ts'
import { producerText } from './certificate.ts'
import { madeFrom, originOf } from './chain.ts'
import { freeze } from './frozen.ts'
import type { Issued, IssuedRegister } from './issued.ts'
import { lotDocument, type Sections } from './lot.ts'
import { lotDataOf } from './lot-data.ts'
import { viewLot } from './lot-view.ts'
import { languageOf, tongueFor } from './languages/records.ts'
import { orderedDocument, papersOfLot, type ViewIn } from './papers.ts'

/** Data files hold figures; the working costs as much to word as all the rest of a page. */
export const withoutWorking = (sections: Sections): Sections =>
  new Set([...sections].filter(section => section !== 'working'))

/** Whether a certificate was ordered that the register does not have. */
export const waits = (
  { log }: Pick<IssuedRegister, 'log'>,
  { number, revision }: Pick<CertificateOrder, 'number' | 'revision'>
): boolean => revisionOf(log.standing, number, revision) === undefined

/** The first certificate ordered on a lot that waits to be issued. */
export const nextOrder = (
  { certificates }: Pick<Content, 'certificates'>,
  lot: string,
  register: Pick<IssuedRegister, 'log'>
): Entry<CertificateOrder> | undefined =>
  certificates.find(({ record }) => record.lot === lot && waits(register, record))

/** A paper without results of tests on the lot carries none in its data either. */
const sectionsFor = (open: NonNullable<Grade['public']>, { type }: CertificateOrder): Sections =>
  new Set(open.filter(section => givesOwnResults(type) || section !== 'results'))

/**
 * The frozen text of a certificate.
 *
 * @param issued earlier certificates on the lot, oldest first
 */
export function certificateToIssue(
  content: Content,
  lot: JudgedLot,
  order: CertificateOrder,
  issued: readonly Issued[]
): string {
  const producer = content.producer.record
  const paper = producer.paper ?? 'A4'
  const origin = originOf(madeFrom(content), lot.evaluated.lot)
  const viewIn: ViewIn = language => viewLot(content, lot, origin, tongueFor(content, language))
  // Data are for programs, whatever the language of the paper.
  const view = viewIn('en')
  const sections = sectionsFor(view.grade.public ?? [], order)
  const document = orderedDocument(viewIn(languageOf(order)), { producer, issued, paper }, order)
  const earlier = papersOfLot(viewIn, { producer, orders: [], issued, edition: 'public', paper })
  const data = lotDataOf(
    {
      document: lotDocument(view, withoutWorking(sections), []),
      certificates: [{ document, url: '' }, ...earlier]
    },
    { edition: 'public', producer: producerText(producer) }
  )
  return freeze(document, data)
}
