/**
 * The log: a text that only grows, one event a line, each line holding the hash of the line before.
 */

import { bytesOf, toHex } from './bytes.ts'
import { canonicalText, type Json } from './canonical.ts'
import { NO_LINE, readChain } from './chain.ts'
import { lineOf, type LineReader, type LogLine, type RegisterEvent } from './events.ts'
import { dateFlaw, type Fault, faultAt, type Outcome, type RegisterCode } from './fault.ts'
import { fingerprint } from './fingerprint.ts'
import { readLine, type ReadLine, splitLines } from './lines.ts'
import { rootOf, sizeOf, type Tree, treeOver } from './merkle.ts'
import { type Documents, flawOf } from './rules.ts'
import { type Book, emptyBook, enter, type Standing } from './standing.ts'

export interface Log {
  /** The lines as written, without their ends. */
  readonly lines: readonly string[]
  /** What the lines say, those left out that could not be read. */
  readonly entries: readonly LogLine[]
  readonly standing: Standing
  /** Everything wrong, in the order of the lines. */
  readonly faults: readonly Fault[]
}

const noDocuments: Documents = new Map()

/** Frozen documents by their fingerprint. */
export const documentsOf = async (texts: readonly string[]): Promise<Documents> =>
  new Map(await Promise.all(texts.map(async text => [await fingerprint(text), text] as const)))

/**
 * Read a log, and say everything that is wrong with it.
 *
 * @param documents frozen documents whose signatures are to be checked; a signature over any other,
 *   or where Ed25519 is not known, goes unchecked
 */
export async function readLog(text: string, documents = noDocuments): Promise<Log> {
  const { lines: raw, faults, isCut } = splitLines(text)
  const lines = raw.map(readLine)
  const chain = await readChain(lines)
  const book = emptyBook()
  const found = await keepBook(book, lines, chain.soundUntil, documents)
  const own = lines.flatMap(({ line, flaws }, index) =>
    // What a cut left of its line needs no further word.
    isCut && index === lines.length - 1 ? [] : flaws.map(flaw => faultAt(line, flaw))
  )
  return {
    lines: lines.map(({ text: line }) => line),
    entries: lines.flatMap(({ entry }) => entry ?? []),
    standing: book,
    faults: [...faults, ...own, ...chain.faults, ...found].sort((a, b) => a.line - b.line)
  }
}

/** Faults that a lost line may have caused in a later one. */
const followOn: ReadonlySet<RegisterCode> = new Set([
  'REGISTER_NOT_ISSUED',
  'REGISTER_REVISION',
  'REGISTER_UNKNOWN_KEY'
])

/** Enter what keeps the rules, and tell what does not. */
async function keepBook(
  book: Book,
  lines: readonly ReadLine[],
  soundUntil: number,
  documents: Documents
): Promise<Fault[]> {
  const faults: Fault[] = []
  const firstUnread = lines.findIndex(({ entry }) => !entry)
  const completeUntil = firstUnread < 0 ? soundUntil : Math.min(soundUntil, firstUnread)
  let latest = ''
  for (const [index, { line, entry }] of lines.entries()) {
    if (!entry) continue
    const flaw = await flawOf(book, entry.event, documents)
    if (!flaw) enter(book, entry)
    else if (index < completeUntil || !followOn.has(flaw[0])) faults.push(faultAt(line, flaw))
    const late = index < soundUntil ? dateFlaw(entry.date, latest) : undefined
    if (late) faults.push(faultAt(line, late))
    latest = entry.date
  }
  return faults
}

/**
 * Add events at the end.
 *
 * @param date the day they are entered, not before that of the last line
 * @returns the whole new text; or what is wrong with the log, or with the lines it would have got
 */
export async function append(
  text: string,
  events: readonly RegisterEvent[],
  date: string,
  documents = noDocuments
): Promise<Outcome<{ readonly text: string }>> {
  const longer = await lengthened(text, events, date, lineOf)
  if (!longer.ok) return longer
  const log = await readLog(longer.text, documents)
  return log.faults.length > 0 ? { ok: false, faults: log.faults } : longer
}

/** A log with lines put on, each holding the hash of the one before; whatever the rules say of them. */
export async function lengthened<Event>(
  text: string,
  events: readonly Event[],
  date: string,
  read: LineReader<Event>
): Promise<Outcome<{ readonly text: string }>> {
  const { lines, faults } = splitLines(text)
  if (faults.length > 0) return { ok: false, faults }
  let previous = lines.length > 0 ? await fingerprint(lines.at(-1)!.text) : NO_LINE
  let longer = text
  for (const [index, event] of events.entries()) {
    const next = { n: lines.length + index + 1, previous, date, event } as Json
    const flaws = read(next)
    if (Array.isArray(flaws))
      return { ok: false, faults: flaws.map(flaw => faultAt(lines.length + index + 1, flaw)) }
    const line = canonicalText(next)
    longer += `${line}\n`
    previous = await fingerprint(line)
  }
  return { ok: true, text: longer }
}

/** The tree over the bytes of a log's lines. */
export const treeOf = ({ lines }: Pick<Log, 'lines'>): Promise<Tree> => treeOver(lines.map(bytesOf))

/** How many lines a log has, and the root over them, in hex: the whole of it in two figures. */
export interface Head {
  readonly size: number
  readonly root: string
}

export const headOf = async (tree: Tree): Promise<Head> => ({
  size: sizeOf(tree),
  root: toHex(await rootOf(tree))
})
