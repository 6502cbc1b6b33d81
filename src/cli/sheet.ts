/** lotfolio sheet: a batch's bench sheet, to weigh, log, read and sign on paper. */

import { join, relative } from 'node:path'
import { Command } from 'commander'
import { benchView } from '../records/bench-view.ts'
import { draftKinds } from '../records/draft-fields.ts'
import { headOf } from '../records/draft.ts'
import { kindOf } from '../records/kinds.ts'
import { loadContent } from '../records/content.ts'
import type { SourceFile } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { keptFolders } from '../site/kept.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { meant } from './lot-asked.ts'
import { contentOption, paperOption } from './options.ts'
import { problemsText } from './report.ts'
import { refuseStray } from './usage.ts'
import { writeOver } from './write.ts'

interface SheetOptions {
  readonly content?: string
  readonly out?: string
  readonly paper?: 'A4' | 'Letter'
}

const examples = `
Examples:
  lotfolio sheet EB-26-014
  lotfolio sheet EB-26-014 --paper Letter --out ../to-print

Amounts are those planned in the record, or else those weighed. A bench sheet is private. It is no
recipe, and calls no charge safe.
Exit code: 0 when the sheet is written, 1 when not, 2 for wrong usage.`

export const sheetCommand = (): Command =>
  new Command('sheet')
    .description('write the bench sheet of a batch or draft, to print')
    .argument('<lot>', 'number of the batch')
    .addOption(contentOption())
    .option('--out <DIR>', 'folder to write to (default: private/sheets)')
    .addOption(paperOption())
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(writeSheet)

const batchNumbers = (files: readonly SourceFile[]) =>
  files.filter(file => kindOf(file) === draftKinds.batch).map(file => headOf(file, 'batch').number)

async function writeSheet(lot: string, options: SheetOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = folderFrom(options.content, 'content')
  const files = await readContent(folder, userFolder(process.env))
  const loaded = loadContent(files)
  const file = files.find(
    one => kindOf(one) === draftKinds.batch && headOf(one, 'batch').number === lot
  )
  if (!file)
    throw new Failure(`there is no batch or draft ${lot}${meant(lot, batchNumbers(files))}`)
  if (!loaded.ok) {
    process.stderr.write(problemsText(loaded.problems))
    throw new Failure('no sheet: the records have errors')
  }
  const view = benchView(file)
  if (!view || view.charge.length === 0)
    throw new Failure(`${lot} lists no charge yet: start it with lotfolio plan --draft`)
  if (!/^\d{4}-\d\d-\d\d$/u.test(view.made))
    throw new Failure(`${lot} does not say on which day it is made: fill in 'made:'`)
  const [{ benchSheet, sheetRefusals }, { benchSheetPdf }] = await Promise.all([
    import('../documents/bench-sheet.ts'),
    import('../pdf/bench-sheet.ts')
  ])
  const refusals = headOf(file, 'batch').draft ? sheetRefusals(loaded.value, view) : []
  if (refusals.length > 0) throw new Failure(`no sheet: ${refusals.join('; ')}`)
  const paper = options.paper ?? loaded.value.producer.record.paper ?? 'A4'
  const record = `batches/${file.path.split('/').at(-1)!}`
  const path = join(folderFrom(options.out, join('private', keptFolders.sheets)), `${lot}.pdf`)
  await writeOver(path, await benchSheetPdf(benchSheet(loaded.value, view, record, paper)))
  process.stdout.write(`Wrote ${relative(userFolder(process.env), path)}\n`)
}
