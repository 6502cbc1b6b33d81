/** What commands that add to the register have in common: read it, add to it, say what is wrong. */

import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { documentName, signatureName } from '../register/compare.ts'
import { copyDocument } from '../register/copy-events.ts'
import {
  type Issued,
  type IssuedRegister,
  openRegister,
  type RegisterFiles
} from '../documents/issued.ts'
import { isError, type Problem } from '../problem.ts'
import type { RegisterEvent } from '../register/events.ts'
import type { Fault } from '../register/fault.ts'
import { append, documentsOf } from '../register/log.ts'
import { Failure } from '../site/failure.ts'
import { copiesFolder, readRegister, registerFolder } from '../site/read-register.ts'
import { userFolder } from './folders.ts'
import { type Addition, finishStopped, withRegister } from './register-folder.ts'
import { problemsText } from './report.ts'

/** A register nobody else writes to meanwhile. */
export interface Desk {
  readonly register: IssuedRegister
  /** The log's text. */
  readonly log: string
  /** Frozen documents by file name. */
  readonly documents: ReadonlyMap<string, string>
  /** Make the log's new text and new files beside it the register's own, all or nothing. */
  readonly save: (log: string, files?: Addition['files']) => Promise<void>
  /** The same for the customers' copies. */
  readonly saveCopies: (log: string, documents: ReadonlyMap<string, string>) => Promise<void>
}

/**
 * Work on the register of a content folder.
 *
 * @throws Failure where the register has faults, which are shown first
 */
export async function atDesk<Result>(
  content: string,
  work: (desk: Desk) => Promise<Result>
): Promise<Result> {
  return withRegister(content, async save => {
    const files = await readRegister(content, userFolder(process.env))
    const register = await openRegister(files)
    refuseFaults(register.problems)
    await finishAll(content, register, files)
    const documents = new Map(
      register.issued.map(({ revision, text }) => [documentName(revision), text])
    )
    return work({
      register,
      log: files.log.text,
      documents,
      save: (log, added = new Map()) => save({ log, files: added }),
      saveCopies: (log, added) => save({ folder: copiesFolder, log, files: added })
    })
  })
}

/** Clear up after stopped runs, in the register and beside the copies. */
async function finishAll(
  content: string,
  { issued, copies }: IssuedRegister,
  files: RegisterFiles
): Promise<void> {
  const folder = join(content, registerFolder)
  const known = new Set(issued.flatMap(namesOf))
  const lies = (name: string) => files.documents.has(name) || files.signatures?.own.has(name)
  await finishStopped(folder, name => known.has(name) && !lies(name))
  const sent = new Set(copies.chain.copies.map(copyDocument))
  await finishStopped(
    join(folder, copiesFolder),
    name => sent.has(name) && !files.copies.documents.has(name)
  )
}

/** Files that belong to a revision. */
const namesOf = ({ revision, cms }: Issued): string[] => [
  documentName(revision),
  ...(cms ? [signatureName(revision)] : [])
]

/**
 * The register of a content folder, to be looked at.
 *
 * @throws Failure where the folder is not there, or the register has faults, which are shown first
 */
export async function soundRegister(content: string): Promise<IssuedRegister> {
  if (!existsSync(content)) throw new Failure(`${content}: does not exist`)
  const register = await openRegister(await readRegister(content, userFolder(process.env)))
  refuseFaults(register.problems)
  return register
}

function refuseFaults(problems: readonly Problem[]): void {
  if (!problems.some(isError)) return
  process.stderr.write(problemsText(problems))
  throw new Failure('the register has faults: nothing is done with it until they are gone')
}

/**
 * Add events to a log.
 *
 * @throws Failure where the register's rules forbid one
 */
export async function added(
  log: string,
  events: readonly RegisterEvent[],
  date: string,
  documents: Iterable<string>
): Promise<string> {
  const outcome = await append(log, events, date, await documentsOf([...documents]))
  if (outcome.ok) return outcome.text
  throw new Failure(faultText(outcome.faults))
}

const faultText = ([fault]: readonly Fault[]): string =>
  `the register refuses this: ${fault!.sentence}`
