/** lotfolio ship: the papers that go with a shipment, for its customer alone. */

import { join, relative } from 'node:path'
import { Command } from 'commander'
import { previewCopy } from '../documents/copies-to-send.ts'
import type { IssuedRegister } from '../documents/issued.ts'
import type { ShipmentPack } from '../documents/shipment-types.ts'
import { isError } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { keptFolders } from '../site/kept.ts'
import { archiveFor } from '../site/originals.ts'
import { realFolder } from '../site/output-folder.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { meant } from './lot-asked.ts'
import { calendarDate, contentOption, paperOption } from './options.ts'
import { isPublic } from './public-folder.ts'
import { atDesk, soundRegister } from './register-work.ts'
import { count, problemsText } from './report.ts'
import { copyPdf, drawnCopies, enterCopies, toSend } from './ship-copies.ts'
import { today } from './today.ts'
import { refuseStray } from './usage.ts'
import { removeStaged, writeWhole } from './write.ts'

interface ShipOptions {
  readonly content?: string
  readonly out?: string
  readonly paper?: 'A4' | 'Letter'
  readonly preview?: true
  readonly date?: string
  readonly reason?: string
  readonly archive?: string
}

const examples = `
Examples:
  lotfolio ship SH-26-07
  lotfolio ship SH-26-07 --preview
  lotfolio ship SH-26-07 --out ../for-the-box --paper Letter
  lotfolio ship SH-26-07 --reason "order number corrected"

Written are the packing list, each lot's certificate with customer, order, quantity and the name of
who signed, a label for each container that the grade names, and all of them as one file. They are
private: never written into a public site. What a copy says is frozen and entered in a chain of its
own, which stays with the records; the site gives only a list in which whoever holds a copy can find it.
Exit code: 0 when the papers are written, 1 when not, 2 for wrong usage.`

/** Where the papers of shipments go when the command does not say. */
const defaultFolder = join('private', keptFolders.shipments)

export const shipCommand = (): Command =>
  new Command('ship')
    .description("write a shipment's packing list and its customer's certificates")
    .argument('<shipment>', 'shipment number')
    .addOption(contentOption())
    .option('--out <DIR>', `folder to write to (default: ${defaultFolder}/SHIPMENT)`)
    .addOption(paperOption())
    .option('--preview', 'write the papers to look at: nothing is entered, and they say so')
    .option('--date <DATE>', 'day the copies are entered (default: today)', calendarDate)
    .option('--reason <TEXT>', 'why a copy that was sent is replaced')
    .option(
      '--archive <DIR>',
      'folder for the copies as sent (default: archive beside the records)'
    )
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(ship)

async function ship(number: string, options: ShipOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = folderFrom(options.out, join(defaultFolder, number))
  if (await isPublic(realFolder(folder)))
    throw new Failure(`${folder}: lies in the public site, and these papers name the customer`)
  const content = folderFrom(options.content, 'content')
  if (options.preview) return preview(number, folder, content, options)
  const archive =
    options.archive === undefined ? archiveFor(content) : folderFrom(options.archive, 'archive')
  await atDesk(content, async desk => {
    const pack = await readyPack(number, content, desk.register, options)
    if (!pack) return
    const copies = pack.copies.map(copy => toSend(copy, desk, options.reason))
    const refused = copies.filter(one => typeof one === 'string')
    if (refused.length > 0) return nothing(refused)
    const sending = copies.filter(one => typeof one === 'object')
    const papers = await drawnCopies(sending, archive)
    const whole = { ...pack, copies: sending.map(({ copy }) => copy) }
    const files = new Map([...(await drawn(whole, number)), ...papers])
    await writeAll(folder, files)
    await enterCopies({ desk, copies: sending, papers, archive }, options.date ?? today())
    report(number, folder, files.size)
  })
}

/** The papers to look at: nothing is entered, and the copies say so. */
async function preview(
  number: string,
  folder: string,
  content: string,
  options: ShipOptions
): Promise<void> {
  const register = await soundRegister(content)
  const pack = await readyPack(number, content, register, options)
  if (!pack) return
  const whole = { ...pack, copies: pack.copies.map(previewCopy) }
  const files = await drawn(whole, number)
  for (const copy of whole.copies) files.set(`${copy.name}.pdf`, await copyPdf(copy))
  await writeAll(folder, files)
  report(number, folder, files.size)
}

function report(number: string, folder: string, files: number): void {
  const shown = relative(userFolder(process.env), folder) || '.'
  process.stdout.write(
    `Wrote ${count(files, 'file')} for shipment ${number} to ${shown}: private, they name the customer\n`
  )
}

async function writeAll(folder: string, files: ReadonlyMap<string, Uint8Array>): Promise<void> {
  await removeStaged(folder)
  for (const [name, bytes] of files) await writeWhole(join(folder, name), bytes)
}

/** The pack, or nothing once it is told what stands against it. */
async function readyPack(
  number: string,
  content: string,
  register: IssuedRegister,
  { paper }: ShipOptions
): Promise<ShipmentPack | undefined> {
  const [{ judgeContent }, { shipmentPack }] = await Promise.all([
    import('../pipeline.ts'),
    import('../documents/shipment-pack.ts')
  ])
  const files = await readContent(content, userFolder(process.env))
  const { evaluated, lots, problems } = judgeContent(files, undefined, register)
  process.stderr.write(problemsText(problems.filter(isError)))
  if (!evaluated || problems.some(isError)) return nothing([])
  const records = evaluated.content
  const shipment = records.shipments.get(number)?.record
  if (!shipment)
    throw new Failure(
      `no record has the shipment number ${number}${meant(number, records.shipments.keys())}`
    )
  const pack = shipmentPack(shipment, {
    content: records,
    lots,
    register,
    paper: paper ?? records.producer.record.paper ?? 'A4'
  })
  return Array.isArray(pack) ? nothing(pack) : pack
}

function nothing(missing: readonly string[]): undefined {
  process.exitCode = 1
  for (const sentence of missing) process.stderr.write(`lotfolio: ${sentence}\n`)
  process.stdout.write('Nothing written\n')
}

/** Every file but the copies, by its name. */
async function drawn(pack: ShipmentPack, number: string): Promise<Map<string, Uint8Array>> {
  const [{ packingListPdf }, { packPdf }, { labelPdf }, { LabelTooSmall }] = await Promise.all([
    import('../pdf/packing-list.ts'),
    import('../pdf/pack.ts'),
    import('../pdf/label.ts'),
    import('../pdf/label-layout.ts')
  ])
  try {
    const files = new Map([
      [`${number}-papers.pdf`, await packPdf(pack)],
      [`${number}-packing-list.pdf`, await packingListPdf(pack.packingList)]
    ])
    for (const label of pack.labels.values()) files.set(label.fileName, labelPdf(label))
    return files
  } catch (error) {
    throw error instanceof LabelTooSmall ? new Failure(error.message) : error
  }
}
