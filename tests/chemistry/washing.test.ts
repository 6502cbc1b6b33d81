import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { drained, leftAfterWashes, washesTo } from '../../src/chemistry/washing.ts'
import { exact } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const left = (dissolved_g: number, retained_g: number, ...washes: number[]) =>
  leftAfterWashes(exactly({ dissolved_g, retained_g }), washes.map(exact)).value

/** By hand: 10 g of acid in a cake that holds 50 g of liquor back. */
test.for([
  [[], '10.0000'],
  [[450], '1.0000'],
  [[450, 450], '0.1000'],
  [[200, 200, 200], '0.0800'],
  [[0], '10.0000'],
  [[50, 100], '1.6667']
] as const)('washes of %o g leave %s g', ([washes, printed]) => {
  expect(asPrinted(left(10, 50, ...washes), printed)).toBe(printed)
})

test.for([
  [10, 450, 0],
  [9.99, 450, 1],
  [1, 450, 1],
  [0.1, 450, 2],
  [0.0999, 450, 3],
  [0.08, 200, 3]
] as const)('to %f g with washes of %f g: %i', ([target_g, wash_g, n]) => {
  expect(washesTo(exactly({ dissolved_g: 10, retained_g: 50, target_g, wash_g }))).toBe(n)
})

describe('inputs outside the domain', () => {
  test.for([
    [() => left(-1, 50), 'dissolved_g must be at least 0, got -1'],
    [() => left(10, 0), 'retained_g must be greater than 0, got 0'],
    [() => left(10, 50, 100, -1), 'wash2_g must be at least 0, got -1']
  ] as const)('%o', ([run, message]) => {
    expect(run).toThrow(message)
  })

  const target = { dissolved_g: 10, retained_g: 50, target_g: 1, wash_g: 450 }
  test.for([
    [{ dissolved_g: -1 }, 'dissolved_g must be at least 0'],
    [{ retained_g: 0 }, 'retained_g must be greater than 0'],
    [{ target_g: 0 }, 'target_g must be greater than 0'],
    [{ wash_g: 0 }, 'wash_g must be greater than 0'],
    [{ wash_g: 0.1 }, 'wash_g must be enough to reach the target within 100 washes']
  ] as const)('%o', ([wrong, message]) => {
    expect(() => washesTo(exactly({ ...target, ...wrong }))).toThrow(message)
  })
})

const mass = fc.double({ min: 0.1, max: 1000, noNaN: true })

test('the same water in two washes cleans better than in one', () => {
  fc.assert(
    fc.property(mass, mass, mass, (dissolved, retained, water) => {
      expect(left(dissolved, retained, water, water)).toBeLessThan(
        left(dissolved, retained, 2 * water) * (1 + 1e-9)
      )
    })
  )
})

test('the number of washes reaches the target, and one fewer does not', () => {
  const more = fc.double({ min: 1, max: 20, noNaN: true })
  fc.assert(
    fc.property(
      mass,
      mass,
      more,
      fc.double({ min: 1e-4, max: 2, noNaN: true }),
      (a, r, k, part) => {
        const wash = k * r
        const n = washesTo(
          exactly({ dissolved_g: a, retained_g: r, target_g: part * a, wash_g: wash })
        )
        const after = (count: number) => left(a, r, ...Array.from({ length: count }, () => wash))
        expect(after(n)).toBeLessThanOrEqual(part * a * (1 + 1e-9))
        if (n > 0) expect(after(n - 1)).toBeGreaterThan(part * a)
      }
    )
  )
})

test('trials of the distributions agree', () => {
  expectLinear(
    ({ wash1_g, wash2_g, ...inputs }) => leftAfterWashes(inputs, [wash1_g, wash2_g]),
    uncertain({
      dissolved_g: [10, 0.03],
      retained_g: [50, 0.2],
      wash1_g: [300, 1],
      wash2_g: [300, 1]
    })
  )
})

describe('draining', () => {
  const kept = (dissolved: number, liquor_g: number, retained_g: number) =>
    drained(exactly({ dissolved, liquor_g, retained_g })).value

  /** By hand: a cake keeps its part of the liquor, and that part of all that is dissolved in it. */
  test.for([
    [2, 500, 50, '0.2000'],
    [2, 500, 500, '2.0000'],
    [0, 500, 50, '0.0000'],
    [1.5, 400, 60, '0.2250']
  ] as const)('%f dissolved in %f g, %f g kept: %s', ([dissolved, liquor, retained, printed]) => {
    expect(asPrinted(kept(dissolved, liquor, retained), printed)).toBe(printed)
  })

  test.for([
    [() => kept(-1, 500, 50), 'dissolved must be at least 0'],
    [() => kept(1, 0, 50), 'liquor_g must be greater than 0'],
    [() => kept(1, 500, 0), 'retained_g must be greater than 0'],
    [() => kept(1, 50, 51), 'retained_g must be at most liquor (50']
  ] as const)('%o', ([run, message]) => {
    expect(run).toThrow(message)
  })

  test('drained at once or after more water was poured in: the latter is a wash', () => {
    const [dissolved, liquor, retained, wash] = [2, 500, 50, 450]
    const first = kept(dissolved, liquor, retained)
    expect(kept(first, retained + wash, retained)).toBeCloseTo(left(first, retained, wash), 12)
  })

  test('trials of the distributions agree', () => {
    expectLinear(
      drained,
      uncertain({ dissolved: [2, 0.01], liquor_g: [500, 1], retained_g: [50, 0.2] })
    )
  })
})
