/** The customer's copies of a shipment: drawn, kept, and entered in their chain. */

import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import { type CopyToSend, copyToSend } from '../documents/copies-to-send.ts'
import type { CustomerCopy } from '../documents/shipment-types.ts'
import { bytesOf } from '../register/bytes.ts'
import { appendCopies } from '../register/copies.ts'
import { copyDocument } from '../register/copy-events.ts'
import { fingerprint } from '../register/fingerprint.ts'
import { Failure } from '../site/failure.ts'
import { asBefore } from '../site/originals.ts'
import { carried } from '../verify/holding.ts'
import type { Desk } from './register-work.ts'
import { removeStaged, writeWhole } from './write.ts'

/** What no one can guess: for a copy, and for the chain. */
const random = () => randomBytes(32).toString('hex')

/** A copy as it goes out, or why it does not. */
export const toSend = (
  copy: CustomerCopy,
  { register }: Desk,
  reason: string | undefined
): CopyToSend | string => copyToSend(copy, { copies: register.copies, salt: random, reason })

/** The PDF of each copy by its file name; one that was sent before, as it was then. */
export async function drawnCopies(
  copies: readonly CopyToSend[],
  archive: string
): Promise<Map<string, Uint8Array>> {
  const papers = new Map<string, Uint8Array>()
  for (const { copy, text, sent } of copies) {
    const name = `${copy.name}.pdf`
    const drawn = await copyPdf(copy, text)
    const { bytes, is } = await asBefore(drawn, sent?.pdf, join(archive, name))
    if (is === 'redrawn') process.stderr.write(`lotfolio: ${redrawn(name)}\n`)
    papers.set(name, bytes)
  }
  return papers
}

const redrawn = (name: string) =>
  `${name} is drawn otherwise now than when it was sent, and its original is not in the archive: this file checks as altered; put the file that was sent into the archive folder`

/** The PDF of a copy, with what it says where it is sent. */
export async function copyPdf(copy: CustomerCopy, text?: string): Promise<Uint8Array> {
  const { customerCopyPdf } = await import('../pdf/pack.ts')
  const file = (name: string, content: string) => ({ name, bytes: bytesOf(content) })
  return customerCopyPdf(copy, [
    file('data.json', copy.data),
    ...(text === undefined ? [] : [file(carried.copy, text)])
  ])
}

export interface Entering {
  readonly desk: Desk
  readonly copies: readonly CopyToSend[]
  /** By file name. */
  readonly papers: ReadonlyMap<string, Uint8Array>
  readonly archive: string
}

/** Keep the originals of new copies, and enter them in the chain. */
export async function enterCopies(
  { desk, copies, papers, archive }: Entering,
  date: string
): Promise<void> {
  const added = copies.filter(({ sent }) => !sent)
  if (added.length === 0) return
  const pdfOf = ({ copy }: CopyToSend) => papers.get(`${copy.name}.pdf`)!
  const events = await Promise.all(
    added.map(async one => ({
      ...one.entry,
      data: await fingerprint(one.text),
      pdf: await fingerprint(pdfOf(one))
    }))
  )
  const { text: before } = desk.register.copies.file
  const log = await appendCopies(before, events, date, random())
  if (!log.ok) throw new Failure(`the chain of copies refuses this: ${log.faults[0]!.sentence}`)
  await removeStaged(archive)
  for (const one of added) await writeWhole(join(archive, `${one.copy.name}.pdf`), pdfOf(one))
  await desk.saveCopies(
    log.text,
    new Map(added.map(({ entry, text }) => [copyDocument(entry), text]))
  )
}
