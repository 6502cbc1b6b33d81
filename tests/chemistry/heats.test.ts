import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { capacityAt, heatsBetween, largerHeat } from '../../src/chemistry/heat-of-solution.ts'
import {
  adiabaticRise,
  heatDoubt,
  heatOfDilution,
  heatOfNeutralisation
} from '../../src/chemistry/heats.ts'
import type { Base } from '../../src/chemistry/neutralisation.ts'
import { expand } from '../../src/metrology/coverage.ts'
import { exact } from '../../src/metrology/estimate.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectAgreement, expectLinear, simulate } from '../metrology/monte-carlo.ts'

const within = (value: number, expected: number, part: number) =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(part)

/** NBS Tables of 1982, kJ/mol by mol of water (from memory): a third evaluation. */
test.for([
  [1, 27.8],
  [2, 41.45],
  [3, 48.92],
  [4, 53.89],
  [5, 57.51],
  [10, 66.54],
  [20, 70.93],
  [50, 72.78],
  [100, 73.65]
] as const)('NBS 1982 with %f water: %f kJ/mol', ([n, heat]) => {
  within(heatsBetween(0, n)[0]!, heat, 0.016)
})

/** J. Thomsen: 17860 n / (n + 1.7983) cal/mol, an old formula that bounds how far tables may stray. */
test.for([0.5, 1, 2, 4, 7, 15, 30, 75, 200] as const)('Thomsen at %f water', n => {
  const thomsen = (17860 * 4.184e-3 * n) / (n + 1.7983)
  for (const heat of heatsBetween(0, n)) within(heat, thomsen, 0.125)
})

/** Zeleznik's function itself between the nodes taken from it. */
test.for([
  [19, 74.623],
  [49, 76.717],
  [99, 77.19]
] as const)('Zeleznik at %f water: %f kJ/mol', ([n, heat]) => {
  within(heatsBetween(0, n)[1]!, heat, 5e-4)
})

/** Heat capacity by Laliberté's model of 2009, another hand: within 6 %, above 85 % within 9 %. */
test.for([
  [0, 4.182],
  [10, 3.857],
  [20, 3.51],
  [30, 3.161],
  [40, 2.826],
  [50, 2.517],
  [60, 2.244],
  [70, 2.014],
  [80, 1.833],
  [90, 1.708],
  [93, 1.681]
] as const)('heat capacity at %f %: %f J/(g·K)', ([percent, expected]) => {
  within(capacityAt(percent), expected, percent > 85 ? 0.09 : 0.06)
})

/** Perry's Chemical Engineers' Handbook at 20 °C, cal/(g·K) (from memory). */
test.for([
  [52.13, 0.5801],
  [64.47, 0.5012],
  [73.13, 0.4628],
  [77.91, 0.4518],
  [84.48, 0.4408],
  [91.81, 0.3787],
  [100, 0.3352]
] as const)('heat capacity, Perry: %f %', ([percent, cal]) => {
  within(capacityAt(percent), 4.184 * cal, percent > 85 ? 0.06 : 0.03)
})

const water = (strength: number, mass_g: number) => mass_g * (1 - strength / 100)
const acid = (strength: number, mass_g: number) => (mass_g * strength) / 100

/** Both at 25 °C: strength, acid solution, water, heat by Circular 500 and by Zeleznik, kJ, end °C. */
const cases = [
  [93, 100, 900, 57.09, 60.46, 40.75],
  [93, 100, 100, 45.8, 49.06, 121],
  [96, 100, 900, 64.35, 67.81, 42.7],
  [93, 4, 100, 2.326, 2.446, 30.8]
] as const

