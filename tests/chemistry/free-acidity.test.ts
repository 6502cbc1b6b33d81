import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { freeAcid, freeAcidAmount } from '../../src/chemistry/free-acidity.ts'
import { exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'
import { covariance } from '../metrology/correlation.ts'

const whole = { titre_mL: 2.4, blank_mL: 0, titrant_mol_per_L: 0.1, mass_g: 10 }

describe('by hand from the stoichiometry of H2SO4 + 2 NaOH', () => {
  test('2.40 mL of 0.100 mol/L on 10 g: 0.118 %, 0.0240 mmol/g', () => {
    expect(asPrinted(freeAcid(exactly(whole)).value, '0.118')).toBe('0.118')
    expect(asPrinted(freeAcid(exactly(whole)).value, '0.117686')).toBe('0.117686')
    expect(asPrinted(freeAcidAmount(exactly(whole)).value, '0.0240')).toBe('0.0240')
  })

  test('a blank of 0.15 mL is taken off: 2.25 mL net, 0.1103 %', () => {
    const inputs = exactly({ ...whole, blank_mL: 0.15 })
    expect(asPrinted(freeAcid(inputs).value, '0.11033')).toBe('0.11033')
    expect(asPrinted(freeAcidAmount(inputs).value, '0.02250')).toBe('0.02250')
  })

  test('25.00 mL of a 100.0 mL extract stand for four times the acid', () => {
    const inputs = exactly({ ...whole, blank_mL: 0.15, extract_mL: 100, aliquot_mL: 25 })
    expect(asPrinted(freeAcid(inputs).value, '0.44132')).toBe('0.44132')
    expect(asPrinted(freeAcidAmount(inputs).value, '0.09000')).toBe('0.09000')
  })

  test('neutralisation: 37.93 mmol of acid, 3.720 g, take 75.86 mL of 1 mol/L alkali', () => {
    // 4 g of 93 % sulfuric acid: 3.720 g, 0.07586263 mol of H⁺.
    const inputs = exactly({ ...whole, titre_mL: 75.86263, titrant_mol_per_L: 1, mass_g: 4 })
    expect(asPrinted(freeAcid(inputs).value, '93.0000')).toBe('93.0000')
  })
})

test('a sample that takes less than the blank gives a result below 0', () => {
  const inputs = exactly({ ...whole, titre_mL: 0.1, blank_mL: 0.15 })
  expect(asPrinted(freeAcid(inputs).value, '-0.002452')).toBe('-0.002452')
  expect(freeAcid(exactly({ ...whole, titre_mL: 0.15, blank_mL: 0.15 })).value).toBe(0)
})

test('a blank of 0.00 mL still carries its uncertainty', () => {
  const inputs = { ...exactly(whole), blank_mL: measured(0, 0.02, 'blank') }
  // 0.02 mL · 0.1 mol/L / 10 g · 4.9036 %·g/mmol
  expect(asPrinted(uncertaintyOf(freeAcid(inputs)), '0.0009807')).toBe('0.0009807')
})

test('what titre and blank share, the burette, cancels as far as they are alike', () => {
  const burette = (value: number) => measured(value, 0.001 * value, 'BU-1 calibration')
  const alike = freeAcid({ ...exactly(whole), titre_mL: burette(2.4), blank_mL: burette(2.4) })
  expect(uncertaintyOf(alike)).toBeLessThan(1e-15)
  const net = freeAcid({ ...exactly(whole), titre_mL: burette(2.4), blank_mL: burette(0.4) })
  expect(uncertaintyOf(net) / net.value).toBeCloseTo(0.001, 9)
})

test('two lots titrated with one titrant are correlated through it', () => {
  const titrant_mol_per_L = measured(0.1, 0.0002, 'titrant T-3')
  const one = freeAcid({ ...exactly(whole), titrant_mol_per_L })
  const other = freeAcid({ ...exactly({ ...whole, titre_mL: 1.2 }), titrant_mol_per_L })
  expect(covariance(one, other)).toBeCloseTo(0.002 * one.value * 0.002 * other.value, 12)
})

describe('inputs outside the domain', () => {
  const part = { ...whole, extract_mL: 100, aliquot_mL: 25 }
  test.for([
    [{ mass_g: 0 }, 'mass_g must be greater than 0, got 0'],
    [{ titrant_mol_per_L: 0 }, 'titrant_mol_per_L must be greater than 0, got 0'],
    [{ extract_mL: 0 }, 'extract_mL must be greater than 0, got 0'],
    [{ aliquot_mL: 0 }, 'aliquot_mL must be greater than 0, got 0'],
    [{ aliquot_mL: 101 }, 'aliquot_mL must be at most extract (100 mL), got 101']
  ] as const)('%o', ([wrong, message]) => {
    expect(() => freeAcid(exactly({ ...part, ...wrong }))).toThrow(message)
    expect(() => freeAcidAmount(exactly({ ...part, ...wrong }))).toThrow(message)
  })
})

const positive = fc.double({ min: 0.01, max: 100, noNaN: true })

test('the whole extract as its own aliquot changes nothing', () => {
  fc.assert(
    fc.property(positive, positive, positive, (titre_mL, mass_g, extract_mL) => {
      const inputs = exactly({ ...whole, titre_mL, mass_g })
      const volume = exact(extract_mL)
      const same = freeAcid({ ...inputs, extract_mL: volume, aliquot_mL: volume })
      expect(same.value / freeAcid(inputs).value).toBeCloseTo(1, 12)
    })
  )
})

test('k times the titrant, or a kth of the mass, is k times the result', () => {
  fc.assert(
    fc.property(positive, positive, positive, (titre_mL, mass_g, k) => {
      const base = { ...whole, titre_mL, mass_g }
      const once = freeAcid(exactly(base)).value
      const stronger = freeAcid(exactly({ ...base, titrant_mol_per_L: 0.1 * k })).value
      const lighter = freeAcid(exactly({ ...base, mass_g: mass_g / k })).value
      expect(stronger / once / k).toBeCloseTo(1, 12)
      expect(lighter / once / k).toBeCloseTo(1, 12)
    })
  )
})

test('half the molar mass of the acid turns mmol/g into 0.1 %', () => {
  fc.assert(
    fc.property(positive, titre_mL => {
      const inputs = exactly({ ...whole, titre_mL })
      const ratio = freeAcid(inputs).value / freeAcidAmount(inputs).value
      expect(ratio).toBeCloseTo(98.072 / 2 / 10, 10)
    })
  )
})

describe('trials of the distributions agree', () => {
  const inputs = uncertain({
    titre_mL: [2.4, 0.02],
    blank_mL: [0.15, 0.01],
    titrant_mol_per_L: [0.1, 0.0002],
    mass_g: [10, 0.002]
  })
  const aliquot = { ...inputs, ...uncertain({ extract_mL: [100, 0.3], aliquot_mL: [25, 0.03] }) }
  test('freeAcid, whole extract', () => expectLinear(freeAcid, inputs))
  test('freeAcidAmount, aliquot', () =>
    expectLinear(freeAcidAmount, { ...aliquot, titre_mL: measured(2.4, 0.033, 'titre') }))
  test('freeAcid with a shared burette', () =>
    expectLinear(freeAcid, {
      ...inputs,
      titre_mL: measured(2.4, 0.025, 'burette'),
      blank_mL: measured(0.15, 0.002, 'burette')
    }))
})
