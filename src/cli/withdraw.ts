/** lotfolio withdraw: say of an issued certificate that it must no longer be relied on. */

import { Command } from 'commander'
import { revisionsOf, type Standing } from '../register/standing.ts'
import { Failure } from '../site/failure.ts'
import { folderFrom } from './folders.ts'
import { meant } from './lot-asked.ts'
import { calendarDate, contentOption } from './options.ts'
import { added, atDesk } from './register-work.ts'
import { today } from './today.ts'
import { refuseStray } from './usage.ts'

interface WithdrawOptions {
  readonly content?: string
  readonly date?: string
  readonly reason: string
}

const examples = `
Examples:
  lotfolio withdraw CT-26-009 --reason "lot called back: acidity rises in storage"

A withdrawn certificate stays in the register and on its page, with the reason. This cannot be taken
back; a lot that is good after all gets a certificate under a new number.
Exit code: 0 when it is withdrawn, 1 when not, 2 for wrong usage.`

export const withdrawCommand = (): Command =>
  new Command('withdraw')
    .description('say that a certificate must no longer be relied on')
    .argument('<number>', 'certificate number')
    .requiredOption('--reason <TEXT>', 'why, as everyone may read it')
    .addOption(contentOption())
    .option('--date <DATE>', 'day of withdrawal (default: today)', calendarDate)
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(withdraw)

const namesIn = ({ certificates }: Standing): string[] =>
  [...certificates.values()].flatMap(([first]) => first?.number ?? [])

async function withdraw(number: string, options: WithdrawOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const { reason, date = today() } = options
  await atDesk(folderFrom(options.content, 'content'), async ({ register, log, save }) => {
    const last = revisionsOf(register.log.standing, number).at(-1)
    if (!last)
      throw new Failure(
        `the register has no certificate ${number}${meant(number, namesIn(register.log.standing))}`
      )
    const { revision } = last
    const event = { is: 'withdrawn', number: last.number, revision, reason } as const
    await save(await added(log, [event], date, []))
    process.stdout.write(`Withdrawn: ${last.number}, revision ${revision}, on ${last.lot}\n`)
  })
}
