/** The register against the one in the site that is about to be replaced. */

import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { registerFile } from '../documents/certificate-page.ts'
import { type IssuedRegister, registerProblem } from '../documents/issued.ts'
import type { Problem } from '../problem.ts'
import { compareEarlier } from '../register/compare.ts'
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
  const text = await readFile(join(out, registerFile), 'utf8').catch((error: unknown) => {
    if (isMissing(error)) return undefined
    throw error
  })
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

const HINT =
  'take the register back from your backup or version control; only where the site in place is that of another workshop, remove it'

const textOf = (lines: readonly string[]): string => lines.map(line => `${line}\n`).join('')
