/** The log against what it must agree with: documents and signatures kept, and its own earlier states. */

import { toHex } from './bytes.ts'
import { type Fault, faultAt } from './fault.ts'
import { splitLines } from './lines.ts'
import { rootOf, sizeOf, type Tree } from './merkle.ts'
import type { Head, Log } from './log.ts'
import type { Revision } from './standing.ts'

/** Name of the file that keeps a frozen document. */
export const documentName = ({ number, revision }: Pick<Revision, 'number' | 'revision'>): string =>
  `${number}-r${revision}.json`

/** Name of the file that keeps the signature a revision's PDF bears. */
export const signatureName = ({
  number,
  revision
}: Pick<Revision, 'number' | 'revision'>): string => `${number}-r${revision}.p7s`

/**
 * Compare the log with the frozen documents and the signatures of PDFs: this shows lines dropped at
 * its end, which the chain alone cannot, and every byte changed in a file.
 *
 * @param found file name → fingerprint of each such file there is
 * @returns a fault for each line without its document, with another one, and for each document
 *   without a line; these last are faults of line 0
 */
export const compareDocuments = (
  { standing }: Pick<Log, 'standing'>,
  found: ReadonlyMap<string, string>
): Fault[] => {
  const revisions = [...standing.certificates.values()].flat().sort((a, b) => a.n - b.n)
  return compareFiles(revisions.flatMap(filesOf), found, 'it was never issued')
}

/** A file that must lie beside the log, and the line that names its fingerprint. */
export interface Kept {
  readonly name: string
  readonly n: number
  readonly hash: string
  /** What it is, as a sentence names it. */
  readonly what: string
}

/**
 * Compare the files beside a log with what its lines say of them.
 *
 * @param otherwise what else a file without a line may be, as a sentence says it
 */
export function compareFiles(
  kept: readonly Kept[],
  found: ReadonlyMap<string, string>,
  otherwise: string
): Fault[] {
  const known = new Set(kept.map(({ name }) => name))
  const strangers = [...found.keys()].filter(name => !known.has(name)).sort()
  return [
    ...strangers.map(name =>
      faultAt(0, [
        'REGISTER_NO_LINE',
        `${name} is in no line: its line was dropped, or ${otherwise}`
      ])
    ),
    ...kept.flatMap(file => compareFile(file, found.get(file.name)))
  ]
}

function filesOf(revision: Revision): Kept[] {
  const { n, data: hash, drawn } = revision
  return [
    { name: documentName(revision), n, hash, what: 'the document that was issued' },
    ...(drawn?.cms === undefined
      ? []
      : [
          {
            name: signatureName(revision),
            n: drawn.n,
            hash: drawn.cms,
            what: 'the signature that was entered'
          }
        ])
  ]
}

function compareFile({ name, n, hash, what }: Kept, found: string | undefined): Fault[] {
  if (found === hash) return []
  return [
    found === undefined
      ? faultAt(n, ['REGISTER_NO_DOCUMENT', `${name} is not there`])
      : faultAt(n, ['REGISTER_DOCUMENT_CHANGED', `${name} is not ${what}: its bytes were changed`])
  ]
}

const shortened = (had: number, has: number): Fault =>
  faultAt(has, [
    'REGISTER_SHORTENED',
    `the log has ${has} lines where it had ${had}: lines at its end were dropped`
  ])

/** Compare a log with an earlier text of it, which it must begin with. */
export function compareEarlier(text: string, earlier: string): Fault[] {
  const [now, before] = [splitLines(text).lines, splitLines(earlier).lines]
  const at = before.findIndex((line, index) => line.text !== now[index]?.text)
  const changed = now[at]
  if (at < 0) return []
  return changed
    ? [
        faultAt(changed.line, [
          'REGISTER_REWRITTEN',
          'the line is not the one of the earlier log: it was replaced, or lines were put in or dropped'
        ])
      ]
    : [shortened(before.length, now.length)]
}

/** Compare a log with a head of it that was published earlier. */
export async function compareHead(tree: Tree, { size, root }: Head): Promise<Fault[]> {
  if (size > sizeOf(tree)) return [shortened(size, sizeOf(tree))]
  return toHex(await rootOf(tree, size)) === root
    ? []
    : [
        faultAt(size, [
          'REGISTER_REWRITTEN',
          `the first ${size} lines are not those that had the root ${root}: at least one was replaced`
        ])
      ]
}
