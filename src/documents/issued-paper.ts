/** An issued paper as the register has it, and who signs its PDF. */

/** What the register holds on an issued paper. */
export interface IssuedPaper {
  readonly number: string
  readonly revision: number
  /** The frozen document as it is hashed, and its SHA-256. */
  readonly text: string
  readonly sha256: string
  /** SHA-256 of the PDF as it was first drawn. */
  readonly pdfSha256?: string
  /** Lines of the register that the proof in the PDF reaches to. */
  readonly provenBy: number
  /** The lot's figures on the day of issue, as a data file. */
  readonly data: string
  /** Who signed the PDF with an X.509 certificate, and the signature as it was made. */
  readonly pdfSignature?: { readonly signer: PdfSigner; readonly cms: Uint8Array }
}

/** Of an X.509 certificate, what a paper shows of it; nothing else is taken from one. */
export interface PdfSigner {
  /** Organisation it was issued to, and its own name where that is another. */
  readonly name: string
  /** The same of who issued it. */
  readonly issuer: string
  /** Hexadecimal digits. */
  readonly serial: string
  /** SHA-256 of the certificate. */
  readonly sha256: string
}
