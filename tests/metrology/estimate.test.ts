import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Estimate,
  budgetOf,
  degreesOfFreedom,
  estimate,
  exact,
  measured,
  propagate,
  rectangular,
  triangular,
  uncertaintyOf
} from '../../src/metrology/estimate.ts'
import { asPrinted } from './as-printed.ts'
import { DRAWS, normalSource, randomSource, summarise } from './monte-carlo.ts'
import { correlation, covariance } from './correlation.ts'

const cause = (name: string, pool = name) => ({ name, pool, kind: 'B', df: Infinity }) as const

test('limits of ±1: evenly likely 1/√3, triangular 1/√6 (GUM 4.3.7, 4.3.9)', () => {
  expect(asPrinted(rectangular(1), '0.57735')).toBe('0.57735')
  expect(asPrinted(triangular(1), '0.40825')).toBe('0.40825')
})

describe('propagate', () => {
  const positive = fc.double({ min: 0.01, max: 1e4, noNaN: true })
  /** Relative uncertainty, from what no instrument reaches to 1 %. */
  const relative = fc.constantFrom(1e-12, 1e-9, 1e-6, 1e-4, 1e-3, 1e-2)

  test('agrees with the closed form for products of powers (GUM 5.1.6)', () => {
    fc.assert(
      fc.property(positive, positive, positive, relative, (a, b, c, r) => {
        const y = propagate(x => (x.a * x.a * x.b) / x.c, {
          a: measured(a, r * a, 'a'),
          b: measured(b, 2 * r * b, 'b'),
          c: measured(c, 3 * r * c, 'c')
        })
        const expected = Math.hypot(2, 2, 3) * r
        // The quotient's truncation is a third derivative, (u/64)² relative; rounding stays below it.
        expect(uncertaintyOf(y) / y.value / expected).toBeCloseTo(1, 6)
        expect(y.inputs.map(line => (line.sensitivity * line.value) / y.value)).toEqual([
          expect.closeTo(2, 6),
          expect.closeTo(1, 6),
          expect.closeTo(-1, 6)
        ])
      })
    )
  })

  test('a sum keeps each cause whole, with its sign', () => {
    const y = propagate(x => x.a - 3 * x.b, {
      a: measured(5, 0.1, 'a'),
      b: measured(1, 0.2, 'b')
    })
    expect(y.value).toBe(2)
    expect(y.terms.get('a')!.u).toBeCloseTo(0.1, 9)
    expect(y.terms.get('b')!.u).toBeCloseTo(-0.6, 9)
  })

  test('a reading of 0 has a derivative', () => {
    const y = propagate(x => 7 * x.a, { a: measured(0, 0.02, 'blank') })
    expect(uncertaintyOf(y)).toBeCloseTo(0.14, 12)
  })

  test('a small difference of large masses keeps its derivative', () => {
    const y = propagate(x => 1 / (x.before - x.dish), {
      before: measured(150.01, 0.00001, 'before'),
      dish: measured(150, 0.00001, 'dish')
    })
    expect(y.inputs[0]!.sensitivity / -1e4).toBeCloseTo(1, 5)
  })

  test('an exact input has no derivative and no cause', () => {
    const y = propagate(x => x.a * x.b, { a: exact(2), b: measured(3, 0.1, 'b') })
    expect(y.inputs).toEqual([
      { input: 'a', value: 2, u: 0, sensitivity: 0 },
      { input: 'b', value: 3, u: 0.1, sensitivity: expect.closeTo(2, 9) }
    ])
    expect([...y.terms.keys()]).toEqual(['b'])
  })

  test('inputs that share a cause: its effects add before they are squared (GUM 5.2.2)', () => {
    const calibration = (value: number, u: number): Estimate =>
      estimate(value, [{ cause: cause('BAL-1 calibration'), u }])
    const inputs = { a: calibration(10, 0.3), b: calibration(4, 0.2) }
    expect(uncertaintyOf(propagate(x => x.a + x.b, inputs))).toBeCloseTo(0.5, 9)
    expect(uncertaintyOf(propagate(x => x.a - x.b, inputs))).toBeCloseTo(0.1, 9)
  })

  test('GUM 5.2.2 example: ten resistors of one calibration add up to ten times its u', () => {
    const resistors = Object.fromEntries(
      Array.from({ length: 10 }, (_, index) => [
        `R${index}`,
        estimate(1000, [{ cause: cause('standard'), u: 0.1 }])
      ])
    )
    const series = propagate(x => Object.values(x).reduce((sum, R) => sum + R, 0), resistors)
    expect(series.value).toBe(10_000)
    expect(uncertaintyOf(series)).toBeCloseTo(1, 9)
  })
})

