/** All files of a content folder to the content of a workshop. */

import {
  compareText,
  fieldText,
  type Problem,
  problemAt,
  quoted,
  type SourceFile
} from '../problem.ts'
import { parseRecord, type Unparsed } from './document.ts'
import { type Kind, kindNames, kindOf, lotKinds, type RecordOf, schemas } from './kinds.ts'
import { knownFields } from './known-fields.ts'
import { oncePer } from './once.ts'
import { checkReferences } from './references.ts'
import { soundPart } from './sound.ts'
import type { Content, Draft, Entry, Records } from './types.ts'
import { suggestion, validateRecord } from './validate.ts'

/** Records of every kind, in the order of their files. */
type Collected = { [Name in Kind]: Entry<RecordOf<Name>>[] } & {
  drafts: Draft[]
  /** Names of records that could not be read: a reference to one is no fault of its own. */
  unread: Set<string>
}

/** A workshop's content, or every problem in its records and those of them that are sound. */
export type Loaded =
  | { readonly ok: true; readonly value: Content; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly sound: Records; readonly problems: readonly Problem[] }

/**
 * Parse, validate and cross-check every record.
 *
 * @param files in any order; their paths decide what kind of record each is
 * @returns the content, or every problem in every file
 */
export function loadContent(files: readonly SourceFile[]): Loaded {
  const collected = Object.fromEntries([
    ...[...Object.keys(schemas), 'drafts'].map(kind => [kind, []]),
    ['unread', new Set()]
  ]) as unknown as Collected
  const sorted = [...files].sort((a, b) => compareText(a.path, b.path))
  const problems: Problem[] = sorted.flatMap(file => collect(collected, file))
  // The producer is the one at the top; any further down is the second.
  collected.producer.sort((a, b) => depthOf(a) - depthOf(b))
  problems.push(...checkProducer(collected, sorted), ...checkNames(collected))
  const { producer, ...content } = assemble(collected)
  const drafts = collected.drafts.map(({ lot }) => lot)
  problems.push(
    ...checkReferences({ ...content, producer }, new Set([...collected.unread, ...drafts]))
  )
  return problems.length > 0 || !producer
    ? {
        ok: false,
        sound: soundPart({ ...content, producer }, problems, collected.unread),
        problems
      }
    : { ok: true, value: { ...content, producer }, problems }
}

const depthOf = (entry: Entry<unknown>) => entry.file.path.split('/').length

function collect(collected: Collected, file: SourceFile): readonly Problem[] {
  const taken = takenFrom(file)
  if ('problems' in taken) return unread(collected, file, taken.problems, taken.data)
  if ('draft' in taken) collected.drafts.push(taken.draft)
  else collected[taken.kind].push(taken.entry)
  return []
}

/** What a file comes to, whatever stands beside it: a record, a draft, or what is wrong. */
type Taken =
  | { readonly kind: Kind; readonly entry: Entry<never> }
  | { readonly draft: Draft }
  | { readonly problems: readonly Problem[]; readonly data?: unknown }

/** Read a file; one that is looked through again, among others, was read already. */
const takenFrom = oncePer((file: SourceFile): Taken => {
  const kind = kindOf(file)
  if (!kind) return { problems: [misplaced(file)] }
  const document = parseRecord(file)
  if (!document.ok) return takenUnparsed(file, kind, document)
  const record = validateRecord(document.value, kind)
  const { data } = document.value
  if (isDraft(data, kind)) return { draft: draftOf(data, file, record.problems) }
  if (!record.ok) return { problems: record.problems, data }
  const { placeOf, keyPlaceOf } = document.value
  const entry = { record: record.value, file, at: placeOf, keyAt: keyPlaceOf } as Entry<never>
  return { kind, entry }
})

/** What is no record yet may be a draft all the same; and a comma is no reason to tell of nothing else. */
function takenUnparsed(file: SourceFile, kind: Kind, { problems, data, meant }: Unparsed): Taken {
  if (isDraft(data, kind)) return { draft: draftOf(data, file, problems) }
  const told = new Set(problems.map(({ field }) => fieldText(field)))
  const others = meant ? validateRecord(meant, kind).problems : []
  return {
    problems: [...problems, ...others.filter(({ field }) => !told.has(fieldText(field)))],
    data
  }
}

