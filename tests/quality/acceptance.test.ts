import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  acceptanceOfLot,
  acceptanceOfProcess,
  qualityAccepted
} from '../../src/quality/acceptance.ts'

// Computed with scipy 1.17, stats.binom.cdf.
test.for([
  [0.025, 20, 1, 0.9117582854596648],
  [0.025, 50, 3, 0.9637956779616467],
  [0.025, 80, 5, 0.9847853787085802],
  [0.025, 5, 0, 0.881095693359375],
  [0.1, 13, 0, 0.2541865828329],
  [0.3, 8, 1, 0.2552983299999999],
  [0.01, 500, 10, 0.9867564329002205],
  [0.065, 1250, 21, 3.7351831187517257e-16],
  [0.0015, 1250, 7, 0.9992801647521669]
] as const)('a process that yields %f, n %i, Ac %i', ([p, n, c, expected]) => {
  expect(acceptanceOfProcess(p, n, c) / expected).toBeCloseTo(1, 9)
})

// Computed with scipy 1.17, stats.hypergeom.cdf.
test.for([
  [60, 2, 20, 1, 0.8926553672316384],
  [60, 5, 20, 1, 0.4551501488964959],
  [40, 1, 5, 0, 0.875],
  [100, 10, 20, 1, 0.36304943420765723],
  [6, 1, 6, 0, 0],
  [6, 1, 6, 1, 1],
  [3000, 75, 125, 7, 0.98828639698664],
  [400_000, 10_000, 500, 21, 0.9914666581434227],
  [20, 20, 5, 4, 0],
  [20, 18, 5, 3, 0.05263157894736843]
] as const)('a lot of %i with %i, n %i, Ac %i', ([lot, bad, n, c, expected]) => {
  expect(acceptanceOfLot(lot, bad, n, c)).toBeCloseTo(expected, 9)
})

// Computed with scipy 1.17, stats.beta.ppf.
test.for([
  [0.1, 20, 1, 0.1809609634367385],
  [0.1, 5, 0, 0.36904265551980675],
  [0.95, 50, 3, 0.027787668392930558],
  [0.1, 52, 3, 0.12398191351472601],
  [0.5, 125, 7, 0.06119003032038418]
] as const)(
  'the quality accepted with probability %f, n %i, Ac %i',
  ([probability, n, c, expected]) => {
    expect(qualityAccepted(probability, n, c)).toBeCloseTo(expected, 9)
  }
)

// NIST/SEMATECH e-Handbook, 6.2.3.2: the plan n 52, c 3 (from memory), to one in its last digit.
test.for([
  [0.01, 0.998],
  [0.02, 0.98],
  [0.03, 0.93],
  [0.04, 0.845],
  [0.05, 0.739],
  [0.06, 0.62],
  [0.07, 0.502],
  [0.08, 0.394],
  [0.09, 0.3],
  [0.1, 0.223],
  [0.11, 0.162],
  [0.12, 0.115]
] as const)('%f nonconforming: accepted with %f', ([p, published]) => {
  expect(Math.abs(acceptanceOfProcess(p, 52, 3) - published)).toBeLessThan(0.0015)
})

test('a whole lot looked at is accepted for certain or not at all', () => {
  const size = fc.integer({ min: 1, max: 60 })
  fc.assert(
    fc.property(size, size, size, (lot, some, accepted) => {
      const bad = Math.min(some, lot)
      expect(acceptanceOfLot(lot, bad, lot, accepted)).toBeCloseTo(bad <= accepted ? 1 : 0, 9)
    })
  )
})

test('at the ends', () => {
  expect(acceptanceOfProcess(0, 20, 1)).toBe(1)
  expect(acceptanceOfProcess(1, 20, 1)).toBe(0)
  expect(acceptanceOfProcess(1, 20, 20)).toBe(1)
  expect(acceptanceOfLot(50, 0, 8, 0)).toBeCloseTo(1, 12)
})
