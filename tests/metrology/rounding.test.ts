import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  exactText,
  placesFor,
  placesOf,
  roundResult,
  roundToPlaces,
  toDecimal
} from '../../src/metrology/rounding.ts'

/** Value, place of the last digit kept, rounded with ties to even. */
const rows = [
  ['12.223', 1, '12.2'],
  ['12.251', 1, '12.3'],
  ['12.275', 1, '12.3'],
  ['1222.3', -1, '1220'],
  ['1225.1', -1, '1230'],
  ['1227.5', -1, '1230'],
  ['12.25', 1, '12.2'],
  ['12.35', 1, '12.4'],
  ['1225.0', -1, '1220'],
  ['1235.0', -1, '1240'],
  ['35940', -2, '35900'],
  ['35950', -2, '36000'],
  ['35960', -2, '36000'],
  ['56.4', 0, '56'],
  ['56.5', 0, '56'],
  ['56.6', 0, '57'],
  ['40.4', 0, '40'],
  ['40.5', 0, '40'],
  ['40.6', 0, '41'],
  ['0.54', 1, '0.5'],
  ['0.55', 1, '0.6'],
  ['0.56', 1, '0.6'],
  ['1.005', 2, '1.00'],
  ['2.675', 2, '2.68'],
  ['-0.5', 0, '0']
] as const

test.for(rows)(
  'ISO 80000-1 annex B rule A and ASTM E29 (examples from memory): %s to place %i is %s',
  ([value, places, rounded]) => {
    expect(roundToPlaces(value, places)).toBe(rounded)
    expect(roundToPlaces(toDecimal(Number(value)), places)).toBe(rounded)
    const negative = value.startsWith('-') ? value.slice(1) : `-${value}`
    const expected = Number(rounded) === 0 ? rounded : `-${rounded}`
    expect(roundToPlaces(negative, places)).toBe(expected)
  }
)

describe('JCGM 100:2008, 7.2.6', () => {
  test.for([
    ['28.05 kHz is rounded down to 28 kHz', 28.05, '28'],
    // The GUM rounds this one up to 11 by judgement; rounding to the nearest is 10.
    ['10.47 mΩ, to the nearest', 10.47, '10']
  ] as const)('%s', ([, u, rounded]) => {
    expect(roundResult(1000, u).U).toBe(rounded)
  })

  test('10.05762 Ω with 27 mΩ is 10.058 Ω', () => {
    expect(roundResult(10.05762, 0.027)).toEqual({ value: '10.058', U: '0.027', places: 3 })
  })

  test('7.2.4: 100.02147 g with 0.79 mg', () => {
    expect(roundResult(100.02147, 0.00079)).toEqual({
      value: '100.02147',
      U: '0.00079',
      places: 5
    })
  })
})

describe('a result and its U to the same place, U with two digits', () => {
  test.for([
    ['tens', 1234.6, 345, '1230', '340'],
    ['a tie goes to even', 262.5, 2.25, '262.5', '2.2'],
    ['U that grows a digit by rounding', 5.5555, 0.0996, '5.56', '0.10'],
    ['a trailing zero is kept', 12, 0.1, '12.00', '0.10'],
    ['below 0', -0.0049, 0.013, '-0.005', '0.013'],
    ['no negative zero', -0.0004, 0.013, '0.000', '0.013'],
    ['the digits of a float are not those of its decimal', 1.005, 0.15, '1.00', '0.15']
  ] as const)('%s', ([, value, U, roundedValue, roundedU]) => {
    const { value: v, U: u } = roundResult(value, U)
    expect([v, u]).toEqual([roundedValue, roundedU])
  })

  test('further places on request', () => {
    expect(roundResult(1.0449, 0.05, 1)).toEqual({ value: '1.0449', U: '0.0500', places: 4 })
  })
})

test.for([
  [0.0123, 2, 3],
  [0.0996, 2, 2],
  [9.96, 2, 0],
  [345, 2, -1],
  [1, 1, 0],
  [0, 2, 0]
] as const)('%f with %i digits ends at place %i', ([value, digits, places]) => {
  expect(placesFor(value, digits)).toBe(places)
})

test.for([
  ['0.50', 2],
  ['36000', 0],
  ['-1.2', 1]
] as const)('%s is written to place %i', ([written, places]) => {
  expect(placesOf(written)).toBe(places)
})

test('12 digits stand for a float: 0.1 + 0.2 is 0.3, 1.2 − 0.1 is 1.1', () => {
  expect(exactText(0.1 + 0.2)).toBe('0.3')
  expect(exactText(1.2 - 0.1)).toBe('1.1')
  expect(exactText(1e-9)).toBe('0.000000001')
  expect(exactText(123456789012345)).toBe('123456789012000')
})

const decimal = fc
  .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: 0, max: 5 }))
  .map(([digits, places]) => new Decimal(digits).times(new Decimal(10).pow(-places)))
const place = fc.integer({ min: -2, max: 4 })

test('rounding moves by half a step at most, a second time by nothing, and keeps order', () => {
  fc.assert(
    fc.property(decimal, decimal, place, (a, b, places) => {
      const rounded = new Decimal(roundToPlaces(a, places))
      const step = new Decimal(10).pow(-places)
      expect(rounded.minus(a).abs().times(2).lte(step)).toBe(true)
      expect(rounded.mod(step).isZero()).toBe(true)
      expect(roundToPlaces(rounded, places)).toBe(roundToPlaces(a, places))
      const order = new Decimal(roundToPlaces(a, places)).cmp(roundToPlaces(b, places))
      expect([0, a.cmp(b)]).toContain(order)
    })
  )
})

test('a rounded number is plain text: no exponent, no negative zero', () => {
  fc.assert(
    fc.property(decimal, place, (value, places) => {
      expect(roundToPlaces(value, places)).toMatch(/^-?\d+(\.\d+)?$/)
      expect(roundToPlaces(value, places)).not.toMatch(/^-0(\.0+)?$/)
    })
  )
})
