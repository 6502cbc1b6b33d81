/** The customers' copies that were sent, as papers and sites use them. Private throughout. */

import type { Problem, SourceFile } from '../problem.ts'
import { type CopyChain, noCopies, readCopies, type SentCopy } from '../register/copies.ts'
import { copyDocument, copyName } from '../register/copy-events.ts'
import { compareSent } from '../register/copy-rules.ts'
import { type FrozenCopy, readFrozenCopy } from './frozen-copy.ts'
import { hashed, type LogFiles, registerProblem, unreadable } from './log-files.ts'

/** A copy with what it says. */
export interface KeptCopy {
  readonly sent: SentCopy
  readonly frozen: FrozenCopy
  readonly text: string
}

export interface SentCopies {
  readonly file: SourceFile
  readonly chain: CopyChain
  /** In the order of the chain. */
  readonly kept: readonly KeptCopy[]
  readonly problems: readonly Problem[]
}

/** The copies of a workshop that has sent none. */
export const noSentCopies: SentCopies = {
  file: { path: 'register/copies/log.jsonl', text: '' },
  chain: noCopies,
  kept: [],
  problems: []
}

/** Read the chain of copies, its documents, and whether they agree. */
export async function openCopies({ log, documents, pending }: LogFiles): Promise<SentCopies> {
  const chain = await readCopies(log.text)
  const known = new Set(chain.copies.map(({ data }) => data))
  const stopped = (await hashed(pending)).filter(({ hash }) => known.has(hash))
  const all = new Map([...stopped, ...(await hashed(documents))].map(one => [one.name, one]))
  const hashes = new Map([...all].map(([name, { hash }]) => [name, hash]))
  const faults = [...chain.faults, ...compareSent(chain.copies, hashes)]
  const read = chain.copies.map(sent => keptCopy(sent, all.get(copyDocument(sent))?.text))
  const foreign = read.flatMap(one => (typeof one === 'string' ? [unreadable(log, one)] : []))
  return {
    file: log,
    chain,
    kept: read.flatMap(one => (typeof one === 'object' ? [one] : [])),
    problems: faults.length > 0 ? faults.map(fault => registerProblem(log, fault)) : foreign
  }
}

/** The copy with its document, or the name of a document that is not there or not readable. */
function keptCopy(sent: SentCopy, text = ''): KeptCopy | string {
  const frozen = readFrozenCopy(text)
  return frozen ? { sent, frozen, text } : copyDocument(sent)
}

/** The salt of each copy, by its name. */
export const saltsOf = ({ kept }: SentCopies): Map<string, string> =>
  new Map(kept.map(({ sent, frozen }) => [copyName(sent), frozen.salt]))
