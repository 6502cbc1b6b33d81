/** Formulas read as mathematics say what their text says: evaluated, they come to the same. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { plainFormula, readFormula } from '../../src/documents/formula.ts'
import type { Maths } from '../../src/documents/formula-types.ts'
import { mathml } from '../../src/html/mathml.ts'
import { workshopSite } from './demo.ts'

type Values = Readonly<Record<string, number>>

/** What a formula comes to, as a person would take its strokes, roots and brackets. */
function valueOf(maths: Maths, values: Values): number {
  if (maths.is === 'number') return Number(maths.text)
  if (maths.is === 'fraction') return valueOf(maths.above, values) / valueOf(maths.below, values)
  if (maths.is === 'root') return Math.sqrt(valueOf(maths.of, values))
  if (maths.is === 'bracket') return valueOf(maths.of, values)
  if (maths.is === 'power') return valueOf(maths.base, values) ** Number(maths.power)
  if (maths.is === 'name') return values[maths.parts.map(({ text }) => text).join('')]!
  if (maths.is !== 'row') throw new Error(`no value: ${maths.is}`)
  return rowOf(maths.parts, values)
}

/** Terms by their signs, factors by the dots between them. */
function rowOf(parts: readonly Maths[], values: Values): number {
  const terms = [{ sign: 1, value: 1 }]
  for (const part of parts)
    if (part.is !== 'sign') terms.at(-1)!.value *= valueOf(part, values)
    else if (part.text !== '·') {
      const sign = part.text === '−' ? -1 : 1
      if (part === parts[0]) terms[0]!.sign = sign
      else terms.push({ sign, value: 1 })
    }
  return terms.reduce((sum, { sign, value }) => sum + sign * value, 0)
}

/** The side behind the sign of equality. */
const rightOf = (text: string): Maths => {
  const maths = readFormula(`y = ${text}`)[0]!.maths
  if (maths?.is !== 'row') throw new Error(`not read: ${text}`)
  return maths.parts[2]!
}

/** Texts of formulas with all that models use, and the same for this language. */
const expressions = fc.letrec<{ sum: string; product: string; factor: string }>(tie => ({
  factor: fc.oneof(
    { depthSize: 'small' },
    fc.constantFrom('a', 'b', 'c', '2', '0.5'),
    fc.constantFrom('a²', 'b³'),
    tie('sum').map(sum => `(${sum})`),
    tie('sum').map(sum => `√(${sum})`),
    tie('sum').map(sum => `(${sum})²`)
  ),
  product: fc
    .tuple(
      tie('factor'),
      fc.array(fc.tuple(fc.constantFrom('·', '/'), tie('factor')), { maxLength: 3 })
    )
    .map(([first, more]) => [first, ...more.flat()].join(' ')),
  sum: fc
    .tuple(
      tie('product'),
      fc.array(fc.tuple(fc.constantFrom('+', '−'), tie('product')), { maxLength: 2 })
    )
    .map(([first, more]) => [first, ...more.flat()].join(' '))
}))

const script = (text: string) =>
  text
    .replaceAll('·', '*')
    .replaceAll('−', '-')
    .replaceAll('√', 'Math.sqrt')
    .replaceAll('²', '**2')
    .replaceAll('³', '**3')

test('any formula comes to what its text comes to', () => {
  const values = { a: 1.7, b: 0.6, c: 3.1 }
  fc.assert(
    fc.property(expressions.sum, text => {
      const expected = new Function('a', 'b', 'c', `return ${script(text)}`) as (
        ...values: number[]
      ) => number
      const found = valueOf(rightOf(text), values)
      const wanted = expected(values.a, values.b, values.c)
      if (Number.isFinite(wanted)) expect(found / wanted || 1).toBeCloseTo(1, 9)
    }),
    { numRuns: 500 }
  )
})

