/** lotfolio trace: what went into a lot, what was made from it, and who holds some. */

import { relative } from 'node:path'
import { Command, Option } from 'commander'
import { csvText } from '../data/csv.ts'
import { recallRows, stepRows, traceData } from '../documents/recall.ts'
import { openTrace } from '../documents/trace.ts'
import { traceText } from '../documents/trace-tree.ts'
import { isError, type SourceFile } from '../problem.ts'
import { loadContent } from '../records/content.ts'
import { lotNumbers } from '../records/own-chain.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { meant } from './lot-asked.ts'
import { asOfOption, contentOption } from './options.ts'
import { isPublic } from './public-folder.ts'
import { count } from './report.ts'
import { refuseStray } from './usage.ts'
import { writeOver } from './write.ts'

interface TraceOptions {
  readonly content?: string
  readonly asOf?: string
  readonly format: 'text' | 'json' | 'csv'
  readonly recall?: string
}

const examples = `
Examples:
  lotfolio trace GR-26-01
  lotfolio trace FL-26-007 --format json
  lotfolio trace GR-26-01 --recall private/recalls/GR-26-01.csv

Everything shown is private: it names customers. A record with a fault does not stop a trace: it is
left out, and that is said.
Exit code: 0 for a whole trace, 1 where records have errors or the lot is not there, 2 for wrong usage.`

export const traceCommand = (): Command =>
  new Command('trace')
    .description('tell what went into a lot, what was made from it, and who was sent some')
    .argument('<lot>', 'number of a material lot, batch, furnace run or foil lot')
    .addOption(contentOption())
    .addOption(asOfOption())
    .addOption(
      new Option('--format <FORMAT>', 'form of the trace')
        .choices(['text', 'json', 'csv'])
        .default('text')
    )
    .option('--recall <FILE>', 'write every lot, shipment and complaint affected to a CSV file')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(trace)

async function trace(lot: string, options: TraceOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const { judgeContent } = await import('../pipeline.ts')
  const files = await readContent(folderFrom(options.content, 'content'), userFolder(process.env))
  const errors = judgeContent(files, options.asOf).problems.filter(isError).length
  if (errors > 0) {
    process.stderr.write(
      `lotfolio: the records have ${count(errors, 'error')}; the trace may lack something: see lotfolio check\n`
    )
    process.exitCode = 1
  }
  const opened = openTrace(recordsOf(files), lot, options.asOf)
  if (!opened)
    throw new Failure(`no sound record has the lot number ${lot}${meant(lot, lotNumbers(files))}`)
  const { graph, trace: found } = opened
  const forms = {
    text: () => traceText(graph, found),
    json: () => `${JSON.stringify(traceData(graph, found), undefined, 2)}\n`,
    csv: () => csvOf(stepRows(found))
  }
  if (options.recall === undefined) process.stdout.write(forms[options.format]())
  else await writeRecall(options.recall, csvOf(recallRows(graph, found)))
}

/** All records, or those without a fault: a recall cannot wait for the rest. */
function recordsOf(files: readonly SourceFile[]) {
  const loaded = loadContent(files)
  return loaded.ok ? loaded.value : loaded.sound
}

const csvOf = ({ columns, rows }: ReturnType<typeof stepRows>) => csvText(columns, rows)

async function writeRecall(typed: string, text: string): Promise<void> {
  const path = folderFrom(typed, '')
  if (await isPublic(path))
    throw new Failure(`${path}: lies in the public site, and a recall list names customers`)
  await writeOver(path, text)
  process.stdout.write(
    `Wrote ${relative(userFolder(process.env), path)}: private, names customers\n`
  )
}
