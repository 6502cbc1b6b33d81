/** A lot's certificate, or its preview where none was issued. */

import type { Wordings } from '../hazards/statements.ts'
import type { CertificateOrder, Producer } from '../records/types.ts'
import { hazardText } from './hazards.ts'
import { typedPart } from './inspection.ts'
import { certificateUrl, lotFacts, lotUrl, type Sections } from './lot.ts'
import type { LotView } from './lot-view.ts'
import type { CertificateDocument, ProducerText } from './types.ts'
import { catalogues } from './languages/index.ts'
import type { Tongue } from './languages/tongue.ts'
import { unstopped } from './words.ts'
import { siteRoot } from './site-address.ts'

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
  const site = producer.site && siteRoot(producer.site)
  const { typeFacts, ...typed } = typedPart(view, order)
  const { tongue } = view
  const { lot: words, inspection, own, language } = tongue
  return {
    ...typed,
    lot: view.lot,
    ...(order
      ? issuedPart(order, tongue)
      : { preview: true, mark: words.marks.preview, dated: view.made }),
    language,
    paper,
    producer: producerText(producer),
    facts: [{ label: words.facts.lot, text: view.lot }, ...typeFacts, ...lotFacts(view, sections)],
    decisionRule: words.rules[view.rule],
    release: view.status,
    ...hazardText(
      view.grade.hazards,
      {
        day: order?.issued ?? view.asOf,
        tongue,
        isPreview: !order,
        ...(wordings ? { wordings } : {})
      },
      view.hazards,
      typed.results
    ),
    cautions: (view.grade.cautions ?? []).map(own),
    statements: order ? typed.statements : [inspection.previewStatement, ...typed.statements],
    ...(site === undefined
      ? {}
      : { url: `${site}/${order ? certificateUrl(order.number) : lotUrl(view.lot)}` })
  }
}

/** The same paper before the register has it: nobody answers for it yet. */
export const prepared = (document: CertificateDocument): CertificateDocument => ({
  ...document,
  preview: true,
  mark: catalogues[document.language].lot.marks.prepared
})

function issuedPart(
  { number, revision, issued, signatory, reason }: CertificateOrder,
  { numbers, inspection, own }: Tongue
) {
  return {
    preview: false,
    number,
    revision: String(revision),
    issued: numbers.date(issued),
    dated: issued,
    signatory: own(signatory),
    ...(revision > 1 && reason !== undefined
      ? { amends: inspection.amends(revision - 1, unstopped(own(reason))) }
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
