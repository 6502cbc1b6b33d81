/** The key and X.509 certificate that a PDF is signed with: a PKCS #12 file of the producer's. */

import { readFile, stat } from 'node:fs/promises'
import { dirname, resolve } from 'node:path'
import type { PdfSigner } from '../documents/issued-paper.ts'
import { Failure, isMissing, plainFault } from '../site/failure.ts'
import { askUnseen } from './ask-unseen.ts'
import { userFolder } from './folders.ts'
import { realPathOf, refuseInside, refuseOthersReading } from './keys-folder.ts'

export interface PdfKey {
  readonly signer: PdfSigner
  /** Last day its certificate is valid. */
  readonly until: string
  /** The signature, DER, over a PDF with its place left blank. */
  readonly sign: (blank: Uint8Array) => Promise<Uint8Array>
}

const PHRASE = 'LOTFOLIO_PDF_PHRASE'

/**
 * The key in a PKCS #12 file, opened with the pass phrase that the environment has or the user types.
 *
 * @param days on which its certificate must be valid
 * @throws Failure where it lies among the records or open to others, or cannot sign a paper
 */
export async function pdfKeyIn(
  typed: string,
  content: string,
  days: readonly string[]
): Promise<PdfKey> {
  const path = resolve(userFolder(process.env), typed)
  const file = await guardedFile(path, content)
  const phrase = process.env[PHRASE] ?? (await askedPhrase(path))
  // Loaded only here: nothing else in the program needs it.
  const [{ openPkcs12 }, { holderOf }, { Unusable }, { detachedCms }] = await Promise.all([
    import('../x509/pkcs12.ts'),
    import('../x509/holder.ts'),
    import('../x509/unusable.ts'),
    import('../x509/cms.ts')
  ])
  try {
    const opened = await openPkcs12(file, phrase)
    const { until, ...signer } = holderOf(opened.own, opened.key, days)
    await refuseUnprintable(signer)
    const { signedPart } = await import('../pdf/signature.ts')
    const sign = async (blank: Uint8Array) => fitting(detachedCms(opened, signedPart(blank)), path)
    return { signer, until, sign }
  } catch (error) {
    throw error instanceof Unusable ? new Failure(`${path}: ${error.message}`) : error
  }
}

/** The file, where it lies outside the workshop's folder and is its owner's alone. */
async function guardedFile(path: string, content: string): Promise<Uint8Array> {
  try {
    const { mode } = await stat(path)
    refuseInside(dirname(realPathOf(path)), content, 'keep it in a folder of your own')
    refuseOthersReading(path, mode)
    return await readFile(path)
  } catch (error) {
    if (isMissing(error)) throw new Failure(`${path}: does not exist`)
    throw plainFault(error)
  }
}

async function askedPhrase(path: string): Promise<string> {
  if (!process.stdin.isTTY)
    throw new Failure(`${path}: needs its pass phrase; give it in ${PHRASE}, or at a terminal`)
  return askUnseen(`Pass phrase of ${path}: `, process.stdin, process.stderr)
}

/** A name in signs the papers' font lacks would be refused when the paper is drawn: say it plainly. */
async function refuseUnprintable({ name, issuer }: PdfSigner): Promise<void> {
  const [{ assertGlyphs, MissingGlyph }, { Unusable }] = await Promise.all([
    import('../pdf/fonts.ts'),
    import('../x509/unusable.ts')
  ])
  try {
    assertGlyphs('regular', `${name}${issuer}`)
  } catch (error) {
    if (!(error instanceof MissingGlyph)) throw error
    throw new Unusable(`a name in its certificate cannot be printed: ${error.message}`)
  }
}

async function fitting(cms: Uint8Array, path: string): Promise<Uint8Array> {
  const { SIGNATURE_ROOM } = await import('../pdf/signature.ts')
  if (cms.length <= SIGNATURE_ROOM) return cms
  throw new Failure(
    `${path}: with its certificates a signature takes ${cms.length} bytes, and a paper has room for ${SIGNATURE_ROOM}; leave the topmost certificates out of the file`
  )
}