describe('adiabatic rise', () => {
  test.for(cases)(
    '%f %, %f g into %f g of water',
    ([strength, mass, added, nbs, zeleznik, end]) => {
      const acid_g = acid(strength, mass)
      const ownWater_g = water(strength, mass)
      const ratio = (g: number) => g / 18.015 / (acid_g / 98.072)
      const mol = acid_g / 98.072
      const [first, second] = heatsBetween(ratio(ownWater_g), ratio(ownWater_g + added))
      within(mol * first!, nbs, 0.005)
      within(mol * second!, zeleznik, 0.003)
      const heat = heatOfDilution(exactly({ acid_g, ownWater_g, water_g: added }))
      expect(heat.value).toBeCloseTo(mol * Math.max(first!, second!), 9)
      const rise = adiabaticRise(exactly({ heat_kJ: heat.value, acid_g, liquor_g: mass + added }))
      // The end temperatures are exact of that evaluation; a constant heat capacity costs a little.
      within(rise.value, end - 25, end > 100 ? 0.03 : 0.012)
    }
  )

  test('states ± 5 % as the limit of the heats, however exact the masses', () => {
    const { U } = expand(heatOfDilution(exactly({ acid_g: 93, ownWater_g: 7, water_g: 900 })))
    within(U, (60.46 * 0.05 * 1.95996) / Math.sqrt(3), 0.005)
  })

  test('less water than planned makes it larger, up to as much water as acid', () => {
    const rise = (water_g: number) => {
      const heat_kJ = heatOfDilution(exactly({ acid_g: 93, ownWater_g: 7, water_g })).value
      return adiabaticRise(exactly({ heat_kJ, acid_g: 93, liquor_g: 100 + water_g })).value
    }
    expect(rise(450)).toBeGreaterThan(1.8 * rise(900))
    expect(rise(100)).toBeGreaterThan(5 * rise(900))
  })
})

describe('neutralising', () => {
  const neutralised_mol = (2 * 3.72) / 98.072
  const of = (base: Base, form: 'dissolved' | 'solid' = 'dissolved', water_g = 0.28) =>
    heatOfNeutralisation(base, form, exactly({ acid_g: 3.72, water_g, neutralised_mol })).value

  test('4 g of 93 % with ammonia: 7.07 kJ by NBS 1982, and 75 K or more in 24 g of liquor', () => {
    within(of('ammonia'), 7.07, 0.01)
    const rise = adiabaticRise(
      exactly({ heat_kJ: of('ammonia'), acid_g: 3.72, liquor_g: 24 })
    ).value
    expect(rise).toBeGreaterThan(75)
    expect(rise).toBeLessThan(85)
  })

  /** H2SO4(l) to sulfate by NBS 1982, kJ/mol (from memory): with 2 OH⁻ and with 2 NH3(aq). */
  test.for([
    ['sodium hydroxide', 206.95],
    ['ammonia', 199.72]
  ] as const)('from the pure acid with %s: %f kJ/mol', ([base, expected]) => {
    within(of(base, 'dissolved', 0) / (3.72 / 98.072), expected, 0.006)
  })

  test('a solid hydroxide gives its heat of dissolving besides', () => {
    expect(of('sodium hydroxide', 'solid') - of('sodium hydroxide')).toBeCloseTo(
      neutralised_mol * 44.5,
      9
    )
    expect(of('sodium hydrogen carbonate', 'solid')).toBe(of('sodium hydrogen carbonate'))
  })

  /**
   * Enthalpies of formation at 25 °C, kJ/mol: NBS Tables 1982 (from memory). Of each base the heat of
   * its reaction with a mol of hydrogen ion comes of them, dissolved and as a solid.
   */
  const f = {
    ...{ H2O: -285.83, OH: -229.994, CO3: -677.14, HCO3: -691.99, CO2: -413.8, NH3: -80.29 },
    ...{ NH4: -132.51, Na: -240.12, Ca: -542.83, NaOHs: -425.609, CaOH2s: -986.09 },
    ...{ Na2CO3s: -1130.68, CaCO3s: -1206.92 }
  }
  const fromCarbonate = f.CO2 + f.H2O - f.CO3
  test.for([
    ['ammonia', f.NH4 - f.NH3, 0],
    ['sodium hydroxide', f.H2O - f.OH, f.Na + f.OH - f.NaOHs],
    ['calcium hydroxide', f.H2O - f.OH, (f.Ca + 2 * f.OH - f.CaOH2s) / 2],
    ['sodium hydrogen carbonate', f.CO2 + f.H2O - f.HCO3, 0],
    ['sodium carbonate', fromCarbonate / 2, (2 * f.Na + f.CO3 - f.Na2CO3s) / 2],
    ['calcium carbonate', fromCarbonate / 2, (f.Ca + f.CO3 - f.CaCO3s) / 2]
  ] as const)(
    'a mol of hydrogen ion with %s: %f kJ dissolved, %f to dissolve it',
    ([base, reacting, dissolving]) => {
      const diluted = of('ammonia') + neutralised_mol * (f.NH4 - f.NH3)
      expect((diluted - of(base)) / neutralised_mol).toBeCloseTo(reacting, 1)
      expect((of(base) - of(base, 'solid')) / neutralised_mol).toBeCloseTo(dissolving, 1)
    }
  )

  test('carbonates give less than hydroxides, and hydrogen carbonate least', () => {
    expect(of('sodium carbonate')).toBeLessThan(of('ammonia'))
    expect(of('sodium hydrogen carbonate')).toBeLessThan(of('sodium carbonate'))
  })

  test('half the neutraliser, half the heat', () => {
    const half = heatOfNeutralisation(
      'ammonia',
      'dissolved',
      exactly({ acid_g: 3.72, water_g: 0.28, neutralised_mol: neutralised_mol / 2 })
    ).value
    expect(half).toBeCloseTo(of('ammonia') / 2, 12)
  })
})

