/** The register as documents use it: every issued revision with what it says and how it stands. */

import type { Problem, SourceFile } from '../problem.ts'
import { compareDocuments, documentName, signatureName } from '../register/compare.ts'
import { type Head, headOf, type Log, readLog, treeOf } from '../register/log.ts'
import type { Tree } from '../register/merkle.ts'
import { emptyBook, type Revision, type State, stateOf, successorOf } from '../register/standing.ts'
import { readFrozen } from './frozen.ts'
import type { FrozenCertificate } from './frozen-schema.ts'
import { type Hashed, hashed, type LogFiles, registerProblem, unreadable } from './log-files.ts'
import { type HashedSignature, signaturesKnownTo } from './pdf-signatures.ts'
import { noSentCopies, openCopies, type SentCopies } from './sent-copies.ts'

/** The register as it lies on disk. */
export interface RegisterFiles extends LogFiles {
  /** The customers' copies, kept the same way; private throughout. */
  readonly copies: LogFiles
}

/** A revision that was issued. */
export interface Issued {
  readonly revision: Revision
  readonly state: State
  readonly successor?: Revision
  /** The frozen document, and its bytes as text. */
  readonly frozen: FrozenCertificate
  readonly text: string
  /** The signature its PDF bears. */
  readonly cms?: Uint8Array
}

export interface IssuedRegister {
  readonly file: SourceFile
  readonly log: Log
  readonly tree: Tree
  readonly head: Head
  /** In the order of the log. */
  readonly issued: readonly Issued[]
  readonly copies: SentCopies
  /** Everything wrong with the register: nothing may be built on one with faults. */
  readonly problems: readonly Problem[]
}

/** The register of a workshop that has issued nothing; its root is the SHA-256 of nothing. */
export const noRegister: IssuedRegister = {
  file: { path: 'register/log.jsonl', text: '' },
  log: { lines: [], entries: [], standing: emptyBook(), faults: [] },
  tree: [],
  head: { size: 0, root: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855' },
  issued: [],
  copies: noSentCopies,
  problems: []
}

/** Read a register: the log, its documents, and whether they agree. */
export async function openRegister(files: RegisterFiles): Promise<IssuedRegister> {
  const own = await hashed(files.documents)
  const pending = await hashed(files.pending)
  const log = await readLog(
    files.log.text,
    new Map([...own, ...pending].map(({ text, hash }) => [hash, text]))
  )
  const documents = new Map([...pending.filter(isKnownTo(log)), ...own].map(one => [one.name, one]))
  const signatures = await signaturesKnownTo(log.standing, files.signatures)
  const hashes = [...documents, ...signatures].map(([name, { hash }]) => [name, hash] as const)
  const faults = [...log.faults, ...compareDocuments(log, new Map(hashes))]
  const revisions = [...log.standing.certificates.values()].flat().sort((a, b) => a.n - b.n)
  const read = revisions.map(revision =>
    issuedOf(
      log,
      revision,
      documents.get(documentName(revision))?.text,
      signatures.get(signatureName(revision))
    )
  )
  const foreign = read.flatMap(one => (typeof one === 'string' ? [unreadable(files.log, one)] : []))
  const tree = await treeOf(log)
  const copies = await openCopies(files.copies)
  const problems =
    faults.length > 0 ? faults.map(fault => registerProblem(files.log, fault)) : foreign
  return {
    file: files.log,
    log,
    tree,
    head: await headOf(tree),
    issued: read.flatMap(one => (typeof one === 'object' ? [one] : [])),
    copies,
    problems: [...problems, ...copies.problems]
  }
}

/** A stopped run's documents count where the log names them, and are nothing otherwise. */
const isKnownTo =
  ({ standing }: Log) =>
  ({ hash }: Hashed): boolean =>
    standing.byData.has(hash)

/** The revision with its document, or the name of a document that is not there or not readable. */
function issuedOf(
  { standing }: Log,
  revision: Revision,
  text = '',
  signature?: HashedSignature
): Issued | string {
  const frozen = readFrozen(text)
  const successor = successorOf(standing, revision)
  const state = stateOf(standing, revision)
  if (!frozen) return documentName(revision)
  const { cms } = signature ?? {}
  return { revision, state, ...(successor && { successor }), frozen, text, ...(cms && { cms }) }
}

/** The same register, as far as it concerns one lot: for its papers, whatever became of others. */
export const registerOfLot = (register: IssuedRegister, lot: string): IssuedRegister => ({
  ...register,
  issued: register.issued.filter(({ revision }) => revision.lot === lot)
})
