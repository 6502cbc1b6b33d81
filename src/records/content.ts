/** All files of a content folder to the content of a workshop. */

import { type Checked, type Problem, problemAt, type SourceFile } from '../problem.ts'
import { parseRecord, type RecordDocument } from './document.ts'
import { type Kind, kindNames, kindOf, type RecordOf, schemas } from './kinds.ts'
import { checkReferences } from './references.ts'
import type { Content, Draft, Entry } from './types.ts'
import { suggestion, validateRecord } from './validate.ts'

/** Records of every kind, in the order of their files. */
type Collected = { [Name in Kind]: Entry<RecordOf<Name>>[] } & { drafts: Draft[] }

/**
 * Parse, validate and cross-check every record.
 *
 * @param files in any order; their paths decide what kind of record each is
 * @returns the content, or every problem in every file
 */
export function loadContent(files: readonly SourceFile[]): Checked<Content> {
  const collected = Object.fromEntries(
    [...Object.keys(schemas), 'drafts'].map(kind => [kind, []])
  ) as unknown as Collected
  const problems: Problem[] = []
  for (const file of files) problems.push(...collect(collected, file))
  problems.push(...checkProducer(collected, files), ...checkNames(collected))
  const content = assemble(collected)
  if (!content) return { ok: false, problems }
  problems.push(...checkReferences(content, unreadNames(files, collected)))
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: content, problems }
}

function collect(collected: Collected, file: SourceFile): Problem[] {
  const kind = kindOf(file)
  if (!kind) return [misplaced(file)]
  const document = parseRecord(file)
  if (!document.ok) return [...document.problems]
  const record = validateRecord(document.value, kind)
  if (isDraft(document.value)) {
    collected.drafts.push(draftOf(document.value, record.problems))
    return []
  }
  if (!record.ok) return [...record.problems]
  const { placeOf, keyPlaceOf } = document.value
  const entry = { record: record.value, at: placeOf, keyAt: keyPlaceOf } as Entry<never>
  collected[kind].push(entry)
  return []
}

function misplaced(file: SourceFile): Problem {
  const folders = Object.keys(schemas).filter(kind => kind !== 'producer')
  const folder = file.path.split('/').at(-2) ?? ''
  return problemAt(
    { file, field: [], range: [0, 1] },
    'MISPLACED_FILE',
    `stands in folder '${folder}', which holds no kind of record`,
    suggestion(folder, folders, 'folders')
  )
}

const isDraft = ({ data }: RecordDocument) => (data as { draft?: unknown }).draft === 'yes'

function draftOf({ data, file }: RecordDocument, problems: readonly Problem[]): Draft {
  const lot = (data as { lot?: unknown }).lot
  return {
    lot: typeof lot === 'string' ? lot : file.path.split('/').at(-1)!,
    path: file.path,
    missing: problems.map(({ field, message }) => `${field.join(' › ')}: ${message}`)
  }
}

function checkProducer({ producer }: Collected, files: readonly SourceFile[]): Problem[] {
  if (files.some(file => kindOf(file) === 'producer'))
    return producer
      .slice(1)
      .map(entry =>
        problemAt(
          entry.keyAt(['name']),
          'DUPLICATE_ID',
          'is a second producer record',
          'keep one producer.yaml'
        )
      )
  const file = { path: 'producer.yaml', text: '' }
  return [
    problemAt(
      { file, field: [], range: [0, 1] },
      'MISSING_RECORD',
      'the content has no producer record',
      'add producer.yaml at the top of the content folder'
    )
  ]
}

/** What names a record of a kind, as (field, name); names are compared without case. */
function namesOf<Name extends Kind>(
  kind: Name,
  collected: Collected
): { entry: Entry<unknown>; field: string; name: string }[] {
  const entries: readonly Entry<unknown>[] = collected[kind]
  return entries.map(entry => {
    const record = entry.record as Record<string, unknown>
    if (kind === 'certificates')
      return { entry, field: 'revision', name: `${record.number}/${record.revision}` }
    if (kind === 'grades')
      return { entry, field: 'revision', name: `${record.id}/${record.revision}` }
    if (kind === 'methods')
      return { entry, field: 'edition', name: `${record.id}/${record.edition}` }
    const field = ['lot', 'id', 'number'].find(name => name in record)!
    return { entry, field, name: String(record[field]) }
  })
}

/** Kinds that draw their names from one stock: a lot number means one thing in a workshop. */
const nameStocks: readonly (readonly Kind[])[] = [
  ['materials', 'batches', 'expansions', 'foils'],
  ['instruments'],
  ['titrants'],
  ['methods'],
  ['grades'],
  ['certificates'],
  ['shipments']
]

function checkNames(collected: Collected): Problem[] {
  return nameStocks.flatMap(kinds => {
    const first = new Map<string, string>()
    return kinds
      .flatMap(kind => namesOf(kind, collected).map(named => ({ ...named, kind })))
      .flatMap(({ entry, field, name, kind }) => {
        const place = entry.at([field])
        const other = first.get(name.toLowerCase())
        if (other === undefined) first.set(name.toLowerCase(), place.file.path)
        return other === undefined
          ? []
          : [
              problemAt(
                place,
                'DUPLICATE_ID',
                `${kindNames[kind]} ${name} is already recorded in ${other}`,
                'give it a number of its own, or remove one of the two files'
              )
            ]
      })
  })
}

function assemble(collected: Collected): Content | undefined {
  const [producer] = collected.producer
  if (!producer) return undefined
  return {
    producer,
    instruments: byName(collected.instruments, record => record.id),
    titrants: byName(collected.titrants, record => record.id),
    methods: versions(collected.methods),
    materials: byName(collected.materials, record => record.lot),
    grades: versions(collected.grades),
    batches: byName(collected.batches, record => record.lot),
    expansions: byName(collected.expansions, record => record.lot),
    foils: byName(collected.foils, record => record.lot),
    certificates: [...collected.certificates].sort(
      (a, b) =>
        compareText(a.record.number, b.record.number) || a.record.revision - b.record.revision
    ),
    shipments: byName(collected.shipments, record => record.number),
    drafts: collected.drafts
  }
}

const byName = <Kind>(entries: readonly Entry<Kind>[], name: (record: Kind) => string) =>
  new Map(
    [...entries]
      .sort((a, b) => compareText(name(a.record), name(b.record)))
      .map(entry => [name(entry.record), entry])
  )

function versions<Kind extends { id: string; validFrom: string }>(
  entries: readonly Entry<Kind>[]
): Map<string, Entry<Kind>[]> {
  const all = new Map<string, Entry<Kind>[]>()
  const sorted = [...entries].sort(
    (a, b) =>
      compareText(a.record.id, b.record.id) || compareText(a.record.validFrom, b.record.validFrom)
  )
  for (const entry of sorted) all.set(entry.record.id, [...(all.get(entry.record.id) ?? []), entry])
  return all
}

/**
 * Names that files claim but whose records could not be read: a reference to one of these is not a
 * fault of its own. Taken from file names, which the workshop keeps equal to the records' names.
 */
function unreadNames(files: readonly SourceFile[], collected: Collected): ReadonlySet<string> {
  const read = new Set(
    (Object.keys(schemas) as Kind[]).flatMap(kind =>
      collected[kind].map(entry => (entry as Entry<unknown>).at([]).file.path)
    )
  )
  return new Set([
    ...files
      .filter(file => !read.has(file.path))
      .map(file =>
        file.path
          .split('/')
          .at(-1)!
          .replace(/\.ya?ml$/u, '')
      ),
    ...collected.drafts.map(({ lot }) => lot)
  ])
}

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
