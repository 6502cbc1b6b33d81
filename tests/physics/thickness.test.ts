import fc from 'fast-check'
import { expect, test } from 'vitest'
import { spread, uniformity_percent } from '../../src/physics/thickness.ts'
import { asPrinted } from '../metrology/as-printed.ts'

const readings_mm = [0.998, 1.002, 1.005, 0.995, 1.0]

test('by hand from the definitions: five readings around 1.000 mm', () => {
  const { min, max, range, standardDeviation } = spread(readings_mm)
  expect([min, max]).toEqual([0.995, 1.005])
  expect(asPrinted(range, '0.010')).toBe('0.010')
  expect(asPrinted(standardDeviation!, '0.0038')).toBe('0.0038')
  expect(asPrinted(uniformity_percent(readings_mm), '1.000')).toBe('1.000')
})

test('by hand from the definition: 0.48, 0.52 and 0.50 mm range over 8 % of their mean', () => {
  expect(asPrinted(uniformity_percent([0.48, 0.52, 0.5]), '8.00')).toBe('8.00')
})

test('one reading has no standard deviation', () => {
  expect(spread([0.5])).toEqual({ min: 0.5, max: 0.5, range: 0 })
})

test('no reading, or one that is no thickness', () => {
  expect(() => spread([])).toThrow('a spread requires at least 1 reading')
  expect(() => uniformity_percent([])).toThrow('a spread requires at least 1 reading')
  expect(() => uniformity_percent([0.5, 0])).toThrow('thickness_mm must be greater than 0, got 0')
})

const readings = fc.array(fc.double({ min: 0.05, max: 6, noNaN: true }), {
  minLength: 2,
  maxLength: 25
})

test('the order of the readings does not matter, their unit not to the uniformity', () => {
  fc.assert(
    fc.property(readings, values => {
      const turned = [...values].reverse()
      expect(spread(turned).range).toBe(spread(values).range)
      expect(uniformity_percent(turned)).toBeCloseTo(uniformity_percent(values), 9)
      const inMicrometres = values.map(value => 1000 * value)
      expect(uniformity_percent(inMicrometres)).toBeCloseTo(uniformity_percent(values), 9)
    })
  )
})

test('the standard deviation is at most the range over √2 and 0 only with it', () => {
  fc.assert(
    fc.property(readings, values => {
      const { range, standardDeviation } = spread(values)
      expect(standardDeviation!).toBeLessThanOrEqual((range / Math.SQRT2) * (1 + 1e-12) + 1e-12)
      expect(standardDeviation! >= range / Math.sqrt(2 * (values.length - 1)) - 1e-12).toBe(true)
    })
  )
})
