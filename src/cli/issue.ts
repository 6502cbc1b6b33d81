/** lotfolio issue: freeze what a lot's certificate says, and enter it in the register. */

import { join, relative } from 'node:path'
import { Command, Option } from 'commander'
import { documentOf } from '../documents/frozen-schema.ts'
import { readFrozen } from '../documents/frozen.ts'
import { registerOfLot } from '../documents/issued.ts'
import { evidenceIn } from '../documents/papers.ts'
import { isError, type SourceFile } from '../problem.ts'
import { ownChain } from '../records/own-chain.ts'
import { inspectionTypes } from '../records/schemas/lots.ts'
import type { CertificateOrder } from '../records/types.ts'
import { documentName } from '../register/compare.ts'
import type { RegisterEvent } from '../register/events.ts'
import { fingerprint, shortFingerprint } from '../register/fingerprint.ts'
import { readLog, treeOf } from '../register/log.ts'
import { issuedSeal } from '../site/evidence.ts'
import { Failure } from '../site/failure.ts'
import { archiveFor, originalName } from '../site/originals.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { calendarDate, contentOption } from './options.ts'
import { orderNeeded, type Wishes } from './order.ts'
import { added, atDesk, type Desk } from './register-work.ts'
import { problemsText } from './report.ts'
import { signedEvent, type SigningKey, signingKey } from './signing.ts'
import { today } from './today.ts'
import { refuseStray } from './usage.ts'
import { removeStaged, writeWhole } from './write.ts'

interface IssueOptions extends Partial<Wishes> {
  readonly content?: string
  readonly archive?: string
  readonly key?: string
  readonly unsigned?: true
}

const examples = `
Examples:
  lotfolio issue EB-26-001
  lotfolio issue FL-26-003 --date 2026-03-24 --by "quality manager"
  lotfolio issue EB-26-006 --reason "date of the ash test corrected"
  lotfolio issue FL-26-003 --type 3.1 --shipment SH-26-02

What the certificate says is frozen: it never changes again. A correction is a new revision with a
reason; the old one stays in the register. The PDF goes to the archive folder: back that up.
A type of EN 10204 declares compliance with the order of a shipment; without one the certificate is
a certificate of analysis.
Exit code: 0 when the certificate is issued, 1 when not, 2 for wrong usage.`

export const issueCommand = (): Command =>
  new Command('issue')
    .description("freeze a lot's certificate and enter it in the register")
    .argument('<lot>', 'lot number')
    .addOption(contentOption())
    .option('--date <DATE>', 'day of issue (default: today)', calendarDate)
    .option('--by <ROLE>', 'role that answers for it (default: who let the lot go)')
    .option('--number <NUMBER>', 'its number (default: the one after the last)')
    .option('--reason <TEXT>', 'why a certificate that stands is corrected')
    .addOption(
      new Option(
        '--type <TYPE>',
        'EN 10204: 2.1 declaration, 2.2 test report, 3.1 inspection certificate (default: none)'
      ).choices(inspectionTypes)
    )
    .option('--shipment <ID>', 'shipment whose order it declares compliance with')
    .option('--key <ID>', 'key to sign with (default: the newest this computer has)')
    .option('--unsigned', 'do not sign')
    .option('--archive <DIR>', 'folder for the PDF as issued (default: archive beside the records)')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(issue)

async function issue(lot: string, options: IssueOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const content = folderFrom(options.content, 'content')
  const archive =
    options.archive === undefined ? archiveFor(content) : folderFrom(options.archive, 'archive')
  await atDesk(content, async desk => {
    const ready = await makeReady(content, lot, desk, options)
    if (!ready) return
    const key = options.unsigned ? undefined : await signingKey(desk.register, options.key)
    const entered = await enter(ready, desk, key)
    const records = join(content, 'certificates')
    for (const folder of [records, archive]) await removeStaged(folder)
    if (ready.newRecord) await writeWhole(join(records, ready.newRecord.name), ready.newRecord.text)
    const original = join(archive, originalName(ready.order))
    await writeWhole(original, entered.pdf)
    await desk.save(entered.log, new Map([[documentName(ready.order), ready.text]]))
    await report(ready, original, key)
  })
}