describe('estimate', () => {
  test('causes of one name add with their signs, those of no effect are left out', () => {
    const { terms } = estimate(1, [
      { cause: cause('a'), u: 0.3 },
      { cause: cause('a'), u: -0.1 },
      { cause: cause('b'), u: 0 }
    ])
    expect([...terms.keys()]).toEqual(['a'])
    expect(terms.get('a')!.u).toBeCloseTo(0.2, 15)
  })

  test('budget: one line a pool, largest first, shares adding to 1', () => {
    const y = estimate(1, [
      { cause: cause('reading 1', 'scatter'), u: 0.3 },
      { cause: cause('reading 2', 'scatter'), u: -0.4 },
      { cause: cause('calibration'), u: 1.2 }
    ])
    expect(uncertaintyOf(y)).toBeCloseTo(1.3, 12)
    const budget = budgetOf(y)
    expect(budget.map(({ pool, u }) => [pool, asPrinted(u, '0.000')])).toEqual([
      ['calibration', '1.200'],
      ['scatter', '0.500']
    ])
    expect(budget.map(line => line.share)).toEqual([
      expect.closeTo(1.44 / 1.69, 12),
      expect.closeTo(0.25 / 1.69, 12)
    ])
  })

  test('what all readings of a gauge share is no line where it cancels, bent as the model is', () => {
    const shared = { cause: cause('gauge'), u: 0.0017 }
    const read = (value: number, name: string, own = 0.0003) =>
      estimate(value, [shared, { cause: cause(name), u: own }])
    const thicknesses = { p: read(0.496, 'P'), m: read(0.283, 'M'), b: read(0.318, 'B') }
    const recovery = propagate(x => (x.b - x.m) / (x.p - x.m), thicknesses)
    expect(recovery.terms.get('gauge')?.u).not.toBe(0)
    expect(budgetOf(recovery).map(({ pool }) => pool)).toEqual(['B', 'M', 'P'])
    const small = propagate(x => x.a + x.b, { a: exact(1), b: read(2, 'own', 1e-9) })
    expect(budgetOf(small).map(({ pool }) => pool)).toEqual(['gauge', 'own'])
  })

  test('equal contributions stand in alphabetical order', () => {
    const y = estimate(1, [
      { cause: cause('b'), u: 0.1 },
      { cause: cause('a'), u: 0.1 }
    ])
    expect(budgetOf(y).map(line => line.pool)).toEqual(['a', 'b'])
  })

  test('an exact value has no budget and unlimited degrees of freedom', () => {
    expect(budgetOf(exact(3))).toEqual([])
    expect(degreesOfFreedom(exact(3))).toBe(Infinity)
    expect(uncertaintyOf(exact(3))).toBe(0)
  })
})

test('correlation runs from −1 to 1, is symmetric, and 0 with something exact', () => {
  const size = fc.integer({ min: -100, max: 100 })
  fc.assert(
    fc.property(fc.array(fc.tuple(size, size), { minLength: 1, maxLength: 6 }), pairs => {
      const side = (pick: 0 | 1) =>
        estimate(
          0,
          pairs.map((pair, index) => ({ cause: cause(String(index)), u: pair[pick] }))
        )
      const [a, b] = [side(0), side(1)]
      expect(Math.abs(correlation(a, b))).toBeLessThanOrEqual(1 + 1e-12)
      expect(correlation(a, b)).toBeCloseTo(correlation(b, a), 12)
      expect(covariance(a, a)).toBeCloseTo(uncertaintyOf(a) ** 2, 6)
      expect(correlation(a, exact(1))).toBe(0)
    })
  )
})

describe('JCGM 101:2008, 9.3: mass calibration, where first order is not enough', () => {
  const deviation_mg = (x: Record<'reference' | 'added' | 'air' | 'W' | 'R', number>): number =>
    (x.reference + x.added) * (1 + (x.air - 1.2) * (1 / x.W - 1 / x.R)) - 100_000

  test('first order: 1.2340 mg, u 0.0539 mg', () => {
    const y = propagate(deviation_mg, {
      reference: measured(100_000, 0.05, 'reference'),
      added: measured(1.234, 0.02, 'added'),
      air: measured(1.2, rectangular(0.1), 'air'),
      W: measured(8000, rectangular(1000), 'W'),
      R: measured(8000, rectangular(50), 'R')
    })
    expect(asPrinted(y.value, '1.2340')).toBe('1.2340')
    expect(asPrinted(uncertaintyOf(y), '0.05385')).toBe('0.05385')
  })

  test('trials: u 0.0754 mg, 95 % from 1.083 to 1.383 mg', () => {
    const uniform = randomSource()
    const normal = normalSource(uniform)
    const within = (low: number, high: number) => low + (high - low) * uniform()
    const trial = () =>
      deviation_mg({
        reference: 100_000 + 0.05 * normal(),
        added: 1.234 + 0.02 * normal(),
        air: within(1.1, 1.3),
        W: within(7000, 9000),
        R: within(7950, 8050)
      })
    const { u, low, high } = summarise(Float64Array.from({ length: DRAWS }, trial))
    // Four times the scatter of 10⁵ trials.
    expect(Math.abs(u - 0.07545)).toBeLessThan(0.0008)
    expect(Math.abs(low - 1.0838)).toBeLessThan(0.003)
    expect(Math.abs(high - 1.3828)).toBeLessThan(0.003)
  })
})
