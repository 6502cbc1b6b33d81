import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bulkDensity } from '../../src/physics/bulk-density.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test.for([
  ['definition, by hand: 30.02/50.5', 30.02, 50.5, '0.594455'],
  ['definition, by hand: 55/100', 55, 100, '0.55'],
  ['water at 20 °C, 0.9982 g/mL (handbook value, from memory)', 99.82, 100, '0.9982']
] as const)('%s', ([, mass_g, volume_mL, printed]) => {
  expect(asPrinted(bulkDensity(exactly({ mass_g, volume_mL })).value, printed)).toBe(printed)
})

test.for([
  [{ mass_g: 0, volume_mL: 50 }, 'mass_g must be greater than 0, got 0'],
  [{ mass_g: 30, volume_mL: 0 }, 'volume_mL must be greater than 0, got 0'],
  [{ mass_g: NaN, volume_mL: 50 }, 'mass_g must be greater than 0, got NaN']
] as const)('%o', ([inputs, message]) => {
  expect(() => bulkDensity(exactly(inputs))).toThrow(message)
})

test('k times the mass in k times the volume is as dense', () => {
  const positive = fc.double({ min: 1e-2, max: 1e3, noNaN: true })
  fc.assert(
    fc.property(positive, positive, positive, (mass_g, volume_mL, k) => {
      const once = bulkDensity(exactly({ mass_g, volume_mL })).value
      const more = bulkDensity(exactly({ mass_g: k * mass_g, volume_mL: k * volume_mL })).value
      expect(more / once).toBeCloseTo(1, 12)
    })
  )
})

test('trials of the distributions agree', () => {
  expectLinear(bulkDensity, uncertain({ mass_g: [30.02, 0.55], volume_mL: [50.5, 0.2] }))
})
