import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { strengthAsNH3 } from '../../src/chemistry/ammonia-strength.ts'
import {
  type Acid,
  acidEquivalents,
  acids,
  type Base,
  bases,
  carbonDioxide,
  demand,
  excess,
  supplied
} from '../../src/chemistry/neutralisation.ts'
import { MOLAR_VOLUME_L } from '../../src/chemistry/expansion-gas.ts'
import { volumeOfMass } from '../../src/chemistry/solutions.ts'
import { exact } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'
import { ammoniaLaliberte } from './density-rows.ts'

const equivalents = (acid: Acid, acid_g: number) => acidEquivalents(acid, exactly({ acid_g })).value

/** 4 g of 93 % sulfuric acid. */
const shop_mol = equivalents('sulfuric acid', 3.72)

const demandOf = (base: Base, strength_percent: number, equivalents_mol = shop_mol) =>
  demand(base, exactly({ equivalents_mol, strength_percent })).value

/** Worked by hand from the abridged atomic weights of 2021. */
describe('4 g of 93 % sulfuric acid', () => {
  test('are 0.07586263 mol of hydrogen ion', () => {
    expect(asPrinted(shop_mol, '0.07586263')).toBe('0.07586263')
  })

  test.for([
    ['ammonia', 100, '1.292016'],
    ['ammonia', 10, '12.92016'],
    ['sodium hydrogen carbonate', 100, '6.372916'],
    ['sodium hydrogen carbonate', 8, '79.66'],
    ['sodium hydroxide', 100, '3.034278'],
    ['sodium hydroxide', 10, '30.34278'],
    ['sodium carbonate', 100, '4.020264'],
    ['calcium hydroxide', 100, '2.810407'],
    ['calcium carbonate', 100, '3.796394']
  ] as const)('take of %s, %f %: %s g', ([base, strength, printed]) => {
    expect(asPrinted(demandOf(base, strength), printed)).toBe(printed)
  })

  test('take 13.494 mL of 10 % ammonia', () => {
    const mass_g = demandOf('ammonia', 10)
    const { value } = volumeOfMass(
      'ammonia',
      exactly({ massFraction_percent: 10, temperature_C: 20, mass_g })
    )
    expect(asPrinted(value, '13.494')).toBe('13.494')
  })

  test('set 3.33864 g or 1.856 L of carbon dioxide free from hydrogen carbonate', () => {
    const inputs = exactly({ neutralised_mol: shop_mol })
    const { value } = carbonDioxide('sodium hydrogen carbonate', inputs)
    expect(asPrinted(value, '3.33864')).toBe('3.33864')
    expect(asPrinted((value / 44.009) * MOLAR_VOLUME_L, '1.856')).toBe('1.856')
    expect(carbonDioxide('sodium carbonate', inputs).value).toBeCloseTo(value / 2, 12)
    expect(carbonDioxide('calcium carbonate', inputs).value).toBeCloseTo(value / 2, 12)
    expect(carbonDioxide('ammonia', inputs).value).toBe(0)
  })
})

/** '10 % ammonia' by what the label means; 20 g for about 4 g of acid is common practice, no source. */
describe('the trap in the strength of ammonia', () => {
  const factor = (acid_g: number, strength: number, convention: 'NH3' | 'NH4OH') =>
    excess({
      supplied_mol: supplied('ammonia', {
        base_g: exact(20),
        strength_percent: strengthAsNH3({ strength_percent: exact(strength) }, convention)
      }),
      equivalents_mol: acidEquivalents('sulfuric acid', { acid_g: exact(acid_g) })
    }).value

  test.for([
    ['4 g of 93 %', 3.72, 'NH3', '1.548'],
    ['4 g of 96 %', 3.84, 'NH3', '1.500'],
    ['4 g of 98 %', 3.92, 'NH3', '1.469'],
    ['4 g of 100 %', 4, 'NH3', '1.440'],
    ['4 g of 93 %', 3.72, 'NH4OH', '0.752'],
    ['4 mL of 93 %', 4 * 1.8279 * 0.93, 'NH3', '0.847']
  ] as const)('20 g for %s (%f g), 10 % as %s: %s', ([, acid_g, convention, printed]) => {
    expect(asPrinted(factor(acid_g, 10, convention), printed)).toBe(printed)
  })

  test('10 % as NH4OH is 4.8596 % of NH3, and 26.5868 g of it are needed', () => {
    const { value } = strengthAsNH3({ strength_percent: exact(10) }, 'NH4OH')
    expect(asPrinted(value, '4.8596')).toBe('4.8596')
    expect(asPrinted(demandOf('ammonia', value), '26.5868')).toBe('26.5868')
  })

  test.for(ammoniaLaliberte)('%f % of NH3 both ways', ([nh3, , nh4oh]) => {
    const { value } = strengthAsNH3({ strength_percent: exact(nh4oh) }, 'NH4OH')
    expect(value).toBeCloseTo(nh3, 3)
    expect(strengthAsNH3({ strength_percent: exact(nh3) }, 'NH3').value).toBe(nh3)
  })

  test('is refused while nobody says which', () => {
    expect(() => strengthAsNH3({ strength_percent: exact(10) }, undefined)).toThrow(
      'strength_percent must be stated as NH3 or as NH4OH: the second is 0.486 of the first, got 10'
    )
  })
})

