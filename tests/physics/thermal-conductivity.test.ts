import { describe, expect, test } from 'vitest'
import {
  LORENZ_RANGE,
  thermalConductivity,
  thermalEstimate
} from '../../src/physics/thermal-conductivity.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

// Diffusivity, density, heat capacity and conductivity near 25 °C as handbooks print them (from memory).
test.for([
  ['copper', 117, 8.96, 0.385, 401],
  ['aluminium', 97, 2.7, 0.897, 237],
  ['silver', 165.6, 10.49, 0.235, 429]
] as const)('%s within 6 %% of its handbook figure', ([, alpha, rho, c, published]) => {
  const { value } = thermalConductivity(
    exactly({
      diffusivity_mm2_per_s: alpha,
      foilDensity_g_per_cm3: rho,
      heatCapacity_J_per_gK: c
    })
  )
  expect(Math.abs(value / published - 1)).toBeLessThan(0.06)
})

test('mm²/s · g/cm³ · J/(g·K), by hand', () => {
  const inputs = exactly({
    diffusivity_mm2_per_s: 229,
    foilDensity_g_per_cm3: 0.7,
    heatCapacity_J_per_gK: 0.71
  })
  expect(asPrinted(thermalConductivity(inputs).value, '113.813')).toBe('113.813')
})

const [least, most] = LORENZ_RANGE

describe('the estimate', () => {
  test('takes L from what two papers found: 5.4 in Nanomaterials, 6.6 in Scientific Reports', () => {
    expect(LORENZ_RANGE).toEqual([5.4, 6.6])
  })

  // Nanomaterials 14 (2024) 1162: conductivities of current, kS/m, and heat, W/(m·K), of two foils at 295 K.
  test.for([
    [0.7, 69, 109],
    [1.75, 192, 326]
  ] as const)(
    '%f g/cm³: its bounds hold what was measured, within 1 %%',
    ([, sigma, published]) => {
      const at = (lorenz: number) =>
        thermalEstimate(exactly({ conductivity_kS_per_m: sigma, temperature_C: 21.85, lorenz }))
          .value
      expect(at(least) * 0.99).toBeLessThan(published)
      expect(at(most)).toBeGreaterThan(published)
    }
  )

  test('has its lower bound from the softer of the two', () => {
    const inputs = { conductivity_kS_per_m: 69, temperature_C: 21.85, lorenz: least }
    expect(Math.abs(thermalEstimate(exactly(inputs)).value / 109 - 1)).toBeLessThan(0.01)
  })

  test.for([
    [100, 25, 6, '178.89'],
    [69.73, 23, 6, '123.90'],
    [100, -273.15, 6, '0.00']
  ] as const)(
    '%f kS/m, %f °C, L %f: %s W/(m·K), by hand',
    ([sigma, temperature_C, lorenz, printed]) => {
      const inputs = exactly({ conductivity_kS_per_m: sigma, temperature_C, lorenz })
      expect(asPrinted(thermalEstimate(inputs).value, printed)).toBe(printed)
    }
  )
})

describe('refuses', () => {
  const fine = {
    diffusivity_mm2_per_s: 229,
    foilDensity_g_per_cm3: 0.7,
    heatCapacity_J_per_gK: 0.71
  }
  test.for(Object.keys(fine))('%s of 0', name => {
    expect(() => thermalConductivity(exactly({ ...fine, [name]: 0 }))).toThrow(
      `${name} must be greater than 0, got 0`
    )
  })

  test.for([
    [{ conductivity_kS_per_m: 0 }, 'conductivity_kS_per_m must be greater than 0, got 0'],
    [{ lorenz: -1 }, 'lorenz must be greater than 0, got -1']
  ] as const)('%o', ([change, message]) => {
    const inputs = { conductivity_kS_per_m: 70, temperature_C: 23, lorenz: 6, ...change }
    expect(() => thermalEstimate(exactly(inputs))).toThrow(message)
  })
})

test('trials of the distributions agree', () => {
  expectLinear(
    thermalConductivity,
    uncertain({
      diffusivity_mm2_per_s: [229, 2],
      foilDensity_g_per_cm3: [0.7, 0.006],
      heatCapacity_J_per_gK: [0.71, 0.004]
    })
  )
  expectLinear(
    thermalEstimate,
    uncertain({ conductivity_kS_per_m: [70, 0.6], temperature_C: [23, 0.6], lorenz: [6, 0.05] })
  )
})
