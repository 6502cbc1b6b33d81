/**
 * The same readings in many dialects: a file comes to its numbers, digit by digit, or stops with
 * a problem that names line and column. Another number never comes of it.
 */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatProblem } from '../../src/problem.ts'
import { plainData } from '../../src/records/edit.ts'
import { sized } from '../thorough.ts'
import { takenOver } from './taking-over.ts'

const RUNS = sized(250, 1000)

const decimals = fc
  .record({ whole: fc.integer({ min: 0, max: 12_345 }), places: fc.integer({ min: 0, max: 4 }) })
  .chain(({ whole, places }) =>
    fc
      .array(fc.integer({ min: 0, max: 9 }), { minLength: places, maxLength: places })
      .map(digits => `${whole}${places > 0 ? `.${digits.join('')}` : ''}`)
  )

const readings = fc.array(
  fc.record({
    mass: decimals,
    volume: decimals,
    note: fc.constantFrom('', 'ok', '7', 'a;b', 'x,y')
  }),
  {
    minLength: 1,
    maxLength: 6
  }
)

const dialect = fc.record({
  delimiter: fc.constantFrom(';', ',', '\t', '|'),
  decimal: fc.constantFrom('.', ','),
  thousands: fc.constantFrom('', '', '.', ',', "'", ' ', '\u00A0'),
  encoding: fc.constantFrom('utf-8', 'utf-8 mark', 'utf-16le', 'windows-1252'),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  quoted: fc.boolean(),
  above: fc.constantFrom(0, 2),
  trailing: fc.boolean(),
  dropsBlank: fc.boolean(),
  states: fc.constantFrom('nothing', 'decimal', 'all'),
  unit: fc.constantFrom('[g]', '(g)', '')
})
type Dialect = typeof dialect extends fc.Arbitrary<infer Of> ? Of : never
type Row = { readonly mass: string; readonly volume: string; readonly note: string }

function inDialect(number: string, { decimal, thousands }: Dialect): string {
  const [whole = '', part] = number.split('.')
  const grouped = thousands === decimal ? whole : whole.replace(/\B(?=(\d{3})+$)/gu, thousands)
  return part === undefined ? grouped : `${grouped}${decimal}${part}`
}

function entry(text: string, { delimiter, quoted }: Dialect, isNumber: boolean): string {
  // A number with the delimiter in it, without quotes: what careless programs write.
  return quoted || (!isNumber && text.includes(delimiter))
    ? `"${text.replaceAll('"', '""')}"`
    : text
}

function fileOf(rows: readonly Row[], form: Dialect): Uint8Array {
  const { delimiter, lineEnd, above, trailing, dropsBlank, unit } = form
  const line = (cells: readonly string[]) => cells.join(delimiter) + (trailing ? delimiter : '')
  const text = [
    ...Array.from({ length: above }, (_, n) => `Device ${n}`),
    line([`m ${unit}`.trim(), 'V [mL]', 'Größe']),
    ...rows.map(({ mass, volume, note }) =>
      line([
        entry(inDialect(mass, form), form, true),
        entry(inDialect(volume, form), form, true),
        ...(dropsBlank && note === '' ? [] : [entry(note, form, false)])
      ])
    ),
    ''
  ].join(lineEnd)
  return encoded(text, form.encoding)
}

function encoded(text: string, encoding: string): Uint8Array {
  if (encoding === 'utf-16le') return Buffer.from(`\uFEFF${text}`, 'utf16le')
  if (encoding === 'windows-1252') return Buffer.from(text, 'latin1')
  return Buffer.from(encoding === 'utf-8 mark' ? `\uFEFF${text}` : text)
}

const words: Readonly<Record<string, string>> = {
  '.': 'point',
  ',': 'comma',
  "'": 'apostrophe',
  ' ': 'space',
  '\u00A0': 'space'
}
const delimiters: Readonly<Record<string, string>> = {
  ';': 'semicolon',
  ',': 'comma',
  '\t': 'tab',
  '|': 'bar'
}

function mappingOf({ states, decimal, thousands, delimiter, encoding, unit }: Dialect): string {
  const said = [
    ...(states === 'nothing' ? [] : [`decimal: ${words[decimal]}`]),
    ...(states === 'all' && thousands && thousands !== decimal
      ? [`thousands: ${words[thousands]}`]
      : []),
    ...(states === 'all' ? [`delimiter: ${delimiters[delimiter]}`] : []),
    ...(encoding === 'windows-1252' ? ['encoding: windows-1252'] : [])
  ]
  return `fills: expansion-volume
${said.length > 0 ? `file: { ${said.join(', ')} }\n` : ''}columns:
  - { column: m, to: mass${unit === '' ? ', unit: g' : ''} }
  - { column: V, to: volume }
  - { column: Größe }
`
}

const record =
  'lot: X-1 # kept\ntests: # kept too\n  expansion-volume:\n    tested: 2026-03-14\n    readings:\n'

/** Whether nothing about a dialect is left open or broken. */
const isClear = ({ states, decimal, delimiter, quoted, dropsBlank, thousands }: Dialect) =>
  states === 'all' &&
  (quoted || (delimiter !== decimal && delimiter !== thousands)) &&
  (delimiter !== ',' || (quoted && !dropsBlank && decimal === '.'))

test(`${RUNS} dialects come to the same numbers or stop with a clear problem`, () => {
  let read = 0
  fc.assert(
    fc.property(readings, dialect, (rows, form) => {
      const result = takenOver({
        folder: 'batches',
        record,
        mapping: mappingOf(form),
        file: fileOf(rows, form)
      })
      if (!result.ok) {
        expect(isClear(form), result.problems.map(formatProblem).join('\n')).toBe(false)
        for (const problem of result.problems)
          expect(formatProblem(problem)).toMatch(
            /^export\.csv:\d+:\d+ (?:AMBIGUOUS_NUMBER|NOT_A_TABLE|NOT_A_QUANTITY|MISSING_COLUMN|UNKNOWN_UNIT|UNMAPPED_COLUMN)\n/u
          )
        return
      }
      read += 1
      const { text } = result.value
      expect(text).toMatch(/^lot: X-1 # kept\ntests: # kept too\n/u)
      const block = (plainData(text) as { tests: Record<string, { readings: unknown }> }).tests[
        'expansion-volume'
      ]
      expect(block!.readings).toEqual(
        rows.map(({ mass, volume }) => ({ mass: `${mass} g`, volume: `${volume} mL` }))
      )
    }),
    { numRuns: RUNS, seed: 7 }
  )
  // Far from all may be refused.
  expect(read).toBeGreaterThan(0.4 * RUNS)
})