test.for([
  ['sulfuric acid', 98.072, 2],
  ['nitric acid', 63.012, 1],
  ['phosphoric acid', 97.994, 3],
  ['acetic acid', 60.052, 1]
] as const)('a mol of %s (%f g) gives %i mol of hydrogen ion', ([acid, acid_g, z]) => {
  expect(equivalents(acid, acid_g)).toBeCloseTo(z, 9)
})

describe('inputs outside the domain', () => {
  test.for([
    [
      'a negative acid',
      () => equivalents('sulfuric acid', -1),
      'acid_g must be at least 0, got -1'
    ],
    [
      'no strength',
      () => demandOf('ammonia', 0),
      'strength_percent must be above 0 and at most 100'
    ],
    [
      'too strong',
      () => demandOf('ammonia', 101),
      'strength_percent must be above 0 and at most 100'
    ],
    [
      'negative equivalents',
      () => demandOf('ammonia', 10, -1),
      'equivalents_mol must be at least 0'
    ],
    [
      'a negative base',
      () => supplied('ammonia', exactly({ base_g: -1, strength_percent: 10 })),
      'base_g must be at least 0, got -1'
    ],
    [
      'a base of no strength',
      () => supplied('ammonia', exactly({ base_g: 1, strength_percent: 0 })),
      'strength_percent must be above 0'
    ],
    [
      'no acid at all',
      () => excess(exactly({ supplied_mol: 1, equivalents_mol: 0 })),
      'equivalents_mol must be greater than 0, got 0'
    ],
    [
      'a negative supply',
      () => excess(exactly({ supplied_mol: -1, equivalents_mol: 1 })),
      'supplied_mol must be at least 0'
    ],
    [
      'negative gas',
      () => carbonDioxide('sodium carbonate', exactly({ neutralised_mol: -1 })),
      'neutralised_mol must be at least 0'
    ],
    [
      'ammonia of 100 %',
      () => strengthAsNH3({ strength_percent: exact(100) }, 'NH3'),
      'strength_percent must be at least 0 and below 100'
    ]
  ] as const)('%s', ([, run, message]) => {
    expect(run).toThrow(message)
  })
})

const someBase = fc.constantFrom(...(Object.keys(bases) as Base[]))
const someAcid = fc.constantFrom(...(Object.keys(acids) as Acid[]))
const amount = fc.double({ min: 0.01, max: 1000, noNaN: true })
const strength = fc.double({ min: 1, max: 100, noNaN: true })

test('what is demanded neutralises exactly; twice the acid takes twice as much', () => {
  fc.assert(
    fc.property(someBase, someAcid, amount, strength, (base, acid, acid_g, strength_percent) => {
      const equivalents_mol = equivalents(acid, acid_g)
      const base_g = demandOf(base, strength_percent, equivalents_mol)
      const supplied_mol = supplied(base, exactly({ base_g, strength_percent })).value
      expect(excess(exactly({ supplied_mol, equivalents_mol })).value).toBeCloseTo(1, 9)
      const twice = demandOf(base, strength_percent, equivalents(acid, 2 * acid_g))
      expect(twice / base_g).toBeCloseTo(2, 9)
    })
  )
})

test('trials of the distributions agree', () => {
  expectLinear(
    inputs => demand('ammonia', inputs),
    uncertain({ equivalents_mol: [0.07586, 0.00005], strength_percent: [10, 0.01] })
  )
  expectLinear(
    inputs => supplied('ammonia', inputs),
    uncertain({ base_g: [20, 0.05], strength_percent: [10, 0.1] })
  )
  expectLinear(
    excess,
    uncertain({ supplied_mol: [0.117, 0.001], equivalents_mol: [0.0759, 0.0003] })
  )
  expectLinear(
    inputs => strengthAsNH3(inputs, 'NH4OH'),
    uncertain({ strength_percent: [10, 0.29] })
  )
  expectLinear(
    inputs => acidEquivalents('sulfuric acid', inputs),
    uncertain({ acid_g: [3.72, 0.0059] })
  )
  expectLinear(
    inputs => carbonDioxide('sodium carbonate', inputs),
    uncertain({ neutralised_mol: [0.0759, 0.0006] })
  )
})
