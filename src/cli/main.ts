/** The program: which command to run, and how each kind of failure ends. */

import { Command, CommanderError } from 'commander'
import { Failure } from '../site/failure.ts'
import { version } from '../site/project.ts'
import { buildCommand } from './build.ts'
import { checkCommand } from './check.ts'
import { explainCommand } from './explain.ts'
import { importCommand } from './import.ts'
import { issueCommand } from './issue.ts'
import { joinCommand } from './join.ts'
import { keysCommand } from './keys.ts'
import { labelCommand } from './label.ts'
import { moveInCommand } from './move-in.ts'
import { newCommand } from './new.ts'
import { papersCommand } from './papers.ts'
import { planCommand } from './plan.ts'
import { schemasCommand } from './schemas.ts'
import { setupCommand } from './setup.ts'
import { shipCommand } from './ship.ts'
import { sheetCommand } from './sheet.ts'
import { signCommand } from './sign.ts'
import { startCommand } from './start.ts'
import { traceCommand } from './trace.ts'
import { UsageError } from './usage.ts'
import { verifyCommand } from './verify.ts'
import { withdrawCommand } from './withdraw.ts'

/**
 * Run the program.
 *
 * What a user can put right ends in one line on standard error, with exit code 2 for wrong usage and
 * 1 for the rest; anything else is our fault and keeps its stack.
 */
export async function main(args: readonly string[]): Promise<void> {
  process.stdout.on('error', endOnClosedPipe)
  try {
    await program().parseAsync(args, { from: 'user' })
  } catch (error) {
    const ending = endingFor(error)
    if (!ending) throw error
    process.exitCode = ending.code
    if (ending.line) process.stderr.write(`lotfolio: ${ending.line}\n`)
  }
}

function program(): Command {
  const top = new Command('lotfolio')
    .description('Lot pages, certificates and data from batch records.')
    .version(version)
    .helpCommand(false)
    .configureHelp({ showGlobalOptions: false })
  for (const command of commands()) top.addCommand(command)
  for (const command of [top, ...top.commands])
    command.exitOverride().configureOutput({ outputError: () => undefined })
  return top
}

/** In the order of a workshop's day. */
const commands = (): Command[] => [
  buildCommand(),
  checkCommand(),
  startCommand(),
  planCommand(),
  sheetCommand(),
  newCommand(),
  importCommand(),
  moveInCommand(),
  setupCommand(),
  schemasCommand(),
  explainCommand(),
  papersCommand(),
  labelCommand(),
  issueCommand(),
  withdrawCommand(),
  keysCommand(),
  signCommand(),
  verifyCommand(),
  joinCommand(),
  shipCommand(),
  traceCommand()
]

interface Ending {
  readonly code: number
  readonly line?: string
}

function endingFor(error: unknown): Ending | undefined {
  if (error instanceof UsageError) return { code: 2, line: error.message }
  if (error instanceof Failure) return { code: 1, line: error.message }
  if (!(error instanceof CommanderError)) return undefined
  if (error.exitCode === 0) return { code: 0 }
  // The help shown for want of a command says it all.
  if (error.code === 'commander.help') return { code: 2 }
  return { code: 2, line: error.message.replace(/^error: /u, '').replaceAll('\n', ' ') }
}

/** A reader that has seen enough, such as `head`, is no failure. */
function endOnClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error
  process.exit()
}
