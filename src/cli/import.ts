/** lotfolio import: readings from an instrument's file into the record of a lot. */

import { join, relative } from 'node:path'
import { Command, InvalidArgumentError, Option } from 'commander'
import { fittingMappings, mappingsIn, readMapping, sheetBy } from '../intake/mappings.ts'
import { takeOver } from '../intake/take-over.ts'
import { targetOf, type Target } from '../intake/target.ts'
import type { Problem, SourceFile } from '../problem.ts'
import { parseRecord } from '../records/document.ts'
import { numberFault } from '../records/draft.ts'
import { type Kind, kindNames, kindOf, schemas } from '../records/kinds.ts'
import { knownFields } from '../records/known-fields.ts'
import { mappingFile, mappingText, type ToldMapping } from '../records/mapping-text.ts'
import { lotNumbers } from '../records/own-chain.ts'
import { fillable } from '../records/schemas/mapping.ts'
import type { Entry, Mapping } from '../records/types.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { decimalMarks } from '../tables/numbers.ts'
import { delimiters, encodings } from '../tables/sheet.ts'
import { type ArrivedFile, arrivedFile } from './arrived.ts'
import { folderFrom, userFolder } from './folders.ts'
import { meant } from './lot-asked.ts'
import { calendarDate, contentOption } from './options.ts'
import {
  differenceText,
  isWanted,
  newProblems,
  refuseProblems,
  writeRecords
} from './record-change.ts'
import { count } from './report.ts'
import { refuseStray, UsageError } from './usage.ts'

interface ImportOptions {
  readonly content?: string
  readonly lot: string
  readonly test: string
  readonly mapping?: string
  readonly map?: readonly ToldMapping['columns'][number][]
  readonly reading?: string
  readonly decimal?: string
  readonly delimiter?: string
  readonly encoding?: string
  readonly sheet?: string
  readonly save?: string
  readonly step?: number
  readonly tested?: string
  readonly written?: string
  readonly add?: boolean
  readonly write?: boolean
}

const examples = `
Examples:
  lotfolio import gauge.csv --lot FL-26-014 --test thickness
  lotfolio import titrator.csv --lot EB-26-016 --test free-acid --tested 2026-11-03 --write
  lotfolio import gauge.csv --lot FL-26-015 --test sheets --map "Sheet=id" \\
    --map "Thickness=thickness mm" --map "Remark=" --save gauge-1

Shows what it would change in the lot's record, and writes it with --write or when you say yes. Blank
fields are filled; nothing is written over. A mapping in mappings/ says which column is which field;
without --mapping the one that fits the file is used. What can be read two ways is never guessed:
1,234 needs 'decimal:' in the mapping, a column without a unit its 'unit:'.
Exit code: 0 when shown or written, 1 when something is wrong, 2 for wrong usage.`

export const importCommand = (): Command =>
  new Command('import')
    .description("take an instrument's readings over into the record of a lot")
    .argument('<file>', 'CSV or .xlsx file of a gauge, balance, titrator, logger or tester')
    .addOption(contentOption())
    .requiredOption('--lot <LOT>', 'lot, or coating panel, the readings are of')
    .addOption(
      new Option(
        '--test <NAME>',
        'test they are of; sheets or thickness: of foil, x and y its places; log: temperatures'
      )
        .choices(fillable)
        .makeOptionMandatory()
    )
    .option('--mapping <ID>', 'mapping to read it by (default: the one that fits)')
    .option('--map <COLUMN=FIELD UNIT>', 'what a column is, without a mapping', mapped)
    .option('--reading <COLUMN>', 'column that tells readings apart, without a mapping')
    .addOption(new Option('--decimal <MARK>', 'decimal mark').choices(Object.keys(decimalMarks)))
    .addOption(
      new Option('--delimiter <NAME>', 'what parts entries').choices(Object.keys(delimiters))
    )
    .addOption(new Option('--encoding <NAME>', 'encoding of the text').choices(encodings))
    .option('--sheet <NAME>', 'sheet of a spreadsheet')
    .option('--save <ID>', 'save what --map and others say as a mapping')
    .option('--step <NUMBER>', 'step of the batch that a log is of (default: the first)', position)
    .option(
      '--tested <DATE>',
      'day of the test, where neither record nor file says it',
      calendarDate
    )
    .option('--written <MOMENT>', 'when the file was written (default: as the disk says)')
    .option('--add', 'put the readings behind those that are there')
    .option('--write', 'write without asking')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(importReadings)

async function importReadings(
  file: string,
  options: ImportOptions,
  command: Command
): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = folderFrom(options.content, 'content')
  const arrived = await arrivedFile(file, options.written)
  const before = await readContent(folder, userFolder(process.env))
  const { record, target } = recordOf(before, options)
  const chosen = options.map
    ? toldMapping(folder, options)
    : { mapping: chooseMapping(before, arrived, options, target) }
  if ('problems' in chosen) return void refuseProblems(chosen.problems)
  const sheet = sheetBy(arrived, chosen.mapping)
  if ('code' in sheet) return void refuseProblems([sheet])
  const { tested, add } = options
  const taken = takeOver(record, sheet, {
    target,
    mapping: chosen.mapping,
    source: arrived.source,
    tested,
    add
  })
  if (!taken.ok) return void refuseProblems(taken.problems)
  const saved = options.save === undefined ? [] : [chosen.mapping.file]
  const written = [{ ...record, text: taken.value.text }, ...saved]
  const change = { folder, before, written }
  process.stdout.write(differenceText(change))
  if (refuseProblems(await newProblems(change)) || !(await isWanted(options.write ?? false))) return
  await writeRecords(change)
  const n = taken.value.readings
  process.stdout.write(
    `Wrote ${count(n, 'reading')} to ${written.map(({ path }) => path).join(' and ')}\n`
  )
}

