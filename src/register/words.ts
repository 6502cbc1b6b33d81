/**
 * What is said of a certificate that someone holds: English here; a page in another language brings the
 * same sentences in its own. What differs from case to case stands in braces.
 */

import { fillGaps } from '../gaps.ts'

export const checkWords = {
  match:
    'The document is {number} revision {revision} for lot {lot}: its fingerprint {print} is the one that {source} names on line {line}, entered on {date}.',
  superseded: 'It was superseded by revision {revision} on {date}: {reason}',
  newest: 'The latest is revision {revision} of {date}.',
  newestWithdrawn: 'Revision {revision} was withdrawn on {date}: {reason}',
  withdrawn: 'It was withdrawn on {date}: {reason}',
  voided: 'The document is one given up as {number} revision {revision} on {date}: {reason}',
  altered:
    'The document calls itself {number} revision {revision}, but its fingerprint {print} is not {issued}, which {source} names on line {line}: at least one byte was changed.',
  stranger:
    'No line of {source} names the fingerprint {print} of this document, nor a number and revision that it gives.',
  notJson: 'The document is not JSON: its file was damaged, or is another one.',
  notCanonical: 'The document is not written in canonical JSON, as every issued one is.',
  sameContent:
    'What it says is {number} revision {revision} unchanged: only spaces, order or spelling of its text differ.',
  unsigned: 'No key of the register has signed what it says.',
  signed: 'Signed on {date} with key {key}, added on {added}.',
  signedRetired:
    'Signed on {date} with key {key}, added on {added} and retired on {retired}: {reason}',
  signatureGood: 'The signature is good.',
  signatureBad: 'The signature is not that of this key over this document.',
  signatureUnchecked: 'The signature was not checked here: this browser does not know Ed25519.',
  pdfSame: 'The PDF is the one drawn on {date}, byte for byte.',
  pdfSigned:
    'The file itself bears a signature with an X.509 certificate: whether that certificate can be trusted is for your PDF program to judge, and was not looked at here.',
  pdfOther:
    'The data attached to the PDF is genuine, but the PDF itself is not the one drawn on {date}: its fingerprint is {print}, not {drawn}. Its pages may say something else than its data.',
  pdfByProof:
    'The data attached to the PDF is genuine. Its pages could not be compared: a proof carried inside a PDF cannot name the PDF itself, and the pages may say something else. Compare with the register.',
  pdfUnnamed:
    'The data attached to the PDF is genuine, but the register names no PDF for it: its pages may say something else.',
  copyNoList:
    'This is a customer’s copy of a certificate. It can be compared only with the producer’s register and list of copies, and one of them was not given or is damaged.',
  copyOtherList:
    'This is a customer’s copy of a certificate. The list of copies given here was not published with the register given here, or was changed: the root it names is another. Take both from the producer’s site at one time.',
  copyPdfChanged:
    'The PDF is not the one that was sent: its pages or its files were changed by at least one byte.',
  copyMatch:
    'The document is the customer’s copy of {number} revision {revision} for shipment {shipment}: the producer’s list of copies has an entry for its fingerprint {print}.',
  copyReplaced: 'Another copy took its place.',
  copyAltered:
    'The document calls itself the customer’s copy of {number} revision {revision} for shipment {shipment}, which was sent, but the producer’s list of copies has no entry for its fingerprint {print}: at least one byte was changed.',
  copyUnknown:
    'The document calls itself the customer’s copy of {number} revision {revision} for shipment {shipment}, but the producer’s list of copies has no entry for it: it was not sent, or was changed.',
  copyOfNone: 'The register names no certificate that the document could be a copy of.',
  copyOf:
    'The certificate is {number} revision {revision} for lot {lot}, entered on {date} with the fingerprint {print}.',
  noHashing:
    'Nothing was compared: this browser computes fingerprints only on pages that come by https.',
  registerDamaged: 'The register given here is damaged and proves nothing: {why}.',
  nothingSound: 'There was nothing sound to compare the document with.',
  onlyProof:
    'The proof reaches to {date}: what was entered later, an amendment or a withdrawal, cannot be known offline. Compare with the register {at}.',
  proofDamaged: 'The proof was changed or is none: {why}.',
  proofOther: 'The proof is of {number} revision {revision}, and not of the document given here.',
  lineChanged:
    'Line {line} of the register is not the one in the proof: the register was rewritten since the proof was taken, or the proof is of another register.',
  olderCopy:
    'The proof was taken from {lines}, and the register given here has {has}: it is an older copy, or lines at its end were dropped.',
  stillBegins: 'The register still begins with the {lines} that the proof was taken from.',
  beginsOtherwise:
    'The first {lines} of the register {are} of the proof: the register was rewritten since the proof was taken, or the proof is of another register.',
  empty: 'The file is empty.',
  neither: 'The file is neither a PDF nor JSON.',
  noData:
    'The PDF carries no certificate data: a preview, a printed or scanned copy, or a file from elsewhere.'
}

/** What the page says around these sentences. */
export const checkPageWords = {
  answers: {
    genuine: 'Genuine',
    superseded: 'Superseded',
    withdrawn: 'Withdrawn',
    altered: 'Altered',
    unknown: 'Unknown'
  },
  comparing: 'Comparing …',
  failed: 'The register of this site did not load: reload the page.',
  /** What fills gaps by a word of ours, and what that is in the language. */
  terms: {} as Readonly<Record<string, string>>
}

export type CheckWords = typeof checkWords
export type CheckPageWords = typeof checkPageWords
export type SaidKey = keyof CheckWords

/** A sentence by its name, and what fills its gaps. */
export interface Said {
  readonly is: SaidKey
  readonly parts: Readonly<Record<string, string | number>>
}

/** A sentence in the words of a language. */
export const sayIn = (
  words: CheckWords,
  { is, parts }: Said,
  terms: CheckPageWords['terms'] = {}
): string =>
  fillGaps(words[is], name => {
    const part = parts[name]
    return part === undefined ? undefined : (terms[part] ?? part)
  })
