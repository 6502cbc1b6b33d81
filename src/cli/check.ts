/** lotfolio check: what is wrong with the records, and nothing written. */

import { Command, Option } from 'commander'
import { isError } from '../problem.ts'
import { readContent } from '../site/read-content.ts'
import { readPictures } from '../site/read-pictures.ts'
import { readRegister } from '../site/read-register.ts'
import { folderFrom, userFolder } from './folders.ts'
import { spareMemory } from './memory.ts'
import { asOfOption, contentOption } from './options.ts'
import { problemsJson, problemsText, summaryLine } from './report.ts'
import { refuseStray } from './usage.ts'

interface CheckOptions {
  readonly content?: string
  readonly asOf?: string
  readonly format: 'text' | 'json'
}

const examples = `
Examples:
  lotfolio check
  lotfolio check --content ../records --as-of 2026-03-14
  lotfolio check --format json

Exit code: 0 without errors, 1 with errors or where a folder cannot be read, 2 for wrong usage.`

export const checkCommand = (): Command =>
  new Command('check')
    .description('report everything that is wrong with the records; write nothing')
    .addOption(contentOption())
    .addOption(asOfOption())
    .addOption(
      new Option('--format <FORMAT>', 'form of the report')
        .choices(['text', 'json'])
        .default('text')
    )
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(check)

async function check(options: CheckOptions, command: Command): Promise<void> {
  refuseStray(command, process.env)
  spareMemory()
  const [{ judgeContent, withSignals }, { openRegister }] = await Promise.all([
    import('../pipeline.ts'),
    import('../documents/issued.ts')
  ])
  const content = folderFrom(options.content, 'content')
  const base = userFolder(process.env)
  const files = await readContent(content, base)
  const register = await openRegister(await readRegister(content, base))
  const judged = judgeContent(files, options.asOf, register)
  const problems = withSignals(judged, register, await readPictures(content))
  const drafts = judged.evaluated?.content.drafts.length ?? 0
  process.stdout.write(
    options.format === 'json'
      ? problemsJson(files.length, problems)
      : `${problemsText(problems)}${summaryLine(files.length, problems, drafts)}\n`
  )
  if (problems.some(isError)) process.exitCode = 1
}
