/** lotfolio new: the next record, from the last of its kind. */

import { join, relative } from 'node:path'
import { Argument, Command, InvalidArgumentError } from 'commander'
import type { SourceFile } from '../problem.ts'
import { cutNumber, draftFrom, headOf, nextNumber, numberFault } from '../records/draft.ts'
import { type DraftKind, draftKinds, numberFields } from '../records/draft-fields.ts'
import { firstRecord } from '../records/first-record.ts'
import { kindOf } from '../records/kinds.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { calendarDate, contentOption } from './options.ts'
import { today } from './today.ts'
import { refuseStray, UsageError } from './usage.ts'
import { writeNew } from './write.ts'

interface NewOptions {
  readonly content?: string
  readonly number?: string
  readonly date?: string
  readonly like?: string
  readonly lot?: string
}

const examples = `
Examples:
  lotfolio new batch
  lotfolio new foil --like FL-26-003 --date 2026-04-02
  lotfolio new material --like GR-26-03
  lotfolio new grade --like flake-250 --number flake-300
  lotfolio new certificate --lot EB-26-013
  lotfolio new mapping --like gauge-1 --number gauge-2

The new record has the fields, order and comments of the one it starts from, unless told otherwise
the last that is no draft; the first of a kind is blank. Readings are left blank, and a lot is marked
'draft: yes' until you take the line out. A grade or method without a new number becomes its own next
revision or edition; a certificate takes the next number of the workshop, and with the number of an
earlier one becomes its next revision. No file is ever overwritten.`

export const newCommand = (): Command =>
  new Command('new')
    .description('start the next record from the last of its kind')
    .addArgument(new Argument('<kind>', 'kind of record').choices(Object.keys(draftKinds)))
    .addOption(contentOption())
    .option('--number <NUMBER>', 'its number (default: the one after the last)', recordNumber)
    .option(
      '--date <DATE>',
      'day it was made, received, sent, issued or standardised, or is valid from (default: today)',
      calendarDate
    )
    .option('--like <NUMBER>', 'record to start from (default: the last of its kind)')
    .option('--lot <LOT>', 'lot a certificate is on (default: left blank)', recordNumber)
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(startRecord)

/** A record of the kind asked for. */
interface Known {
  readonly file: SourceFile
  readonly number: string
  readonly draft: boolean
}

async function startRecord(kind: DraftKind, options: NewOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  if (options.lot !== undefined && kind !== 'certificate')
    throw new UsageError('--lot is for certificates alone')
  const folder = folderFrom(options.content, 'content')
  const files = await readContent(folder, userFolder(process.env))
  const known = files
    .filter(file => kindOf(file) === draftKinds[kind])
    .map(file => ({ file, ...headOf(file, kind) }))
  const previous = previousOf(known, options) ?? firstOf(kind, options.like)
  const number = options.number ?? followingNumber(kind, known, previous, options.like)
  const revision = known.filter(record => record.number === number).length + 1
  const sign = revisionSigns[kind]
  if (sign === undefined && revision > 1)
    throw new Failure(`${kind} ${number} is already there: give another --number`)
  const fields = fieldsOf(kind, number, options.date ?? today(), revision, options.lot)
  const name = sign === undefined ? `${number}.yaml` : `${number}-${sign}${revision}.yaml`
  const path = join(folder, draftKinds[kind], name)
  await writeNew(path, draftFrom(previous.file, kind, fields))
  const from = known.length === 0 ? '' : `, from ${previous.number} (another: --like NUMBER)`
  process.stdout.write(`Wrote ${shown(path)}${from}\n${nextStep(kind, fields)}\n`)
}

/** Kinds with revisions or editions, and the letter before these in their files' names. */
const revisionSigns: Partial<Record<DraftKind, string>> = {
  grade: 'r',
  certificate: 'r',
  method: 'e'
}

/** Where there is none of the kind yet: a blank one. */
function firstOf(kind: DraftKind, like: string | undefined): Known {
  if (like !== undefined) throw new Failure(`there is no ${kind} ${like} to start from`)
  const { number, text } = firstRecord(kind)
  return { file: { path: `${number}.yaml`, text }, number, draft: false }
}

/** The record asked for; or the last whose number has the pattern asked for, or the last of all. */
function previousOf(
  known: readonly Known[],
  { like, number }: Pick<NewOptions, 'like' | 'number'>
): Known | undefined {
  if (like !== undefined) return known.findLast(record => record.number === like)
  const same = known.filter(record => record.number === number)
  const alike = known.filter(record => stemOf(record.number) === stemOf(number ?? ''))
  const candidates = [same, alike].find(({ length }) => length > 0) ?? known
  return candidates.findLast(({ draft }) => !draft) ?? candidates.at(-1)
}

const stemOf = (number: string) => cutNumber(number)?.stem

/** The number after the last; a grade or method keeps its own and becomes its next revision. */
function followingNumber(
  kind: DraftKind,
  known: readonly Known[],
  previous: Known,
  like: string | undefined
): string {
  if (kind === 'grade' || kind === 'method' || known.length === 0) return previous.number
  const numbers = known.map(({ number }) => number)
  const number = nextNumber(numbers, like)
  if (number !== undefined) return number
  throw new Failure(`no number follows ${previous.number}: give one with --number`)
}

/** What a new record says of itself. */
function fieldsOf(
  kind: DraftKind,
  number: string,
  date: string,
  revision: number,
  lot: string | undefined
): Record<string, string> {
  const named = { [numberFields[kind]]: number }
  switch (kind) {
    case 'material':
      return { ...named, received: date }
    case 'instrument':
    case 'mapping':
      return named
    case 'complaint':
      return { ...named, received: date }
    case 'waste':
      return { ...named, collected: date }
    case 'incident':
      return { ...named, happened: date }
    case 'panel':
      return { ...named, made: date }
    case 'grade':
      return { ...named, revision: String(revision), 'valid-from': date }
    case 'shipment':
      return { ...named, sent: date }
    case 'titrant':
      return { ...named, standardised: date }
    case 'method':
      return { ...named, edition: String(revision), 'valid-from': date }
    case 'certificate':
      return {
        ...named,
        revision: String(revision),
        issued: date,
        ...(lot === undefined ? {} : { lot }),
        ...(revision > 1 ? { reason: '' } : {})
      }
    default:
      return { ...named, made: date }
  }
}

/** What to do with the new file. */
function nextStep(kind: DraftKind, fields: Readonly<Record<string, string>>): string {
  if (kind === 'grade')
    return `Change what is new in it: it holds for lots made from ${fields['valid-from']} on`
  if (kind === 'method')
    return `Change what is new in it, repeatability included: it holds for tests from ${fields['valid-from']} on`
  if (kind === 'mapping')
    return "Change what is new in it: import takes the mapping that fits a file's headings"
  if (kind === 'certificate')
    return fields.lot === undefined || 'reason' in fields
      ? `Fill in the ${'reason' in fields ? 'reason' : 'blanks'}, and check`
      : 'Check: the lot must be released by that day'
  return 'made' in fields && kind !== 'panel'
    ? "Fill in the blanks, take out what was not done, then the line 'draft: yes', and check"
    : 'Fill in the blanks, take out what does not apply, and check'
}

function recordNumber(text: string): string {
  const fault = numberFault(text)
  if (fault === undefined) return text
  throw new InvalidArgumentError(`A number ${fault}.`)
}

const shown = (path: string) => relative(userFolder(process.env), path)
