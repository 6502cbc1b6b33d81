import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  concentration,
  densityTables,
  doubtOf,
  massOfVolume,
  type Solute,
  solutionDensity,
  volumeOfMass
} from '../../src/chemistry/solutions.ts'
import { type Estimate, exact } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectAgreement, simulate } from '../metrology/monte-carlo.ts'
import {
  ammoniaLaliberte,
  hydroxideHandbook,
  nitricLaliberte,
  peroxideHandbook,
  sulfuricFit,
  sulfuricLaliberte,
  sulfuricPrinted25
} from './density-rows.ts'

const density = (solute: Solute, massFraction_percent: number, temperature_C = 20) =>
  solutionDensity(solute, exactly({ massFraction_percent, temperature_C })).value

describe('sulfuric acid', () => {
  // Between sparse nodes the fit's own lines add up to 0.0006; below 5 % it leaves the water's density.
  test.for(sulfuricFit)('the fit at %f %, 20 °C', ([w, at20]) => {
    const limit = w < 5 ? 0.0009 : w > 40 && w < 99 ? 0.00041 : 0.00061
    expect(Math.abs(density('sulfuric acid', w) - at20)).toBeLessThan(limit)
  })

  test.for(sulfuricFit.filter(([w]) => w >= 5))('the fit at %f %, 25 °C', ([w, , at25]) => {
    expect(Math.abs(density('sulfuric acid', w, 25) - at25)).toBeLessThan(w < 10 ? 0.0013 : 0.001)
  })

  test.for(sulfuricLaliberte)('Laliberté at %f %', ([w, rho]) => {
    expect(Math.abs(density('sulfuric acid', w) - rho)).toBeLessThan(0.0021)
  })

  test.for(sulfuricPrinted25)('the printed table at %f %, 25 °C', ([w, rho]) => {
    expect(density('sulfuric acid', w, 25)).toBeCloseTo(rho, 9)
  })

  /** Derived from the table by hand: mol/L at 20 °C. */
  test.for([
    [93, '17.334'],
    [95, '17.763'],
    [96, '17.967'],
    [98, '18.348']
  ] as const)('%f % is %s mol/L', ([massFraction_percent, printed]) => {
    const { value } = concentration(
      'sulfuric acid',
      exactly({ massFraction_percent, temperature_C: 20 })
    )
    expect(asPrinted(value, printed)).toBe(printed)
  })

  test('a litre of 93 % holds 1699.9 g of acid', () => {
    const { value } = massOfVolume(
      'sulfuric acid',
      exactly({ massFraction_percent: 93, temperature_C: 20, volume_mL: 1000 })
    )
    expect(asPrinted(0.93 * value, '1699.9')).toBe('1699.9')
  })
})

describe('other solutions at 20 °C', () => {
  test.for(nitricLaliberte)('nitric acid, Laliberté at %f %', ([w, rho]) => {
    expect(Math.abs(density('nitric acid', w) - rho)).toBeLessThan(w <= 60 ? 0.00145 : 0.00355)
  })

  test.for(ammoniaLaliberte)('ammonia, Laliberté at %f %', ([w, rho]) => {
    expect(Math.abs(density('ammonia', w) - rho)).toBeLessThan(0.0016)
  })

  test.for(ammoniaLaliberte)('ammonia of %f % in mol/L', ([w, , , molar]) => {
    const { value } = concentration(
      'ammonia',
      exactly({ massFraction_percent: w, temperature_C: 20 })
    )
    expect(asPrinted(value, molar.toFixed(4))).toBe(molar.toFixed(4))
  })

  test.for(peroxideHandbook)('hydrogen peroxide, handbook: %f % at %f °C', ([w, t, rho]) => {
    expect(Math.abs(density('hydrogen peroxide', w, t) - rho)).toBeLessThan(0.0016)
  })

  test.for(hydroxideHandbook)('sodium hydroxide, handbook: %f %', ([w, rho]) => {
    expect(Math.abs(density('sodium hydroxide', w) - rho)).toBeLessThan(0.002)
  })

  test('13.494 mL of 10 % ammonia weigh 12.9202 g', () => {
    const { value } = volumeOfMass(
      'ammonia',
      exactly({ massFraction_percent: 10, temperature_C: 20, mass_g: 12.9202 })
    )
    expect(asPrinted(value, '13.494')).toBe('13.494')
  })
})

test.for([
  ['nitric acid', nitricLaliberte],
  ['ammonia', ammoniaLaliberte],
  ['hydrogen peroxide', peroxideHandbook.map(([w, , rho]) => [w, rho] as const)],
  ['sodium hydroxide', hydroxideHandbook]
] as const)(
  '%s: no table claims to lie nearer the truth than its second source',
  ([solute, rows]) => {
    const { limit_g_per_cm3: limit } = densityTables[solute]
    const far = rows.map(([w, rho]) => Math.abs(density(solute, w) - rho))
    // To the digit both are printed with.
    expect(Math.max(...far)).toBeLessThan(limit + 0.0001)
  }
)

/** A digit mistaken in a table of an even curve bends it: each node against the cubic of its neighbours. */
test.for([
  ['sulfuric acid', 0.0001],
  ['nitric acid', 0.0007],
  ['ammonia', 0.0001],
  ['hydrogen peroxide', 0.0001],
  ['sodium hydroxide', 0.0003]
] as const)('%s: no node lies off the curve of the others by %f g/cm³', ([solute, limit]) => {
  const { massFraction_percent: w, density_g_per_cm3: rho } = densityTables[solute]
  for (let i = 1; i < w.length - 1; i += 1) {
    const near = [i - 2, i - 1, i + 1, i + 2].filter(j => j in w)
    const curve = near.reduce((sum, j) => {
      const others = near.filter(k => k !== j)
      return sum + others.reduce((y, k) => (y * (w[i]! - w[k]!)) / (w[j]! - w[k]!), rho[j]!)
    }, 0)
    expect(Math.abs(curve - rho[i]!), `at ${w[i]} %`).toBeLessThan(limit)
  }
})

