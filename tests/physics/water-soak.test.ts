import { expect, test } from 'vitest'
import { measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { soakKept } from '../../src/physics/water-soak.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test.for([
  ['by hand: 225 of 250 mL/g', 225, 250, '90'],
  ['by hand: 261.3 of 272.8 mL/g', 261.3, 272.8, '95.78']
] as const)('%s', ([, soaked_mL_per_g, expansionVolume_mL_per_g, printed]) => {
  const inputs = exactly({ soaked_mL_per_g, expansionVolume_mL_per_g })
  expect(asPrinted(soakKept(inputs).value, printed)).toBe(printed)
})

test('an error that both volumes share in proportion cancels', () => {
  const shared = (value: number) => measured(value, 0.02 * value, 'cylinder')
  const kept = soakKept({
    soaked_mL_per_g: shared(225),
    expansionVolume_mL_per_g: shared(250)
  })
  expect(uncertaintyOf(kept)).toBeLessThan(1e-4)
})

test.for([
  [{ soaked_mL_per_g: 0, expansionVolume_mL_per_g: 250 }, 'soaked_mL_per_g must be greater than 0'],
  [{ soaked_mL_per_g: 225, expansionVolume_mL_per_g: 0 }, 'expansionVolume_mL_per_g must be']
] as const)('refuses %o', ([inputs, message]) => {
  expect(() => soakKept(exactly(inputs))).toThrow(message)
})

test('trials of the distributions agree', () => {
  expectLinear(
    soakKept,
    uncertain({ soaked_mL_per_g: [225, 2.5], expansionVolume_mL_per_g: [250, 1.2] })
  )
})
