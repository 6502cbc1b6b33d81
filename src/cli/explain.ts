/** lotfolio explain: how one figure of a lot, or of a coating panel, came about. */

import { Command } from 'commander'
import type { LotPage } from '../documents/types.ts'
import { type ExplainedFigure, figureList, workingText } from '../documents/working-text.ts'
import { isError } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { asOfOption, contentOption } from './options.ts'
import { problemsText } from './report.ts'
import { refuseStray } from './usage.ts'

interface ExplainOptions {
  readonly content?: string
  readonly asOf?: string
}

const examples = `
Examples:
  lotfolio explain EB-26-001
  lotfolio explain EB-26-001 free-acid
  lotfolio explain FL-26-003 density --as-of 2026-03-14
  lotfolio explain PN-26-03 time-gained

Without a quantity the lot's figures are listed. Only the records the lot rests on are read.
Exit code: 0 when the figure is explained, 1 where it or the lot is not there or a record has errors,
2 for wrong usage.`

export const explainCommand = (): Command =>
  new Command('explain')
    .description('tell how a figure came about: formula, readings, inputs, uncertainty budget')
    .argument('<lot>', 'lot number, or that of a coating panel')
    .argument('[quantity]', "the figure's name in records: 'free-acid'")
    .addOption(contentOption())
    .addOption(asOfOption())
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(explain)

async function explain(
  lot: string,
  quantity: string | undefined,
  options: ExplainOptions,
  command: Command
): Promise<void> {
  refuseStray(command, process.env, 2)
  const [{ buildDocuments }, { chainAsked }] = await Promise.all([
    import('../pipeline.ts'),
    import('./lot-asked.ts')
  ])
  const files = await readContent(folderFrom(options.content, 'content'), userFolder(process.env))
  const chain = chainAsked(files, lot)
  const { asOf } = options
  const { site, problems } = buildDocuments(chain, {
    edition: 'workshop',
    watch: false,
    ...(asOf !== undefined && { asOf })
  })
  if (!site) {
    process.stderr.write(problemsText(problems.filter(isError)))
    throw new Failure(`the records ${lot} rests on have errors`)
  }
  const panel = site.panelPages.find(({ number }) => number === lot)
  if (panel) return void process.stdout.write(textOf(lot, quantity, explained(panel, true)))
  const page = site.lots.find(({ document }) => document.lot === lot)
  if (!page) throw new Failure(`${lot} has no figures: it is a draft, or made later than asked for`)
  process.stdout.write(textOf(lot, quantity, figuresOf(page)))
}

function textOf(
  lot: string,
  quantity: string | undefined,
  figures: readonly ExplainedFigure[]
): string {
  if (quantity === undefined) return figureList(lot, figures)
  const figure = figures.find(({ working }) => working.key === quantity)
  if (figure) return workingText(lot, figure)
  const known = figures.map(({ working }) => working.key).join(', ')
  throw new Failure(`${lot} has no figure '${quantity}'; it has ${known || 'none'}`)
}

/** Figures of the product, then those of the process. */
function figuresOf({ document, process: made }: LotPage): ExplainedFigure[] {
  return [...explained(document, false), ...(made ? explained(made, true) : [])]
}

const explained = (
  { workings, results }: Pick<LotPage['document'], 'workings' | 'results'>,
  isPrivate: boolean
): ExplainedFigure[] =>
  workings.map(working => {
    const row = results.find(({ key }) => key === working.key)
    return { working, isPrivate, ...(row ? { row } : {}) }
  })