describe('set as MathML', () => {
  test.for([
    [
      'y = −a · (b + c)',
      '<mi>y</mi><mo>=</mo><mo>−</mo><mi>a</mi><mo>·</mo><mo>(</mo><mi>b</mi><mo>+</mo><mi>c</mi><mo>)</mo>'
    ],
    [
      'y = a · (b / c)',
      '<mi>y</mi><mo>=</mo><mi>a</mi><mo>·</mo><mfrac><mi>b</mi><mi>c</mi></mfrac>'
    ],
    ['EV = V / m', '<mi>EV</mi><mo>=</mo><mfrac><mi>V</mi><mi>m</mi></mfrac>'],
    [
      'w = (a − m dry) / a',
      '<mi>w</mi><mo>=</mo><mfrac><mrow><mi>a</mi><mo>−</mo><msub><mi>m</mi><mtext>dry</mtext></msub></mrow><mi>a</mi></mfrac>'
    ],
    [
      'R_s = M(H2SO4)',
      '<msub><mi>R</mi><mtext>s</mtext></msub><mo>=</mo><mi>M</mi><mo>\u2061</mo><mo>(</mo><mrow><msub><mi>H</mi><mn>2</mn></msub><msub><mi>SO</mi><mn>4</mn></msub></mrow><mo>)</mo>'
    ],
    [
      'x = (d/s)²',
      '<mi>x</mi><mo>=</mo><msup><mrow><mo>(</mo><mfrac><mi>d</mi><mi>s</mi></mfrac><mo>)</mo></mrow><mn>2</mn></msup>'
    ],
    [
      't = (Σ t_i) / n',
      '<mi>t</mi><mo>=</mo><mfrac><mrow><mo>Σ</mo><msub><mi>t</mi><mtext>i</mtext></msub></mrow><mi>n</mi></mfrac>'
    ],
    [
      'y = a / b / c',
      '<mi>y</mi><mo>=</mo><mfrac><mi>a</mi><mrow><mi>b</mi><mo>·</mo><mi>c</mi></mrow></mfrac>'
    ],
    [
      'κ₂₅ = n(H⁺)',
      '<msub><mi>κ</mi><mn>25</mn></msub><mo>=</mo><mi>n</mi><mo>\u2061</mo><mo>(</mo><msup><mi>H</mi><mtext>+</mtext></msup><mo>)</mo>'
    ]
  ] as const)('%s', ([text, inner]) => {
    expect(mathml(readFormula(text)[0]!)).toBe(`<math display="block">${inner}</math>`)
  })

  test.for([
    'm before expansion',
    'w · t before the test',
    'T = mean of the readings',
    'a < b = c'
  ])('%s stays words', text => {
    expect(readFormula(text)).toEqual([{ text }])
  })

  test('a comma within a number parts nothing', () => {
    expect(readFormula('y = 1,645 · x, x 0,020 ± 0,005').map(({ text }) => text)).toEqual([
      'y = 1,645 · x',
      'x 0,020 ± 0,005'
    ])
    expect(readFormula('y = 1,645 · x')[0]!.maths).toBeDefined()
  })

  test('words cannot become elements', () => {
    expect(mathml({ text: 'a <b> & c' })).toBe('a &lt;b&gt; &amp; c')
  })
})

test('as a line of text', () => {
  expect(plainFormula('R_s = exp(−R_a) + m_dry')).toBe('Rs = exp(−Ra) + m dry')
})

test('every formula of the demo is mathematics, and no equation of it is left as words', () => {
  const all = workshopSite.lots.flatMap(({ document, process }) => [
    ...document.workings,
    ...(process?.workings ?? [])
  ])
  expect(all.length).toBeGreaterThan(300)
  const own = all.filter(({ formula }) => !formula.startsWith('as reported'))
  expect(own.filter(({ statements }) => !statements[0]?.maths).map(({ key }) => key)).toEqual([])
  const words = own.flatMap(({ statements }) => statements.filter(({ maths }) => !maths))
  expect(words.filter(({ text }) => /[=≥√Σ]|^$/u.test(text))).toEqual([])
})
