/** lotfolio papers: one lot's papers, from the records it rests on and no others. */

import { join, relative } from 'node:path'
import { Command } from 'commander'
import { type IssuedRegister, openRegister, registerOfLot } from '../documents/issued.ts'
import type { LotPage } from '../documents/types.ts'
import { Failure } from '../site/failure.ts'
import { sealFor } from '../site/evidence.ts'
import { archiveFor, asIssued } from '../site/originals.ts'
import { readContent } from '../site/read-content.ts'
import { readRegister } from '../site/read-register.ts'
import type { Steps } from '../site/steps.ts'
import { folderFrom, userFolder } from './folders.ts'
import { asOfOption, contentOption, paperOption } from './options.ts'
import { count, problemsText, summaryLine } from './report.ts'
import { refuseStray } from './usage.ts'
import { writeOver } from './write.ts'

interface PapersOptions {
  readonly content?: string
  readonly out?: string
  readonly asOf?: string
  readonly paper?: 'A4' | 'Letter'
}

const examples = `
Examples:
  lotfolio papers EB-26-001
  lotfolio papers FL-26-003 --out ../to-print --paper Letter

A fault in a record the lot does not rest on is in nobody's way. What is written may go to a
customer: process figures and private fields are not in it.
Exit code: 0 when the papers are written, 1 when not, 2 for wrong usage.`

export const papersCommand = (): Command =>
  new Command('papers')
    .description("write one lot's certificates and data from its own chain of records")
    .argument('<lot>', 'lot number')
    .addOption(contentOption())
    .option('--out <DIR>', 'folder to write to (default: papers)')
    .addOption(asOfOption())
    .addOption(paperOption())
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(writeLotPapers)

async function writeLotPapers(
  lot: string,
  options: PapersOptions,
  command: Command
): Promise<void> {
  refuseStray(command, process.env, 1)
  const [{ buildDocuments }, { chainAsked }, { steps }] = await Promise.all([
    import('../pipeline.ts'),
    import('./lot-asked.ts'),
    import('../site/steps.ts')
  ])
  const content = folderFrom(options.content, 'content')
  const files = await readContent(content, userFolder(process.env))
  const chain = chainAsked(files, lot)
  const { asOf, paper } = options
  const register = await openRegister(await readRegister(content, userFolder(process.env)))
  const { site, problems } = buildDocuments(chain, {
    edition: 'workshop',
    watch: false,
    register: registerOfLot(register, lot),
    ...(asOf !== undefined && { asOf }),
    ...(paper && { paper })
  })
  process.stderr.write(problemsText(problems))
  process.stdout.write(`${summaryLine(chain.length, problems)}\n`)
  const page = site?.lots.find(({ document }) => document.lot === lot)
  if (!site) {
    process.stdout.write('Nothing written\n')
    process.exitCode = 1
    return
  }
  if (!page || page.certificates.length === 0)
    throw new Failure(`${lot} has no papers: it is a draft, or a lot that is not sold`)
  const folder = folderFrom(options.out, 'papers')
  const written = await writePage(page, folder, { steps, register, archive: archiveFor(content) })
  const shown = relative(userFolder(process.env), folder) || '.'
  process.stdout.write(`Wrote ${count(written, 'file')} on ${lot} to ${shown}\n`)
}

interface Tools {
  readonly steps: Steps
  readonly register: IssuedRegister
  readonly archive: string
}

/** The certificates, as issued where they were, and the lot's figures. */
async function writePage(
  page: LotPage,
  folder: string,
  { steps, register, archive }: Tools
): Promise<number> {
  await writeOver(join(folder, `${page.document.lot}.json`), page.attachment ?? '')
  for (const paper of page.certificates) {
    const seal = await sealFor(page, paper, register)
    const drawn = await steps.certificatePdf(paper.document, seal)
    const bytes = paper.issued ? (await asIssued(paper.issued, drawn, archive)).bytes : drawn
    await writeOver(join(folder, paper.url.split('/').at(-1)!), bytes)
  }
  return page.certificates.length + 1
}
