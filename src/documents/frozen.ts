/** Freezing what a certificate says, and reading it again. */

import { canonicalText, type Json, readJson } from '../register/canonical.ts'
import {
  CERTIFICATE_FORMAT_VERSION,
  type FrozenCertificate,
  frozenCertificateSchema
} from './frozen-schema.ts'
import type { PdfSigner } from './issued-paper.ts'
import type { LotData } from './lot-data.ts'
import type { CertificateDocument } from './types.ts'

/** Edition of the fixed words a renderer sets around the document. Raised when one changes. */
export const WORDING = 1

/**
 * What a certificate says, as canonical JSON: the text that is hashed, signed and kept.
 *
 * Whatever may change after the day of issue stays out: no mark, no standing.
 *
 * @param data the lot's public figures on that day
 * @throws TypeError for a document that no certificate was ordered for
 */
export function freeze(document: CertificateDocument, data: LotData): string {
  const { mark: _mark, preview: _preview, ...said } = document
  const frozen = frozenCertificateSchema.safeParse({
    format: 'lotfolio-certificate',
    formatVersion: CERTIFICATE_FORMAT_VERSION,
    number: document.number,
    revision: Number(document.revision),
    wording: WORDING,
    certificate: { ...said, preview: false },
    data
  })
  if (!frozen.success)
    throw new TypeError('freeze requires a certificate with number and signatory')
  return canonicalText(frozen.data as Json)
}

/** The same certificate, naming whose X.509 certificate is to sign its PDF. */
export const namingSigner = (frozen: FrozenCertificate, pdfSigner: PdfSigner): string =>
  canonicalText({ ...frozen, pdfSigner: { ...pdfSigner } } as Json)

/** What a frozen certificate says; undefined where the text is none this version can read. */
export function readFrozen(text: string): FrozenCertificate | undefined {
  const json = readJson(text)
  const read = frozenCertificateSchema.safeParse(json.is === 'canonical' ? json.value : undefined)
  return read.success ? read.data : undefined
}
