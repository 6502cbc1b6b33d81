/** lotfolio issue: freeze what a lot's certificate says, and enter it in the register. */

import { join, relative } from 'node:path'
import { Command, Option } from 'commander'
import { namingSigner, readFrozen } from '../documents/frozen.ts'
import { registerOfLot } from '../documents/issued.ts'
import { isError, type SourceFile } from '../problem.ts'
import { ownChain } from '../records/own-chain.ts'
import { paperLanguages } from '../records/schemas/common.ts'
import { inspectionTypes } from '../records/schemas/lots.ts'
import { fingerprint, shortFingerprint } from '../register/fingerprint.ts'
import { Failure } from '../site/failure.ts'
import { archiveFor, originalName } from '../site/originals.ts'
import { readContent } from '../site/read-content.ts'
import { enter, type Keys, type Ready } from './enter.ts'
import { folderFrom, userFolder } from './folders.ts'
import { chainAsked } from './lot-asked.ts'
import { calendarDate, contentOption } from './options.ts'
import { orderNeeded, type Wishes } from './order.ts'
import { type PdfKey, pdfKeyIn } from './pdf-key.ts'
import { atDesk, type Desk } from './register-work.ts'
import { problemsText } from './report.ts'
import { signingKey } from './signing.ts'
import { today } from './today.ts'
import { refuseStray, UsageError } from './usage.ts'
import { removeStaged, writeWhole } from './write.ts'

interface IssueOptions extends Partial<Wishes> {
  readonly content?: string
  readonly archive?: string
  readonly key?: string
  readonly pdfKey?: string
  readonly unsigned?: true
}

const examples = `
Examples:
  lotfolio issue EB-26-001
  lotfolio issue FL-26-003 --date 2026-03-24 --by "quality manager"
  lotfolio issue EB-26-006 --reason "date of the ash test corrected"
  lotfolio issue FL-26-003 --type 3.1 --shipment SH-26-02
  lotfolio issue FL-26-003 --language de
  lotfolio issue FL-26-003 --pdf-key ~/keys/workshop.p12

What the certificate says is frozen: it never changes again. A correction is a new revision with a
reason; the old one stays in the register. The PDF goes to the archive folder: back that up.
A type of EN 10204 declares compliance with the order of a shipment; without one the certificate is
a certificate of analysis.
The pass phrase of a PKCS #12 file is asked for, or taken from LOTFOLIO_PDF_PHRASE.
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
    .addOption(
      new Option('--language <CODE>', 'language of the paper (default: en)').choices(paperLanguages)
    )
    .option('--shipment <ID>', 'shipment whose order it declares compliance with')
    .option('--key <ID>', 'key to sign with (default: the newest this computer has)')
    .addOption(
      new Option(
        '--pdf-key <FILE>',
        'PKCS #12 file with the X.509 certificate and key to sign the PDF with'
      ).env('LOTFOLIO_PDF_KEY')
    )
    .option('--unsigned', 'do not sign, neither what it says nor the PDF')
    .option('--archive <DIR>', 'folder for the PDF as issued (default: archive beside the records)')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(issue)

async function issue(lot: string, options: IssueOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  if (options.unsigned && command.getOptionValueSource('pdfKey') === 'cli')
    throw new UsageError('--unsigned and --pdf-key speak against each other')
  const content = folderFrom(options.content, 'content')
  const archive =
    options.archive === undefined ? archiveFor(content) : folderFrom(options.archive, 'archive')
  await atDesk(content, async desk => {
    const worded = await makeReady(content, lot, desk, options)
    if (!worded) return
    const keys = options.unsigned ? {} : await keysFor(worded, content, desk, options)
    const ready = keys.pdfKey ? naming(worded, keys.pdfKey) : worded
    const entered = await enter(ready, desk, keys)
    const records = join(content, 'certificates')
    for (const folder of [records, archive]) await removeStaged(folder)
    if (ready.newRecord) await writeWhole(join(records, ready.newRecord.name), ready.newRecord.text)
    const original = join(archive, originalName(ready.order))
    await writeWhole(original, entered.pdf)
    await desk.save(entered.log, entered.files)
    await report(ready, original, keys)
  })
}

async function keysFor(
  { order, date }: Ready,
  content: string,
  { register }: Desk,
  options: IssueOptions
): Promise<Keys> {
  const key = await signingKey(register, options.key)
  if (options.pdfKey === undefined) return { key }
  // The PDF says it was signed on the day of the order; in truth it is today.
  const days = [order.issued, date, today()]
  return { key, pdfKey: await pdfKeyIn(options.pdfKey, content, days) }
}

/** The same, its text saying whose certificate signs the PDF. */
const naming = (ready: Ready, { signer }: PdfKey): Ready => ({
  ...ready,
  text: namingSigner(readFrozen(ready.text)!, signer)
})

/** Judge the lot by its own chain of records and word its certificate; tell what stands against it. */
async function makeReady(
  content: string,
  lot: string,
  { register }: Desk,
  { date = today(), ...wishes }: IssueOptions
): Promise<Ready | undefined> {
  const { readyCertificate } = await import('../pipeline.ts')
  const files = await readContent(content, userFolder(process.env))
  const chain = chainAsked(files, lot)
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

async function report({ order, text }: Ready, original: string, { key, pdfKey }: Keys) {
  const { number, revision, lot } = order
  const shown = relative(userFolder(process.env), original) || '.'
  process.stdout.write(
    [
      `Issued ${number}, revision ${revision}, on ${lot}`,
      `Fingerprint ${shortFingerprint(await fingerprint(text))}; ${key ? `signed with key ${shortFingerprint(key.id)}` : 'not signed'}`,
      ...(pdfKey
        ? [`PDF signed for ${pdfKey.signer.name}; its X.509 certificate ends on ${pdfKey.until}`]
        : []),
      `The paper: ${shown}; put that folder into your backup`,
      ''
    ].join('\n')
  )
}
