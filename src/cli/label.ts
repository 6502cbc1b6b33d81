/** lotfolio label: the labels of a lot's containers. */

import { relative } from 'node:path'
import { Command, InvalidArgumentError, Option } from 'commander'
import { openRegister, registerOfLot } from '../documents/issued.ts'
import type { LabelChoice, LabelRules, LabelWish } from '../documents/label-types.ts'
import { readContainer, readLanguages } from '../documents/label-wish.ts'
import { readStock, stockForm } from '../pdf/label-stock.ts'
import { isError } from '../problem.ts'
import type { Container } from '../records/types.ts'
import { labelProfiles } from '../records/schemas/common.ts'
import { containerKinds } from '../records/schemas/container.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { readRegister } from '../site/read-register.ts'
import { folderFrom, userFolder } from './folders.ts'
import { asOfOption, contentOption } from './options.ts'
import { count, problemsText, summaryLine } from './report.ts'
import { refuseStray, UsageError } from './usage.ts'
import { writeLabels } from './write-labels.ts'

interface LabelOptions {
  readonly content?: string
  readonly out?: string
  readonly asOf?: string
  readonly container?: Container['kind']
  readonly capacity?: string
  readonly holds?: string
  readonly language?: LabelWish['languages']
  readonly profile?: LabelWish['profile']
  readonly wording?: NonNullable<LabelWish['wording']>
  readonly sheet?: Exclude<ReturnType<typeof readStock>, string>
  readonly copies?: number
  readonly skip?: number
}

const examples = `
Examples:
  lotfolio label EB-26-001
  lotfolio label EB-26-002 --profile us
  lotfolio label EB-26-001 --language de,fr --container drum --capacity 60L --holds 2.5kg
  lotfolio label EB-26-001 --container pouch --sheet ${stockForm} --skip 3

Without --capacity, one label for each container the grade names, or those of one kind. A label has the least size the
rules allow for the container, or the next that holds its text; type is never set smaller than they
allow. What 'labels:' of producer.yaml says goes before the defaults. Of a lot with a certificate, the label says what was issued.
Exit code: 0 when the labels are written, 1 when not, 2 for wrong usage.`

export const labelCommand = (): Command =>
  new Command('label')
    .description("write labels for a lot's containers, with its hazards, at the legal sizes")
    .argument('<lot>', 'lot number')
    .addOption(contentOption())
    .option('--out <DIR>', 'folder to write to (default: labels)')
    .addOption(asOfOption())
    .addOption(
      new Option('--container <KIND>', 'kind of the container').choices([...containerKinds])
    )
    .option('--capacity <VOLUME>', 'what the container could hold, such as 60L')
    .option('--holds <MASS>', 'nominal quantity in it, such as 25kg')
    .addOption(
      new Option('--language <LIST>', 'languages, such as de or de,fr (default: en)').argParser(
        read(readLanguages)
      )
    )
    .addOption(
      new Option('--profile <RULES>', 'rules of size and type (default: eu-2028)').choices([
        ...labelProfiles
      ])
    )
    .addOption(
      new Option(
        '--wording <EDITION>',
        'statements of CLP or of the UN, at European sizes (default: clp)'
      ).choices(['clp', 'un'])
    )
    .addOption(
      new Option('--sheet <STOCK>', `print on a sheet of labels: ${stockForm} in mm`).argParser(
        read(readStock)
      )
    )
    .addOption(
      new Option('--copies <N>', 'how many (default: one, or a sheet)').argParser(wholeFrom(1))
    )
    .addOption(
      new Option('--skip <N>', 'places on the first sheet that are used up').argParser(wholeFrom(0))
    )
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(writeLotLabels)

/** A reader of a typed text that tells what is wrong in a sentence. */
function read<Value>(reader: (text: string) => Value | string) {
  return (text: string): Value => {
    const value = reader(text)
    if (typeof value === 'string') throw new InvalidArgumentError(`${value}.`)
    return value
  }
}

const MOST_COPIES = 9999

const wholeFrom = (least: number) =>
  read((text: string) => {
    const value = /^\d{1,4}$/u.test(text) ? Number(text) : -1
    return value >= least ? value : `write a whole number from ${least} to ${MOST_COPIES}`
  })

async function writeLotLabels(lot: string, options: LabelOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const wish = wishOf(options)
  const print = printOf(options)
  const [{ lotLabels }, { chainAsked }] = await Promise.all([
    import('../pipeline.ts'),
    import('./lot-asked.ts')
  ])
  const content = folderFrom(options.content, 'content')
  const files = await readContent(content, userFolder(process.env))
  const chain = chainAsked(files, lot)
  const register = await openRegister(await readRegister(content, userFolder(process.env)))
  const { labels, problems } = lotLabels(chain, lot, wish, {
    register: registerOfLot(register, lot),
    ...(options.asOf !== undefined && { asOf: options.asOf })
  })
  process.stderr.write(problemsText(problems))
  process.stdout.write(`${summaryLine(chain.length, problems)}\n`)
  if (problems.some(isError)) {
    process.stdout.write('Nothing written\n')
    process.exitCode = 1
    return
  }
  if (labels.length === 0)
    throw new Failure(`${lot} has no labels: it is a draft, or a lot that is not sold`)
  const folder = folderFrom(options.out, 'labels')
  const names = await writeLabels(folder, labels, print)
  const shown = relative(userFolder(process.env), folder) || '.'
  process.stdout.write(`Wrote ${count(names.length, 'label')} to ${shown}:\n`)
  for (const name of names) process.stdout.write(`  ${name}\n`)
}

function wishOf(options: LabelOptions): Partial<LabelRules> & LabelChoice {
  const { profile, language, wording, container, capacity, holds } = options
  if (profile === 'us' && wording !== undefined)
    throw new UsageError('--wording goes with European sizes: --profile us has its own')
  const wish = {
    ...(profile !== undefined && { profile }),
    ...(language !== undefined && { languages: language }),
    ...(wording !== undefined && { wording })
  }
  if (capacity === undefined && holds === undefined)
    return container === undefined ? wish : { ...wish, kind: container }
  if (container === undefined || capacity === undefined || holds === undefined)
    throw new UsageError('--capacity and --holds go with each other, and with --container')
  const wanted = readContainer(container, capacity, holds)
  if (typeof wanted === 'string') throw new UsageError(wanted)
  return { ...wish, containers: [wanted] }
}

function printOf({ sheet, copies, skip }: LabelOptions) {
  if (skip !== undefined && !sheet) throw new UsageError('--skip goes with --sheet')
  if (sheet && skip !== undefined && skip >= sheet.columns * sheet.rows)
    throw new UsageError(`--skip leaves no place on a sheet of ${sheet.columns * sheet.rows}`)
  return {
    ...(sheet && { stock: sheet }),
    ...(copies !== undefined && { copies }),
    ...(skip !== undefined && { skip })
  }
}
