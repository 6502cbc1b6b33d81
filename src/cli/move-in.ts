/** lotfolio move-in: years of old lots from a list, one a line, as records. */

import { join, relative } from 'node:path'
import { Command } from 'commander'
import { mappingsIn, sheetBy } from '../intake/mappings.ts'
import { movableKind, type OldLot, oldLots } from '../intake/old-lots.ts'
import { isError, type Problem, type SourceFile } from '../problem.ts'
import { headOf } from '../records/draft.ts'
import { kindOf, lotKinds } from '../records/kinds.ts'
import { Failure } from '../site/failure.ts'
import { readContent } from '../site/read-content.ts'
import { arrivedFile } from './arrived.ts'
import { folderFrom, userFolder } from './folders.ts'
import { contentOption } from './options.ts'
import { isWanted, newProblems, refuseProblems, writeRecords } from './record-change.ts'
import { count, problemsText } from './report.ts'
import { refuseStray } from './usage.ts'

interface MoveInOptions {
  readonly content?: string
  readonly mapping: string
  readonly draft?: boolean
  readonly write?: boolean
}

const examples = `
Examples:
  lotfolio move-in old-lots.xlsx --mapping old-batches
  lotfolio move-in old-lots.csv --mapping old-batches --draft --write

Each line becomes a record, by a mapping whose 'fills:' is batch, expansion, foil or material and whose
columns name their fields with points: product.mass, charge.1.mass, reported.ash.value. A line that
cannot be understood, or whose record would not pass the check, is told and left out; no record that is
there is written over. A column with 'figure:' holds the list's own result, which is held against ours. --draft marks the records as unfinished, to be completed later.
Exit code: 0 when every line became a record, 1 when one did not, 2 for wrong usage.`

export const moveInCommand = (): Command =>
  new Command('move-in')
    .description('make records of old lots out of a list, one a line')
    .argument('<file>', 'CSV or .xlsx file with a line for each lot')
    .addOption(contentOption())
    .requiredOption('--mapping <ID>', 'mapping that says which column is which field')
    .option('--draft', 'mark the records as unfinished')
    .option('--write', 'write without asking')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(moveIn)

async function moveIn(file: string, options: MoveInOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = folderFrom(options.content, 'content')
  const arrived = await arrivedFile(file, undefined)
  const before = await readContent(folder, userFolder(process.env))
  const mapping = mappingsIn(before).mappings.find(({ record }) => record.id === options.mapping)
  if (!mapping) throw new Failure(`there is no sound mapping ${options.mapping}`)
  const kind = movableKind(mapping.record.fills)
  if (!kind)
    throw new Failure(
      `the mapping ${options.mapping} fills a test, not records: use lotfolio import`
    )
  const sheet = sheetBy(arrived, mapping)
  if ('code' in sheet) return void refuseProblems([sheet])
  const lots = oldLots(sheet, mapping, kind, options.draft ?? false)
  if ('problems' in lots) return void refuseProblems(lots.problems)
  const path = ({ lot }: OldLot) =>
    relative(userFolder(process.env), join(folder, kind, `${lot}.yaml`)).replaceAll('\\', '/')
  const inUse = namesIn(before)
  const there = lots.filter(({ lot }) => inUse.has(lot.toLowerCase()))
  const fresh = lots.filter(one => one.text !== undefined && !there.includes(one))
  const files = fresh.map((one): SourceFile => ({ path: path(one), text: one.text! }))
  const sound = await soundPart(folder, before, files)
  const told = [...lots.flatMap(one => [...one.problems, ...one.unread]), ...sound.problems]
  report(lots, there, sound.files, path, told)
  const taken = sound.files.map(file => file.path)
  process.stdout.write(
    await comparison(
      lots.filter(one => taken.includes(path(one))),
      before,
      sound.files
    )
  )
  if (sound.files.length === 0) return void process.stdout.write('Nothing written\n')
  if (!(await isWanted(options.write ?? false))) return
  await writeRecords({ folder, before, written: sound.files })
  process.stdout.write(`Wrote ${count(sound.files.length, 'record')}\n`)
}

/** The list's own figures beside ours, of the lots that become records. */
async function comparison(
  lots: readonly OldLot[],
  before: readonly SourceFile[],
  files: readonly SourceFile[]
): Promise<string> {
  if (lots.every(({ figures }) => figures.length === 0)) return ''
  const [{ judgeContent }, { listedText }] = await Promise.all([
    import('../pipeline.ts'),
    import('../documents/listed-figures.ts')
  ])
  const { evaluated } = judgeContent([...before, ...files])
  return evaluated ? listedText(lots, evaluated) : ''
}

/** Numbers in use, by whatever record. */
const namesIn = (files: readonly SourceFile[]): ReadonlySet<string> =>
  new Set(
    files.flatMap(file =>
      lotKinds.some(kind => kind === kindOf(file))
        ? [headOf(file, 'batch').number.toLowerCase()]
        : []
    )
  )

/** Most rounds of leaving out what does not pass, and what rests on it. */
const MOST_ROUNDS = 8

/** Records that pass the check beside the others; those that do not are left out with the reason. */
async function soundPart(
  folder: string,
  before: readonly SourceFile[],
  files: readonly SourceFile[]
): Promise<{ files: readonly SourceFile[]; problems: readonly Problem[] }> {
  let kept = files
  const told: Problem[] = []
  for (let round = 0; round < MOST_ROUNDS && kept.length > 0; round++) {
    const problems = await newProblems({ folder, before, written: kept })
    const errors = problems.filter(isError)
    if (errors.length === 0) return { files: kept, problems: [...told, ...problems] }
    told.push(...errors)
    const broken = new Set(errors.map(({ file }) => file.path))
    const left = kept.filter(({ path }) => !broken.has(path))
    // An old record that no longer passes beside the new ones: which of them is at fault is not known.
    if (left.length === kept.length) return { files: [], problems: told }
    kept = left
  }
  return { files: [], problems: told }
}

/** What becomes of the list, line by line where something is in the way. */
function report(
  lots: readonly OldLot[],
  there: readonly OldLot[],
  files: readonly SourceFile[],
  path: (lot: OldLot) => string,
  problems: readonly Problem[]
): void {
  process.stderr.write(problemsText(problems))
  const written = new Set(files.map(file => file.path))
  const left = lots.filter(one => one.text === undefined || !written.has(path(one)))
  if (files[0])
    process.stdout.write(
      `The first of ${count(files.length, 'record')}, ${files[0].path}:\n\n${files[0].text}\n`
    )
  for (const one of left)
    process.stdout.write(
      `line ${one.line}, ${one.lot === '' ? 'no number' : one.lot}: ${there.includes(one) ? 'is there already, and stays as it is' : 'left out, see above'}\n`
    )
  process.stdout.write(
    `${count(lots.length, 'line')} read: ${count(files.length, 'record')}, ${left.length} left out\n`
  )
  if (left.length > 0) process.exitCode = 1
}
