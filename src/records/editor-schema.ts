/**
 * JSON Schemas for editors, so that a record is completed and checked as it is typed.
 *
 * An editor reads YAML by its core schema, where `3.42` is a number and a blank field null; our own
 * reader keeps every scalar as the text it was. The schemas accept both readings.
 */

import * as z from 'zod'
import { type UnitName, unitNames, unitsOf, units } from '../metrology/units.ts'
import { type Kind, kindNames, schemas } from './kinds.ts'

type Json = { [key: string]: unknown }

/** Name of a kind's schema file: 'batch.json'. */
export const schemaFileOf = (kind: Kind): string => `${fileNames[kind]}.json`

const fileNames: Record<Kind, string> = {
  producer: 'producer',
  instruments: 'instrument',
  titrants: 'titrant',
  methods: 'method',
  materials: 'material',
  grades: 'grade',
  batches: 'batch',
  expansions: 'expansion',
  foils: 'foil',
  certificates: 'certificate',
  shipments: 'shipment',
  complaints: 'complaint',
  waste: 'waste',
  incidents: 'incident',
  panels: 'panel',
  mappings: 'mapping',
  translations: 'translations'
}

/** Every kind's schema, by file name. */
export function editorSchemas(): ReadonlyMap<string, Json> {
  return new Map(
    (Object.keys(schemas) as Kind[]).map(kind => [schemaFileOf(kind), editorSchema(kind)])
  )
}

/** The schema of one kind of record. */
export function editorSchema(kind: Kind): Json {
  const schema = z.toJSONSchema(schemas[kind], {
    io: 'input',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => {
      const unit = jsonSchema.lotfolioUnit as UnitName | undefined
      if (unit === undefined) return
      delete jsonSchema.lotfolioUnit
      Object.assign(jsonSchema, quantityPattern(unit))
    }
  }) as Json
  return { ...asTyped(schema), title: `Record of one ${kindNames[kind]}` }
}

/** What a quantity in `unit` looks like, with every unit the field accepts. */
function quantityPattern(unit: UnitName): Json {
  const number = '[+\\-−]?\\d+(\\.\\d+)?([eE][+-]?\\d{1,2})?'
  if (unit === '1') return { pattern: `^\\s*${number}\\s*$` }
  const names = unitsOf(units[unit].dimension).flatMap(unitNames).map(escaped)
  // A bare number is never such a quantity: an array of types stays as it is below.
  return { type: ['string'], pattern: `^\\s*${number}\\s*(${names.join('|')})\\s*$` }
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/gu, String.raw`\$&`)

/** A schema of texts, widened to what an editor's YAML reader makes of plain scalars. */
function asTyped(schema: Json, optional = false): Json {
  const required = new Set((schema.required as string[] | undefined) ?? [])
  const widened: Json = { ...schema, ...widenedType(schema, optional) }
  if (isRecord(schema.properties))
    widened.properties = mapValues(schema.properties, (part, key) =>
      asTyped(part, !required.has(key))
    )
  if (isRecord(schema.items)) widened.items = asTyped(schema.items)
  if (isRecord(schema.additionalProperties))
    widened.additionalProperties = asTyped(schema.additionalProperties)
  return widened
}

function widenedType({ type, enum: words }: Json, optional: boolean): Json {
  const nothing = optional ? ['null'] : []
  if (Array.isArray(words)) {
    const numbers = words.filter(word => /^\d+(\.\d+)?$/u.test(String(word))).map(Number)
    return {
      type: ['string', ...(numbers.length > 0 ? ['number'] : []), ...nothing],
      enum: [...(words as unknown[]), ...numbers, ...(optional ? [null] : [])]
    }
  }
  if (Array.isArray(type)) return { type: [...(type as unknown[]), ...nothing] }
  if (type === 'string') return { type: ['string', 'number', ...nothing] }
  return typeof type === 'string' && optional ? { type: [type, ...nothing] } : {}
}

const isRecord = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const mapValues = (record: Json, map: (part: Json, key: string) => Json): Json =>
  Object.fromEntries(
    Object.entries(record).map(([key, part]) => [key, isRecord(part) ? map(part, key) : part])
  )
