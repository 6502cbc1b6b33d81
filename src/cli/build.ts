/** lotfolio build: the site, or what is wrong with the records. */

import { relative } from 'node:path'
import { Command, Option } from 'commander'
import type { SiteDocument } from '../documents/types.ts'
import { folderFrom, userFolder } from './folders.ts'
import { spareMemory } from './memory.ts'
import { asOfOption, contentOption, paperOption } from './options.ts'
import { showProgress } from './progress.ts'
import { count, problemsText, summaryLine } from './report.ts'
import { refuseStray } from './usage.ts'

interface BuildCommandOptions {
  readonly content?: string
  readonly out?: string
  readonly edition: 'public' | 'workshop'
  readonly asOf?: string
  readonly paper?: 'A4' | 'Letter'
}

/** Where each edition goes when the command does not say. */
const outputFolders = { public: '_site', workshop: 'private' } as const

const examples = `
Examples:
  lotfolio build
  lotfolio build --out public_html --paper Letter
  lotfolio build --edition workshop --as-of 2026-03-14

The old site stays until the new one is whole; an error in the records leaves it as it is.
Exit code: 0 when the site is written, 1 when it is not, 2 for wrong usage.`

export const buildCommand = (): Command =>
  new Command('build')
    .description('write the site: pages, certificates, data')
    .addOption(contentOption())
    .option('--out <DIR>', 'folder of the site (default: _site; for the workshop edition: private)')
    .addOption(
      new Option('--edition <EDITION>', 'public: what customers may see; workshop: everything')
        .choices(['public', 'workshop'])
        .default('public')
    )
    .addOption(asOfOption())
    .addOption(paperOption())
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(build)

async function build(options: BuildCommandOptions, command: Command): Promise<void> {
  refuseStray(command, process.env)
  spareMemory()
  const [{ buildSite }, { steps }] = await Promise.all([
    import('../site/build.ts'),
    import('../site/steps.ts')
  ])
  const { edition, asOf, paper } = options
  const out = folderFrom(options.out, outputFolders[edition])
  const { site, files, problems } = await buildSite(
    {
      content: folderFrom(options.content, 'content'),
      out,
      base: userFolder(process.env),
      edition,
      ...(asOf !== undefined && { asOf }),
      ...(paper && { paper }),
      progress: showProgress('lots')
    },
    steps
  )
  // What chance seldom does is told by check and charts; a build says what bears on what it writes.
  process.stderr.write(problemsText(problems.filter(({ code }) => code !== 'PROCESS_SIGNAL')))
  process.stdout.write(`${summaryLine(files, problems)}\n${outcome(site, out)}\n`)
  if (!site) process.exitCode = 1
}

function outcome(site: SiteDocument | undefined, out: string): string {
  if (!site) return 'Nothing written'
  const folder = relative(userFolder(process.env), out) || '.'
  return `Wrote ${count(site.lots.length, 'lot')} to ${folder}, ${site.edition} edition as of ${site.asOf}`
}
