import fc from 'fast-check'
import { MF } from 'mf-parser'
import { describe, expect, test } from 'vitest'
import { atomicWeights_g_per_mol } from '../../src/chemistry/atomic-weights.ts'
import { molarMass_g_per_mol } from '../../src/chemistry/molar-mass.ts'
import { asPrinted } from '../metrology/as-printed.ts'

/** IUPAC abridged atomic weights 2021, summed by hand. */
const compounds = [
  ['H2SO4', '98.072'],
  ['HNO3', '63.012'],
  ['NH3', '17.031'],
  ['NH4NO3', '80.043'],
  ['KNO3', '101.102'],
  ['NaNO3', '84.994'],
  ['KMnO4', '158.032'],
  ['H2O2', '34.014'],
  ['NaHCO3', '84.006'],
  ['NaOH', '39.997'],
  ['Na2CO3', '105.988'],
  ['(NH4)2SO4', '132.134'],
  ['C8H5KO4', '204.222'],
  ['K2Cr2O7', '294.181'],
  ['CrO3', '99.993'],
  ['Na2SO4', '142.036'],
  ['H2O', '18.015'],
  ['CO2', '44.009'],
  ['SO3', '80.057'],
  ['HCl', '36.458'],
  ['H3PO4', '97.994'],
  ['CH3COOH', '60.052'],
  ['CaCO3', '100.086'],
  ['Ca(OH)2', '74.092'],
  ['BaSO4', '233.386']
] as const

test.for(compounds)('IUPAC abridged 2021, by hand: %s %s g/mol', ([formula, printed]) => {
  expect(asPrinted(molarMass_g_per_mol(formula), printed)).toBe(printed)
})

test.for(compounds)('mf-parser 3.9.3 agrees to 1 in 10⁴: %s', ([formula]) => {
  const other = new MF(formula).getInfo().mass
  expect(Math.abs(molarMass_g_per_mol(formula) / other - 1)).toBeLessThan(1e-4)
})

test('an adduct is the sum of its parts: NH3·H2O 35.046 g/mol', () => {
  expect(asPrinted(molarMass_g_per_mol('NH3·H2O'), '35.046')).toBe('35.046')
})

test('the molar mass of sulfuric acid is not that of before 2009, 98.078 g/mol', () => {
  expect(molarMass_g_per_mol('H2SO4')).toBeCloseTo(98.072, 10)
})

describe('formulas that cannot be read', () => {
  test.for([
    ['', 'an empty text is not a chemical formula'],
    ['h2so4', 'h2so4 is not a chemical formula'],
    ['H2 SO4', 'H2 SO4 is not a chemical formula'],
    ['Ca(OH2', 'Ca(OH2 is not a chemical formula'],
    ['CaOH)2', 'CaOH)2 is not a chemical formula'],
    ['H0', 'H0 is not a chemical formula'],
    ['NH3·', 'NH3· is not a chemical formula'],
    ['2H2O', '2H2O is not a chemical formula'],
    ['XeF6', 'XeF6: no atomic weight for Xe']
  ] as const)('%s', ([formula, message]) => {
    expect(() => molarMass_g_per_mol(formula)).toThrow(new RangeError(message))
  })
})

const symbol = fc.constantFrom(...atomicWeights_g_per_mol.keys())
const count = fc.integer({ min: 1, max: 40 })

test('order, brackets and splitting leave the mass alone', () => {
  fc.assert(
    fc.property(symbol, count, symbol, count, (a, n, b, m) => {
      const expected = n * atomicWeights_g_per_mol.get(a)! + m * atomicWeights_g_per_mol.get(b)!
      expect(molarMass_g_per_mol(`${a}${n}${b}${m}`)).toBeCloseTo(expected, 8)
      expect(molarMass_g_per_mol(`${b}${m}${a}${n}`)).toBeCloseTo(expected, 8)
      expect(molarMass_g_per_mol(`(${a})${n}(${b})${m}`)).toBeCloseTo(expected, 8)
      expect(molarMass_g_per_mol(`((${a}${n})${b}${m})3`)).toBeCloseTo(3 * expected, 8)
    })
  )
})
