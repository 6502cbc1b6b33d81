import fc from 'fast-check'
import { expect, test } from 'vitest'
import { reportingLimit } from '../../src/chemistry/reporting-limit.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly } from '../metrology/given.ts'
import { normalSource, randomSource } from '../metrology/monte-carlo.ts'

const inputs = exactly({ titrant_mol_per_L: 0.1, mass_g: 10 })
const limit = (titres_mL: readonly number[], resolution_mL = 0.01, titrations = 1) =>
  reportingLimit({ titres_mL, resolution_mL, titrations }, inputs)

test('by hand from the formula: blanks 0.10, 0.20, 0.15 mL', () => {
  // s = 0.05 mL, t(0.95, 2) = 2.91999; 2 · 2.91999 · 0.05 · √(1 + 1/3) = 0.33717 mL
  const { titre_mL, freeAcid_percent, freeAcid_mmol_per_g } = limit([0.1, 0.2, 0.15])
  expect(asPrinted(titre_mL, '0.33717')).toBe('0.33717')
  expect(asPrinted(freeAcid_percent, '0.016534')).toBe('0.016534')
  expect(asPrinted(freeAcid_mmol_per_g, '0.0033717')).toBe('0.0033717')
})

test('IUPAC Recommendations 1995 (from memory): paired, many blanks, 3.29 · √2 · s', () => {
  // One blank a titration: n = q, so √(1/q + 1/n) = √2 for means of the same size.
  const many = Array.from({ length: 2000 }, (_, index) => (index % 2 === 0 ? 0.1 : 0.2))
  const s = 0.05 * Math.sqrt(2000 / 1999)
  const { titre_mL } = limit(many, 0.001, 2000)
  expect(titre_mL / (s * Math.sqrt(2 / 2000))).toBeCloseTo(3.291, 2)
})

test.for([
  ['no blank', []],
  ['one blank', [0.15]],
  ['two equal blanks', [0.15, 0.15]]
] as const)('%s: the burette sets the limit', ([, titres]) => {
  // 2 · 1.64485 · 0.05/√6 · √(1 + 1/n), by hand
  const printed = titres.length === 2 ? '0.08224' : '0.09497'
  expect(asPrinted(limit(titres, 0.05).titre_mL, printed)).toBe(printed)
})

test('an aliquot raises the limit by extract over aliquot', () => {
  const blanks = { titres_mL: [0.1, 0.2, 0.15], resolution_mL: 0.01, titrations: 1 }
  const part = { ...inputs, ...exactly({ extract_mL: 100, aliquot_mL: 25 }) }
  const whole = limit([0.1, 0.2, 0.15])
  expect(reportingLimit(blanks, part).freeAcid_percent).toBeCloseTo(4 * whole.freeAcid_percent, 12)
})

test.for([
  [0, 1, 'resolution_mL must be greater than 0, got 0'],
  [0.05, 0, 'titrations must be at least 1, got 0']
] as const)('outside the domain: step %f mL, %i titrations', ([step, titrations, message]) => {
  expect(() => limit([0.1, 0.2], step, titrations)).toThrow(message)
})

const titre = fc.integer({ min: 0, max: 100 }).map(hundredths => hundredths / 100)
const titres = fc.array(titre, { minLength: 2, maxLength: 8 })

test('it is above 0, keeps its size for blanks in another order, and shrinks with averaging', () => {
  fc.assert(
    fc.property(titres, fc.integer({ min: 2, max: 6 }), (values, titrations) => {
      const { titre_mL } = limit(values)
      expect(titre_mL).toBeGreaterThan(0)
      expect(limit([...values].reverse()).titre_mL).toBeCloseTo(titre_mL, 12)
      expect(limit(values, 0.01, titrations).titre_mL).toBeLessThan(titre_mL)
    })
  )
})

test('blanks that scatter twice as much double a limit the burette does not set', () => {
  fc.assert(
    fc.property(titres, values => {
      const fine = 1e-9
      fc.pre(Math.max(...values) > Math.min(...values))
      const wide = values.map(value => 2 * value)
      expect(limit(wide, fine).titre_mL / limit(values, fine).titre_mL).toBeCloseTo(2, 9)
    })
  )
})

test('trials: of samples that hold just the limit, about one in twenty is missed', () => {
  const normal = normalSource(randomSource())
  const blanks = 8
  const trials = 20_000
  let missed = 0
  let alarms = 0
  for (let trial = 0; trial < trials; trial += 1) {
    const values = Array.from({ length: blanks }, () => 0.15 + 0.02 * normal())
    const mean = values.reduce((sum, value) => sum + value, 0) / blanks
    const detected = limit(values, 1e-6).titre_mL / 2
    if (0.15 + 0.02 * normal() - mean > detected) alarms += 1
    // The limit from the true scatter: t(0.95, 7) = 1.8946.
    const true_mL = 2 * 1.8946 * 0.02 * Math.sqrt(1 + 1 / blanks)
    if (0.15 + true_mL + 0.02 * normal() - mean < detected) missed += 1
  }
  // Four times the binomial scatter of 5 % in 20 000 trials is 0.6 %.
  expect(Math.abs(alarms / trials - 0.05)).toBeLessThan(0.006)
  // 2t stands for the noncentral t, which lies up to 10 % lower at 7 degrees of freedom.
  expect(missed / trials).toBeGreaterThan(0.02)
  expect(missed / trials).toBeLessThan(0.06)
})