/** Note the names a file claims that could not be read: by its fields, and by its own name. */
function unread(
  collected: Collected,
  { path }: SourceFile,
  problems: readonly Problem[],
  data: unknown = {}
): Problem[] {
  const { lot, id, number } = data as { lot?: unknown; id?: unknown; number?: unknown }
  // The lot a certificate, shipment or complaint is about is not what it is called.
  const own = number === undefined ? [lot, id] : [number]
  const name = path
    .split('/')
    .at(-1)!
    .replace(/\.ya?ml$/u, '')
  for (const claimed of [...own, name, name.replace(/-[re]\d+$/u, '')])
    if (typeof claimed === 'string') collected.unread.add(claimed)
  return [...problems]
}

function misplaced(file: SourceFile): Problem {
  const folders = Object.keys(schemas).filter(kind => kind !== 'producer')
  const folder = file.path.split('/').at(-2) ?? ''
  return problemAt(
    { file, field: [], range: [0, 1] },
    'MISPLACED_FILE',
    folder === ''
      ? 'the file stands outside the folders of records'
      : `the file stands in folder ${quoted(folder)}, which holds no kind of record`,
    suggestion(folder, folders, 'folders')
  )
}

/** Only lots can be drafts: elsewhere the word is no field, and hides nothing. */
const isDraft = (data: unknown, kind: Kind) =>
  (data as { draft?: unknown } | undefined)?.draft === 'yes' &&
  knownFields(schemas[kind], []).includes('draft')

function draftOf(data: unknown, file: SourceFile, problems: readonly Problem[]): Draft {
  const lot = (data as { lot?: unknown }).lot
  return {
    lot: typeof lot === 'string' ? lot : file.path.split('/').at(-1)!,
    path: file.path,
    missing: problems.map(({ field, message }) =>
      [fieldText(field), message].filter(Boolean).join(': ')
    )
  }
}

function checkProducer({ producer }: Collected, files: readonly SourceFile[]): Problem[] {
  if (files.some(file => kindOf(file) === 'producer'))
    return producer
      .slice(1)
      .map(entry =>
        problemAt(
          { ...entry.keyAt(['name']), field: [] },
          'DUPLICATE_ID',
          `a second producer record, beside ${producer[0]!.file.path}`,
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
    if (kind === 'translations') return { entry, field: 'language', name: String(record.language) }
    if (kind === 'certificates')
      return { entry, field: 'revision', name: `${record.number}/${record.revision}` }
    if (kind === 'grades')
      return { entry, field: 'revision', name: `${record.id}/${record.revision}` }
    if (kind === 'methods')
      return { entry, field: 'edition', name: `${record.id}/${record.edition}` }
    const field = ['number', 'lot', 'id'].find(name => name in record)!
    return { entry, field, name: String(record[field]) }
  })
}

/** Kinds that draw their names from one stock. */
const nameStocks: readonly (readonly Kind[])[] = [
  lotKinds,
  ['instruments'],
  ['titrants'],
  ['methods'],
  ['grades'],
  ['certificates'],
  ['shipments'],
  ['complaints'],
  ['waste'],
  ['incidents'],
  ['panels'],
  ['mappings'],
  ['translations']
]

function checkNames(collected: Collected): Problem[] {
  return nameStocks.flatMap(kinds => {
    const first = new Map<string, string>()
    return kinds
      .flatMap(kind => namesOf(kind, collected).map(named => ({ ...named, kind })))
      .flatMap(({ entry, field, name, kind }) => {
        const other = first.get(name.toLowerCase())
        if (other === undefined) first.set(name.toLowerCase(), entry.file.path)
        return other === undefined
          ? []
          : [
              problemAt(
                entry.at([field]),
                'DUPLICATE_ID',
                `${kindNames[kind]} ${name} is already recorded in ${other}`,
                'give it a number of its own, or remove one of the two files'
              )
            ]
      })
  })
}

function assemble(collected: Collected): Records {
  return {
    producer: collected.producer[0],
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
    complaints: byName(collected.complaints, record => record.number),
    waste: byName(collected.waste, record => record.number),
    incidents: byName(collected.incidents, record => record.number),
    panels: byName(collected.panels, record => record.number),
    translations: byName(collected.translations, record => record.language),
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
