/** Verdicts at and around their limits, against published rules and tables. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Bounds,
  conformityProbability,
  type DecisionRule,
  judge,
  type VerdictWord,
  worstOf
} from '../../src/quality/judge.ts'

/** The verdict on a value with U for k = 2. */
const wordOn = (value: number, U: number, bounds: Bounds, rule: DecisionRule) =>
  judge({ value, standardUncertainty: U / 2, expandedUncertainty: U }, bounds, rule).word

const U = 0.06
const upper = { max: '1.000' }

// ILAC-G8:09/2019, 4.2.1 and 4.2.3 (clauses from memory, not checked against the print): the
// acceptance limit is the limit less w, here w = U. Figures worked by hand from that rule.
test.for([
  [0.94, 'simple', 'pass'],
  [1.0, 'simple', 'pass'],
  [1.001, 'simple', 'fail'],
  [1.0, 'rounded', 'pass'],
  [1.0004, 'rounded', 'pass'],
  [1.0005, 'rounded', 'pass'],
  [1.0006, 'rounded', 'fail'],
  [0.94, 'guarded', 'pass'],
  [0.941, 'guarded', 'conditional pass'],
  [1.0, 'guarded', 'conditional pass'],
  [1.001, 'guarded', 'conditional fail'],
  [1.06, 'guarded', 'conditional fail'],
  [1.061, 'guarded', 'fail']
] as const)('%f against at most 1.000 with U = 0.060, %s: %s', ([value, rule, word]) => {
  expect(wordOn(value, U, upper, rule)).toBe(word)
})

// The same rule where doubles say otherwise: 1.1 + 0.1 is 1.2000000000000002, 1.2 − 0.1 is
// 1.0999999999999999, 0.95 + 0.01 is 0.96 and 0.96 − 0.01 is 0.95 in decimal.
test.for([
  [1.2, 0.1, { min: '1.10' }, 'pass'],
  [1.1, 0.1, { max: '1.20' }, 'pass'],
  [0.96, 0.01, { min: '0.95' }, 'pass'],
  [0.9599, 0.01, { min: '0.95' }, 'conditional pass'],
  [0.94, 0.01, { min: '0.95' }, 'conditional fail'],
  [0.9399, 0.01, { min: '0.95' }, 'fail'],
  [0.3, 0.1, { max: '0.4' }, 'pass'],
  [0.1 + 0.2, 0.1, { max: '0.4' }, 'pass'],
  [0.7, 0.1, { min: '0.6' }, 'pass']
] as const)('%f with U = %f against %o: %s, in decimal', ([value, uncertainty, bounds, word]) => {
  expect(wordOn(value, uncertainty, bounds, 'guarded')).toBe(word)
})

describe('two limits at once', () => {
  const both = { min: '0.94', max: '1.06' }

  test.for([
    [0.95, 'pass'],
    [1.05, 'pass'],
    [0.945, 'conditional pass'],
    [1.055, 'conditional pass'],
    [0.935, 'conditional fail'],
    [1.065, 'conditional fail'],
    [0.92, 'fail'],
    [1.08, 'fail']
  ] as const)('%f with U = 0.01: %s', ([value, word]) => {
    expect(wordOn(value, 0.01, both, 'guarded')).toBe(word)
  })

  test('where U fills the whole width, one value passes and the method still decides', () => {
    const figure = { value: 1, standardUncertainty: 0.03, expandedUncertainty: 0.06 }
    expect(judge(figure, both, 'guarded')).toMatchObject({
      word: 'pass',
      undecidableMethod: false
    })
  })

  test('where U is wider, nothing can pass and the verdict says so', () => {
    const figure = { value: 1, standardUncertainty: 0.0305, expandedUncertainty: 0.061 }
    expect(judge(figure, both, 'guarded')).toMatchObject({
      word: 'conditional pass',
      undecidableMethod: true
    })
    expect(judge(figure, both, 'simple').undecidableMethod).toBe(false)
    expect(judge(figure, { min: '0.94' }, 'guarded').undecidableMethod).toBe(false)
  })
})

