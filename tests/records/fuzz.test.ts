/**
 * Records altered at random: whatever a hand can do to a file, it is told as problems.
 *
 * FUZZ_RUNS sets how many alterations are tried; a failure prints the seed that repeats it.
 */

import { setImmediate } from 'node:timers/promises'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { buildDocuments, judgeContent } from '../../src/pipeline.ts'
import { formatProblem, isError, problemData, type SourceFile } from '../../src/problem.ts'
import { base, withFile } from './workshop.ts'

const runs = Number(process.env['FUZZ_RUNS'] ?? 100)

/** Enough for a busy machine, however many runs. */
const timeout = 60_000 + 300 * runs

/** Pieces that trip a parser or a reader. */
const pieces = [
  ...[
    '[',
    ']',
    '{',
    '}',
    ',',
    ': ',
    ':',
    '- ',
    '? ',
    '&a ',
    '*a',
    '<<: ',
    '!!int ',
    '"',
    "'",
    '|',
    '>'
  ],
  ...['#', '%YAML 1.1\n', '---\n', '...\n', '\t', '\r', '\n', '\n\n', '  ', '\\', '@', '`', '~'],
  ...[
    'null',
    'true',
    '0',
    '-1',
    '1e999',
    '1e-400',
    '25,00 g',
    '٣',
    '３',
    '\u2212',
    '\u00a0',
    '\u200f'
  ],
  ...[
    '\u0000',
    '\u001b[31m',
    '\u202e',
    '\ud800',
    '\u0301',
    '🧪',
    '__proto__: ',
    'constructor: ',
    '\uFEFF'
  ]
]

type Alter = (text: string) => string

const cut = (text: string, from: number, to: number, put: string) =>
  text.slice(0, from) + put + text.slice(to)

/** Offsets as fractions, so that one alteration fits any text. */
const fraction = fc.double({ min: 0, max: 1, noNaN: true })
const offset = (text: string, part: number) => Math.floor(part * text.length)

const linesOf = (text: string) => text.split('\n')
const lineAt = (lines: readonly string[], part: number) =>
  Math.min(lines.length - 1, Math.floor(part * lines.length))

const alterations: fc.Arbitrary<Alter> = fc.oneof(
  fc.tuple(fraction, fc.constantFrom(...pieces)).map(
    ([at, piece]): Alter =>
      text =>
        cut(text, offset(text, at), offset(text, at), piece)
  ),
  fc.tuple(fraction, fc.string({ unit: 'binary', maxLength: 6 })).map(
    ([at, any]): Alter =>
      text =>
        cut(text, offset(text, at), offset(text, at), any)
  ),
  fc.tuple(fraction, fc.nat(12)).map(
    ([at, length]): Alter =>
      text =>
        cut(text, offset(text, at), offset(text, at) + length, '')
  ),
  fc.tuple(fraction, fraction).map(([one, other]): Alter => text => {
    const lines = linesOf(text)
    const [a, b] = [lineAt(lines, one), lineAt(lines, other)]
    ;[lines[a], lines[b]] = [lines[b]!, lines[a]!]
    return lines.join('\n')
  }),
  fraction.map(
    (at): Alter =>
      text =>
        linesOf(text)
          .toSpliced(lineAt(linesOf(text), at), 1)
          .join('\n')
  ),
  fraction.map((at): Alter => text => {
    const lines = linesOf(text)
    const line = lineAt(lines, at)
    return lines.toSpliced(line, 0, lines[line]!).join('\n')
  }),
  fc.tuple(fraction, fc.nat(5)).map(([at, blanks]): Alter => text => {
    const lines = linesOf(text)
    const line = lineAt(lines, at)
    return lines.toSpliced(line, 1, ' '.repeat(blanks) + lines[line]!.trimStart()).join('\n')
  }),
  fc.tuple(fraction, fraction).map(([one, other]): Alter => text => {
    const words = text.split(/(\s+)/u)
    const [a, b] = [lineAt(words, one), lineAt(words, other)]
    ;[words[a], words[b]] = [words[b]!, words[a]!]
    return words.join('')
  })
)

const altered = fc
  .tuple(fc.constantFrom(...base), fc.array(alterations, { minLength: 1, maxLength: 4 }))
  .map(([{ path, text }, all]) => ({ path, text: all.reduce((so, alter) => alter(so), text) }))

