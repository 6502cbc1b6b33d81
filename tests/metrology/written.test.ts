import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type UnitName, units } from '../../src/metrology/units.ts'
import { acceptedUnits, isUnreadable, readQuantity } from '../../src/metrology/written.ts'

/** Text, unit of the field, value as decimal with its digits, step of the last digit. */
const readable = [
  ['25.00 g', 'g', '25.00', 0.01],
  ['25.00g', 'g', '25.00', 0.01],
  ['  25.00   g ', 'g', '25.00', 0.01],
  ['25000 mg', 'g', '25.000', 0.001],
  ['25000.00 mg', 'g', '25.00000', 0.00001],
  ['0.02500 kg', 'g', '25.00', 0.01],
  ['0.025 kg', 'g', '25', 1],
  ['950 °C', '°C', '950', 1],
  ['950 degC', '°C', '950', 1],
  ['298.15 K', '°C', '25.00', 0.01],
  ['25 °C', 'K', '298.15', 1],
  ['25.0 °C', 'K', '298.15', 0.1],
  ['0 K', '°C', '-273.15', 1],
  ['2.4 L', 'mL', '2400', 100],
  ['131 ml', 'mL', '131', 1],
  ['12 µL', 'mL', '0.012', 0.001],
  ['998 µm', 'mm', '0.998', 0.001],
  ['2 h', 'min', '120', 60],
  ['1.2e3 g', 'g', '1200', 100],
  ['1E-3 g', 'g', '0.001', 0.001],
  ['3.42', '1', '3.42', 0.01],
  ['7', '1', '7', 1],
  ['-0.05 mL', 'mL', '-0.05', 0.01],
  ['−0.05 mL', 'mL', '-0.05', 0.01],
  ['+0.05 mL', 'mL', '0.05', 0.01],
  ['0123 g', 'g', '123', 1],
  ['0.00 mL', 'mL', '0.00', 0.01],
  ['1.2 g/L', 'g/cm³', '0.0012', 0.0001],
  ['55 mg/kg', '%', '0.0055', 0.0001],
  ['10 bar', 'MPa', '1.0', 0.1]
] as const

test.for(readable)('%s as %s is %s', ([text, unit, decimal, resolution]) => {
  const reading = readQuantity(text, unit)
  expect(reading).toEqual({
    value: Number(decimal),
    resolution,
    decimal,
    written: text.trim()
  })
})

test('the micro sign, the Greek mu and the letter u are one unit', () => {
  // Written by code point: U+00B5, U+03BC.
  const [sign, greek] = ['\u00b5', '\u03bc']
  for (const prefix of [sign, greek, 'u']) {
    expect(readQuantity(`12 ${prefix}m`, 'mm')).toMatchObject({ value: 0.012 })
    expect(readQuantity(`12 ${prefix}L`, 'mL')).toMatchObject({ value: 0.012 })
  }
})

test('the Kelvin sign is the letter K', () => {
  expect(readQuantity('300 \u212a', 'K')).toMatchObject({ value: 300 })
})

test('a no-break space is a space, also in the text that is kept', () => {
  expect(readQuantity('25.00\u00a0g', 'g')).toMatchObject({ value: 25, written: '25.00 g' })
})

const unreadable = [
  ['25,00 g', 'g', 'comma decimal', '25,00 g'],
  ['25,00g', 'g', 'comma decimal', '25,00g'],
  ['25,00', 'g', 'comma decimal', '25,00'],
  ['-1,5 mL', 'mL', 'comma decimal', '-1,5 mL'],
  ['25.00', 'g', 'no unit', ''],
  ['25.00 lb', 'g', 'unknown unit', 'lb'],
  ['25.00 G', 'g', 'unknown unit', 'G'],
  ['1 000 g', 'g', 'unknown unit', '000 g'],
  ['25.00 mL', 'g', 'wrong dimension', 'mL'],
  ['3.42 %', '1', 'wrong dimension', '%'],
  ['3.42 1', '1', 'unknown unit', '1'],
  ['7 g', '1', 'wrong dimension', 'g'],
  ['heavy', 'g', 'not a quantity', 'heavy'],
  ['', 'g', 'not a quantity', ''],
  ['g 25', 'g', 'not a quantity', 'g 25'],
  ['.5 g', 'g', 'not a quantity', '.5 g'],
  ['NaN g', 'g', 'not a quantity', 'NaN g'],
  ['Infinity g', 'g', 'not a quantity', 'Infinity g'],
  ['> 5 g', 'g', 'not a quantity', '> 5 g'],
  ['9e99 g', 'g', 'out of range', '9e99'],
  ['1e10 kg', 'g', 'out of range', '1e10'],
  ['9e999 g', 'g', 'out of range', '9e999'],
  ['1e-13 g', 'g', 'too fine', '1e-13'],
  ['1.0000000000000001 g', 'g', 'too fine', '1.0000000000000001']
] as const

test.for(unreadable)('%s for %s: %s', ([text, unit, fault, part]) => {
  const result = readQuantity(text, unit)
  expect(isUnreadable(result)).toBe(true)
  expect(result).toEqual({ fault, part })
})

describe('accepted units, the field’s own first', () => {
  test.for([
    ['g', 'g, kg or mg'],
    ['mg', 'mg, kg or g'],
    ['°C', '°C or K'],
    ['mL/g', 'mL/g or cm³/g'],
    ['g/m²', 'g/m²']
  ] as const)('%s: %s', ([unit, sentence]) => expect(acceptedUnits(unit)).toBe(sentence))
})

const names = Object.keys(units) as UnitName[]
const number = fc
  .tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.integer({ min: 0, max: 4 }))
  .map(([digits, places]) =>
    new Decimal(digits).times(new Decimal(10).pow(-places)).toFixed(places)
  )

test('a reading in its own unit keeps its digits; there and back it is the same number', () => {
  fc.assert(
    fc.property(number, fc.constantFrom(...names), fc.constantFrom(...names), (text, a, b) => {
      const suffix = (name: UnitName) => (name === '1' ? '' : ` ${name}`)
      const own = readQuantity(`${text}${suffix(a)}`, a)
      expect(own).toMatchObject({
        decimal: new Decimal(text).isZero() ? text.replace('-', '') : text
      })
      if (units[a].dimension !== units[b].dimension) return
      const there = readQuantity(`${text}${suffix(a)}`, b)
      if (isUnreadable(there)) throw new Error('a convertible unit was refused')
      const back = readQuantity(`${there.decimal}${suffix(b)}`, a)
      // Seconds in days and the like run to more digits than a record may hold.
      if (isUnreadable(back)) {
        expect(back.fault).toBe('too fine')
        return
      }
      // Days in hours and the like have no finite decimal: equal to 15 digits.
      expect(back.value).toBeCloseTo(Number(text), 9)
      expect(there.resolution).toBeGreaterThan(0)
    })
  )
})

test('a plain reading is read as decimal arithmetic would read it', () => {
  const plain = fc.tuple(
    fc.integer({ min: -999_999, max: 999_999 }),
    fc.stringMatching(/^\d{1,6}$/u)
  )
  fc.assert(
    fc.property(plain, ([whole, fraction]) => {
      const digits = `${whole}.${fraction}`
      const own = readQuantity(`${digits} g`, 'g')
      // The exponent takes the other way through the reader.
      const other = readQuantity(`${digits}e0 g`, 'g')
      expect({ ...own, written: '' }).toEqual({ ...other, written: '' })
    })
  )
})
