import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { coverageFactor, expand } from '../../src/metrology/coverage.ts'
import {
  degreesOfFreedom,
  estimate,
  exact,
  measured,
  propagate,
  uncertaintyOf
} from '../../src/metrology/estimate.ts'
import { meanOfReadings } from '../../src/metrology/readings.ts'
import { asPrinted } from './as-printed.ts'

/** Student's t computed to 40 digits: degrees of freedom; 95 %, 90 % and 99 % of both tails. */
const quantiles = [
  [1, 12.7062047362, 6.31375151468, 63.6567411629],
  [2, 4.30265272975, 2.91998558035, 9.92484320092],
  [3, 3.18244630528, 2.3533634348, 5.84090930973],
  [4, 2.7764451052, 2.13184678633, 4.60409487135],
  [5, 2.57058183564, 2.01504837333, 4.03214298356],
  [9, 2.2621571628, 1.83311293266, 3.24983554159],
  [10, 2.22813885199, 1.81246112281, 3.16927267262],
  [16, 2.11990529922, 1.74588367628, 2.92078162243],
  [18, 2.10092204024, 1.73406360662, 2.87844047274],
  [Infinity, 1.95996398454, 1.64485362695, 2.57582930355]
] as const

test.for(quantiles)(
  'GUM table G.2, Student’s t at %f degrees of freedom',
  ([df, t95, t90, t99]) => {
    expect(coverageFactor(df) / t95).toBeCloseTo(1, 11)
    expect(coverageFactor(df, 0.9) / t90).toBeCloseTo(1, 11)
    expect(coverageFactor(df, 0.99) / t99).toBeCloseTo(1, 11)
  }
)

test.for([
  [9, '2.32'],
  [19, '2.14'],
  [Infinity, '2.00']
] as const)('GUM table G.2, 95.45 %%: %f degrees of freedom give %s', ([df, printed]) => {
  expect(asPrinted(coverageFactor(df, 0.9545), printed)).toBe(printed)
})

describe('degrees of freedom are truncated, never rounded up (GUM G.6.4)', () => {
  test.for([
    [16.752, 16],
    [18.9987, 18],
    [1.9, 1],
    [0.4, 1],
    [4, 4],
    [3.9999999999999996, 4],
    [3.999, 3]
  ] as const)('%f as %i', ([df, whole]) => {
    expect(coverageFactor(df)).toBe(coverageFactor(whole))
  })

  test('n readings have n − 1, whatever floats make of the quotient', () => {
    const reading = fc.integer({ min: 1, max: 10_000 }).map(thousandths => thousandths / 1000)
    fc.assert(
      fc.property(fc.uniqueArray(reading, { minLength: 2, maxLength: 12 }), values => {
        expect(expand(meanOfReadings(values.map(exact), 'x')).df).toBe(values.length - 1)
      })
    )
  })
})

describe('Welch–Satterthwaite', () => {
  test('JCGM 100:2008, G.4.1: 0.25, 0.57, 0.82 % with n = 10, 5, 15 give 1.03 % and 19.0', () => {
    const y = propagate(x => x.a * x.b * x.c, {
      a: measured(1, 0.0025, 'a', 9),
      b: measured(1, 0.0057, 'b', 4),
      c: measured(1, 0.0082, 'c', 14)
    })
    expect(asPrinted(100 * uncertaintyOf(y), '1.03')).toBe('1.03')
    expect(asPrinted(degreesOfFreedom(y), '19.0')).toBe('19.0')
    // 18.9987 truncates to 18; the GUM takes 19.0 for 19 and prints the same 2.2 %.
    expect(asPrinted(100 * expand(y).U, '2.2')).toBe('2.2')
  })

  test('computed: 0.57 with 9 and 0.25 without limit give 12.796', () => {
    // (0.57² + 0.25²)² / (0.57⁴/9) by hand
    const y = propagate(x => x.a + x.b, {
      a: measured(0, 0.57, 'a', 9),
      b: measured(0, 0.25, 'b')
    })
    expect(asPrinted(degreesOfFreedom(y), '12.796')).toBe('12.796')
  })

  test('JCGM 100:2008, 7.2.4: u = 0.35 mg with 9 degrees of freedom is U = 0.79 mg', () => {
    const { k, U, df } = expand(measured(100.02147, 0.35, 'mass', 9))
    expect(asPrinted(k, '2.26')).toBe('2.26')
    expect(asPrinted(U, '0.79')).toBe('0.79')
    expect(df).toBe(9)
  })

  test('it lies between the smallest and the sum of all', () => {
    const u = fc.integer({ min: 1, max: 1000 })
    const df = fc.integer({ min: 1, max: 100 })
    fc.assert(
      fc.property(fc.array(fc.tuple(u, df), { minLength: 1, maxLength: 6 }), parts => {
        const y = estimate(
          0,
          parts.map(([size, of], index) => ({
            cause: { name: String(index), pool: String(index), kind: 'A', df: of },
            u: size
          }))
        )
        const all = parts.map(([, of]) => of)
        const effective = degreesOfFreedom(y)
        expect(effective).toBeGreaterThanOrEqual(Math.min(...all) * (1 - 1e-9))
        expect(effective).toBeLessThanOrEqual(all.reduce((a, b) => a + b, 0) * (1 + 1e-9))
      })
    )
  })
})

test('nothing uncertain: U is 0 at the normal factor', () => {
  const { U, df } = expand(exact(5))
  expect([U, df]).toEqual([0, Infinity])
})