/** Every problem has a place in its file and reads as text. */
async function expectTold(files: readonly SourceFile[]): Promise<void> {
  // The runner is heard between two runs, however many there are.
  await setImmediate()
  for (const problem of judgeContent(files).problems) {
    const shown = formatProblem(problem)
    const { line, column, endLine, message, hint } = problemData(problem)
    const lines = problem.file.text.split('\n')
    expect(line).toBeGreaterThanOrEqual(1)
    expect(line).toBeLessThanOrEqual(lines.length)
    expect(endLine).toBeGreaterThanOrEqual(line)
    expect(column).toBeGreaterThanOrEqual(1)
    expect(column).toBeLessThanOrEqual(lines[line - 1]!.length + 1)
    expect(problem.range[0]).toBeLessThanOrEqual(problem.file.text.length)
    expect(shown.split('\n')).toHaveLength(6)
    expect(shown.split('\n')[4]).toMatch(/\^$/u)
    expect(message + hint).not.toMatch(/\bundefined\b|\bNaN\b|Infinity|\[object/u)
    expect(message.length * hint.length).toBeGreaterThan(0)
    expect(shown.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u)
  }
}

test('an altered record is told, never thrown', { timeout }, async () => {
  await fc.assert(
    fc.asyncProperty(altered, ({ path, text }) => expectTold(withFile(path, text))),
    { numRuns: runs }
  )
})

test('any text at all in place of a record', { timeout }, async () => {
  const soup = fc.array(fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 5 })), {
    maxLength: 30
  })
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...base), soup, ({ path }, parts) =>
      expectTold(withFile(path, parts.join('')))
    ),
    { numRuns: runs }
  )
})

test('any path at all', { timeout }, async () => {
  const step = fc.constantFrom(
    'batches',
    'foils',
    'constructor',
    '__proto__',
    '..',
    'a b',
    'producer.yaml',
    'x.yml',
    ''
  )
  await fc.assert(
    fc.asyncProperty(
      fc.array(step, { maxLength: 4 }),
      fc.constantFrom(...base),
      (steps, { text }) => expectTold(withFile(steps.join('/'), text))
    ),
    { numRuns: Math.ceil(runs / 3) }
  )
})

const numbers = fc.oneof(
  fc.constantFrom(
    '0',
    '0.000',
    '-0',
    '-1',
    '1e-12',
    '1e12',
    '1e11',
    '-1e12',
    '1e999',
    '1e-400',
    '99999999999'
  ),
  fc.double({ min: -1e13, max: 1e13, noNaN: true }).map(String),
  fc.double({ min: -10, max: 10, noNaN: true }).map(value => value.toFixed(3)),
  fc
    .tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -16, max: 14 }))
    .map(([a, b]) => `${a}e${b}`)
)

describe('numbers of any size', () => {
  /** A record with one or more of its numbers replaced, units kept. */
  const withNumbers = fc
    .tuple(
      fc.constantFrom(...base),
      fc.array(fc.tuple(fraction, numbers), { minLength: 1, maxLength: 3 })
    )
    .map(([{ path, text }, puts]) => ({
      path,
      text: puts.reduce((so, [at, number]) => {
        const places = [...so.matchAll(/(?<=[ [])[−-]?\d+(?:\.\d+)?(?=[ ,\]}]|\n)/gu)]
        const place = places[Math.min(places.length - 1, Math.floor(at * places.length))]
        return place ? cut(so, place.index, place.index + place[0].length, number) : so
      }, text)
    }))

  test('end as problems, or as documents without NaN or Infinity', { timeout }, async () => {
    await fc.assert(
      fc.asyncProperty(withNumbers, async ({ path, text }) => {
        const files = withFile(path, text)
        await expectTold(files)
        const { site, problems } = buildDocuments(files, { edition: 'workshop' })
        expect(site === undefined).toBe(problems.some(isError))
        expectFinite(site)
      }),
      { numRuns: runs }
    )
  })
})

/** No number in a document is NaN or infinite, and no text says so. */
function expectFinite(value: unknown, path = 'site'): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${path} is ${value}`)
  if (typeof value === 'string' && /\bNaN\b|Infinity|\bundefined\b|\[object/u.test(value))
    throw new Error(`${path} says '${value.slice(0, 80)}'`)
  if (typeof value === 'object' && value !== null)
    for (const [key, part] of Object.entries(value)) expectFinite(part, `${path}.${key}`)
}
