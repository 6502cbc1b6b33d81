/** A lot's certificate of analysis, or its preview where none was issued. */

import type { CertificateOrder, Producer } from '../records/types.ts'
import { hazardText } from './hazards.ts'
import { answerOf, certificateUrl, lotFacts, lotUrl, resultRows, type Sections } from './lot.ts'
import type { LotView } from './lot-view.ts'
import type { CertificateDocument, ProducerText } from './types.ts'
import { dateText, marks, ruleTexts } from './words.ts'

/** What a certificate of analysis is, and is not. */
const statements = [
  'The results relate only to the lot named here, as sampled and tested.',
  'U is the expanded uncertainty for a coverage probability of about 95 %; k is its coverage factor.',
  'This certificate is issued by the producer. It is no report of an accredited laboratory and no inspection document to EN 10204.',
  'Heating and bench results are no fire-resistance rating.',
  'Not to be reproduced except in full.'
]

const previewStatement =
  'This is a preview: no certificate has been issued on this lot, and nobody answers for these figures yet.'

/** How the paper is set. */
export interface PaperOptions {
  readonly paper: 'A4' | 'Letter'
}

/** Certificate `order` on a lot, as it is issued; without an order, the preview of one. */
export function certificateDocument(
  view: LotView,
  producer: Producer,
  order: CertificateOrder | undefined,
  { paper }: PaperOptions
): CertificateDocument {
  const sections: Sections = new Set(view.grade.public ?? [])
  const site = producer.site?.replace(/\/$/u, '')
  const results = resultRows(view)
  return {
    title: 'Certificate of analysis',
    lot: view.lot,
    ...(order ? issuedPart(order) : { preview: true, mark: marks.preview, dated: view.made }),
    language: 'en',
    paper,
    producer: producerText(producer),
    facts: [{ label: 'Lot', text: view.lot }, ...lotFacts(view, sections)],
    answer: answerOf(view),
    results,
    notMeasured: view.grade.notMeasured ?? [],
    decisionRule: ruleTexts[view.rule],
    release: view.status,
    ...hazardText(view.grade.hazards, view.hazards, results),
    cautions: view.grade.cautions ?? [],
    traceability: view.traceability,
    statements: order ? statements : [previewStatement, ...statements],
    ...(site === undefined
      ? {}
      : { url: `${site}/${order ? certificateUrl(order.number) : lotUrl(view.lot)}` })
  }
}

/** The same paper before the register has it: nobody answers for it yet. */
export const prepared = (document: CertificateDocument): CertificateDocument => ({
  ...document,
  preview: true,
  mark: marks.prepared
})

function issuedPart({ number, revision, issued, signatory, reason }: CertificateOrder) {
  return {
    preview: false,
    number,
    revision: String(revision),
    issued: dateText(issued),
    dated: issued,
    signatory,
    ...(revision > 1 && reason !== undefined
      ? { amends: `Replaces revision ${revision - 1}. Reason: ${reason.replace(/\.$/u, '')}.` }
      : {})
  }
}

/** The producer as everyone may see it: no names behind the roles. */
export const producerText = ({
  name,
  address,
  email,
  telephone,
  site
}: Producer): ProducerText => ({
  name,
  address,
  email,
  telephone,
  ...(site === undefined ? {} : { site })
})
