/** The PDFs as they were first drawn, in a folder that the producer backs up. */

import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { CertificatePaper, IssuedPaper } from '../documents/types.ts'
import { type Problem, problemAt, type SourceFile } from '../problem.ts'
import { isMissing } from './failure.ts'

/** Where originals lie unless a command is told otherwise: beside the content folder. */
export const archiveFor = (content: string): string => join(dirname(content), 'archive')

export const originalName = ({ number, revision }: Pick<IssuedPaper, 'number' | 'revision'>) =>
  `${number}-r${revision}.pdf`

export const sha256Of = (bytes: Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex')

/** What to publish as an issued paper, and what became of its bytes. */
export interface Served {
  readonly bytes: Uint8Array
  readonly is: 'as issued' | 'the stored original' | 'redrawn'
}

/**
 * The bytes that were issued: as drawn again, or where those differ, as stored.
 *
 * Programs and fonts change, and a paper drawn again may then come out otherwise; what a customer
 * holds must not.
 */
export async function asIssued(
  paper: IssuedPaper,
  drawn: Uint8Array,
  archive: string
): Promise<Served> {
  if (paper.pdfSha256 === undefined || sha256Of(drawn) === paper.pdfSha256)
    return { bytes: drawn, is: 'as issued' }
  const stored = await readIfThere(join(archive, originalName(paper)))
  return stored && sha256Of(stored) === paper.pdfSha256
    ? { bytes: stored, is: 'the stored original' }
    : { bytes: drawn, is: 'redrawn' }
}

async function readIfThere(path: string): Promise<Uint8Array | undefined> {
  try {
    return await readFile(path)
  } catch (error) {
    if (isMissing(error)) return undefined
    throw error
  }
}

/** What to tell of an issued paper that came out otherwise than it was first drawn. */
export function otherwiseProblem(
  log: SourceFile,
  { issued }: CertificatePaper,
  is: Served['is']
): Problem {
  const name = originalName(issued!)
  const place = { file: log, field: [], range: [0, log.text.indexOf('\n')] as const }
  return is === 'redrawn'
    ? problemAt(
        place,
        'PAPER_REDRAWN',
        `${name} no longer comes out byte for byte as it was issued, and the original is not in the archive`,
        `put the issued file into the archive folder: until then the site gives a paper that checks as altered`
      )
    : problemAt(
        place,
        'PAPER_FROM_ARCHIVE',
        `${name} no longer comes out byte for byte as it was issued; the site gives the stored original`,
        'nothing to do: fonts or program have changed since'
      )
}
