/** The papers of one lot: certificates as issued, those prepared, or the preview where there is none. */

import type { PaperLanguage } from '../records/schemas/common.ts'
import type { CertificateOrder, Producer } from '../records/types.ts'
import { certificateDocument, type PaperOptions, prepared } from './certificate.ts'
import { issuedPaths } from './certificate-page.ts'
import { changesBetween } from './changes.ts'
import { documentOf, type FrozenCertificate } from './frozen-schema.ts'
import type { Issued } from './issued.ts'
import type { IssuedPaper } from './issued-paper.ts'
import { lotUrl } from './lot.ts'
import { languageOf } from './languages/records.ts'
import { english, type Tongue } from './languages/tongue.ts'
import type { LotView } from './lot-view.ts'
import type { CertificateDocument, CertificatePaper, Paper } from './types.ts'

export interface PaperInputs extends PaperOptions {
  readonly producer: Producer
  /** Certificates ordered on the lot that the register does not have. */
  readonly orders: readonly CertificateOrder[]
  /** Those it has, oldest first. */
  readonly issued: readonly Issued[]
  /** Prepared papers are the workshop's own business. */
  readonly edition: 'public' | 'workshop'
  /** Language of the preview where there is no certificate, or that there is none; English where nothing is said. */
  readonly previewIn?: PaperLanguage | 'none'
}

/** A lot as each language shows it. */
export type ViewIn = (language: PaperLanguage) => LotView

/** Newest first; a lot without a certificate has a preview. */
export function papersOfLot(viewIn: ViewIn, inputs: PaperInputs): CertificatePaper[] {
  const { producer, orders, issued, edition } = inputs
  const waiting = edition === 'workshop' ? orders : []
  const papers = [
    ...issued.map(issuedPaper),
    ...waiting.map(order =>
      preparedPaper(orderedDocument(viewIn(languageOf(order)), inputs, order))
    )
  ].reverse()
  const { previewIn = 'en' } = inputs
  if (papers.length > 0 || previewIn === 'none') return papers
  const view = viewIn(previewIn)
  const document = certificateDocument(view, producer, undefined, inputs)
  return [{ document, url: `${lotUrl(view.lot)}${view.lot}-preview.pdf` }]
}

/** What an order makes today; from revision 2 on with what differs from the revision before. */
export function orderedDocument(
  view: LotView,
  { producer, issued, ...options }: Pick<PaperInputs, 'producer' | 'issued' | 'paper'>,
  order: CertificateOrder
): CertificateDocument {
  const document = certificateDocument(view, producer, order, options)
  const before = issued.find(
    ({ revision }) => revision.number === order.number && revision.revision === order.revision - 1
  )
  return before
    ? {
        ...document,
        changes: changesBetween(before.frozen.certificate, document, view.tongue)
      }
    : document
}

const preparedPaper = (document: CertificateDocument): CertificatePaper => ({
  document: prepared(document),
  url: `${lotUrl(document.lot)}${document.number}-r${document.revision}-prepared.pdf`
})

function issuedPaper(issued: Issued): CertificatePaper {
  return {
    document: documentOf(issued.frozen.certificate),
    url: issuedPaths(issued.revision).pdf,
    issued: evidenceOf(issued)
  }
}

/** What a paper needs of what was frozen. */
export const evidenceIn = ({ number, revision, data }: FrozenCertificate) => ({
  number,
  revision,
  data: `${JSON.stringify(data, null, 2)}\n`
})

function evidenceOf({ revision, frozen, text, cms }: Issued): IssuedPaper {
  const { data, drawn, n } = revision
  const { pdfSigner: signer } = frozen
  return {
    ...evidenceIn(frozen),
    text,
    sha256: data,
    ...(drawn === undefined ? {} : { pdfSha256: drawn.pdf }),
    // The paper is drawn once its line, and its signature if any, are entered.
    provenBy: drawn ? drawn.n - 1 : n,
    ...(signer && cms && { pdfSignature: { signer, cms } })
  }
}

/** Links to a lot's papers and figures, as its page lists them. */
export const paperLinks = (
  certificates: readonly CertificatePaper[],
  issued: readonly Issued[],
  dataUrl: string,
  tongue = english
): Paper[] => [
  ...certificates.map(({ document, url, issued: evidence }) => ({
    title: titleOf(document, evidence && stateWord(issued, evidence), tongue),
    url,
    mediaType: 'application/pdf'
  })),
  { title: tongue.register.papers.data, url: dataUrl, mediaType: 'application/json' }
]

function titleOf(
  { number, revision = '' }: CertificateDocument,
  state: Issued['state'] | undefined,
  { register: { papers: words } }: Tongue
): string {
  if (number === undefined) return words.preview
  const said = state === 'current' ? '' : words.states[state ?? 'prepared']
  return words.certificate(number, revision, said)
}

const stateWord = (issued: readonly Issued[], { sha256 }: IssuedPaper) =>
  issued.find(({ revision }) => revision.data === sha256)?.state
