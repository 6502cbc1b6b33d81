/** The records that can be evaluated although others of their workshop cannot be read. */

import type { Problem } from '../problem.ts'
import type { Entry, Records } from './types.ts'

/** Any record: what names it, whatever its kind. */
interface Named {
  readonly lot?: unknown
  readonly id?: unknown
  readonly number?: unknown
}

/**
 * Records without a problem that name, directly or by way of others, none that has one. What rests on a
 * broken record would only complain of it a second time.
 *
 * @param unread names of records that could not be read at all
 */
export function soundPart(
  records: Records,
  problems: readonly Problem[],
  unread: ReadonlySet<string>
): Records {
  const broken = new Set(unread)
  const faulty = new Set(problems.map(({ file }) => file.path))
  let left = entriesOf(records)
  const dropped = new Set<Entry<unknown>>()
  for (let found = -1; found !== dropped.size;) {
    found = dropped.size
    left = left.filter(({ entry, texts, name }) => {
      if (!faulty.has(entry.file.path) && !texts.some(text => broken.has(text))) return true
      broken.add(name)
      dropped.add(entry)
      return false
    })
  }
  return without(records, dropped)
}

interface Candidate {
  readonly entry: Entry<unknown>
  readonly name: string
  /** Every text in it: what it may refer to, its own name among them. */
  readonly texts: readonly string[]
}

function entriesOf(records: Records): Candidate[] {
  const { instruments, titrants, methods, materials, grades } = records
  const { batches, expansions, foils, certificates, shipments, complaints } = records
  const { waste, incidents, panels } = records
  const lots = [materials, batches, expansions, foils]
  const single = [instruments, titrants, ...lots, shipments, complaints, waste, incidents, panels]
  const all: Entry<Named>[] = [
    ...single.flatMap((map): Entry<Named>[] => [...map.values()]),
    ...[methods, grades].flatMap((map): Entry<Named>[] => [...map.values()].flat()),
    ...certificates
  ]
  return all.map(entry => ({ entry, name: nameOf(entry.record), texts: textsOf(entry.record) }))
}

/** Certificates, shipments, complaints and the like go by their number; the lots they name are not theirs. */
const nameOf = ({ number, lot, id }: Named) => String(number ?? lot ?? id)

function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : []
}

function without(records: Records, dropped: ReadonlySet<Entry<unknown>>): Records {
  const kept = <Kind>(map: ReadonlyMap<string, Entry<Kind>>) =>
    new Map([...map].filter(([, entry]) => !dropped.has(entry)))
  const keptVersions = <Kind>(map: ReadonlyMap<string, readonly Entry<Kind>[]>) =>
    new Map([...map].filter(([, versions]) => !versions.some(entry => dropped.has(entry))))
  return {
    producer: records.producer,
    instruments: kept(records.instruments),
    titrants: kept(records.titrants),
    methods: keptVersions(records.methods),
    materials: kept(records.materials),
    grades: keptVersions(records.grades),
    batches: kept(records.batches),
    expansions: kept(records.expansions),
    foils: kept(records.foils),
    certificates: records.certificates.filter(entry => !dropped.has(entry)),
    // What a shipment may be sent with stands in the producer's record.
    shipments: records.producer ? kept(records.shipments) : new Map(),
    complaints: kept(records.complaints),
    waste: kept(records.waste),
    incidents: kept(records.incidents),
    panels: kept(records.panels),
    translations: records.translations,
    drafts: records.drafts
  }
}
