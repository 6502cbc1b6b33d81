/** What a record of a kind may hold, read from the JSON Schema that editors get as well. */

import { editorSchema } from '../records/editor-schema.ts'
import { type Kind, schemas } from '../records/kinds.ts'
import { once } from '../records/once.ts'

/** A value, a list of one shape, named fields, or names of a choice or free, each of one shape. */
export type Shape =
  | {
      readonly is: 'value'
      readonly words?: readonly string[]
      readonly hint?: string
      /** Whether it takes the number of a record or of a container. */
      readonly isNumber?: boolean
    }
  | { readonly is: 'list'; readonly of: Shape }
  | { readonly is: 'group'; readonly fields: readonly FieldOf[] }
  | { readonly is: 'names'; readonly names?: readonly string[]; readonly of: Shape }

export interface FieldOf {
  readonly name: string
  readonly shape: Shape
  readonly isRequired: boolean
}

/** A text of any kind: what stands where no schema says more. */
export const ANY_VALUE: Shape = { is: 'value' }

/** The shape of a whole record. */
export const shapeOf = once((kind: Kind): Shape => shapeIn(editorSchema(kind)))

export const kinds = Object.keys(schemas) as Kind[]

type Json = Readonly<Record<string, unknown>>

const isGroup = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** What the number of a record looks like, as schemas say it. */
const numberPattern = once(() => (editorSchema('batches').properties as { lot: Json }).lot.pattern)

function shapeIn(schema: Json): Shape {
  if (isGroup(schema.items)) return { is: 'list', of: shapeIn(schema.items) }
  if (isGroup(schema.properties)) return { is: 'group', fields: fieldsIn(schema) }
  if (isGroup(schema.additionalProperties)) {
    const names = isGroup(schema.propertyNames) ? textsIn(schema.propertyNames.enum) : undefined
    return { is: 'names', of: shapeIn(schema.additionalProperties), ...(names && { names }) }
  }
  const words = textsIn(schema.enum)
  const hint = typeof schema.description === 'string' ? schema.description : undefined
  return {
    is: 'value',
    isNumber: schema.pattern === numberPattern(),
    ...(words && { words }),
    ...(hint !== undefined && { hint })
  }
}

function fieldsIn(schema: Json): FieldOf[] {
  const required = textsIn(schema.required) ?? []
  return Object.entries(schema.properties as Json).map(([name, part]) => ({
    name,
    shape: isGroup(part) ? shapeIn(part) : ANY_VALUE,
    isRequired: required.includes(name)
  }))
}

/** The texts of a list; an editor's numbers and nulls are the same words once more. */
const textsIn = (list: unknown): readonly string[] | undefined =>
  Array.isArray(list)
    ? list.filter((entry): entry is string => typeof entry === 'string')
    : undefined
