import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measured } from '../../src/metrology/estimate.ts'
import { creepRelaxation } from '../../src/physics/creep.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

// The stretch of 0.1222 to 0.1270 mm is what ASTM F38 names for 26.7 kN; the quotients by hand.
test.for([
  ['a first stretch within ASTM F38', 0.1245, 0.1183, '4.98'],
  ['the least stretch of ASTM F38, half of it kept', 0.1222, 0.0611, '50.00'],
  ['the largest stretch of ASTM F38, none of it kept', 0.127, 0, '100.00'],
  ['all of it kept', 0.1245, 0.1245, '0.00']
] as const)('%s', ([, initial_mm, final_mm, printed]) => {
  expect(asPrinted(creepRelaxation(exactly({ initial_mm, final_mm })).value, printed)).toBe(printed)
})

test('what an error of the dial has in common with both readings falls out', () => {
  const size = fc.double({ min: 0.01, max: 10, noNaN: true })
  const kept = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(size, kept, size, (initial_mm, part, scale) => {
      const [a, b] = [1, scale].map(
        by =>
          creepRelaxation(
            exactly({ initial_mm: by * initial_mm, final_mm: by * part * initial_mm })
          ).value
      )
      expect(b).toBeCloseTo(a!, 9)
      expect(a).toBeCloseTo(100 * (1 - part), 9)
    })
  )
})

test('a stretch may grow by what the dial explains', () => {
  const inputs = { initial_mm: measured(0.12, 0.0005, 'a'), final_mm: measured(0.121, 0.0005, 'b') }
  expect(creepRelaxation(inputs).value).toBeCloseTo(-0.8333, 4)
})

describe('refuses', () => {
  test.for([
    [{ initial_mm: 0, final_mm: 0 }, 'initial_mm must be greater than 0, got 0'],
    [{ initial_mm: 0.12, final_mm: -0.01 }, 'final_mm must be at least 0, got -0.01'],
    [{ initial_mm: 0.12, final_mm: 0.13 }, 'final_mm must be at most initial (0.12 mm), got 0.13']
  ] as const)('%o', ([inputs, message]) => {
    expect(() => creepRelaxation(exactly(inputs))).toThrow(message)
  })
})

test('trials of the distributions agree', () => {
  expectLinear(
    creepRelaxation,
    uncertain({ initial_mm: [0.1245, 0.0002], final_mm: [0.1183, 0.0001] })
  )
})
