/** Which fields a schema knows at a place, for suggestions. */

import * as z from 'zod'
import type { FieldPath } from '../problem.ts'

/** Names of the fields a record may have at `path`, outermost first. */
export function knownFields(schema: z.ZodType, path: FieldPath): string[] {
  const part = path.reduce<z.ZodType | undefined>(
    (inner, step) => (inner ? stepInto(bare(inner), step) : undefined),
    schema
  )
  const object = part ? bare(part) : undefined
  if (object instanceof z.ZodObject) return Object.keys(object.shape as z.ZodRawShape)
  if (object instanceof z.ZodRecord && object.keyType instanceof z.ZodEnum)
    return object.keyType.options.map(String)
  return []
}

/** The schema inside what only renames fields or lets them be absent. */
function bare(schema: z.ZodType): z.ZodType {
  if (schema instanceof z.ZodPipe) return bare(schema.in as z.ZodType)
  if (schema instanceof z.ZodOptional) return bare(schema.unwrap() as z.ZodType)
  return schema
}

function stepInto(schema: z.ZodType, step: string | number): z.ZodType | undefined {
  if (schema instanceof z.ZodArray) return schema.element as z.ZodType
  if (schema instanceof z.ZodObject) return (schema.shape as Record<string, z.ZodType>)[step]
  return undefined
}
