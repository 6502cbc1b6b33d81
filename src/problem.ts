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
  IMPOSSIBLE_BALANCE: 'error',
  COPIED_READINGS: 'warning',
  HIGH_YIELD: 'warning',
  // The figures
  OUT_OF_DOMAIN: 'error',
  IMPLAUSIBLE: 'warning',
  SINGLE_READING: 'warning',
  NO_CALIBRATION: 'warning',
  CANNOT_DECIDE: 'warning',
  METHOD_MISMATCH: 'warning',
  HOT_DRYING: 'warning',
  // Release and certificates
  NOT_RELEASABLE: 'error',
  NOT_CERTIFIABLE: 'error',
  MISSING_TEXT: 'error'
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
        compareText(a.code, b.code)
    )
    .filter(problem => {
      const key = [problem.file.path, problem.range[0], problem.code, problem.message].join('\n')
      return !seen.has(key) && seen.add(key)
    })
}

/** The field as a reader counts: 'tests › expansion-volume › readings › 2 › mass'. */
export const fieldText = (field: FieldPath): string =>
  field.map(step => (typeof step === 'number' ? String(step + 1) : step)).join(' › ')

/**
 * Show a problem the way a compiler would: code and position, sentence, source line with carets,
 * hint.
 */
export function formatProblem(problem: Problem): string {
  const { line, column, text } = locate(problem.file.text, problem.range[0])
  const { shown, caret } = window(text, column)
  const width = Math.max(1, Math.min(problem.range[1] - problem.range[0], shown.length - caret + 1))
  const gutter = ' '.repeat(String(line).length)
  const field = problem.field.length > 0 ? `${fieldText(problem.field)}: ` : ''
  const word = severityOf(problem) === 'warning' ? ' (warning)' : ''
  return [
    `${problem.file.path}:${line}:${column} ${problem.code}${word}`,
    `  ${field}${problem.message}`,
    '',
    `  ${line} | ${shown}`,
    `  ${gutter} | ${' '.repeat(caret - 1)}${'^'.repeat(width)}`,
    `  hint: ${problem.hint}`
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

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

/** Line and column (both from 1) of an offset, with the text of that line. */
function locate(text: string, offset: number) {
  const start = text.lastIndexOf('\n', offset - 1) + 1
  const line = text.slice(0, start).split('\n').length
  return { line, column: offset - start + 1, text: text.slice(start).split(/\r?\n/, 1)[0] ?? '' }
}

/** Longest source line shown whole. */
const WIDEST = 120

/** A long line cut around the caret; tabs become one space, so that the caret stands right. */
function window(text: string, column: number): { shown: string; caret: number } {
  const plain = text.replaceAll('\t', ' ')
  if (plain.length <= WIDEST) return { shown: plain, caret: column }
  const from = Math.max(0, column - 1 - WIDEST / 2)
  const cut = plain.slice(from, from + WIDEST)
  const lead = from > 0 ? '…' : ''
  const tail = from + WIDEST < plain.length ? '…' : ''
  return { shown: lead + cut + tail, caret: column - from + lead.length }
}
