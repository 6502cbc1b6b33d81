/**
 * Everything that can be wrong with the records, and how it is shown.
 *
 * Codes are permanent: people search for them and DEVELOPERS.md lists them.
 */

export type Severity = 'error' | 'warning'

/** Every code, with its severity. An error stops the build; a warning never does. */
export const problemCodes = {
  // The file as text
  YAML_SYNTAX: 'error',
  YAML_FEATURE: 'error',
  DUPLICATE_FIELD: 'error',
  NOT_A_RECORD: 'error',
  MISPLACED_FILE: 'error',
  // The record's shape
  UNKNOWN_FIELD: 'error',
  MISSING_FIELD: 'error',
  WRONG_TYPE: 'error',
  UNKNOWN_WORD: 'error',
  BAD_DATE: 'error',
  COMMA_DECIMAL: 'error',
  MISSING_UNIT: 'error',
  UNKNOWN_UNIT: 'error',
  WRONG_DIMENSION: 'error',
  NOT_A_QUANTITY: 'error',
  INVALID_VALUE: 'error',
  // Records among each other
  MISSING_RECORD: 'error',
  DUPLICATE_ID: 'error',
  UNKNOWN_REFERENCE: 'error',
  NO_VALID_REVISION: 'error',
  LOT_CYCLE: 'error',
  DATE_ORDER: 'error',
  USED_BEFORE_MADE: 'error',
  OVERDRAWN: 'error',
  OVER_RETURNED: 'error',
  IMPOSSIBLE_BALANCE: 'error',
  STOCK_DIFFERENCE: 'warning',
  COPIED_READINGS: 'warning',
  HIGH_YIELD: 'warning',
  // Tables read into records
  NOT_A_TABLE: 'error',
  MISSING_COLUMN: 'error',
  UNMAPPED_COLUMN: 'error',
  AMBIGUOUS_NUMBER: 'error',
  COMPUTED_VALUE: 'error',
  ALREADY_RECORDED: 'error',
  // The figures
  OUT_OF_DOMAIN: 'error',
  IMPLAUSIBLE: 'warning',
  SINGLE_READING: 'warning',
  SCATTERED_READINGS: 'warning',
  NO_CALIBRATION: 'warning',
  CANNOT_DECIDE: 'warning',
  METHOD_MISMATCH: 'warning',
  HOT_DRYING: 'warning',
  OXIDISER_LEFT: 'warning',
  CONTRADICTION: 'warning',
  UNLIKE_PANELS: 'warning',
  AMMONIUM_TITRATED: 'warning',
  CHARGE_LIMIT: 'warning',
  STEP_ORDER: 'warning',
  INCOMPATIBLE: 'warning',
  UNSAID_STRENGTH: 'warning',
  HOTTER_THAN_DILUTION: 'warning',
  FAILED_CHECK: 'warning',
  PROCESS_SIGNAL: 'warning',
  PLACEHOLDER: 'warning',
  // Release and certificates
  NOT_RELEASABLE: 'error',
  NOT_CERTIFIABLE: 'error',
  NOT_SHIPPABLE: 'error',
  SHEET_OWED: 'warning',
  CERTIFICATE_FORMAT: 'error',
  CERTIFICATE_DIFFERS: 'error',
  CERTIFICATE_STANDS: 'warning',
  REWORDED: 'warning',
  COPY_DIFFERS: 'warning',
  COPY_SUPERSEDED: 'warning',
  PAPER_REDRAWN: 'warning',
  PAPER_FROM_ARCHIVE: 'warning',
  MISSING_TEXT: 'error',
  NOT_LABELLABLE: 'error',
  PICTURE_MISSING: 'error',
  PICTURE_UNUSABLE: 'error',
  // The register: the log as text
  REGISTER_LINE_END: 'error',
  REGISTER_CUT: 'error',
  REGISTER_BLANK_LINE: 'error',
  REGISTER_NOT_JSON: 'error',
  REGISTER_NOT_CANONICAL: 'error',
  REGISTER_UNKNOWN_KIND: 'error',
  REGISTER_FIELD: 'error',
  REGISTER_CHAIN: 'error',
  REGISTER_COUNT: 'error',
  REGISTER_DATE_ORDER: 'error',
  // The register: what may follow what
  REGISTER_NUMBER_TAKEN: 'error',
  REGISTER_REVISION: 'error',
  REGISTER_OTHER_LOT: 'error',
  REGISTER_SAME_DATA: 'error',
  REGISTER_NOT_ISSUED: 'error',
  REGISTER_SUPERSEDED: 'error',
  REGISTER_WITHDRAWN: 'error',
  REGISTER_TWICE: 'error',
  REGISTER_UNKNOWN_KEY: 'error',
  REGISTER_RETIRED_KEY: 'error',
  REGISTER_KEY_NAME: 'error',
  REGISTER_SIGNATURE: 'error',
  // The register against the documents and its earlier states
  REGISTER_NO_DOCUMENT: 'error',
  REGISTER_NO_LINE: 'error',
  REGISTER_DOCUMENT_CHANGED: 'error',
  REGISTER_SHORTENED: 'error',
  REGISTER_REWRITTEN: 'error'
} as const satisfies Record<string, Severity>

