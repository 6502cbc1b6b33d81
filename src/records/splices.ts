/** Pieces of a record's text to take out and put in, for one field or entry of a list. */

import { isCollection, isMap, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml'
import {
  blockText,
  fieldText,
  flowText,
  indented,
  isOnOneLine,
  type RecordValue
} from './value-text.ts'

/** A piece of the old text and what stands there in the new. */
export interface Splice {
  readonly start: number
  readonly end: number
  readonly text: string
}

const startOf = (node: Node): number => node.range?.[0] ?? 0

/** Where the last thing written in a node ends: comments behind it are not part of it. */
function endOf(node: Node | null): number | undefined {
  if (!node?.range) return undefined
  if (isCollection(node) && !node.flow) {
    const last: unknown = node.items.at(-1)
    if (last === undefined) return node.range[1]
    return isMap(node) ? endOfPair(last as Pair) : (endOf(last as Node) ?? node.range[1])
  }
  return node.range[1]
}

function endOfPair({ key, value }: Pair): number {
  const keyEnd = (key as Node).range![1]
  return Math.max(keyEnd, endOf(value as Node | null) ?? keyEnd)
}

const lineStart = (text: string, at: number) => text.lastIndexOf('\n', at - 1) + 1

/** Offset behind the line break of the line that `at` is in, or that ended just before it. */
function nextLine(text: string, at: number): number {
  if (at > 0 && text[at - 1] === '\n') return at
  const end = text.indexOf('\n', at)
  return end < 0 ? text.length : end + 1
}

const columnOf = (text: string, at: number) => at - lineStart(text, at)

/** Whole lines put in at the start of a line, or after a last line without its end. */
const wholeLines = (text: string, at: number, lines: string): Splice => ({
  start: at,
  end: at,
  text: `${at > 0 && text[at - 1] !== '\n' ? '\n' : ''}${lines}\n`
})

/** A field that was not there, behind the others of its group. */
export function addedField(text: string, map: YAMLMap, name: string, value: RecordValue): Splice {
  const last = map.items.at(-1)
  if (map.flow) {
    const inner = `${flowText(name)}: ${flowText(value)}`
    if (!last) return { start: map.range![0], end: map.range![1], text: `{ ${inner} }` }
    const end = endOfPair(last)
    return { start: end, end, text: `, ${inner}` }
  }
  const first = map.items[0]
  const columns = first ? columnOf(text, startOf(first.key as Node)) : 0
  const at = last ? nextLine(text, endOfPair(last)) : text.length
  return wholeLines(text, at, indented(fieldText(name, value), columns))
}

/** A field's value written anew, or for the first time. */
export function replaced(text: string, map: YAMLMap, pair: Pair, value: RecordValue): Splice {
  const node = pair.value as Node | null
  const written = endOf(node)
  if (node && written !== undefined && written > startOf(node))
    return overwritten(text, node, value, Boolean(map.flow))
  const keyEnd = (pair.key as Node).range![1]
  const colon = text.indexOf(':', keyEnd)
  if (map.flow && (colon < 0 || text.slice(keyEnd, colon).trim() !== ''))
    return { start: keyEnd, end: keyEnd, text: `: ${flowText(value)}` }
  return filledIn(text, map, pair, colon + 1, value)
}

/** A value behind a colon with nothing after it. */
function filledIn(text: string, map: YAMLMap, pair: Pair, at: number, value: RecordValue): Splice {
  const space = /^[ \t]*/u.exec(text.slice(at))![0].length
  if (map.flow) {
    const isLast = text[at + space] === '}'
    return { start: at, end: at + space, text: ` ${flowText(value)}${isLast ? ' ' : ''}` }
  }
  if (value === '') return { start: at, end: at, text: '' }
  if (isOnOneLine(value)) return { start: at, end: at, text: ` ${blockText(value)}` }
  const columns = columnOf(text, startOf(pair.key as Node))
  return wholeLines(text, nextLine(text, at), indented(blockText(value), columns + 2))
}

/** A text, or a group or list on one line, in the place of another. */
function overwritten(text: string, node: Node, value: RecordValue, inFlow: boolean): Splice {
  const [start, end] = [startOf(node), endOf(node)!]
  if (isCollection(node) && !node.flow && typeof value !== 'string')
    return { start, end, text: indented(blockText(value), columnOf(text, start)).trimStart() }
  const isBlockScalar = /^[|>]/u.test(text.slice(start))
  const made = inFlow || typeof value !== 'string' ? flowText(value) : blockText(value)
  return { start, end, text: isBlockScalar ? `${made}\n` : made }
}

/** Entries at the end of a list, in the manner of those before them. */
export function addedEntries(text: string, seq: YAMLSeq, values: readonly RecordValue[]): Splice {
  const last = seq.items.at(-1) as Node | undefined
  if (seq.flow) {
    const inner = values.map(flowText).join(', ')
    if (!last) return { start: seq.range![0], end: seq.range![1], text: `[${inner}]` }
    const end = endOf(last)!
    return { start: end, end, text: `, ${inner}` }
  }
  const columns = columnOf(text, startOf(seq))
  const isOpen = isMap(last) && !last.flow
  const lines = values.map(value => {
    const entry = isOpen ? openText(value) : blockText(value)
    return indented(`- ${indented(entry, 2).trimStart()}`, columns)
  })
  return wholeLines(text, nextLine(text, endOf(last ?? seq)!), lines.join('\n'))
}

/** A group with a line for each field, however small. */
const openText = (value: RecordValue): string =>
  typeof value === 'string' || Array.isArray(value)
    ? blockText(value)
    : Object.entries(value)
        .map(([name, part]) => fieldText(name, part))
        .join('\n')

/** An entry of a list written anew. */
export function replacedEntry(text: string, seq: YAMLSeq, item: Node, value: RecordValue): Splice {
  const [start, end] = [startOf(item), endOf(item)!]
  // Between commas nothing would be no entry at all.
  if (seq.flow && value === '') return { start, end, text: "''" }
  if (end > start) return overwritten(text, item, value, Boolean(seq.flow))
  // A dash with nothing behind it.
  return {
    start,
    end,
    text: `${text[start - 1] === ' ' ? '' : ' '}${seq.flow ? flowText(value) : blockText(value)}`
  }
}

/** A field taken out: whole lines, or its part of a `{ }` with a comma. */
export function withoutField(text: string, map: YAMLMap, pair: Pair): Splice {
  if (map.items.length === 1) return emptied(map, '{}')
  const start = startOf(pair.key as Node)
  const next = map.items[map.items.indexOf(pair) + 1]
  const isBehindDash = text.slice(lineStart(text, start), start).trim() !== ''
  // The first field of an entry shares its line with the dash: the next one takes its place.
  if (!map.flow && isBehindDash && next) return { start, end: startOf(next.key as Node), text: '' }
  return without(text, start, endOfPair(pair), Boolean(map.flow))
}

/** An entry taken out: whole lines, or its part of a `[ ]` with a comma. */
export function withoutEntry(text: string, seq: YAMLSeq, item: Node): Splice {
  if (seq.items.length === 1) return emptied(seq, '[]')
  const start = startOf(item)
  const dash = seq.flow ? start : text.lastIndexOf('-', start - 1)
  return without(text, dash, endOf(item)!, Boolean(seq.flow))
}

/** The last of a group or list taken out: what is left says that it is one. */
const emptied = (node: YAMLMap | YAMLSeq, text: string): Splice => ({
  start: startOf(node),
  end: endOf(node)!,
  text
})

function without(text: string, start: number, end: number, inFlow: boolean): Splice {
  if (!inFlow) return { start: lineStart(text, start), end: nextLine(text, end), text: '' }
  const after = /^\s*,\s*/u.exec(text.slice(end))?.[0].length
  if (after !== undefined) return { start, end: end + after, text: '' }
  const before = /,?\s*$/u.exec(text.slice(0, start))![0].length
  return { start: start - before, end, text: '' }
}
