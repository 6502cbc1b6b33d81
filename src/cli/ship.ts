/** lotfolio ship: the papers that go with a shipment, for its customer alone. */

import { join, relative } from 'node:path'
import { Command } from 'commander'
import { openRegister } from '../documents/issued.ts'
import type { ShipmentPack } from '../documents/shipment-types.ts'
import { isError } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { keptFolder } from '../site/kept.ts'
import { realFolder } from '../site/output-folder.ts'
import { readContent } from '../site/read-content.ts'
import { readRegister } from '../site/read-register.ts'
import { folderFrom, userFolder } from './folders.ts'
import { contentOption, paperOption } from './options.ts'
import { isPublic } from './public-folder.ts'
import { count, problemsText } from './report.ts'
import { refuseStray } from './usage.ts'
import { removeStaged, writeWhole } from './write.ts'

interface ShipOptions {
  readonly content?: string
  readonly out?: string
  readonly paper?: 'A4' | 'Letter'
}

const examples = `
Examples:
  lotfolio ship SH-26-07
  lotfolio ship SH-26-07 --out ../for-the-box --paper Letter

Written are the packing list, each lot's certificate with customer, order, quantity and the name of
who signed, a label for each container that the grade names, and all of them as one file. They are private: never written into a public site.
Exit code: 0 when the papers are written, 1 when not, 2 for wrong usage.`

/** Where the papers of shipments go when the command does not say. */
const defaultFolder = join('private', keptFolder)

export const shipCommand = (): Command =>
  new Command('ship')
    .description("write a shipment's packing list and its customer's certificates")
    .argument('<shipment>', 'shipment number')
    .addOption(contentOption())
    .option('--out <DIR>', `folder to write to (default: ${defaultFolder}/SHIPMENT)`)
    .addOption(paperOption())
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(ship)

async function ship(number: string, options: ShipOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = folderFrom(options.out, join(defaultFolder, number))
  if (await isPublic(realFolder(folder)))
    throw new Failure(`${folder}: lies in the public site, and these papers name the customer`)
  const pack = await readyPack(number, options)
  if (!pack) return
  const files = await drawn(pack, number)
  await removeStaged(folder)
  for (const [name, bytes] of files) await writeWhole(join(folder, name), bytes)
  const shown = relative(userFolder(process.env), folder) || '.'
  process.stdout.write(
    `Wrote ${count(files.size, 'file')} for shipment ${number} to ${shown}: private, they name the customer\n`
  )
}

/** The pack, or nothing once it is told what stands against it. */
async function readyPack(
  number: string,
  { content: typed, paper }: ShipOptions
): Promise<ShipmentPack | undefined> {
  const [{ judgeContent }, { shipmentPack }] = await Promise.all([
    import('../pipeline.ts'),
    import('../documents/shipment-pack.ts')
  ])
  const content = folderFrom(typed, 'content')
  const base = userFolder(process.env)
  const files = await readContent(content, base)
  const register = await openRegister(await readRegister(content, base))
  const { evaluated, lots, problems } = judgeContent(files, undefined, register)
  process.stderr.write(problemsText(problems.filter(isError)))
  if (!evaluated || problems.some(isError)) return nothing([])
  const records = evaluated.content
  const shipment = records.shipments.get(number)?.record
  if (!shipment) throw new Failure(`no record has the shipment number ${number}`)
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

/** Every file by its name. */
async function drawn(pack: ShipmentPack, number: string): Promise<Map<string, Uint8Array>> {
  const [{ packingListPdf }, { customerCopyPdf, packPdf }, { labelPdf }, { LabelTooSmall }] =
    await Promise.all([
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
    for (const copy of pack.copies) files.set(`${copy.name}.pdf`, await customerCopyPdf(copy))
    for (const label of pack.labels.values()) files.set(label.fileName, labelPdf(label))
    return files
  } catch (error) {
    throw error instanceof LabelTooSmall ? new Failure(error.message) : error
  }
}