export type ProblemCode = keyof typeof problemCodes

export interface SourceFile {
  /** Path from the folder the command runs in, with forward slashes. */
  readonly path: string
  readonly text: string
}

/** Field names and list positions, outermost first: ['tests', 'expansion-volume', 'readings', 0]. */
export type FieldPath = readonly (string | number)[]

/** Where something stands in a file. */
export interface Place {
  readonly file: SourceFile
  readonly field: FieldPath
  /** Offsets into file.text: where the offending text starts and ends. */
  readonly range: readonly [start: number, end: number]
}

export interface Problem extends Place {
  readonly code: ProblemCode
  /** What is wrong and what was found: no leading capital, no final full stop. */
  readonly message: string
  /** What the author of the record can do about it. */
  readonly hint: string
}

/** A value, or every problem that stopped it from existing. */
export type Checked<T> =
  | { readonly ok: true; readonly value: T; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export const severityOf = ({ code }: Problem): Severity => problemCodes[code]

export const isError = (problem: Problem): boolean => severityOf(problem) === 'error'

/** A problem at a place. */
export const problemAt = (
  place: Place,
  code: ProblemCode,
  message: string,
  hint: string
): Problem => ({ ...place, code, message, hint })

/** Problems in file order, then by position; each once. */
export function inFileOrder(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>()
  return [...problems]
    .sort(
      (a, b) =>
        compareText(a.file.path, b.file.path) ||
        a.range[0] - b.range[0] ||
        compareText(a.code, b.code) ||
        compareText(a.message, b.message)
    )
    .filter(problem => {
      const { file, range, code, message, hint } = problem
      // A sentence cuts long texts; its hint has them whole.
      const key = [file.path, range[0], code, message, hint].join('\n')
      return !seen.has(key) && seen.add(key)
    })
}

/** The field as a reader counts: 'tests › expansion-volume › readings › 2 › mass'. */
export const fieldText = (field: FieldPath): string =>
  field
    .map(step => (typeof step === 'number' ? String(step + 1) : clipped(printable(step))))
    .join(' › ')

/** Text from a record inside a sentence: in quotes, on one line, cut where it is long. */
export const quoted = (text: string): string => `'${clipped(printable(text))}'`

/** Characters that cannot be seen, or that would move what stands around them. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Cn}]/gu

/** Text with every character that cannot be seen named by its code point: 25<U+200B> g. */
const printable = (text: string): string =>
  text.replace(UNSEEN, character => {
    const code = character.codePointAt(0)!
    return `<U+${code.toString(16).toUpperCase().padStart(4, '0')}>`
  })

/** Longest text of a record that a sentence repeats. */
const LONGEST = 60

function clipped(text: string): string {
  const characters = Array.from(text.slice(0, 4 * LONGEST))
  return characters.length <= LONGEST ? text : `${characters.slice(0, LONGEST - 1).join('')}…`
}

/**
 * Show a problem the way a compiler would: code and position, sentence, source line with carets,
 * hint.
 */
export function formatProblem(problem: Problem): string {
  const { line, column, text } = locate(problem.file.text, problem.range[0])
  const end = column - 1 + Math.max(1, problem.range[1] - problem.range[0])
  const { shown, before, width } = underline(text, column - 1, end)
  const gutter = ' '.repeat(String(line).length)
  const field = problem.field.length > 0 ? `${fieldText(problem.field)}: ` : ''
  const word = severityOf(problem) === 'warning' ? ' (warning)' : ''
  return [
    `${printable(problem.file.path)}:${line}:${column} ${problem.code}${word}`,
    `  ${field}${printable(problem.message)}`,
    '',
    `  ${line} | ${shown}`,
    `  ${gutter} | ${' '.repeat(before)}${'^'.repeat(width)}`,
    `  hint: ${printable(problem.hint)}`
  ].join('\n')
}

/** A problem for programs, one-based positions as in the text form. */
export function problemData(problem: Problem) {
  const { line, column } = locate(problem.file.text, problem.range[0])
  const end = locate(problem.file.text, problem.range[1])
  const { code, message, hint, file, field } = problem
  return {
    severity: severityOf(problem),
    code,
    file: file.path,
    line,
    column,
    endLine: end.line,
    endColumn: end.column,
    field: fieldText(field),
    message,
    hint
  }
}

/** Order of texts by their code units: the same wherever it runs. */
export const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

/** Line and column (both from 1) of an offset, with the text of that line. */
function locate(text: string, offset: number) {
  const start = offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1
  const line = text.slice(0, start).split('\n').length
  return { line, column: offset - start + 1, text: text.slice(start).split(/\r?\n/, 1)[0] ?? '' }
}

/** Longest source line shown whole, in cells of a terminal. */
const WIDEST = 120

/** What a reader sees as one character, and the cells it takes. */
interface Cell {
  readonly text: string
  readonly start: number
  readonly end: number
  readonly width: number
}

/**
 * A source line with the place of its carets: cut around them where it is long, one cell for a tab,
 * a sign for what cannot be seen.
 *
 * @returns the line, the cells before the carets, and how many carets
 */
function underline(text: string, start: number, end: number) {
  const cells = cellsOf(text, start)
  const first = cells.findIndex(cell => cell.end > start)
  const caret = widthOf(first < 0 ? cells : cells.slice(0, first))
  const marked = first < 0 ? [] : cells.slice(first).filter(cell => cell.start < end)
  const from = widthOf(cells) <= WIDEST ? 0 : Math.max(0, caret - WIDEST / 2)
  let at = 0
  const kept = cells.filter(cell => {
    const inside = at >= from && at + cell.width <= from + WIDEST
    at += cell.width
    return inside
  })
  const lead = (kept[0]?.start ?? 0) > 0 ? '…' : ''
  const tail = (kept.at(-1)?.end ?? text.length) < text.length ? '…' : ''
  const before = widthOf(kept.filter(cell => cell.end <= start)) + lead.length
  const seen = marked.filter(cell => kept.includes(cell))
  return {
    shown: `${lead}${kept.map(cell => cell.text).join('')}${tail}`,
    before,
    width: Math.max(1, widthOf(seen))
  }
}

const widthOf = (cells: readonly Cell[]) => cells.reduce((sum, { width }) => sum + width, 0)

let segmenter: Intl.Segmenter | undefined

/** Made where a line is first shown: it takes longer than most else that a start does. */
const graphemes = () => (segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' }))

/** The characters around `start`, as many as could be shown. */
function cellsOf(text: string, start: number): Cell[] {
  const low = /[\uDC00-\uDFFF]/
  const wanted = Math.max(0, start - 4 * WIDEST)
  const from = low.test(text.charAt(wanted)) ? wanted + 1 : wanted
  const part = text.slice(from, start + 4 * WIDEST)
  return [...graphemes().segment(part)].map(({ segment, index }) => {
    const shown = seen(segment)
    const at = from + index
    return { text: shown, start: at, end: at + segment.length, width: cellWidth(shown) }
  })
}

/** A character as a terminal may show it: no control character reaches one. */
function seen(character: string): string {
  if (character === '\t') return ' '
  if (/\p{Extended_Pictographic}/u.test(character)) return character
  return character.replace(UNSEEN, unseen => {
    const code = unseen.codePointAt(0)!
    return code < 0x20 ? String.fromCodePoint(0x2400 + code) : '\uFFFD'
  })
}

/**
 * Scripts and signs two cells wide.
 *
 * Source: Unicode Standard Annex #11, East Asian Width, classes W and F (ranges from memory, not
 * checked against the print).
 */
const WIDE =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF01-\uFF60\uFFE0-\uFFE6\u{20000}-\u{3FFFD}]|\p{Emoji_Presentation}|\uFE0F/u

function cellWidth(character: string): number {
  if (/^\p{M}+$/u.test(character)) return 0
  const signs = character.slice(1).match(/\uFFFD/gu)?.length ?? 0
  return (WIDE.test(character) ? 2 : 1) + signs
}
