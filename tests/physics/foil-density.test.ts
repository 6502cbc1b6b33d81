import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { budgetOf, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { arealMass, foilDensity } from '../../src/physics/foil-density.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const sheet = { mass_g: 2.514, length_mm: 50, width_mm: 50, thickness_mm: 0.998 }

test('foilDensity: definition of density, by hand: 2.514 g of 50 × 50 × 0.998 mm', () => {
  const { value } = foilDensity(exactly(sheet))
  expect(asPrinted(value, '1.008')).toBe('1.008')
  expect(asPrinted(value, '1.00762')).toBe('1.00762')
})

test('arealMass: definition of mass per area, by hand: 2.514 g of 50 × 50 mm', () => {
  expect(asPrinted(arealMass(exactly(sheet)).value, '1005.6')).toBe('1005.6')
})

test('foilDensity: 12.60 g of 210 × 297 × 0.20 mm, by hand: 1.0101 g/cm³', () => {
  const a4 = { mass_g: 12.6, length_mm: 297, width_mm: 210, thickness_mm: 0.2 }
  expect(asPrinted(foilDensity(exactly(a4)).value, '1.0101')).toBe('1.0101')
  expect(asPrinted(arealMass(exactly(a4)).value, '202.02')).toBe('202.02')
})

describe('GUM 5.1.6: relative uncertainties of a product of powers add in squares', () => {
  const inputs = uncertain({
    mass_g: [2.514, 0.001 * 2.514],
    length_mm: [50, 0.002 * 50],
    width_mm: [50, 0.003 * 50],
    thickness_mm: [0.998, 0.006 * 0.998]
  })

  test('foilDensity', () => {
    const density = foilDensity(inputs)
    const relative = Math.hypot(0.001, 0.002, 0.003, 0.006)
    expect(uncertaintyOf(density) / density.value).toBeCloseTo(relative, 6)
    expect(budgetOf(density)[0]!.pool).toBe('thickness_mm')
  })

  test('arealMass does not take the thickness', () => {
    const areal = arealMass(inputs)
    expect(uncertaintyOf(areal) / areal.value).toBeCloseTo(Math.hypot(0.001, 0.002, 0.003), 6)
    expect(areal.inputs.map(line => line.input)).toEqual(['mass_g', 'length_mm', 'width_mm'])
  })
})

describe('inputs outside the domain', () => {
  test.for(['mass_g', 'length_mm', 'width_mm', 'thickness_mm'] as const)('%s', name => {
    const message = `${name} must be greater than 0, got 0`
    expect(() => foilDensity(exactly({ ...sheet, [name]: 0 }))).toThrow(message)
    if (name !== 'thickness_mm')
      expect(() => arealMass(exactly({ ...sheet, [name]: 0 }))).toThrow(message)
  })
})

const size = fc.double({ min: 0.1, max: 1e3, noNaN: true })

test('areal mass is density times thickness: g/m² = 1000 · g/cm³ · mm', () => {
  fc.assert(
    fc.property(size, size, size, size, (mass_g, length_mm, width_mm, thickness_mm) => {
      const inputs = exactly({ mass_g, length_mm, width_mm, thickness_mm })
      const product = 1000 * foilDensity(inputs).value * thickness_mm
      expect(arealMass(inputs).value / product).toBeCloseTo(1, 12)
    })
  )
})

test('a sheet turned by a quarter is as dense; twice as large in each way, an eighth', () => {
  fc.assert(
    fc.property(size, size, size, size, (mass_g, length_mm, width_mm, thickness_mm) => {
      const density = (l: number, w: number, t: number) =>
        foilDensity(exactly({ mass_g, length_mm: l, width_mm: w, thickness_mm: t })).value
      const once = density(length_mm, width_mm, thickness_mm)
      expect(density(width_mm, length_mm, thickness_mm) / once).toBeCloseTo(1, 12)
      expect((8 * density(2 * length_mm, 2 * width_mm, 2 * thickness_mm)) / once).toBeCloseTo(1, 12)
    })
  )
})

describe('trials of the distributions agree', () => {
  const inputs = uncertain({
    mass_g: [2.514, 0.001],
    length_mm: [50, 0.05],
    width_mm: [50, 0.05],
    thickness_mm: [0.998, 0.0015]
  })
  test('foilDensity', () => expectLinear(foilDensity, inputs))

  test('foilDensity is not linear enough where the gauge knows the thickness to 1.2 % only', () => {
    const coarse = { ...inputs, ...uncertain({ thickness_mm: [0.998, 0.012] }) }
    expect(() => expectLinear(foilDensity, coarse)).toThrow('lower end')
  })

  test('arealMass', () =>
    expectLinear(
      arealMass,
      uncertain({ mass_g: [2.514, 0.03], length_mm: [50, 0.3], width_mm: [50, 0.3] })
    ))
})
