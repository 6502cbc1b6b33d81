/** lotfolio join: one register of two, where two computers issued certificates apart. */

import { existsSync } from 'node:fs'
import { join as joinPath } from 'node:path'
import { Command } from 'commander'
import type { IssuedRegister } from '../documents/issued.ts'
import type { SentCopies } from '../documents/sent-copies.ts'
import { certificateFile } from '../records/certificate-text.ts'
import { documentName, signatureName } from '../register/compare.ts'
import { copyDocument, copyName } from '../register/copy-events.ts'
import type { RegisterEvent } from '../register/events.ts'
import { type Dropped, join, type Joined } from '../register/join.ts'
import { type JoinedCopies, joinCopies } from '../register/join-copies.ts'
import { documentsOf } from '../register/log.ts'
import { Failure } from '../site/failure.ts'
import { folderFrom } from './folders.ts'
import { calendarDate, contentOption } from './options.ts'
import { atDesk, soundRegister } from './register-work.ts'
import { count } from './report.ts'
import { today } from './today.ts'
import { refuseStray } from './usage.ts'

interface JoinOptions {
  readonly content?: string
  readonly date?: string
}

const examples = `
Examples:
  lotfolio join ../from-the-office/content

Both computers issued since their records were last the same. Lines of this computer stay as they are,
those of the other follow. A number that both drew stays with this computer's certificate; the other
is given up, and its lot is to be issued anew. The other folder is only read: replace it afterwards by
a copy of this one.
Exit code: 0 when joined, 1 when not, 2 for wrong usage.`

export const joinCommand = (): Command =>
  new Command('join')
    .description('take in what another computer entered in its copy of the register')
    .argument('<other>', "the other computer's folder with the records")
    .addOption(contentOption())
    .option('--date <DATE>', 'day it is entered (default: today)', calendarDate)
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(joinRegisters)

async function joinRegisters(typed: string, options: JoinOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const content = folderFrom(options.content, 'content')
  const other = folderFrom(typed, typed)
  await atDesk(content, async desk => {
    const theirs = await soundRegister(other)
    const texts = theirs.issued.map(({ text }) => text)
    const held = await documentsOf([...desk.documents.values(), ...texts])
    const { log } = desk
    const date = options.date ?? today()
    const joined = await join(log, theirs.file.text, date, held)
    if (!joined.ok) throw new Failure(`nothing joined: ${joined.faults[0]!.sentence}`)
    if (joined.common === 0) refuseStrangers(desk.register, theirs, other)
    const copies = await joinCopies(desk.register.copies.file.text, theirs.copies.file.text, date)
    if (!copies.ok) throw new Failure(`nothing joined: ${copies.faults[0]!.sentence}`)
    if (joined.text !== log) await desk.save(joined.text, filesIn(joined, theirs))
    if (copies.entered.length > 0)
      await desk.saveCopies(copies.text, copiesIn(copies, theirs.copies))
    report(joined, copies, content)
  })
}

/** With no line in common, only the producer's name can tell another workshop from a first day apart. */
function refuseStrangers(ours: IssuedRegister, theirs: IssuedRegister, other: string): void {
  const names = [...ours.issued, ...theirs.issued].map(
    ({ frozen }) => frozen.certificate.producer.name
  )
  if (new Set(names).size > 1)
    throw new Failure(`${other}: its register is that of another producer, no line in common`)
}

/** The frozen documents, and the signatures of PDFs, that come with what was entered. */
function filesIn({ entered }: Joined, theirs: IssuedRegister): Map<string, string | Uint8Array> {
  const named = new Set(entered.flatMap(fingerprintsIn))
  const files = new Map<string, string | Uint8Array>()
  for (const { revision, text, cms } of theirs.issued) {
    if (named.has(revision.data)) files.set(documentName(revision), text)
    if (cms && named.has(revision.drawn?.cms ?? '')) files.set(signatureName(revision), cms)
  }
  return files
}

const fingerprintsIn = (event: RegisterEvent): string[] => {
  if (isFrozen(event)) return [event.data]
  return event.is === 'drawn' && event.cms !== undefined ? [event.cms] : []
}

const copiesIn = ({ entered }: JoinedCopies, { kept }: SentCopies): Map<string, string> => {
  const data = new Set(entered.map(one => one.data))
  return new Map(
    kept
      .filter(({ sent }) => data.has(sent.data))
      .map(({ sent, text }) => [copyDocument(sent), text])
  )
}

const isFrozen = (event: RegisterEvent) => event.is === 'issued' || event.is === 'amended'

function report(
  { entered, again, dropped, common }: Joined,
  copies: JoinedCopies,
  content: string
): void {
  const taken = entered.filter(isFrozen)
  const without = taken
    .map(certificateFile)
    .filter(name => !existsSync(joinPath(content, 'certificates', name)))
  const lines = [
    `${count(common, 'line')} in common; entered ${count(entered.length, 'line')} of the other register`,
    ...taken.map(
      ({ number, revision, lot }) => `Taken in: ${number}, revision ${revision}, on ${lot}`
    ),
    ...(taken.length > 0 ? [PAPERS] : []),
    ...again.map(lot => `To be issued anew, its number was taken: ${lot}`),
    ...dropped.map(droppedLine),
    ...copies.entered.map(one => `Taken in: customer's copy ${copyName(one)}`),
    ...copies.dropped.map(
      one =>
        `Left out: customer's copy ${copyName(one)}: this computer sent another of that name; ship it again with a reason`
    ),
    ...(without.length > 0 ? [`Copy their records too: certificates/${without.join(', ')}`] : [])
  ]
  process.stdout.write(`${lines.join('\n')}\n`)
}

const PAPERS =
  'Papers of these check as altered, as their proof is of the other register: issue corrections (issue LOT --reason ...)'

function droppedLine({ event, why }: Dropped): string {
  const of = 'number' in event ? `${event.number}, revision ${event.revision}` : `key ${event.key}`
  return `Left out: ${event.is} ${of}: ${why}`
}
