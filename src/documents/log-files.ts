/** A log and its documents as they lie on disk, and a fault of them as a problem of the log's file. */

import { type Place, type Problem, problemAt, type SourceFile } from '../problem.ts'
import type { Fault } from '../register/fault.ts'
import { fingerprint } from '../register/fingerprint.ts'
import type { Signatures } from './pdf-signatures.ts'

export interface LogFiles {
  /** Empty text where nothing was entered yet. */
  readonly log: SourceFile
  /** Texts of frozen documents by file name, 'CT-26-005-r1.json'. */
  readonly documents: ReadonlyMap<string, string>
  /** The same of a run that was stopped: to be believed where the log knows them. */
  readonly pending: ReadonlyMap<string, string>
  /** Of the register: what its PDFs are signed with. */
  readonly signatures?: Signatures
}

/** A document and its fingerprint. */
export interface Hashed {
  readonly name: string
  readonly text: string
  readonly hash: string
}

export const hashed = (texts: ReadonlyMap<string, string>): Promise<Hashed[]> =>
  Promise.all(
    [...texts].map(async ([name, text]) => ({ name, text, hash: await fingerprint(text) }))
  )

/** What to do about the register's faults: they are never mended by hand. */
const HINT =
  'take the register back from your backup or version control; it is only ever added to, by the commands'

/** A fault of the register as a problem of its log file. */
export const registerProblem = (
  file: SourceFile,
  { line, code, sentence }: Fault,
  hint = HINT
): Problem => problemAt(lineOf(file, line), code, sentence, hint)

/** A line of the log, from 1; its beginning for line 0. */
export function lineOf(file: SourceFile, line: number): Place {
  const lines = file.text.split('\n')
  const start = lines.slice(0, Math.max(0, line - 1)).reduce((sum, one) => sum + one.length + 1, 0)
  const end = start + Math.max(1, (lines[Math.max(0, line - 1)] ?? '').length)
  return { file, field: [], range: [start, end] }
}

/** A document of a later version: the register is sound, this program is too old for it. */
export const unreadable = (file: SourceFile, name: string): Problem =>
  problemAt(
    lineOf(file, 0),
    'CERTIFICATE_FORMAT',
    `${name} is written in a format this version of Lotfolio does not read`,
    'use the version of Lotfolio that issued it, or a later one'
  )
