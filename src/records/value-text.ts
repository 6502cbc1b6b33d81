/** Values as YAML text, in the manner of the records: small groups on one line, the rest below. */

import { Document, isCollection } from 'yaml'

/** A value as records hold it: texts, lists and groups. */
export type RecordValue =
  string | readonly RecordValue[] | { readonly [field: string]: RecordValue }

/** Longest list of texts kept on one line. */
const MOST_ON_A_LINE = 12

/** As it stands inside `{ }` or `[ ]`. */
export function flowText(value: RecordValue): string {
  if (typeof value === 'string') return flowWord(value)
  if (Array.isArray(value)) {
    const entries = (value as readonly RecordValue[]).map(flowText)
    return `[${entries.join(', ')}]`
  }
  const fields = Object.entries(value).map(([name, part]) =>
    part === '' ? `${flowWord(name)}:` : `${flowWord(name)}: ${flowText(part)}`
  )
  return fields.length > 0 ? `{ ${fields.join(', ')} }` : '{}'
}

/** A text, in quotes where it would be read as anything else among commas and brackets. */
const flowWord = (text: string): string =>
  text.includes('\n') ? onOneLine(text) : quotedAsNeeded([text]).slice(1, -1).trim()

/** A text of several lines in quotes on one: over several, its indentation would be part of it. */
const onOneLine = (text: string): string => JSON.stringify(text)

function quotedAsNeeded(value: readonly string[] | Readonly<Record<string, string>>): string {
  const document = new Document(value, { schema: 'failsafe' })
  if (isCollection(document.contents)) document.contents.flow = true
  return document.toString({ lineWidth: 0, singleQuote: true }).trim()
}

/** As it stands on lines of its own, without indentation; a text or a small group takes one line. */
export function blockText(value: RecordValue): string {
  if (typeof value === 'string') return blockWord(value)
  if (isSmall(value)) return flowText(value)
  if (Array.isArray(value))
    return (value as readonly RecordValue[])
      .map(entry => `- ${indented(blockText(entry), 2).trimStart()}`)
      .join('\n')
  return Object.entries(value)
    .map(([name, part]) => fieldText(name, part))
    .join('\n')
}

/** `name: value`, over several lines where it takes them; no indentation before the name. */
export function fieldText(name: string, value: RecordValue): string {
  const key = blockWord(name)
  if (value === '') return `${key}:`
  return isOnOneLine(value)
    ? `${key}: ${blockText(value)}`
    : `${key}:\n${indented(blockText(value), 2)}`
}

/** Behind a field's name, a text is quoted as rarely as may be. */
function blockWord(text: string): string {
  if (text.includes('\n')) return onOneLine(text)
  const document = new Document({ a: text }, { schema: 'failsafe' })
  return document
    .toString({ lineWidth: 0, singleQuote: true, blockQuote: false })
    .trimEnd()
    .slice(3)
}

/** Whether a group or list is kept on one line: texts alone, and few of them. */
function isSmall(value: RecordValue): boolean {
  if (typeof value === 'string') return false
  const parts: readonly RecordValue[] = Object.values(value)
  const isFlat = parts.every(part => typeof part === 'string')
  return isFlat && (!Array.isArray(value) || parts.length <= MOST_ON_A_LINE)
}

/** Whether a value is written on the line of its field's name. */
export const isOnOneLine = (value: RecordValue): boolean =>
  typeof value === 'string' || isSmall(value)

export const indented = (lines: string, columns: number): string =>
  lines.replace(/^(?=.)/gmu, ' '.repeat(columns))
