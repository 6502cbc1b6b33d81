import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { expansionVolume } from '../../src/physics/expansion-volume.ts'
import { expansionRatio, lossOnExpansion, wormDensity } from '../../src/physics/worms.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test.for([
  ['definition of density, by hand: 0.85 g in 250 mL', 0.85, 250, '3.4'],
  ['definition of density, by hand: 12.5 g in 2.5 L', 12.5, 2500, '5.00']
] as const)('wormDensity: %s', ([, mass_g, volume_mL, printed]) => {
  expect(asPrinted(wormDensity(exactly({ mass_g, volume_mL })).value, printed)).toBe(printed)
})

test.for([
  ['definition of a loss, by hand', 100, 85, '15.00'],
  ['definition of a loss, by hand: 12.31 of 14.56 g left', 14.56, 12.31, '15.4533'],
  ['definition of a loss, by hand: nothing lost', 14.56, 14.56, '0.00']
] as const)('lossOnExpansion: %s', ([, massIn_g, massOut_g, printed]) => {
  const { value } = lossOnExpansion(exactly({ massIn_g, massOut_g }))
  expect(asPrinted(value, printed)).toBe(printed)
})

test('expansionRatio: ratio of volumes, by hand: 250 mL/g of 0.55 g/mL flake', () => {
  const { value } = expansionRatio(
    exactly({ expansionVolume_mL_per_g: 250, bulkDensity_g_per_mL: 0.55 })
  )
  expect(asPrinted(value, '137.5')).toBe('137.5')
})

describe('inputs outside the domain', () => {
  test.for([
    [{ mass_g: 0, volume_mL: 250 }, 'mass_g must be greater than 0, got 0'],
    [{ mass_g: 0.85, volume_mL: -1 }, 'volume_mL must be greater than 0, got -1']
  ] as const)('wormDensity %o', ([inputs, message]) => {
    expect(() => wormDensity(exactly(inputs))).toThrow(message)
  })

  test.for([
    [{ massIn_g: 0, massOut_g: 0 }, 'massIn_g must be greater than 0, got 0'],
    [{ massIn_g: 10, massOut_g: -1 }, 'massOut_g must be at least 0, got -1'],
    [{ massIn_g: 10, massOut_g: 10.1 }, 'massOut_g must be at most mass in (10 g), got 10.1']
  ] as const)('lossOnExpansion %o', ([inputs, message]) => {
    expect(() => lossOnExpansion(exactly(inputs))).toThrow(message)
  })

  test.for([
    [0, 0.5, 'expansionVolume_mL_per_g must be greater than 0'],
    [250, 0, 'bulkDensity_g_per_mL must be greater than 0']
  ] as const)('expansionRatio %f, %f', ([ev, bulk, message]) => {
    const inputs = exactly({ expansionVolume_mL_per_g: ev, bulkDensity_g_per_mL: bulk })
    expect(() => expansionRatio(inputs)).toThrow(message)
  })
})

const positive = fc.double({ min: 0.01, max: 1e3, noNaN: true })
const fraction = fc.integer({ min: 1, max: 99 }).map(percent => percent / 100)

test('worm density is what the loss leaves, over the expansion volume', () => {
  fc.assert(
    fc.property(positive, positive, fraction, (massIn_g, volume_mL, left) => {
      const massOut_g = left * massIn_g
      const density = wormDensity(exactly({ mass_g: massOut_g, volume_mL })).value
      const loss = lossOnExpansion(exactly({ massIn_g, massOut_g })).value
      const ev = expansionVolume(exactly({ mass_g: massIn_g, volume_mL })).value
      expect((density * ev) / (1000 * (1 - loss / 100))).toBeCloseTo(1, 10)
    })
  )
})

test('the loss does not change with the scale and falls as more comes out', () => {
  fc.assert(
    fc.property(positive, fraction, fraction, positive, (massIn_g, a, b, k) => {
      const loss = (out: number, scale = 1) =>
        lossOnExpansion(exactly({ massIn_g: scale * massIn_g, massOut_g: scale * out })).value
      expect(loss(a * massIn_g, k)).toBeCloseTo(loss(a * massIn_g), 9)
      expect(Math.sign(loss(a * massIn_g) - loss(b * massIn_g))).toBe(Math.sign(b - a))
    })
  )
})

test('the ratio is proportional to both of its inputs', () => {
  fc.assert(
    fc.property(positive, positive, positive, (ev, bulk, k) => {
      const ratio = (a: number, b: number) =>
        expansionRatio(exactly({ expansionVolume_mL_per_g: a, bulkDensity_g_per_mL: b })).value
      expect(ratio(k * ev, bulk) / ratio(ev, bulk) / k).toBeCloseTo(1, 12)
      expect(ratio(ev, k * bulk) / ratio(ev, bulk) / k).toBeCloseTo(1, 12)
    })
  )
})

describe('trials of the distributions agree', () => {
  test('wormDensity', () => {
    expectLinear(wormDensity, uncertain({ mass_g: [0.85, 0.0005], volume_mL: [250, 1.1] }))
  })
  test('lossOnExpansion', () => {
    expectLinear(lossOnExpansion, uncertain({ massIn_g: [14.56, 0.02], massOut_g: [12.31, 0.01] }))
  })
  test('expansionRatio', () => {
    expectLinear(
      expansionRatio,
      uncertain({ expansionVolume_mL_per_g: [250, 1.8], bulkDensity_g_per_mL: [0.55, 0.003] })
    )
  })
})