/** The lot's record and the part of it that the readings go into. */
function recordOf(
  files: readonly SourceFile[],
  { lot, test, step = 1 }: ImportOptions
): { record: SourceFile; target: Target } {
  const kinds: readonly Kind[] = ['batches', 'expansions', 'foils', 'panels']
  const records = files.filter(file => {
    const kind = kindOf(file)
    if (!kind || !kinds.includes(kind)) return false
    const document = parseRecord(file)
    return document.ok && numberIn(document.value.data, kind) === lot
  })
  const [record, second] = records
  if (!record)
    throw new Failure(
      `no readable record has the lot number ${lot}${meant(lot, lotNumbers(files))}`
    )
  if (second) throw new Failure(`${record.path} and ${second.path} both have the lot number ${lot}`)
  const kind = kindOf(record)!
  const target = targetOf(kind, test, step - 1)
  if (!target) throw new Failure(`the record of a ${kindNames[kind]} has no part '${test}'`)
  return { record, target }
}

/** A panel goes by its number: the lot it names is its flake. */
const numberIn = (data: unknown, kind: Kind): unknown => {
  const { lot, number } = data as { lot?: unknown; number?: unknown }
  return kind === 'panels' ? number : lot
}

/** The mapping named, or the one of this part whose columns the file has. */
function chooseMapping(
  files: readonly SourceFile[],
  arrived: ArrivedFile,
  { mapping: id, test, decimal, delimiter, encoding, sheet, reading, save }: ImportOptions,
  target: Target
): Entry<Mapping> {
  const loose = Object.entries({ decimal, delimiter, encoding, sheet, reading, save })
  const stray = loose.find(([, value]) => value !== undefined)?.[0]
  if (stray !== undefined)
    throw new UsageError(`--${stray} goes with --map; a mapping says it in its file`)
  const { mappings } = mappingsIn(files)
  if (id !== undefined) {
    const named = mappings.find(({ record }) => record.id === id)
    if (!named) throw new Failure(`there is no sound mapping ${id}`)
    if (named.record.fills !== test)
      throw new Failure(`the mapping ${id} fills '${named.record.fills}', not '${test}'`)
    return named
  }
  // Of a single one, what does not fit is told.
  const ofTest = mappings.filter(({ record }) => record.fills === test)
  const fits = ofTest.length === 1 ? ofTest : fittingMappings(arrived, mappings, test)
  const [fitting, second] = fits
  if (!fitting) throw new Failure(noMapping(test, target))
  if (second)
    throw new Failure(
      `the mappings ${fitting.record.id} and ${second.record.id} both fit: name one with --mapping`
    )
  return fitting
}

function noMapping(test: string, { kind, list, base }: Target): string {
  const fields = [...knownFields(schemas[kind], [...list, 0]), ...knownFields(schemas[kind], base)]
  const shown = [...new Set(fields)]
    .filter(name => !['readings', 'sources'].includes(name))
    .join(', ')
  return `no mapping for '${test}' fits this file: say what each column is, as --map "Column=field unit", or --map "Column=" to leave it out; fields: ${shown}`
}

/** A mapping from the options. */
function toldMapping(
  folder: string,
  { test, map = [], reading, decimal, delimiter, encoding, sheet, save, mapping }: ImportOptions
): { mapping: Entry<Mapping> } | { problems: readonly Problem[] } {
  if (mapping !== undefined) throw new UsageError('give --mapping or --map, not both')
  const id = save ?? 'unsaved'
  const fault = numberFault(id)
  if (fault !== undefined) throw new UsageError(`--save: a name ${fault}`)
  const said = { encoding, delimiter, decimal, sheet }
  const file = Object.fromEntries(
    Object.entries(said).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]))
  )
  const text = mappingText({ id, fills: test, file, reading, columns: map })
  const path = relative(userFolder(process.env), join(folder, mappingFile(id))).replaceAll(
    '\\',
    '/'
  )
  const read = readMapping({ path, text })
  return read.ok ? { mapping: read.value } : { problems: read.problems }
}

/** 'Thickness=thickness mm' → the column Thickness, its field and its unit. */
function mapped(text: string, before: readonly ToldMapping['columns'][number][] = []) {
  const match = /^(.+)=\s*(\S*)\s*(.*)$/u.exec(text)
  if (!match) throw new InvalidArgumentError('Write it as "Thickness=thickness mm".')
  const [, column, to, unit] = match
  return [...before, { column: column!.trim(), ...(to ? { to } : {}), ...(unit ? { unit } : {}) }]
}

function position(text: string): number {
  if (/^[1-9]\d?$/u.test(text)) return Number(text)
  throw new InvalidArgumentError('Write the number of the step, from 1.')
}
