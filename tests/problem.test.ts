/** How a problem is shown: where, what, the line with its carets, what to do. */

import { describe, expect, test } from 'vitest'
import {
  type FieldPath,
  fieldText,
  formatProblem,
  inFileOrder,
  isError,
  type Problem,
  problemAt,
  type ProblemCode,
  problemData,
  quoted
} from '../src/problem.ts'

/** A problem at the first place where `marked` stands in `text`. */
function problemOn(text: string, marked: string, more: Partial<Problem> = {}): Problem {
  const start = text.indexOf(marked)
  if (start < 0) throw new Error(`'${marked}' does not stand in the text`)
  const file = { path: 'content/batches/EB-1.yaml', text }
  const place = { file, field: ['product', 'mass'], range: [start, start + marked.length] as const }
  return {
    ...problemAt(place, 'MISSING_UNIT', "has no unit, got '25.00'", 'add the unit: g, kg or mg'),
    ...more
  }
}

/** The source line as shown, and the part of it that the carets stand under, by characters. */
function underlined(problem: Problem): { line: string; carets: string; before: string } {
  const [line, carets] = formatProblem(problem).split('\n').slice(3, 5) as [string, string]
  const bar = line.indexOf(' | ') + 3
  const start = carets.indexOf('^')
  return { line: line.slice(bar), carets: carets.slice(start), before: carets.slice(bar, start) }
}

test('an error in full', () => {
  const text = 'lot: EB-1\nmade: 2026-02-02\nproduct: { mass: 25.00 }\n'
  expect(formatProblem(problemOn(text, '25.00'))).toBe(
    [
      'content/batches/EB-1.yaml:3:18 MISSING_UNIT',
      "  product › mass: has no unit, got '25.00'",
      '',
      '  3 | product: { mass: 25.00 }',
      '    |                  ^^^^^',
      '  hint: add the unit: g, kg or mg'
    ].join('\n')
  )
})

test('a warning says so; a problem of no field names none; the gutter is as wide as the number', () => {
  const text = `${'#\n'.repeat(99)}lot: EB-1\n`
  const problem = problemOn(text, 'EB-1', {
    code: 'SINGLE_READING',
    field: [],
    message: 'moisture rests on one reading',
    hint: 'repeat the reading'
  })
  expect(formatProblem(problem)).toBe(
    [
      'content/batches/EB-1.yaml:100:6 SINGLE_READING (warning)',
      '  moisture rests on one reading',
      '',
      '  100 | lot: EB-1',
      '      |      ^^^^',
      '  hint: repeat the reading'
    ].join('\n')
  )
  expect(isError(problem)).toBe(false)
})

test('a file with line ends of two characters reads the same', () => {
  const text = 'lot: EB-1\nproduct: { mass: 25.00 }\nmade: 2026-02-02\n'
  const shown = (lines: string) => formatProblem(problemOn(lines, '25.00'))
  expect(shown(text.replaceAll('\n', '\r\n'))).toBe(shown(text))
})

test('what runs over several lines is underlined to the end of its first', () => {
  const text = 'charge:\n  - { material: GR-1\n      mass: 3 g }\n'
  const { line, carets } = underlined(problemOn(text, '{ material: GR-1\n      mass: 3 g }'))
  expect(line).toBe('  - { material: GR-1')
  expect(carets).toBe('^'.repeat('{ material: GR-1'.length))
})

test('a place with nothing at it still has a caret', () => {
  for (const [text, offset, at] of [
    ['', 0, '1:1'],
    ['\n', 0, '1:1'],
    ['\nlot: EB-1', 0, '1:1'],
    ['lot:', 4, '1:5'],
    ['lot:\n', 5, '2:1']
  ] as const) {
    const problem = problemOn(text, '', { range: [offset, offset] })
    expect(formatProblem(problem)).toContain(`EB-1.yaml:${at} `)
    expect(underlined(problem).carets).toBe('^')
  }
})

describe('the caret stands under the right character', () => {
  test.for([
    ['a tab, shown as one space', 'x:\t25 y', ' '.repeat(3)],
    ['an umlaut of two code points', 'x: u\u0308 25 y', ' '.repeat(5)],
    ['a letter with many marks', `x: a${'\u0301'.repeat(20)} 25 y`, ' '.repeat(5)],
    ['an emoji, two cells wide', 'x: 🧪 25 y', ' '.repeat(6)],
    ['an emoji of several code points', 'x: 👩🏽‍🔬 25 y', ' '.repeat(6)],
    ['a flag', 'x: 🇳🇴 25 y', ' '.repeat(6)],
    ['Chinese, two cells each', 'x: 石墨 25 y', ' '.repeat(8)],
    ['full-width digits', 'x: １２ 25 y', ' '.repeat(8)],
    ['a no-break space', 'x: 1\u00a0g 25 y', ' '.repeat(7)],
    ['a right-to-left mark, shown as a sign', 'x: \u200f 25 y', ' '.repeat(5)],
    ['a minus sign', 'x: \u22121 25 y', ' '.repeat(6)]
  ] as const)('after %s', ([, text, before]) => {
    expect(underlined(problemOn(text, '25'))).toMatchObject({ before, carets: '^^' })
  })

  test('and is as wide as what it marks', () => {
    expect(underlined(problemOn('x: 石墨 y', '石墨')).carets).toBe('^^^^')
    expect(underlined(problemOn('x: u\u0308ber y', 'u\u0308ber')).carets).toBe('^^^^')
    expect(underlined(problemOn('x: 🧪 y', '🧪')).carets).toBe('^^')
  })
})

