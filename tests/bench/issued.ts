/** The generated workshop's register with every certificate issued, as it would lie on disk. */

import type { RegisterFiles } from '../../src/documents/issued.ts'
import { certificateToIssue } from '../../src/documents/to-issue.ts'
import { judgeContent } from '../../src/pipeline.ts'
import type { SourceFile } from '../../src/problem.ts'
import { documentName } from '../../src/register/compare.ts'
import type { RegisterEvent } from '../../src/register/events.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { append } from '../../src/register/log.ts'

export async function allIssued(files: readonly SourceFile[]): Promise<RegisterFiles> {
  const { evaluated, lots, asOf } = judgeContent(files)
  const { content } = evaluated!
  const byNumber = new Map(lots.map(lot => [lot.evaluated.lot, lot]))
  const documents = new Map<string, string>()
  const events: RegisterEvent[] = []
  for (const { record } of content.certificates) {
    const text = certificateToIssue(content, byNumber.get(record.lot)!, record, [])
    const { number, revision, lot } = record
    documents.set(documentName(record), text)
    events.push({ is: 'issued', number, revision, lot, data: await fingerprint(text) })
  }
  const log = await append('', events, asOf)
  if (!log.ok) throw new Error(log.faults[0]?.sentence)
  const file = { path: 'content/register/log.jsonl', text: log.text }
  return {
    log: file,
    documents,
    pending: new Map(),
    copies: { log: { path: '', text: '' }, documents: new Map(), pending: new Map() }
  }
}
