/** What a field of a record takes: asked before anything is written into it. */

import * as z from 'zod'
import type { UnitName } from '../metrology/units.ts'
import type { FieldPath, ProblemCode } from '../problem.ts'
import type { FaultDetails } from './fields.ts'
import { type Kind, schemas } from './kinds.ts'
import { suggestion } from './validate.ts'

export interface FieldShape {
  readonly is: 'value' | 'list' | 'group'
  /** Unit of a quantity; '1' for a plain number. Of a list, that of its entries. */
  readonly unit?: UnitName
  readonly isRequired: boolean
}

/** Why a text cannot stand in a field. */
export interface ValueFault {
  readonly code: ProblemCode
  readonly message: string
  readonly hint: string
}

/** The shape of a field; undefined where a record of the kind has none there. */
export function fieldShape(kind: Kind, path: FieldPath): FieldShape | undefined {
  const schema = schemaAt(kind, path)
  if (!schema) return undefined
  const inner = withoutMaybe(schema)
  const unit = unitOf(inner instanceof z.ZodArray ? (inner.element as z.ZodType) : inner)
  const core = bare(inner)
  const is =
    core instanceof z.ZodArray
      ? 'list'
      : core instanceof z.ZodObject || core instanceof z.ZodRecord
        ? 'group'
        : 'value'
  // Names that a group takes of a choice, such as quantities, are all as good.
  const owner = schemaAt(kind, path.slice(0, -1))
  const isRequired =
    !(schema instanceof z.ZodOptional) && !(owner && bare(owner) instanceof z.ZodRecord)
  return { is, ...(unit ? { unit } : {}), isRequired }
}

/** What keeps a text from being the value of a field, or undefined where it can be. */
export function valueFault(kind: Kind, path: FieldPath, text: string): ValueFault | undefined {
  const issue = schemaAt(kind, path)?.safeParse(text).error?.issues[0]
  if (!issue) return undefined
  const details = issue.code === 'custom' ? (issue.params as unknown as FaultDetails) : undefined
  if (details) return { ...details, message: issue.message }
  if (issue.code !== 'invalid_value')
    return { code: 'INVALID_VALUE', message: issue.message, hint: 'write it otherwise' }
  const words = issue.values.map(String)
  return {
    code: 'UNKNOWN_WORD',
    message: `must be one of ${words.join(', ')}, got '${text}'`,
    hint: suggestion(text, words, 'words known here')
  }
}

function schemaAt(kind: Kind, path: FieldPath): z.ZodType | undefined {
  return path.reduce<z.ZodType | undefined>(
    (schema, step) => schema && stepInto(bare(schema), step),
    schemas[kind]
  )
}

function stepInto(schema: z.ZodType, step: string | number): z.ZodType | undefined {
  if (schema instanceof z.ZodArray)
    return typeof step === 'number' ? (schema.element as z.ZodType) : undefined
  if (schema instanceof z.ZodRecord) return schema.valueType as z.ZodType
  if (!(schema instanceof z.ZodObject) || !Object.hasOwn(schema.shape, step)) return undefined
  return (schema.shape as Record<string, z.ZodType>)[step]
}

const withoutMaybe = (schema: z.ZodType): z.ZodType =>
  schema instanceof z.ZodOptional ? withoutMaybe(schema.unwrap() as z.ZodType) : schema

/** The schema inside what only renames fields, checks several, or lets them be absent. */
function bare(schema: z.ZodType): z.ZodType {
  const inner = withoutMaybe(schema)
  return inner instanceof z.ZodPipe ? bare(inner.in as z.ZodType) : inner
}

const unitOf = (schema: z.ZodType): UnitName | undefined =>
  withoutMaybe(schema).meta()?.lotfolioUnit as UnitName | undefined
