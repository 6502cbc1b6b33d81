/** lotfolio new: the next record, from the last of its kind. */

import { existsSync } from 'node:fs'
import { mkdir, writeFile } from 'node:fs/promises'
import { dirname, join, relative } from 'node:path'
import { Argument, Command } from 'commander'
import { type DraftKind, draftFrom, draftKinds, nextNumber } from '../records/draft.ts'
import { kindOf } from '../records/kinds.ts'
import type { SourceFile } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom, userFolder } from './folders.ts'
import { contentOption } from './options.ts'
import { today } from './today.ts'
import { refuseStray } from './usage.ts'

interface NewOptions {
  readonly content?: string
  readonly number?: string
  readonly date?: string
  readonly like?: string
}

const examples = `
Examples:
  lotfolio new batch
  lotfolio new foil --like FL-26-003 --date 2026-04-02
  lotfolio new material --number GR-26-04

Readings are left blank; a lot is marked 'draft: yes' until you take the line out. No file is ever
overwritten.`

export const newCommand = (): Command =>
  new Command('new')
    .description('start the next record from the last of its kind')
    .addArgument(new Argument('<kind>', 'kind of record').choices(Object.keys(draftKinds)))
    .addOption(contentOption())
    .option('--number <NUMBER>', 'its number (default: the one after the last)')
    .option('--date <DATE>', 'day it was made, received or sent (default: today)')
    .option('--like <NUMBER>', 'record to start from (default: the last of its kind)')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(startRecord)

async function startRecord(kind: DraftKind, options: NewOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = folderFrom(options.content, 'content')
  const files = await readContent(folder, userFolder(process.env))
  const ofKind = files.filter(file => kindOf(file) === draftKinds[kind])
  const previous = previousOf(ofKind, kind, options.like)
  const number = options.number ?? nextNumber(ofKind.map(nameOf))
  if (number === undefined)
    throw new Failure(`no number follows ${nameOf(previous)}: give one with --number`)
  const path = join(folder, draftKinds[kind], fileName(kind, number))
  if (existsSync(path)) throw new Failure(`${shown(path)} is already there: give another --number`)
  await mkdir(dirname(path), { recursive: true })
  await writeFile(
    path,
    draftFrom(previous, kind, fieldsOf(kind, number, options.date ?? today())),
    {
      flag: 'wx'
    }
  )
  process.stdout.write(`Wrote ${shown(path)}, from ${nameOf(previous)}\n`)
}

/** The record to start from: the one asked for, or the last by name. */
function previousOf(ofKind: readonly SourceFile[], kind: DraftKind, like?: string): SourceFile {
  const found = like === undefined ? ofKind.at(-1) : ofKind.find(file => nameOf(file) === like)
  if (found) return found
  throw new Failure(
    like === undefined
      ? `there is no ${kind} yet to start from: write the first one by hand`
      : `there is no ${kind} ${like} to start from`
  )
}

/** A record's number, by its file's name: revisions and editions stand behind it. */
const nameOf = ({ path }: SourceFile) =>
  path
    .split('/')
    .at(-1)!
    .replace(/\.ya?ml$/u, '')
    .replace(/-r\d+$/u, '')

const fileName = (kind: DraftKind, number: string) =>
  kind === 'grade' ? `${number}-r1.yaml` : `${number}.yaml`

/** What a new record says of itself. */
function fieldsOf(kind: DraftKind, number: string, date: string): Record<string, string> {
  switch (kind) {
    case 'material':
      return { lot: number, received: date }
    case 'instrument':
      return { id: number }
    case 'grade':
      return { id: number, revision: '1', 'valid-from': date }
    case 'shipment':
      return { number, sent: date }
    default:
      return { lot: number, made: date }
  }
}

const shown = (path: string) => relative(userFolder(process.env), path)
