import fc from 'fast-check'
import { expect, test } from 'vitest'
import { exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { meanOfReadings } from '../../src/metrology/readings.ts'
import { expansionVolume } from '../../src/physics/expansion-volume.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test.for([
  ['GB 10698-89, definition of expansion volume, by hand', 0.2, 62, '310'],
  ['GB 10698-89, definition of expansion volume, by hand', 0.502, 131, '260.956'],
  ['GB 10698-89, definition of expansion volume, by hand', 0.498, 128, '257.028']
] as const)('%s: %f g, %f mL', ([, mass_g, volume_mL, printed]) => {
  const { value } = expansionVolume(exactly({ mass_g, volume_mL }))
  expect(asPrinted(value, printed)).toBe(printed)
})

test('by hand from the definition: 61, 63 and 62 mL of 0.2 g each mean 310 mL/g', () => {
  const readings = [61, 63, 62].map(volume_mL =>
    expansionVolume(exactly({ mass_g: 0.2, volume_mL }))
  )
  const mean = meanOfReadings(readings, 'expansion volume')
  expect(asPrinted(mean.value, '310')).toBe('310')
  expect(asPrinted(uncertaintyOf(mean), '2.8868')).toBe('2.8868')
})

test('GUM 5.1.6: relative uncertainties of a quotient add in squares', () => {
  const { value, terms } = expansionVolume(
    uncertain({ mass_g: [0.502, 0.00502], volume_mL: [131, 2.62] })
  )
  const u = uncertaintyOf({ value, terms })
  expect(u / value).toBeCloseTo(Math.hypot(0.01, 0.02), 6)
})

test.for([
  [{ mass_g: 0, volume_mL: 131 }, 'mass_g must be greater than 0, got 0'],
  [{ mass_g: -0.5, volume_mL: 131 }, 'mass_g must be greater than 0, got -0.5'],
  [{ mass_g: 0.5, volume_mL: 0 }, 'volume_mL must be greater than 0, got 0'],
  [{ mass_g: Infinity, volume_mL: 131 }, 'mass_g must be greater than 0, got Infinity'],
  [{ mass_g: NaN, volume_mL: 131 }, 'mass_g must be greater than 0, got NaN']
] as const)('%o', ([inputs, message]) => {
  expect(() => expansionVolume(exactly(inputs))).toThrow(message)
})

const positive = fc.double({ min: 1e-3, max: 1e3, noNaN: true })

test('k times the volume is k times the result; k times the mass divides it', () => {
  fc.assert(
    fc.property(positive, positive, positive, (mass_g, volume_mL, k) => {
      const once = expansionVolume(exactly({ mass_g, volume_mL })).value
      const more = expansionVolume(exactly({ mass_g, volume_mL: k * volume_mL })).value
      const heavier = expansionVolume(exactly({ mass_g: k * mass_g, volume_mL })).value
      expect(more / once / k).toBeCloseTo(1, 12)
      expect((heavier * k) / once).toBeCloseTo(1, 12)
    })
  )
})

test('an exact mass leaves the volume as the only cause', () => {
  const result = expansionVolume({ mass_g: exact(0.5), volume_mL: measured(130, 1, 'cylinder') })
  expect([...result.terms.keys()]).toEqual(['cylinder'])
  expect(result.terms.get('cylinder')!.u).toBeCloseTo(2, 9)
})

test('trials of the distributions agree', () => {
  expectLinear(expansionVolume, uncertain({ mass_g: [0.502, 0.0004], volume_mL: [131, 0.7] }))
})
