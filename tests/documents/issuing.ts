/** Certificates of the small workshop, issued in memory. */

import { readFrozen } from '../../src/documents/frozen.ts'
import type { FrozenCertificate } from '../../src/documents/frozen-schema.ts'
import { type IssuedRegister, openRegister } from '../../src/documents/issued.ts'
import { judgeContent, readyCertificate } from '../../src/pipeline.ts'
import { formatProblem, type Problem, type SourceFile } from '../../src/problem.ts'
import type { RegisterEvent } from '../../src/register/events.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { documentsOf } from '../../src/register/log.ts'
import { grown } from '../register/sample.ts'
import { base } from '../records/workshop.ts'

/** Day on which everything here is issued. */
export const day = '2026-02-07'

/** What the order that waits on EB-1 says, as canonical JSON. */
export function textToIssue(files: readonly SourceFile[], register: IssuedRegister): string {
  const { text, problems } = readyCertificate(files, 'EB-1', day, register)
  if (text === undefined) throw new Error(problems.map(formatProblem).join('\n'))
  return text
}

/** The register after some events, as it would be read from disk. */
export async function registerOf(
  texts: Readonly<Record<string, string>>,
  ...steps: readonly (readonly [events: readonly RegisterEvent[], date: string])[]
): Promise<IssuedRegister> {
  const held = await documentsOf(Object.values(texts))
  let log = ''
  for (const [events, date] of steps) log = await grown(log, events, date, held)
  const documents = new Map(Object.entries(texts))
  const file = { path: 'register/log.jsonl', text: log }
  return openRegister({
    log: file,
    documents,
    pending: new Map(),
    copies: { log: { path: '', text: '' }, documents: new Map(), pending: new Map() }
  })
}

export const none = await registerOf({})
export const firstText = textToIssue(base, none)
/** CT-1, revision 1, entered with a text. */
const entered = async (text: string) =>
  [
    [
      { is: 'issued', number: 'CT-1', revision: 1, lot: 'EB-1', data: await fingerprint(text) }
    ] as RegisterEvent[],
    day
  ] as const

export const first = await entered(firstText)

/** The register as an earlier program would have left it, its CT-1 saying `text`. */
export const registerSaying = async (text: string): Promise<IssuedRegister> =>
  registerOf({ 'CT-1-r1.json': text }, await entered(text))

/** The workshop with CT-1 issued. */
export const issuedRegister = await registerOf({ 'CT-1-r1.json': firstText }, first)

export function frozenOf(text: string): FrozenCertificate {
  const frozen = readFrozen(text)
  if (!frozen) throw new Error('not readable')
  return frozen
}

export const problemsOf = (
  files: readonly SourceFile[],
  register: IssuedRegister,
  asOf?: string
): readonly Problem[] => judgeContent(files, asOf, register).problems
