/** What the YAML parser found wrong, in the words of whoever wrote the record. */

import {
  type Document,
  isCollection,
  isScalar,
  type Node,
  type Range as NodeRange,
  visit,
  type YAMLError
} from 'yaml'
import { type Problem, problemAt, type ProblemCode, quoted, type SourceFile } from '../problem.ts'

/** A fault told: where, what and what to do about it. */
interface Told {
  readonly range: readonly [start: number, end: number]
  readonly message: string
  readonly hint: string
  readonly code?: ProblemCode
}

/** One error of the parser and what stands around it. */
interface Fault {
  readonly text: string
  readonly document: Document
  readonly error: YAMLError
  /** The error's place, never beyond the end of its line. */
  readonly range: readonly [start: number, end: number]
}

/**
 * Every slip of syntax in a file, one a line.
 *
 * A slip confuses the parser for the rest of its line, and one of brackets or indentation for the
 * rest of the file: such echoes are left out.
 */
export function syntaxProblems(file: SourceFile, document: Document): Problem[] {
  const lines = new Set<number>()
  const errors = [...document.errors].sort((a, b) => a.pos[0] - b.pos[0])
  const derailed = errors.find(error => derails(error, errors))?.pos[0] ?? Infinity
  return errors
    .filter(error => error.pos[0] <= derailed || standsAlone.has(error.code))
    .filter(error => !isEcho(error, errors))
    .map(error => tell({ text: file.text, document, error, range: onOneLine(file.text, error) }))
    .filter(({ range }) => {
      const line = lineStart(file.text, range[0])
      return !lines.has(line) && lines.add(line)
    })
    .map(({ range, code, message, hint }) =>
      problemAt({ file, field: [], range }, code ?? 'YAML_SYNTAX', message, hint)
    )
}

/** Slips that neither cause others nor are caused by them. */
const standsAlone: ReadonlySet<YAMLError['code']> = new Set([
  'DUPLICATE_KEY',
  'TAB_AS_INDENT',
  'BAD_SCALAR_START',
  'BAD_DQ_ESCAPE'
])

/** Whether the parser cannot find its way after an error. */
const derails = (error: YAMLError, all: readonly YAMLError[]): boolean =>
  ['BAD_INDENT', 'TAB_AS_INDENT', 'UNEXPECTED_TOKEN'].includes(error.code) ||
  (error.code === 'MISSING_CHAR' && /closing|Sequence item/u.test(error.message)) ||
  (error.code === 'BLOCK_AS_IMPLICIT_KEY' && hasTwin(error, all, 'MULTILINE_IMPLICIT_KEY'))

const hasTwin = ({ pos }: YAMLError, all: readonly YAMLError[], code: YAMLError['code']) =>
  all.some(other => other.code === code && other.pos[0] === pos[0])

/** Whether an error says again what another at its place says better. */
const isEcho = (error: YAMLError, all: readonly YAMLError[]): boolean =>
  error.code === 'RESOURCE_EXHAUSTION' ||
  (error.code === 'MULTILINE_IMPLICIT_KEY' && hasTwin(error, all, 'BLOCK_AS_IMPLICIT_KEY')) ||
  (error.code === 'BLOCK_IN_FLOW' && hasTwin(error, all, 'MULTILINE_IMPLICIT_KEY'))

/** Where the line of an offset begins. */
export const lineStart = (text: string, offset: number) =>
  offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1

const lineEnd = (text: string, offset: number) => {
  const end = text.indexOf('\n', offset)
  return end < 0 ? text.length : end
}

/** Where an error stands; one at the very end of a file, at the last thing written. */
function onOneLine(text: string, { pos }: YAMLError): readonly [number, number] {
  const written = text.trimEnd().length
  const start = Math.max(0, Math.min(pos[0], written - 1))
  const end = Math.min(lineEnd(text, start), Math.max(start + 1, pos[1]))
  return [start, Math.max(start + 1, end)]
}

const tell = (fault: Fault): Told => (tellers[fault.error.code] ?? tellUnexpected)(fault)

const tellers: Partial<Record<YAMLError['code'], (fault: Fault) => Told>> = {
  DUPLICATE_KEY: fault => {
    const range = wordAt(fault)
    return {
      range,
      code: 'DUPLICATE_FIELD',
      message: `the field ${quoted(fault.text.slice(...range))} is given twice`,
      hint: 'keep one of the two'
    }
  },
  TAB_AS_INDENT: ({ range }) => ({
    range,
    message: 'the line is indented with a tab',
    hint: 'indent with spaces'
  }),
  MULTIPLE_DOCS: ({ range }) => ({
    range,
    message: 'a second record begins here',
    hint: "one record a file: remove the line '---' and what follows"
  }),
  BAD_INDENT: tellIndent,
  MISSING_CHAR: tellMissing,
  MULTILINE_IMPLICIT_KEY: tellNoField,
  BLOCK_AS_IMPLICIT_KEY: tellNested,
  BAD_SCALAR_START: ({ text, range }) => firstSign(text, range[0]),
  BAD_ALIAS: ({ text, range }) => firstSign(text, range[0]),
  BAD_DQ_ESCAPE: ({ text, range }) => ({
    range: [range[0], range[0] + 2],
    message: `${quoted(text.slice(range[0], range[0] + 2))} means nothing in a text in double quotes`,
    hint: 'put the text in single quotes'
  }),
  KEY_OVER_1024_CHARS: ({ range }) => ({
    range,
    message: "a field's name cannot be longer than 1024 characters",
    hint: 'check for a missing quote or colon'
  })
}

