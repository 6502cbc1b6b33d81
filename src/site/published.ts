/** The register against the one in the site that is about to be replaced. */

import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { copiesFile, registerFile } from '../documents/certificate-page.ts'
import type { IssuedRegister } from '../documents/issued.ts'
import { registerProblem } from '../documents/log-files.ts'
import type { Problem } from '../problem.ts'
import { NO_LINE } from '../register/chain.ts'
import { compareEarlier } from '../register/compare.ts'
import { readCopyList } from '../register/copy-entries.ts'
import { readPublished } from '../register/published.ts'
import { isMissing } from './failure.ts'

/**
 * Lines that were published and are there no more, or read otherwise now.
 *
 * A site without a register, or with one that is damaged itself, shows nothing.
 *
 * @param out folder of the site
 */
export async function comparePublished(register: IssuedRegister, out: string): Promise<Problem[]> {
  return [...(await compareLog(register, out)), ...(await compareCopies(register, out))]
}

async function compareLog(register: IssuedRegister, out: string): Promise<Problem[]> {
  const text = await readIfThere(join(out, registerFile))
  const earlier = text === undefined ? undefined : await readPublished(text)
  if (!earlier?.ok) return []
  return compareEarlier(textOf(register.log.lines), textOf(earlier.log.lines)).map(fault =>
    registerProblem(
      register.file,
      { ...fault, sentence: `${fault.sentence}; compared with the site in place` },
      HINT
    )
  )
}

/** The chain of copies must still hold the line that was its last one. */
async function compareCopies({ copies }: IssuedRegister, out: string): Promise<Problem[]> {
  const list = readCopyList((await readIfThere(join(out, copiesFile))) ?? '')
  if (!list || [NO_LINE, ...copies.chain.hashes].includes(list.head)) return []
  const sentence =
    'the line that was the last one of the chain of copies is in it no more: lines were dropped or replaced; compared with the site in place'
  return [registerProblem(copies.file, { line: 0, code: 'REGISTER_SHORTENED', sentence }, HINT)]
}

async function readIfThere(path: string): Promise<string | undefined> {
  return readFile(path, 'utf8').catch((error: unknown) => {
    if (isMissing(error)) return undefined
    throw error
  })
}

const HINT =
  'take the register back from your backup or version control; only where the site in place is that of another workshop, remove it'

const textOf = (lines: readonly string[]): string => lines.map(line => `${line}\n`).join('')