describe('outside the tables', () => {
  test.for([
    ['sulfuric acid', 100.1, 20, 'massFraction_percent must be from 0 to 100'],
    ['sulfuric acid', -0.1, 20, 'massFraction_percent must be from 0 to 100'],
    ['nitric acid', 71, 20, 'massFraction_percent must be from 0 to 70'],
    ['ammonia', 31, 20, 'massFraction_percent must be from 0 to 30'],
    ['sulfuric acid', 96, 14, 'temperature_C must be from 15 to 30'],
    ['sulfuric acid', 96, 31, 'temperature_C must be from 15 to 30'],
    ['nitric acid', 65, 25, 'temperature_C must be from 18 to 22'],
    ['ammonia', 25, 23, 'temperature_C must be from 18 to 22'],
    ['hydrogen peroxide', 50, 31, 'temperature_C must be from 15 to 30'],
    ['sodium hydroxide', 21, 20, 'massFraction_percent must be from 0 to 20'],
    ['sodium hydroxide', 10, 17, 'temperature_C must be from 18 to 22']
  ] as const)('%s of %f % at %f °C', ([solute, w, t, message]) => {
    expect(() => density(solute, w, t)).toThrow(message)
    expect(() =>
      massOfVolume(solute, exactly({ massFraction_percent: w, temperature_C: t, volume_mL: 1 }))
    ).toThrow(message)
    expect(() =>
      volumeOfMass(solute, exactly({ massFraction_percent: w, temperature_C: t, mass_g: 1 }))
    ).toThrow(message)
    expect(() =>
      concentration(solute, exactly({ massFraction_percent: w, temperature_C: t }))
    ).toThrow(message)
  })

  test('no volume and no mass', () => {
    const of = { massFraction_percent: 96, temperature_C: 20 }
    expect(() => massOfVolume('sulfuric acid', exactly({ ...of, volume_mL: 0 }))).toThrow(
      'volume_mL must be greater than 0, got 0'
    )
    expect(() => volumeOfMass('sulfuric acid', exactly({ ...of, mass_g: -1 }))).toThrow(
      'mass_g must be greater than 0, got -1'
    )
  })
})

const strength = (solute: Solute) =>
  fc.double({ min: 0, max: densityTables[solute].massFraction_percent.at(-1)!, noNaN: true })

test('a volume weighed and measured again is itself', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<Solute>('sulfuric acid', 'nitric acid', 'ammonia', 'hydrogen peroxide'),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.integer({ min: 1, max: 5000 }),
      (solute, part, volume_mL) => {
        const most = densityTables[solute].massFraction_percent.at(-1)!
        const of = { massFraction_percent: part * most, temperature_C: 20 }
        const mass_g = massOfVolume(solute, exactly({ ...of, volume_mL })).value
        expect(volumeOfMass(solute, exactly({ ...of, mass_g })).value).toBeCloseTo(volume_mL, 8)
      }
    )
  )
})

test('sulfuric acid is lighter the warmer it is; ammonia the stronger', () => {
  fc.assert(
    fc.property(strength('sulfuric acid'), strength('ammonia'), (w, a) => {
      expect(density('sulfuric acid', w, 26)).toBeLessThan(density('sulfuric acid', w, 18))
      expect(density('ammonia', a)).toBeLessThanOrEqual(density('ammonia', Math.max(0, a - 0.1)))
    })
  )
})

/** So that what two figures take from one table is seen to move together. */
test('a table too light makes each mass too small and each volume too large', () => {
  const of = { massFraction_percent: 96, temperature_C: 20 }
  const byTable = ({ inputs }: ReturnType<typeof massOfVolume | typeof volumeOfMass>) =>
    inputs.find(({ input }) => input === 'table')!.sensitivity
  const mass = massOfVolume('sulfuric acid', exactly({ ...of, volume_mL: 50 }))
  expect(byTable(mass)).toBeCloseTo(50, 6)
  const volume = volumeOfMass('sulfuric acid', exactly({ ...of, mass_g: 50 }))
  expect(byTable(volume)).toBeCloseTo(-50 / 1.8355 ** 2, 6)
})

/** The table's error is drawn beside the inputs, and acts on the density by hand. */
test('trials of the distributions agree', () => {
  const solute = 'sulfuric acid'
  const table = doubtOf(solute)
  const acid = uncertain({ massFraction_percent: [60.5, 0.1], temperature_C: [22, 0.5] })
  const rho = ({ massFraction_percent, temperature_C, table }: Record<string, Estimate>) =>
    solutionDensity(solute, {
      massFraction_percent: massFraction_percent!,
      temperature_C: temperature_C!
    }).value + table!.value
  expectAgreement(
    solutionDensity(solute, acid),
    simulate(x => exact(rho(x)), { ...acid, table })
  )
  const volume = { ...acid, ...uncertain({ volume_mL: [55, 0.06] }) }
  expectAgreement(
    massOfVolume(solute, volume),
    simulate(x => exact(rho(x) * x.volume_mL.value), { ...volume, table })
  )
  const mass = { ...acid, ...uncertain({ mass_g: [100, 0.21] }) }
  expectAgreement(
    volumeOfMass(solute, mass),
    simulate(x => exact(x.mass_g.value / rho(x)), { ...mass, table })
  )
  expectAgreement(
    concentration(solute, acid),
    simulate(x => exact((rho(x) * 10 * x.massFraction_percent.value) / 98.072), { ...acid, table })
  )
})