// ASTM E29, rounding method: the table of an older edition, from memory, not checked against the
// print; each row follows from rounding to the limit's last digit, ties to even. The absolute
// method on the same rows is 'simple'.
test.for([
  [56.4, { min: '57' }, 'fail', 'fail'],
  [56.5, { min: '57' }, 'fail', 'fail'],
  [56.6, { min: '57' }, 'pass', 'fail'],
  [40.4, { max: '40' }, 'pass', 'fail'],
  [40.5, { max: '40' }, 'pass', 'fail'],
  [40.6, { max: '40' }, 'fail', 'fail'],
  [0.54, { max: '0.5' }, 'pass', 'fail'],
  [0.55, { max: '0.5' }, 'fail', 'fail'],
  [0.56, { max: '0.5' }, 'fail', 'fail'],
  // Each bound at its own last digit.
  [0.95, { min: '0.9', max: '0.94' }, 'fail', 'fail'],
  [0.944, { min: '0.9', max: '0.94' }, 'pass', 'fail']
] as const)('%f against %o: rounded %s, simple %s', ([value, bounds, rounded, simple]) => {
  expect(wordOn(value, 1, bounds, 'rounded')).toBe(rounded)
  expect(wordOn(value, 1, bounds, 'simple')).toBe(simple)
})

describe('below the reporting limit', () => {
  const below = (limit: number, bounds: Bounds, rule: DecisionRule = 'guarded') =>
    judge(
      { value: 0.001, standardUncertainty: 0.01, expandedUncertainty: 0.02, below: limit },
      bounds,
      rule
    )

  test.for([
    ['far below a maximum', 0.02, { max: '0.10' }, 'pass'],
    ['just reaching a maximum', 0.1, { max: '0.10' }, 'pass'],
    ['reaching beyond a maximum', 0.11, { max: '0.10' }, 'not decidable'],
    ['under a minimum', 0.02, { min: '0.10' }, 'fail'],
    ['just reaching a minimum', 0.1, { min: '0.10' }, 'fail'],
    ['reaching beyond a minimum', 0.11, { min: '0.10' }, 'not decidable'],
    ['under both bounds', 0.02, { min: '0.05', max: '0.10' }, 'fail'],
    ['between the bounds', 0.07, { min: '0.05', max: '0.10' }, 'not decidable']
  ] as const)('%s: < %f against %o is %s', ([, limit, bounds, word]) => {
    for (const rule of ['simple', 'rounded', 'guarded'] as const)
      expect(below(limit, bounds, rule).word).toBe(word)
  })

  test('has no probability: its distribution is not known', () => {
    expect(below(0.02, { max: '0.10' })).toEqual({ word: 'pass', undecidableMethod: false })
  })
})

describe('the probability of conformity', () => {
  // JCGM 106:2012, 7.3 and table 1 (places from memory): printed with three digits there; the six
  // below from SciPy 1.10, scipy.stats.norm.cdf(z).
  test.for([
    [3, 0.99865, '0.999'],
    [2.5, 0.99379, '0.994'],
    [2, 0.97725, '0.977'],
    [1.5, 0.933193, '0.933'],
    [1, 0.841345, '0.841'],
    [0.5, 0.691462, '0.691'],
    [0, 0.5, '0.500']
  ] as const)('%f standard uncertainties inside: %f, printed %s', ([z, probability, printed]) => {
    const figure = { value: 10 - z, standardUncertainty: 1, expandedUncertainty: 2 }
    const found = conformityProbability(figure, { max: '10' })
    expect(found).toBeCloseTo(probability, 5)
    expect(found.toPrecision(3)).toBe(printed)
  })

  test('of the Zener diode of JCGM 106:2012, 7.3 (from memory): Φ(1.40) = 0.919243', () => {
    const diode = { value: -5.47, standardUncertainty: 0.05, expandedUncertainty: 0.1 }
    expect(conformityProbability(diode, { max: '-5.40' })).toBeCloseTo(0.919243, 6)
  })

  // SciPy 1.10: norm.cdf(2) - norm.cdf(-2); norm.cdf(1) - norm.cdf(-3).
  test.for([
    [10, 0.954499736],
    [11, 0.839994848]
  ] as const)('between 8 and 12 around %f: %f', ([value, probability]) => {
    const figure = { value, standardUncertainty: 1, expandedUncertainty: 2 }

    expect(conformityProbability(figure, { min: '8', max: '12' })).toBeCloseTo(probability, 8)
  })

  test('of an exact value is 1 inside and at the limit, 0 outside', () => {
    const of = (value: number) =>
      conformityProbability(
        { value, standardUncertainty: 0, expandedUncertainty: 0 },
        { min: '0.95', max: '1.05' }
      )
    expect([0.9499, 0.95, 1, 1.05, 1.0501].map(of)).toEqual([0, 1, 1, 1, 0])
  })
})

