/** lotfolio keys: make a key to sign certificates with, retire one, list them. */

import { randomBytes } from 'node:crypto'
import { Command } from 'commander'
import type { IssuedRegister } from '../documents/issued.ts'
import { keyPairOf } from '../register/keys.ts'
import type { Key } from '../register/standing.ts'
import { Failure } from '../site/failure.ts'
import { folderFrom } from './folders.ts'
import { keepKey, keysFolder, privateKey, refuseInside } from './keys-folder.ts'
import { calendarDate, contentOption } from './options.ts'
import { added, atDesk, type Desk, soundRegister } from './register-work.ts'
import { today } from './today.ts'
import { refuseStray, UsageError } from './usage.ts'

interface KeysOptions {
  readonly content?: string
  readonly make?: true
  readonly note?: string
  readonly retire?: string
  readonly reason?: string
  readonly date?: string
}

const examples = `
Examples:
  lotfolio keys
  lotfolio keys --make --note "office computer"
  lotfolio keys --retire 3f2a91c077de05b4 --reason "computer replaced"

The private half goes to your own configuration folder, or to LOTFOLIO_KEYS: never into the
workshop's folder. Copy it to a safe place. A lost key is retired and another made: what it signed
stays signed, and certificates can be issued unsigned at any time.
Exit code: 0 when done, 1 when not, 2 for wrong usage.`

export const keysCommand = (): Command =>
  new Command('keys')
    .description('make, retire and list the keys certificates are signed with')
    .addOption(contentOption())
    .option('--make', 'make a key and enter its public half in the register')
    .option('--note <TEXT>', 'a word on the new key, as everyone may read it')
    .option('--retire <ID>', 'end the use of a key')
    .option('--reason <TEXT>', 'why it is retired, as everyone may read it')
    .option('--date <DATE>', 'day it is entered (default: today)', calendarDate)
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(keys)

async function keys(options: KeysOptions, command: Command): Promise<void> {
  refuseStray(command, process.env)
  const content = folderFrom(options.content, 'content')
  const date = options.date ?? today()
  const { make: isMaking, retire: old, note, reason } = options
  if (isMaking && old !== undefined)
    throw new UsageError('--make and --retire are two steps: retire the old key, then make another')
  if (isMaking) return atDesk(content, desk => make(content, desk, date, note))
  if (old !== undefined) return atDesk(content, desk => retire(desk, date, old, reason))
  return list(await soundRegister(content))
}

async function make(
  content: string,
  { log, save }: Desk,
  date: string,
  note: string | undefined
): Promise<void> {
  const folder = keysFolder(process.env)
  refuseInside(folder, content)
  const pair = await keyPairOf(randomBytes(32))
  const event = { is: 'key-added', key: pair.id, publicKey: pair.publicKey } as const
  const longer = await added(log, [{ ...event, ...(note === undefined ? {} : { note }) }], date, [])
  // The private half first: a key in the register that nobody holds would be of no use.
  const path = await keepKey(folder, pair)
  await save(longer)
  process.stdout.write(`Made key ${pair.id}; its private half: ${path}\nCopy it to a safe place\n`)
}

async function retire(
  { log, save }: Desk,
  date: string,
  key: string,
  reason: string | undefined
): Promise<void> {
  if (reason === undefined) throw new Failure('a key is retired with a --reason "..."')
  await save(await added(log, [{ is: 'key-retired', key, reason }], date, []))
  process.stdout.write(`Retired key ${key}: what it signed stays signed\n`)
}

async function list({ log }: IssuedRegister): Promise<void> {
  const all = [...log.standing.keys.values()]
  if (all.length === 0)
    process.stdout.write('No keys: certificates are issued unsigned (make one: --make)\n')
  for (const key of all) process.stdout.write(`${await keyLine(key)}\n`)
}

async function keyLine({ key, date, note, retired }: Key): Promise<string> {
  const isHere = (await privateKey(keysFolder(process.env), key)) !== undefined
  return [
    `${key}  from ${date}`,
    retired ? `retired ${retired.date}: ${retired.reason}` : 'in use',
    isHere ? 'private half on this computer' : 'private half elsewhere',
    ...(note === undefined ? [] : [note])
  ].join('; ')
}