/** The word that starts where the error stands. */
function wordAt({ text, range }: Fault): readonly [number, number] {
  const word = /^(?:"[^"\n]*"|'[^'\n]*'|[^\s:,{}[\]]+)/u.exec(text.slice(range[0]))?.[0] ?? ' '
  return [range[0], range[0] + word.length]
}

function tellIndent(fault: Fault): Told {
  const { error, text, range } = fault
  if (error.message.startsWith('Flow')) return unclosed(fault)
  const start = lineStart(text, range[0])
  const blank = /^[ \t]*/u.exec(text.slice(start))![0].length
  return {
    range: [start + blank, Math.max(start + blank + 1, lineEnd(text, start))],
    message: 'the line is indented differently from the fields beside it',
    hint: 'line it up with its neighbours'
  }
}

/** The last bracket or quote opened before an error and not closed. */
function unclosed(fault: Fault): Told {
  const start = openerBefore(fault)
  const sign = fault.text.charAt(start)
  if (!'[{"\''.includes(sign))
    return {
      range: fault.range,
      message: 'a bracket or quote above is not closed',
      hint: 'close it where its text ends'
    }
  const closing = { '[': ']', '{': '}' }[sign] ?? sign
  return {
    range: [start, start + 1],
    message: `${closing === sign ? 'the quote' : 'the bracket'} ${sign} is not closed`,
    hint:
      closing === sign
        ? `end the text with ${sign}`
        : `close it with ${closing}; lines inside it are indented deeper than its field`
  }
}

function openerBefore({ document, text, error, range }: Fault): number {
  let found = -1
  const consider = (node: Node & { range?: NodeRange | null }, signs: string) => {
    const start = node.range?.[0]
    if (start !== undefined && start < error.pos[0] && signs.includes(text.charAt(start)))
      found = Math.max(found, start)
  }
  const flow = error.code === 'BAD_INDENT' || error.message.includes(' and end with')
  visit(document, {
    Node: (_, node) => {
      if (flow && isCollection(node) && node.flow && !isClosed(node, text)) consider(node, '[{')
      if (!flow && isScalar(node)) consider(node, '"\'')
    }
  })
  return found < 0 ? range[0] : found
}

const isClosed = (node: Node, text: string) =>
  node.range ? /[\]}]/u.test(text.charAt(node.range[1] - 1)) : false

function tellMissing(fault: Fault): Told {
  const { error, range, text } = fault
  const { message } = error
  if (message.includes('closing') || message.includes('and end with')) return unclosed(fault)
  if (message.startsWith('Comments'))
    return {
      range: [range[0], range[0] + 1],
      message: "a '#' right after a text begins no comment",
      hint: "put a space before '#', or quotes around the whole text"
    }
  if (message.startsWith('Sequence item'))
    return {
      ...tellIndent(fault),
      message: "the line stands in a list without '- ' before it"
    }
  if (message.startsWith('Missing ,'))
    return {
      range,
      message: 'a comma is missing between two entries',
      hint: 'put a comma before this one'
    }
  return noColon(text, range)
}

/** A line that names no field: its colon, or the space after it, is missing. */
function noColon(text: string, [start, end]: Fault['range']): Told {
  const line = text.slice(start, end).trimEnd()
  return {
    range: [start, start + Math.max(1, line.length)],
    message: `${quoted(line)} is no field: a colon and a space are missing`,
    hint: "write 'name: value'"
  }
}

function tellNoField({ text, document, error, range }: Fault): Told {
  if (!hasTwin(error, document.errors, 'BLOCK_IN_FLOW')) return noColon(text, range)
  return {
    range,
    message: 'a comma is missing at the end of this line',
    hint: 'put a comma between entries inside { }'
  }
}

function tellNested({ text, document, error, range }: Fault): Told {
  const lines = hasTwin(error, document.errors, 'MULTILINE_IMPLICIT_KEY')
  const below = lineEnd(text, range[0]) + 1
  const blank = /^[ \t]*/u.exec(text.slice(below))![0].length
  if (lines && below + blank < text.length)
    return {
      range: [below + blank, Math.max(below + blank + 1, lineEnd(text, below))],
      message: 'the line is indented deeper than the field above it, which already has a value',
      hint: 'line it up with its neighbours'
    }
  return {
    range: [range[0], lineEnd(text, range[0])],
    message: 'a text with a colon and a space in it, or a second field on one line',
    hint: 'put quotes around the text, or the second field on a line of its own'
  }
}

/** A text that begins with a sign YAML keeps for itself. */
function firstSign(text: string, start: number): Told {
  const sign = text.charAt(start)
  return {
    range: [start, start + 1],
    message: `a text cannot begin with ${sign}`,
    hint:
      sign === '>' || sign === '|'
        ? "write a limit as 'min:' or 'max:', or put quotes around the text"
        : 'put quotes around the text'
  }
}

function tellUnexpected({ error, text, range }: Fault): Told {
  const [start, end] = range
  const sign = /[>|]$/u.exec(text.slice(0, start).trimEnd())
  if (error.message.startsWith('Not a YAML token') && sign)
    return firstSign(text, text.slice(0, start).trimEnd().length - 1)
  if (text.charAt(start) === '-' && error.message.includes('on same line'))
    return {
      range,
      message: 'a list cannot begin on the line of its field',
      hint: "put each entry on a line of its own after '- ', or write [ ]"
    }
  const found = text.slice(start, end).split('\n', 1)[0]!
  return {
    range: [start, start + Math.max(1, found.length)],
    message: `nothing was expected here, got ${quoted(found)}`,
    hint: /["']$/u.test(text.slice(0, start))
      ? 'inside quotes, write the same quote twice, or put quotes of the other kind around the text'
      : 'check brackets, quotes and commas on this line and above it'
  }
}