describe('the worst of several', () => {
  test.for([
    [[], 'pass'],
    [['pass', 'conditional pass'], 'conditional pass'],
    [['not decidable', 'conditional pass'], 'not decidable'],
    [['conditional fail', 'not decidable', 'pass'], 'conditional fail'],
    [['conditional fail', 'fail', 'pass'], 'fail']
  ] as const)('%o: %s', ([words, worst]) => {
    expect(worstOf(words)).toBe(worst)
    expect(worstOf([...words].reverse())).toBe(worst)
  })
})

const ranks: readonly VerdictWord[] = ['fail', 'conditional fail', 'conditional pass', 'pass']

const thousandths = fc.integer({ min: -5000, max: 5000 })
const digits = (n: number) => (n / 1000).toFixed(3)

/** Two bounds in order, or one. */
const someBounds = fc
  .tuple(thousandths, fc.integer({ min: 1, max: 4000 }), fc.constantFrom('min', 'max', 'both'))
  .map(([low, width, sides]) => ({
    ...(sides === 'max' ? {} : { min: digits(low) }),
    ...(sides === 'min' ? {} : { max: digits(low + width) })
  }))
const someU = fc.integer({ min: 1, max: 2000 })
const rules = fc.constantFrom<DecisionRule>('simple', 'rounded', 'guarded')

describe('always', () => {
  test('a wider U never improves a guarded pass nor worsens a guarded fail', () => {
    fc.assert(
      fc.property(thousandths, someU, someU, someBounds, (value, one, other, bounds) => {
        const [narrow, wide] = [Math.min(one, other), Math.max(one, other)]
        const rank = (width: number) =>
          ranks.indexOf(wordOn(value / 1000, width / 1000, bounds, 'guarded'))
        const inside = rank(narrow) >= 2
        if (inside) expect(rank(wide)).toBeLessThanOrEqual(rank(narrow))
        // Whatever U is, it never moves a value across the limit itself.
        expect(rank(wide) >= 2).toBe(inside)
      })
    )
  })

  test('mirrored limits give mirrored verdicts', () => {
    fc.assert(
      fc.property(thousandths, someU, someBounds, rules, (value, width, { min, max }, rule) => {
        const minus = (text: string) => (text.startsWith('-') ? text.slice(1) : `-${text}`)
        const mirrored = {
          ...(max === undefined ? {} : { min: minus(max) }),
          ...(min === undefined ? {} : { max: minus(min) })
        }
        const bounds = {
          ...(min === undefined ? {} : { min }),
          ...(max === undefined ? {} : { max })
        }
        const here = wordOn(value / 1000, width / 1000, bounds, rule)
        expect(wordOn(-value / 1000, width / 1000, mirrored, rule)).toBe(here)
      })
    )
  })

  test('another decimal unit keeps the verdict', () => {
    const scales = fc.constantFrom(0.001, 0.01, 0.1, 10, 100, 1000)
    fc.assert(
      fc.property(thousandths, someU, someBounds, scales, (value, width, { min, max }, scale) => {
        const scaled = (text: string) => String(Number((Number(text) * scale).toPrecision(12)))
        const bounds = {
          ...(min === undefined ? {} : { min }),
          ...(max === undefined ? {} : { max })
        }
        const inOther = {
          ...(min === undefined ? {} : { min: scaled(min) }),
          ...(max === undefined ? {} : { max: scaled(max) })
        }
        const here = wordOn(value / 1000, width / 1000, bounds, 'guarded')
        expect(wordOn((value / 1000) * scale, (width / 1000) * scale, inOther, 'guarded')).toBe(
          here
        )
      })
    )
  })

  test('a guarded pass is a simple pass, a simple fail is no guarded pass', () => {
    fc.assert(
      fc.property(thousandths, someU, someBounds, (value, width, bounds) => {
        const [simple, guarded] = (['simple', 'guarded'] as const).map(rule =>
          wordOn(value / 1000, width / 1000, bounds, rule)
        )
        expect(guarded === 'pass' || guarded === 'conditional pass').toBe(simple === 'pass')
      })
    )
  })

  test('a guarded pass conforms with at least 97.7 % against one limit (ILAC-G8: below 2.5 %)', () => {
    fc.assert(
      fc.property(thousandths, someU, thousandths, (value, width, limit) => {
        const figure = {
          value: value / 1000,
          standardUncertainty: width / 2000,
          expandedUncertainty: width / 1000
        }
        const { word, probability } = judge(figure, { max: digits(limit) }, 'guarded')
        if (word === 'pass') expect(probability).toBeGreaterThan(0.9772)
        if (word === 'fail') expect(probability).toBeLessThan(0.0228)
      })
    )
  })
})