describe('inputs outside the domain', () => {
  const dilution = { acid_g: 93, ownWater_g: 7, water_g: 900 }
  const base = { acid_g: 3.72, water_g: 0.28, neutralised_mol: 0.07 }
  const rise = { heat_kJ: 1, acid_g: 1, liquor_g: 10 }

  test.for([
    [{ acid_g: 0 }, 'acid_g must be greater than 0, got 0'],
    [{ ownWater_g: -1 }, 'ownWater_g must be at least 0, got -1'],
    [{ water_g: -1 }, 'water_g must be at least 0, got -1']
  ] as const)('dilution %o', ([wrong, message]) => {
    expect(() => heatOfDilution(exactly({ ...dilution, ...wrong }))).toThrow(message)
  })

  test.for([
    [{ acid_g: 0 }, 'acid_g must be greater than 0, got 0'],
    [{ water_g: -1 }, 'water_g must be at least 0, got -1'],
    [{ neutralised_mol: -1 }, 'neutralised_mol must be at least 0, got -1'],
    [{ neutralised_mol: 0.08 }, 'neutralised_mol must be at most 0.075863, two a molecule of acid']
  ] as const)('neutralising %o', ([wrong, message]) => {
    expect(() =>
      heatOfNeutralisation('ammonia', 'dissolved', exactly({ ...base, ...wrong }))
    ).toThrow(message)
  })

  test.for([
    [{ heat_kJ: -1 }, 'heat_kJ must be at least 0, got -1'],
    [{ liquor_g: 0 }, 'liquor_g must be greater than 0, got 0'],
    [{ acid_g: -1 }, 'acid_g must be at least 0, got -1'],
    [{ acid_g: 11 }, 'acid_g must be at most the liquor it is part of, got 11']
  ] as const)('rise %o', ([wrong, message]) => {
    expect(() => adiabaticRise(exactly({ ...rise, ...wrong }))).toThrow(message)
  })
})

test('more water, more heat; never more than without end', () => {
  const ratio = fc.double({ min: 0, max: 1e5, noNaN: true })
  fc.assert(
    fc.property(ratio, ratio, (a, b) => {
      const [less, more] = [Math.min(a, b), Math.max(a, b)]
      expect(largerHeat(0, less)).toBeLessThanOrEqual(largerHeat(0, more) + 1e-9)
      expect(largerHeat(less, more)).toBeGreaterThanOrEqual(-1e-9)
      expect(largerHeat(0, more)).toBeLessThanOrEqual(96.19)
    })
  )
})

/** The doubt of the heats is drawn beside the inputs, and acts on the heat by hand. */
test('trials of the distributions agree', () => {
  const dilution = uncertain({ acid_g: [93, 0.2], ownWater_g: [7, 0.2], water_g: [450, 2] })
  expectAgreement(
    heatOfDilution(dilution),
    simulate(({ doubt, ...x }) => exact(heatOfDilution(x).value * doubt.value), {
      ...dilution,
      doubt: heatDoubt
    })
  )
  const neutral = uncertain({
    acid_g: [3.72, 0.01],
    water_g: [20, 0.1],
    neutralised_mol: [0.05, 0.001]
  })
  const heat = (x: typeof neutral) => heatOfNeutralisation('ammonia', 'dissolved', x)
  expectAgreement(
    heat(neutral),
    simulate(({ doubt, ...x }) => exact(heat(x).value * doubt.value), {
      ...neutral,
      doubt: heatDoubt
    })
  )
  expectLinear(
    adiabaticRise,
    uncertain({ heat_kJ: [60, 0.5], acid_g: [93, 0.3], liquor_g: [1000, 5] })
  )
})
