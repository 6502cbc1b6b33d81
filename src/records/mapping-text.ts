/** A mapping as the text of its record: one saved from what a command was told. */

import type { RecordValue } from './edit.ts'
import { blockText } from './value-text.ts'

/** What a command says of a file. */
export interface ToldMapping {
  readonly id: string
  readonly fills: string
  readonly file: Readonly<Record<string, string>>
  readonly reading: string | undefined
  readonly columns: readonly {
    readonly column: string
    readonly to?: string
    readonly unit?: string
  }[]
}

export const mappingFile = (id: string): string => `mappings/${id}.yaml`

export function mappingText({ id, fills, file, reading, columns }: ToldMapping): string {
  const record: RecordValue = {
    id,
    fills,
    ...(Object.keys(file).length > 0 ? { file } : {}),
    ...(reading === undefined ? {} : { reading }),
    columns: columns.map(one => ({ ...one }))
  }
  return `# yaml-language-server: $schema=../../schemas/mapping.json\n${blockText(record)}\n`
}
