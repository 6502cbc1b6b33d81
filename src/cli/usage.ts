/** Wrong usage of a command, and the commonest cause of it: npm keeping the options for itself. */

import type { Command } from 'commander'
import { Failure } from '../site/failure.ts'
import { isRunByNpm } from './folders.ts'

/** The command was called in a way it cannot follow: exit code 2. */
export class UsageError extends Failure {}

/**
 * Refuse arguments a command does not take, and options npm has taken away.
 *
 * `npm run check --content X` hands the program the argument X alone: npm takes `--content` for an
 * option of its own and leaves it in the environment. The message shows the call that was meant.
 *
 * @param takes how many arguments the command takes
 * @throws UsageError
 */
export function refuseStray(command: Command, environment: NodeJS.ProcessEnv, takes = 0): void {
  const [stray] = command.args.slice(takes)
  const kept = isRunByNpm(environment) ? keptByNpm(command, environment) : []
  if (stray === undefined && kept.length === 0) return
  const what =
    stray === undefined
      ? `npm kept the option ${kept[0]?.flag} for itself`
      : `unexpected argument '${stray}'`
  throw new UsageError(`${what}: write ${meantCall(command, kept, environment, takes)}`)
}

interface Kept {
  readonly flag: string
  /** Absent where the value became an argument. */
  readonly value?: string
}

function keptByNpm(command: Command, environment: NodeJS.ProcessEnv): Kept[] {
  return command.options.flatMap(option => {
    const name = option.long?.slice(2).replaceAll('-', '_')
    const value = environment[`npm_config_${name}`]
    const given = command.getOptionValueSource(option.attributeName()) === 'cli'
    if (!option.long || value === undefined || given) return []
    return [value === 'true' ? { flag: option.long } : { flag: option.long, value }]
  })
}

/** The call as it should have been: 'npm run check -- --content X'. */
function meantCall(
  command: Command,
  kept: readonly Kept[],
  environment: NodeJS.ProcessEnv,
  takes: number
): string {
  const taken = command.args.slice(0, takes)
  const strays = command.args.slice(takes)
  const options = kept.map(({ flag, value }) => `${flag} ${value ?? strays.shift() ?? 'VALUE'}`)
  options.push(...strays.map(stray => `--content ${stray}`))
  const start = isRunByNpm(environment)
    ? ['npm run', command.name(), '--']
    : ['lotfolio', command.name()]
  return [...start, ...taken, ...options].join(' ')
}
