/** lotfolio plan: a charge from the producer's own recipe, stock and limits. */

import { join, relative } from 'node:path'
import { Command, InvalidArgumentError, Option } from 'commander'
import { planDocument } from '../documents/plan.ts'
import type { PlanDocument } from '../documents/plan-types.ts'
import { planText } from '../documents/plan-text.ts'
import { draftKinds } from '../records/draft-fields.ts'
import { headOf, nextNumber, numberFault } from '../records/draft.ts'
import { kindOf } from '../records/kinds.ts'
import { plannedDraft } from '../records/planned-draft.ts'
import { isError, type SourceFile } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { calendarDate, contentOption } from './options.ts'
import { problemsText } from './report.ts'
import { today } from './today.ts'
import { refuseStray, UsageError } from './usage.ts'
import { writeNew } from './write.ts'

interface PlanOptions {
  readonly content?: string
  readonly grade: string
  readonly product?: number
  readonly graphite?: number
  readonly useUp?: string
  readonly vessel?: string
  readonly ammonia?: 'NH3' | 'NH4OH'
  readonly acid?: 'weaker' | 'stronger'
  readonly date?: string
  readonly format: 'text' | 'json'
  readonly draft?: true | string
}

const examples = `
Examples:
  lotfolio plan --grade flake-250 --product 150g --vessel V-2
  lotfolio plan --grade flake-250 --graphite 100g --vessel V-1 --format json
  lotfolio plan --grade flake-250 --use-up GR-26-02 --vessel V-2 --draft

Ratios come from the grade's own 'recipe:', the limit from 'charge-limits:' in producer.yaml; without
them, or beyond the limit, there is no plan. Nothing here says that a charge is safe. A plan is private.
Exit code: 0 for a plan, 1 where there is none, 2 for wrong usage.`

export const planCommand = (): Command =>
  new Command('plan')
    .description('plan a charge: amounts and lots, heats, washing, gas, waste and cautions')
    .addOption(contentOption())
    .requiredOption('--grade <GRADE>', 'grade to make')
    .option('--product <MASS>', 'mass of product wanted, by the mean yield so far', mass)
    .option('--graphite <MASS>', 'mass of graphite to charge', mass)
    .option('--use-up <LOT>', 'use up what a material lot has left')
    .option('--vessel <VESSEL>', 'vessel it is made in (default: the only one with a limit)')
    .addOption(
      new Option('--ammonia <AS>', 'what the per cents of the ammonia are of').choices([
        'NH3',
        'NH4OH'
      ])
    )
    .addOption(
      new Option('--acid <SIDE>', 'acid meant, where a density belongs to two').choices([
        'weaker',
        'stronger'
      ])
    )
    .option('--date <DATE>', 'day it is to be made (default: today)', calendarDate)
    .addOption(
      new Option('--format <FORMAT>', 'form of the plan').choices(['text', 'json']).default('text')
    )
    .option(
      '--draft [NUMBER]',
      'also start the batch as a draft, under the next number or this one'
    )
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(plan)

async function plan(options: PlanOptions, command: Command): Promise<void> {
  refuseStray(command, process.env)
  const wish = wishOf(options)
  const folder = folderFrom(options.content, 'content')
  const files = await readContent(folder, userFolder(process.env))
  const { judgeContent } = await import('../pipeline.ts')
  const { planCharge } = await import('../plan/plan.ts')
  const { evaluated, problems } = judgeContent(files)
  if (!evaluated || problems.some(isError)) {
    process.stderr.write(problemsText(problems))
    throw new Failure('no plan: the records have errors')
  }
  const { grade, vessel, ammonia, acid, date } = options
  const planned = planCharge(evaluated, {
    grade,
    wish,
    day: date ?? today(),
    ...(vessel === undefined ? {} : { vessel }),
    ...(ammonia === undefined ? {} : { ammonia }),
    ...(acid === undefined ? {} : { acid })
  })
  if (!planned.ok) return refuse(planned.reasons, options.format)
  const document = planDocument(planned.plan)
  process.stdout.write(
    options.format === 'json' ? `${JSON.stringify(document, undefined, 2)}\n` : planText(document)
  )
  if (options.draft !== undefined)
    await startDraft(files, folder, document, planned.plan.limit.vessel, options)
}

function wishOf({ product, graphite, useUp }: PlanOptions) {
  const wishes = [
    ...(product === undefined ? [] : [{ product_g: product }]),
    ...(graphite === undefined ? [] : [{ graphite_g: graphite }]),
    ...(useUp === undefined ? [] : [{ useUp }])
  ]
  const [wish] = wishes
  if (!wish || wishes.length > 1)
    throw new UsageError('give one of --product, --graphite and --use-up')
  return wish
}

function refuse(reasons: readonly string[], format: 'text' | 'json'): void {
  process.exitCode = 1
  if (format === 'json')
    process.stdout.write(`${JSON.stringify({ refused: reasons }, undefined, 2)}\n`)
  else process.stderr.write(reasons.map(reason => `lotfolio: no plan: ${reason}\n`).join(''))
}

async function startDraft(
  files: readonly SourceFile[],
  folder: string,
  document: PlanDocument,
  vessel: string,
  { draft, grade }: PlanOptions
): Promise<void> {
  const numbers = files
    .filter(file => kindOf(file) === draftKinds.batch)
    .map(file => headOf(file, 'batch').number)
  const lot = typeof draft === 'string' ? draft : nextNumber(numbers)
  if (lot === undefined)
    throw new Failure('no number follows the last batch: give one with --draft')
  const fault = numberFault(lot)
  if (fault !== undefined) throw new UsageError(`the number of a draft ${fault}`)
  if (numbers.includes(lot)) throw new Failure(`batch ${lot} is already there`)
  const path = join(folder, draftKinds.batch, `${lot}.yaml`)
  const charge = document.lines.map(line => ({
    material: line.lot,
    as: line.as,
    container: line.container,
    planned: line.mass.printed
  }))
  await writeNew(path, plannedDraft({ lot, grade, made: document.day, vessel, charge }))
  process.stderr.write(`Wrote ${relative(userFolder(process.env), path)}\n`)
}

/** '30g', '30 g' or '0.2 kg', in g. */
function mass(text: string): number {
  const [, digits, unit] = /^(\d+(?:\.\d+)?)\s*(kg|g|mg)$/u.exec(text.trim()) ?? []
  const value = Number(digits) * { kg: 1000, g: 1, mg: 0.001 }[unit as 'kg' | 'g' | 'mg']
  if (value > 0) return value
  throw new InvalidArgumentError('Write a mass with its unit, as 30g or 0.2kg.')
}