interface Ready {
  readonly order: CertificateOrder
  readonly text: string
  /** Day it is entered in the register. */
  readonly date: string
  readonly newRecord?: { readonly name: string; readonly text: string }
}

/** Judge the lot by its own chain of records and word its certificate; tell what stands against it. */
async function makeReady(
  content: string,
  lot: string,
  { register }: Desk,
  { date = today(), ...wishes }: IssueOptions
): Promise<Ready | undefined> {
  const { readyCertificate } = await import('../pipeline.ts')
  const files = await readContent(content, userFolder(process.env))
  const chain = ownChain(files, lot)
  if (!chain) throw new Failure(`no record has the lot number ${lot}`)
  const newRecord = orderNeeded(files, chain, lot, register, { ...wishes, date })
  // The order may name what the lot itself does not: its shipment.
  const all = newRecord ? ownChain([...files, asFile(content, newRecord)], lot)! : chain
  const own = registerOfLot(register, lot)
  const { order, text, problems } = readyCertificate(all, lot, date, own)
  process.stderr.write(problemsText(problems))
  if (order && order.issued > date)
    throw new Failure(`${order.number} is dated ${order.issued}: it cannot be issued on ${date}`)
  if (order && text !== undefined) return { order, text, date, ...(newRecord && { newRecord }) }
  process.exitCode = 1
  process.stdout.write(
    problems.some(isError) ? 'Nothing issued\n' : `Nothing issued: ${lot} was not made by ${date}\n`
  )
  return undefined
}

const asFile = (content: string, { name, text }: { name: string; text: string }): SourceFile => ({
  path: relative(userFolder(process.env), join(content, 'certificates', name)).replaceAll(
    '\\',
    '/'
  ),
  text
})

/** The log with the certificate's lines, and the PDF they speak of. */
async function enter({ order, text, date }: Ready, desk: Desk, key: SigningKey | undefined) {
  const data = await fingerprint(text)
  const { number, revision, lot, reason } = order
  const said: RegisterEvent =
    revision === 1
      ? { is: 'issued', number, revision, lot, data }
      : { is: 'amended', number, revision, lot, data, reason: reason! }
  const signed = key ? [await signedEvent(key, order, text)] : []
  const texts = [...desk.documents.values(), text]
  const log = await added(desk.log, [said, ...signed], date, texts)
  const pdf = await drawn(log, text, data)
  const drawnEvent: RegisterEvent = {
    is: 'drawn',
    number,
    revision,
    pdf: await fingerprint(pdf)
  }
  return { pdf, log: await added(log, [drawnEvent], date, texts) }
}

/** The PDF, carrying the proof of the lines just entered: all that the log has. */
async function drawn(log: string, text: string, sha256: string): Promise<Uint8Array> {
  const { certificatePdf } = await import('../pdf/certificate.ts')
  const frozen = readFrozen(text)!
  const read = await readLog(log)
  const seal = await issuedSeal(
    { ...evidenceIn(frozen), text, sha256, provenBy: read.lines.length },
    { log: read, tree: await treeOf(read) }
  )
  return certificatePdf(documentOf(frozen.certificate), seal)
}

async function report({ order, text }: Ready, original: string, key: SigningKey | undefined) {
  const { number, revision, lot } = order
  const shown = relative(userFolder(process.env), original) || '.'
  process.stdout.write(
    [
      `Issued ${number}, revision ${revision}, on ${lot}`,
      `Fingerprint ${shortFingerprint(await fingerprint(text))}; ${key ? `signed with key ${shortFingerprint(key.id)}` : 'not signed'}`,
      `The paper: ${shown}; put that folder into your backup`,
      ''
    ].join('\n')
  )
}
