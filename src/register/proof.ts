/** What a holder carries: the lines about one certificate, and the paths that tie them to a root. */

import * as z from 'zod'
import { bytesOf, fromHex, toHex } from './bytes.ts'
import { canonicalText, readJson } from './canonical.ts'
import type { LogLine } from './events.ts'
import { readLine } from './lines.ts'
import type { Log } from './log.ts'
import { inclusionPath, isIncluded, leafHash, rootOf, sizeOf, type Tree } from './merkle.ts'
import { flawOf } from './rules.ts'
import { emptyBook, enter, numberKey, revisionOf, revisionsOf, type Standing } from './standing.ts'

const hash = z.string().regex(/^[0-9a-f]{64}$/u)
const proofSchema = z.strictObject({
  format: z.literal('lotfolio-proof'),
  formatVersion: z.literal(1),
  number: z.string(),
  revision: z.int().min(1),
  /** Lines of the log when the proof was taken, and the root over them. */
  size: z.int().min(1),
  root: hash,
  /** In order; the last is the log's last line, which holds the size fast. */
  lines: z
    .array(z.strictObject({ index: z.int().min(0), line: z.string(), path: z.array(hash) }))
    .min(1)
})
export type Proof = z.output<typeof proofSchema>

/** Of a proof's lines, those about its number and the keys it was signed with. */
function linesAbout(entries: readonly LogLine[], number: string): LogLine[] {
  const isOfNumber = ({ event }: LogLine) =>
    'number' in event && numberKey(event.number) === numberKey(number)
  const own = entries.filter(isOfNumber)
  const keys = new Set(own.flatMap(({ event }) => (event.is === 'signed' ? [event.key] : [])))
  return entries.filter(
    entry =>
      isOfNumber(entry) ||
      ((entry.event.is === 'key-added' || entry.event.is === 'key-retired') &&
        keys.has(entry.event.key))
  )
}

/** Numbers of the first `size` lines about a number and its keys, without going through the log. */
function lineNumbers(standing: Standing, number: string, size: number): number[] {
  const revisions = revisionsOf(standing, number)
  const signatures = revisions
    .flatMap(revision => revision.signatures)
    // A key that signed only later has no place among the lines before.
    .filter(({ n }) => n <= size)
  const keys = [...new Set(signatures.map(({ key }) => key))].map(key => standing.keys.get(key)!)
  const given = [...standing.voided.values()].filter(
    voided => numberKey(voided.number) === numberKey(number)
  )
  const ends = [
    ...revisions.flatMap(({ drawn, withdrawn }) => [drawn, withdrawn]),
    ...keys.map(({ retired }) => retired)
  ]
  return [...revisions, ...signatures, ...keys, ...given, ...ends].flatMap(entered =>
    entered && entered.n <= size ? [entered.n] : []
  )
}

/**
 * The proof of one revision from a log without faults.
 *
 * @param tree of the log, made once for all its proofs
 * @param size lines it reaches to: all, or as many as there were when a paper was drawn
 * @returns undefined where those lines have no such revision
 * @throws RangeError for a log with faults, or the tree of another
 */
export async function proofOf(
  log: Log,
  tree: Tree,
  number: string,
  revision: number,
  size = log.lines.length
): Promise<Proof | undefined> {
  if (log.faults.length > 0) throw new RangeError('proofOf requires a log without faults')
  if (sizeOf(tree) !== log.lines.length) throw new RangeError("proofOf requires the log's own tree")
  const entered = revisionOf(log.standing, number, revision)
  if (!entered || entered.n > size) return undefined
  const numbers = new Set([...lineNumbers(log.standing, number, size), size])
  const indexes = [...numbers].map(n => n - 1).sort((a, b) => a - b)
  return {
    format: 'lotfolio-proof',
    formatVersion: 1,
    number,
    revision,
    size,
    root: toHex(await rootOf(tree, size)),
    lines: await Promise.all(
      indexes.map(async index => ({
        index,
        line: log.lines[index]!,
        path: (await inclusionPath(tree, index, size)).map(toHex)
      }))
    )
  }
}

/** A proof as the bytes to attach and publish. */
export const proofText = (proof: Proof): string => canonicalText(proof)

export type ReadProof =
  | {
      readonly ok: true
      readonly proof: Proof
      readonly standing: Standing
      /** The day of the last line it reaches to. */
      readonly asOf: string
    }
  /** What is wrong, as the end of a sentence. */
  | { readonly ok: false; readonly why: string }

/** Read a proof and check it in itself: its form, every path, and that its lines keep the rules. */
export async function readProof(text: string): Promise<ReadProof> {
  const json = readJson(text)
  const read = proofSchema.safeParse(json.is === 'canonical' ? json.value : undefined)
  if (!read.success) return { ok: false, why: 'it is not written as a proof is' }
  const proof = read.data
  const entries = proof.lines.flatMap(({ line }, index) => readLine({ line: index, text: line }))
  const sound = entries.flatMap(({ entry, flaws }) => (flaws.length === 0 && entry ? [entry] : []))
  if (sound.length < entries.length) return { ok: false, why: 'it holds a line that is no event' }
  for (const [index, { n }] of sound.entries())
    if (!(await isTied(proof, proof.lines[index]!, n)))
      return { ok: false, why: `its line ${n} does not lead to its root` }
  return standingOf(proof, sound)
}

async function isTied(
  { size, root }: Proof,
  { index, line, path }: Proof['lines'][number],
  n: number
): Promise<boolean> {
  const leaf = await leafHash(bytesOf(line))
  return n === index + 1 && isIncluded(leaf, index, size, fromHex(root), path.map(fromHex))
}

async function standingOf(proof: Proof, entries: readonly LogLine[]): Promise<ReadProof> {
  const about = linesAbout(entries, proof.number)
  const last = entries.at(-1)!
  const isInOrder = entries.every(({ n }, index) => index === 0 || n > entries[index - 1]!.n)
  const strangers = entries.filter(entry => entry !== last && !about.includes(entry))
  if (last.n !== proof.size || !isInOrder || strangers.length > 0)
    return { ok: false, why: 'its lines are not those that a proof of this certificate has' }
  const book = emptyBook()
  for (const entry of about) {
    const flaw = await flawOf(book, entry.event, new Map())
    if (flaw) return { ok: false, why: `its line ${entry.n} breaks a rule: ${flaw[1]}` }
    enter(book, entry)
  }
  const { number, revision } = proof
  return revisionOf(book, number, revision)?.number === number
    ? { ok: true, proof, standing: book, asOf: last.date }
    : { ok: false, why: `it has no line for ${number} revision ${revision}` }
}
