/** The PDFs as they were first drawn, in a folder that the producer backs up. */

import { readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { lineOf } from '../documents/log-files.ts'
import type { IssuedPaper } from '../documents/issued-paper.ts'
import { type Problem, problemAt, type SourceFile } from '../problem.ts'
import { fingerprint } from '../register/fingerprint.ts'
import { isMissing } from './failure.ts'

/** Where originals lie unless a command is told otherwise: beside the content folder. */
export const archiveFor = (content: string): string => join(dirname(content), 'archive')

export const originalName = ({ number, revision }: Pick<IssuedPaper, 'number' | 'revision'>) =>
  `${number}-r${revision}.pdf`

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
export const asIssued = (paper: IssuedPaper, drawn: Uint8Array, archive: string): Promise<Served> =>
  asBefore(drawn, paper.pdfSha256, join(archive, originalName(paper)))

/**
 * Bytes as drawn again, or where those are not the ones of before, as stored.
 *
 * @param sha256 of the bytes of before; absent where they are not known
 */
export async function asBefore(
  drawn: Uint8Array,
  sha256: string | undefined,
  original: string
): Promise<Served> {
  if (sha256 === undefined || (await fingerprint(drawn)) === sha256)
    return { bytes: drawn, is: 'as issued' }
  const stored = await readIfThere(original)
  return stored && (await fingerprint(stored)) === sha256
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

/** What became of one issued paper. */
export interface Otherwise {
  readonly paper: IssuedPaper
  readonly is: Exclude<Served['is'], 'as issued'>
}

/** What to tell of issued papers that came out otherwise than they were first drawn. */
export function otherwiseProblems(log: SourceFile, found: readonly Otherwise[]): Problem[] {
  return (['redrawn', 'the stored original'] as const).flatMap(is => {
    const papers = found.filter(one => one.is === is).map(({ paper }) => paper)
    const [first] = papers
    if (!first) return []
    const names = papers.map(originalName)
    const rest = names.length > NAMED ? ` and ${names.length - NAMED} more` : ''
    const listed = `${names.slice(0, NAMED).join(', ')}${rest}`
    const [code, message, hint] = texts[is](listed)
    return [problemAt(lineOf(log, first.provenBy + 1), code, message, hint)]
  })
}

/** Papers named before the rest is only counted. */
const NAMED = 5

const texts = {
  redrawn: (names: string) =>
    [
      'PAPER_REDRAWN',
      `no longer as issued, byte for byte, and without its original in the archive: ${names}`,
      'put the issued files into the archive folder: until then copies from the site check as altered'
    ] as const,
  'the stored original': (names: string) =>
    [
      'PAPER_FROM_ARCHIVE',
      `drawn again, no longer as issued, so the site gives the stored original: ${names}`,
      'nothing to do: program or fonts have changed since'
    ] as const
}
