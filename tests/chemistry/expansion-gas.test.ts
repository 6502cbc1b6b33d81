import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  gasVolume,
  MOLAR_VOLUME_L,
  sulfurDioxide,
  sulfurDioxideOfLoss,
  worstInRoom
} from '../../src/chemistry/expansion-gas.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test('the molar volume at 25 °C and 1 atm is 24.465 L (handbooks)', () => {
  expect(asPrinted(MOLAR_VOLUME_L, '24.465')).toBe('24.465')
})

/** Worked by hand from the abridged atomic weights. */
describe('50 g of flake', () => {
  test('that lose 15 %, 7.5 g, give at most 10.19 L of gas', () => {
    const { value } = gasVolume(exactly({ flake_g: 50, loss_percent: 15 }))
    expect(asPrinted(value, '10.19')).toBe('10.19')
  })

  test('with 2.6 % of sulfur give at most 2.597 g of sulfur dioxide', () => {
    const { value } = sulfurDioxide(exactly({ flake_g: 50, sulfur_percent: 2.6 }))
    expect(asPrinted(value, '2.597')).toBe('2.597')
  })

  test('of unknown sulfur that lose 15 % give at most 4.899 g, as though all were acid', () => {
    const { value } = sulfurDioxideOfLoss(exactly({ flake_g: 50, loss_percent: 15 }))
    expect(asPrinted(value, '4.899')).toBe('4.899')
  })

  test('2.597 g in 60 m³ are 43.3 mg/m³', () => {
    const { value } = worstInRoom(exactly({ gas_g: 2.597, room_m3: 60 }))
    expect(asPrinted(value, '43.3')).toBe('43.3')
  })
})

test('what 1 g of sulfuric acid gives is bounded by what all of it as water would', () => {
  // H2SO4 → SO2 + ½ O2 + H2O: 2.5 mol of gas.
  const acid_L = (2.5 / 98.072) * MOLAR_VOLUME_L
  expect(gasVolume(exactly({ flake_g: 10, loss_percent: 10 })).value).toBeGreaterThan(acid_L)
})

describe('inputs outside the domain', () => {
  test.for([
    [() => gasVolume(exactly({ flake_g: 0, loss_percent: 1 })), 'flake_g must be greater than 0'],
    [
      () => gasVolume(exactly({ flake_g: 1, loss_percent: 100 })),
      'loss_percent must be at least 0 and below 100'
    ],
    [
      () => sulfurDioxideOfLoss(exactly({ flake_g: 1, loss_percent: -1 })),
      'loss_percent must be at least 0'
    ],
    [
      () => sulfurDioxide(exactly({ flake_g: -1, sulfur_percent: 1 })),
      'flake_g must be greater than 0'
    ],
    [
      () => sulfurDioxide(exactly({ flake_g: 1, sulfur_percent: 100 })),
      'sulfur_percent must be at least 0 and below 100'
    ],
    [() => worstInRoom(exactly({ gas_g: -1, room_m3: 1 })), 'gas_g must be at least 0'],
    [() => worstInRoom(exactly({ gas_g: 1, room_m3: 0 })), 'room_m3 must be greater than 0']
  ] as const)('%o', ([run, message]) => {
    expect(run).toThrow(message)
  })
})

test('a sulfur figure never bounds worse than taking all for acid, while acid explains the loss', () => {
  const loss = fc.double({ min: 1, max: 40, noNaN: true })
  fc.assert(
    fc.property(loss, fc.double({ min: 0, max: 1, noNaN: true }), (loss_percent, part) => {
      const sulfur_percent = part * loss_percent * (32.06 / 98.072)
      const known = sulfurDioxide(exactly({ flake_g: 50, sulfur_percent })).value
      const unknown = sulfurDioxideOfLoss(exactly({ flake_g: 50, loss_percent })).value
      expect(known).toBeLessThanOrEqual(unknown * (1 + 1e-12))
    })
  )
})

test('trials of the distributions agree', () => {
  expectLinear(gasVolume, uncertain({ flake_g: [50, 0.05], loss_percent: [15, 0.2] }))
  expectLinear(sulfurDioxideOfLoss, uncertain({ flake_g: [50, 0.05], loss_percent: [15, 0.5] }))
  expectLinear(sulfurDioxide, uncertain({ flake_g: [50, 0.05], sulfur_percent: [2.6, 0.15] }))
  expectLinear(worstInRoom, uncertain({ gas_g: [2.6, 0.002], room_m3: [60, 0.2] }))
})
