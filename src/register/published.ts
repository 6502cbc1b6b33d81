/** The register as a site gives it: every line, and the head they must come to. */

import * as z from 'zod'
import { canonicalText, readJson } from './canonical.ts'
import { headOf, type Log, readLog, treeOf } from './log.ts'
import type { Tree } from './merkle.ts'

const publishedSchema = z.strictObject({
  format: z.literal('lotfolio-register'),
  formatVersion: z.literal(1),
  size: z.int().min(0),
  root: z.string(),
  lines: z.array(z.string())
})

/** The text of `register.json`. @throws RangeError for a log with faults */
export async function publishedText(log: Log, tree: Tree): Promise<string> {
  if (log.faults.length > 0) throw new RangeError('publishedText requires a log without faults')
  const { size, root } = await headOf(tree)
  const { lines } = log
  return canonicalText({ format: 'lotfolio-register', formatVersion: 1, size, root, lines })
}

export type ReadPublished =
  | { readonly ok: true; readonly log: Log; readonly tree: Tree }
  /** What is wrong, as the end of a sentence. */
  | { readonly ok: false; readonly why: string }

/** Read a `register.json` and check it in itself: every rule of the log, and its head. */
export async function readPublished(text: string): Promise<ReadPublished> {
  const json = readJson(text)
  const read = publishedSchema.safeParse(json.is === 'canonical' ? json.value : undefined)
  if (!read.success) return { ok: false, why: 'it is not written as a register is' }
  const { lines, size, root } = read.data
  const log = await readLog(lines.map(line => `${line}\n`).join(''))
  const [fault] = log.faults
  if (fault) return { ok: false, why: `line ${fault.line}: ${fault.sentence}` }
  const tree = await treeOf(log)
  const head = await headOf(tree)
  return head.size === size && head.root === root
    ? { ok: true, log, tree }
    : { ok: false, why: 'its lines do not come to the size and root it names' }
}
