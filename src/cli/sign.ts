/** lotfolio sign: sign certificates that were issued unsigned, or with an older key. */

import { Command } from 'commander'
import { documentName } from '../register/compare.ts'
import type { RegisterEvent } from '../register/events.ts'
import { Failure } from '../site/failure.ts'
import { folderFrom } from './folders.ts'
import { calendarDate, contentOption } from './options.ts'
import { added, atDesk, type Desk } from './register-work.ts'
import { count } from './report.ts'
import { signedEvent, type SigningKey, signingKey } from './signing.ts'
import { today } from './today.ts'
import { refuseStray } from './usage.ts'

interface SignOptions {
  readonly content?: string
  readonly key?: string
  readonly date?: string
}

const examples = `
Examples:
  lotfolio sign
  lotfolio sign CT-26-001 CT-26-002 --key 3f2a91c077de05b4

Without numbers, every certificate that stands and bears no signature of the key is signed. The papers
already sent out stay as they are; the register's page and the check of a copy show the signature.
Exit code: 0 when done, 1 when not, 2 for wrong usage.`

export const signCommand = (): Command =>
  new Command('sign')
    .description('sign certificates issued earlier')
    .argument('[numbers...]', 'certificate numbers (default: all that stand unsigned)')
    .addOption(contentOption())
    .option('--key <ID>', 'key to sign with (default: the newest this computer has)')
    .option('--date <DATE>', 'day it is entered (default: today)', calendarDate)
    .addHelpText('after', examples)
    .action(signAll)

async function signAll(
  numbers: readonly string[],
  options: SignOptions,
  command: Command
): Promise<void> {
  refuseStray(command, process.env, numbers.length)
  await atDesk(folderFrom(options.content, 'content'), async desk => {
    const key = await signingKey(desk.register, options.key)
    if (!key)
      throw new Failure('this computer has no key in use: make one with lotfolio keys --make')
    const events = await signatures(desk, numbers, key)
    const texts = desk.documents.values()
    if (events.length > 0)
      await desk.save(await added(desk.log, events, options.date ?? today(), texts))
    process.stdout.write(`Signed ${count(events.length, 'certificate')} with key ${key.id}\n`)
  })
}

async function signatures(
  { register, documents }: Desk,
  numbers: readonly string[],
  key: SigningKey
): Promise<RegisterEvent[]> {
  const standing = register.issued.filter(({ state }) => state === 'current')
  const known = new Set(standing.map(({ revision }) => revision.number))
  const stranger = numbers.find(number => !known.has(number))
  if (stranger !== undefined) throw new Failure(`no certificate ${stranger} stands in the register`)
  const wanted = standing
    .map(({ revision }) => revision)
    .filter(({ number }) => numbers.length === 0 || numbers.includes(number))
    .filter(({ signatures }) => !signatures.some(signature => signature.key === key.id))
  return Promise.all(
    wanted.map(revision => signedEvent(key, revision, documents.get(documentName(revision))!))
  )
}
