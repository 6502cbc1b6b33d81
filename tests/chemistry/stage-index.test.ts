import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stageUptake_percent } from '../../src/chemistry/intercalation.ts'
import { stageIndex } from '../../src/chemistry/stage-index.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

// By hand: 1.0172 / u for x = 2 and 1.1873 / u for x = 2.5, u the uptake as a fraction.
test.for([
  [101.72, 2, '1.000'],
  [50.86, 2, '2.000'],
  [20.34, 2, '5.001'],
  [18.4, 2, '5.528'],
  [118.73, 2.5, '1.000'],
  [29.68, 2.5, '4.000'],
  [18.4, 2.5, '6.452']
] as const)('an uptake of %f %% with x = %f: %s', ([uptake_percent, acidPerAnion, printed]) => {
  expect(asPrinted(stageIndex(exactly({ uptake_percent, acidPerAnion })).value, printed)).toBe(
    printed
  )
})

test('a filled stage has its own number', () => {
  const stage = fc.integer({ min: 1, max: 20 })
  const x = fc.double({ min: 0, max: 5, noNaN: true })
  fc.assert(
    fc.property(stage, x, (n, acidPerAnion) => {
      const uptake_percent = stageUptake_percent(n, acidPerAnion)
      expect(stageIndex(exactly({ uptake_percent, acidPerAnion })).value).toBeCloseTo(n, 9)
    })
  )
})

describe('refuses', () => {
  test.for([
    [{ uptake_percent: 0, acidPerAnion: 2 }, 'uptake_percent must be greater than 0, got 0'],
    [{ uptake_percent: 20, acidPerAnion: -1 }, 'acidPerAnion must be at least 0, got -1']
  ] as const)('%o', ([inputs, message]) => {
    expect(() => stageIndex(exactly(inputs))).toThrow(message)
  })
})

test('trials of the distributions agree', () => {
  expectLinear(stageIndex, uncertain({ uptake_percent: [17.5, 0.07], acidPerAnion: [2.25, 0.08] }))
})