describe('a long line is cut around the caret', () => {
  test.for([
    ['at its start', 0],
    ['in its middle', 5_000],
    ['at its end', 9_998]
  ] as const)('%s', ([, at]) => {
    const text = `${'.'.repeat(at)}25${'.'.repeat(9_998 - at)}`
    const { line, before, carets } = underlined(problemOn(text, '25'))
    expect(line.length).toBeLessThanOrEqual(122)
    expect(line.slice(before.length, before.length + 2)).toBe('25')
    expect(carets).toBe('^^')
    expect(line.startsWith('…')).toBe(at > 0)
    expect(line.endsWith('…')).toBe(at < 9_998)
  })

  test('never through a character', () => {
    for (let shift = 0; shift < 8; shift++) {
      const text = `${'x'.repeat(shift)}${'👩🏽‍🔬'.repeat(300)}25${'👩🏽‍🔬'.repeat(300)}`
      const { line } = underlined(problemOn(text, '25'))
      expect(line).not.toMatch(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])/)
      expect(line).not.toMatch(/(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/)
      expect(line).toContain('25')
    }
  })

  test('a mark longer than the line can show is cut with it', () => {
    const text = `x: ${'9'.repeat(3_000)}`
    const { line, carets, before } = underlined(problemOn(text, '9'.repeat(3_000)))
    expect(before.length + carets.length).toBeLessThanOrEqual(line.length)
  })
})

test('no control character of a record reaches the terminal', () => {
  const evil = 'lot: \u001b[31mred\u0007\u009b\u202e\u2028\u0000'
  const text = formatProblem(
    problemOn(`${evil} 25`, '25', {
      field: ['a\u001b[2J'],
      message: `got ${evil}`,
      hint: `write ${evil}`
    })
  )
  expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e\u2028]/u)
  expect(text).toContain('lot: ␛[31mred␇��')
  expect(text).toContain('got lot: <U+001B>[31mred<U+0007><U+009B><U+202E><U+2028><U+0000>')
})

test('text of a record in a sentence: on one line, cut where it is long', () => {
  expect(quoted('25 g')).toBe("'25 g'")
  expect(quoted('25\ng')).toBe("'25<U+000A>g'")
  expect(quoted('x'.repeat(60))).toBe(`'${'x'.repeat(60)}'`)
  expect(quoted('x'.repeat(61))).toBe(`'${'x'.repeat(59)}…'`)
  expect(Array.from(quoted('🧪'.repeat(1_000)))).toHaveLength(62)
})

test('a field path counts from one, as readers do', () => {
  const path: FieldPath = ['tests', 'expansion-volume', 'readings', 1, 'mass']
  expect(fieldText(path)).toBe('tests › expansion-volume › readings › 2 › mass')
})

test('problems for programs', () => {
  const text = 'lot: EB-1\nproduct: { mass: 25.00 }\n'
  expect(problemData(problemOn(text, '25.00'))).toEqual({
    severity: 'error',
    code: 'MISSING_UNIT',
    file: 'content/batches/EB-1.yaml',
    line: 2,
    column: 18,
    endLine: 2,
    endColumn: 23,
    field: 'product › mass',
    message: "has no unit, got '25.00'",
    hint: 'add the unit: g, kg or mg'
  })
})

test('in file order, by place, each once, whatever order they were found in', () => {
  const at = (path: string, start: number, code: ProblemCode, message: string) =>
    problemAt(
      { file: { path, text: 'abc' }, field: [], range: [start, start + 1] },
      code,
      message,
      ''
    )
  const sorted = [
    at('a.yaml', 0, 'BAD_DATE', 'x'),
    at('a.yaml', 2, 'BAD_DATE', 'x'),
    at('a.yaml', 2, 'BAD_DATE', 'y'),
    at('a.yaml', 2, 'WRONG_TYPE', 'a'),
    at('b.yaml', 0, 'BAD_DATE', 'x')
  ]
  expect(inFileOrder([...sorted, ...sorted].reverse())).toEqual(sorted)
})

test('two whose sentences are alike where a text is cut are two, by what their hints say', () => {
  const place = { file: { path: 'a.yaml', text: 'abc' }, field: [], range: [0, 1] } as const
  const lacking = (text: string) =>
    problemAt(place, 'MISSING_TEXT', `nobody has translated ${quoted(text)}`, `add '${text}'`)
  const alike = ['one', 'another'].map(end => lacking(`${'a long text '.repeat(6)}${end}`))
  expect(alike[0]!.message).toBe(alike[1]!.message)
  expect(inFileOrder([...alike, ...alike])).toHaveLength(2)
})
