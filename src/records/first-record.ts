/** The first record of a kind, where there is none to start from: its fields, blank. */

import type { FieldPath } from '../problem.ts'
import { type DraftKind, draftKinds } from './draft-fields.ts'
import { schemaFileOf } from './editor-schema.ts'
import { fieldShape } from './field-shape.ts'
import { type Kind, schemas } from './kinds.ts'
import { knownFields } from './known-fields.ts'
import { fieldText, type RecordValue } from './value-text.ts'

/** Number a workshop's first record of a kind takes, unless told otherwise. */
const firstNumbers: Record<DraftKind, string> = {
  batch: 'EB-1',
  expansion: 'XR-1',
  foil: 'FL-1',
  material: 'GR-1',
  instrument: 'BAL-1',
  grade: 'flake-1',
  shipment: 'SH-1',
  certificate: 'C-1',
  complaint: 'CP-1',
  waste: 'WA-1',
  incident: 'IN-1',
  panel: 'PN-1',
  titrant: 'NA-1',
  method: 'TM-01',
  mapping: 'list-1'
}

/** Fields that a record of the kind mostly has beside those it must have; each by the way to it. */
const usual: Partial<Record<DraftKind, readonly string[]>> = {
  batch: ['charge.1', 'steps.1', 'sampling.plan'],
  expansion: ['furnace', 'dwell', 'worms.volume'],
  foil: ['pressing.pressure', 'measured', 'sheets.1'],
  material: ['supplier-lot', 'expires', 'composition.1.fraction'],
  instrument: [
    'calibration.certificate',
    'calibration.laboratory',
    'calibration.expanded-uncertainty',
    'calibration.coverage-factor'
  ],
  shipment: ['address.1', 'order', 'contents.1.containers.1'],
  complaint: ['by'],
  waste: ['lots', 'mass', 'volume', 'ph', 'gone'],
  incident: ['lots', 'done'],
  panel: [
    'lot',
    'loading.flake',
    'loading.paint',
    'solids.stated',
    'mass',
    'dry-film',
    'tested',
    'how',
    'until',
    'bare',
    'log.1',
    'char'
  ],
  method: ['instruments'],
  mapping: ['columns.1.to']
}

/** A first record to start others from. */
export function firstRecord(kind: DraftKind): { readonly number: string; readonly text: string } {
  const folder = draftKinds[kind]
  const ways = usual[kind]?.map(way => way.split('.')) ?? []
  const lines = Object.entries(blank(folder, [], ways)).map(([field, value]) =>
    // Room to write in, also among several on a line.
    fieldText(field, value as RecordValue).replace(/:(?=,)/gu, ': ')
  )
  return {
    number: firstNumbers[kind],
    text: `# yaml-language-server: $schema=../schemas/${schemaFileOf(folder)}\n${lines.join('\n')}\n`
  }
}

function blank(kind: Kind, path: FieldPath, ways: readonly (readonly string[])[]): RecordValue {
  const shape = path.length === 0 ? { is: 'group' } : fieldShape(kind, path)
  if (shape?.is === 'list') {
    const entry = blank(kind, [...path, 0], stepped(ways, '1'))
    return entry === '' ? '' : [entry]
  }
  if (shape?.is !== 'group') return ''
  const wanted = knownFields(schemas[kind], path).filter(
    field =>
      ways.some(([first]) => first === field) || fieldShape(kind, [...path, field])?.isRequired
  )
  if (wanted.length === 0) return ''
  return Object.fromEntries(
    wanted.map(field => [field, blank(kind, [...path, field], stepped(ways, field))])
  )
}

/** What is left of the ways that lead through a field. */
const stepped = (ways: readonly (readonly string[])[], field: string) =>
  ways.filter(([first]) => first === field).map(way => way.slice(1))
