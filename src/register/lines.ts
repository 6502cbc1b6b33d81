/** The text of a log to its lines, with everything that is wrong with each by itself. */

import { membersOf, readJson } from './canonical.ts'
import { type Line, lineOf, type LineReader, type RegisterEvent } from './events.ts'
import { type Fault, faultAt, type Flaw } from './fault.ts'

/** A line as it stands in the text. */
export interface RawLine {
  /** Line of the text, from 1. */
  readonly line: number
  readonly text: string
}

export interface SplitText {
  readonly lines: readonly RawLine[]
  readonly faults: readonly Fault[]
  /** The last line has no end. */
  readonly isCut: boolean
}

/**
 * Part a text into its lines. Line ends of two characters and a byte order mark, which a program may
 * have put in everywhere at once, are told once and read over.
 */
export function splitLines(text: string): SplitText {
  if (text === '') return { lines: [], faults: [], isCut: false }
  const isCut = !text.endsWith('\n')
  const all = text.split('\n').map((line, index) => ({ line: index + 1, text: line }))
  const kept = isCut ? all : all.slice(0, -1)
  const plain = kept.map(({ line, text }) => ({ line, text: text.replace(/^\uFEFF|\r$/gu, '') }))
  const blank = plain.filter(isBlank).map(({ line }) => line)
  const faults = [
    ...foreignSigns(kept),
    ...blank.map(line => faultAt(line, ['REGISTER_BLANK_LINE', 'a blank line is no event'])),
    ...(isCut ? [faultAt(kept.length, CUT)] : [])
  ]
  return { lines: plain.filter(line => !isBlank(line)), faults, isCut }
}

const isBlank = ({ text }: RawLine) => /^\s*$/u.test(text)

const CUT: Flaw = [
  'REGISTER_CUT',
  'the last line has no line end: the file was cut off, or saved by a program that changed it'
]

function foreignSigns(lines: readonly RawLine[]): Fault[] {
  const first = lines.find(({ text }) => text.startsWith('\uFEFF') || text.endsWith('\r'))
  return first
    ? [
        faultAt(first.line, [
          'REGISTER_LINE_END',
          first.text.endsWith('\r')
            ? 'the line ends in CR LF, and maybe others: a program changed the line ends, which are LF'
            : 'a byte order mark stands before the line: a program put it in'
        ])
      ]
    : []
}

/** A line as far as it could be read. */
export interface ReadLine<Event = RegisterEvent> extends RawLine {
  /** What it says, where that could be made out even of a line with faults. */
  readonly entry?: Line<Event>
  /** Its place in the chain, as the line claims it. */
  readonly n?: number
  readonly previous?: string
  readonly flaws: readonly Flaw[]
}

/** Read one line of the register's log by itself. */
export const readLine = (raw: RawLine): ReadLine => readLineBy(lineOf, raw)

/** Read one line of a log by itself. */
export function readLineBy<Event>(
  read: LineReader<Event>,
  { line, text }: RawLine
): ReadLine<Event> {
  const json = readJson(text)
  if (json.is === 'not JSON')
    return { line, text, flaws: [['REGISTER_NOT_JSON', 'the line is not JSON']] }
  const { n, previous } = membersOf(json.value)
  const claims = {
    ...(typeof n === 'number' ? { n } : {}),
    ...(typeof previous === 'string' ? { previous } : {})
  }
  const written: Flaw[] = json.is === 'canonical' ? [] : [NOT_CANONICAL]
  const entry = read(json.value)
  return Array.isArray(entry)
    ? { line, text, ...claims, flaws: [...written, ...entry] }
    : { line, text, ...claims, entry, flaws: written }
}

const NOT_CANONICAL: Flaw = [
  'REGISTER_NOT_CANONICAL',
  'the line is not written as the register writes: names in order and once, no spaces'
]
