/** A lot's certificate, or its preview where none was issued. */

import type { Wordings } from '../hazards/statements.ts'
import type { CertificateOrder, Producer } from '../records/types.ts'
import { hazardText } from './hazards.ts'
import { typedPart } from './inspection.ts'
import { certificateUrl, lotFacts, lotUrl, type Sections } from './lot.ts'
import type { LotView } from './lot-view.ts'
import type { CertificateDocument, ProducerText } from './types.ts'
import { dateText, marks, ruleTexts } from './words.ts'

const previewStatement =
  'This is a preview: no certificate has been issued on this lot, and nobody answers for these figures yet.'

/** How the paper is set, and worded where it was issued before. */
export interface PaperOptions {
  readonly paper: 'A4' | 'Letter'
  readonly wordings?: Wordings
}

/** Certificate `order` on a lot, as it is issued; without an order, the preview of one. */
export function certificateDocument(
  view: LotView,
  producer: Producer,
  order: CertificateOrder | undefined,
  { paper, wordings }: PaperOptions
): CertificateDocument {
  const sections: Sections = new Set(view.grade.public ?? [])
  const site = producer.site?.replace(/\/$/u, '')
  const { typeFacts, ...typed } = typedPart(view, order)
  return {
    ...typed,
    lot: view.lot,
    ...(order ? issuedPart(order) : { preview: true, mark: marks.preview, dated: view.made }),
    language: 'en',
    paper,
    producer: producerText(producer),
    facts: [{ label: 'Lot', text: view.lot }, ...typeFacts, ...lotFacts(view, sections)],
    decisionRule: ruleTexts[view.rule],
    release: view.status,
    ...hazardText(
      view.grade.hazards,
      { day: order?.issued ?? view.asOf, ...(wordings ? { wordings } : {}) },
      view.hazards,
      typed.results
    ),
    cautions: view.grade.cautions ?? [],
    statements: order ? typed.statements : [previewStatement, ...typed.statements],
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
