import { expect, test } from 'vitest'
import { Decimal } from 'decimal.js'
import { type Unit, type UnitName, unitNamed, units, unitsOf } from '../../src/metrology/units.ts'

const names = Object.keys(units) as UnitName[]
const table: Readonly<Record<UnitName, Unit>> = units

test('no two units share a code or a suffix', () => {
  const all = names.map(name => table[name])
  expect(new Set(all.map(unit => unit.ucum)).size).toBe(all.length)
  expect(new Set(all.map(unit => unit.suffix)).size).toBe(all.length)
})

test.for(names)(
  '%s: a suffix that can end a name, a code without spaces, a factor above 0',
  name => {
    const { suffix, ucum, factor } = table[name]
    expect(suffix).toMatch(name === '1' ? /^$/ : /^[A-Za-z][A-Za-z0-9]*(_per_[A-Za-z0-9]+)?$/)
    expect(ucum).toMatch(/^[!-~]+$/)
    expect(new Decimal(factor).gt(0)).toBe(true)
    expect(unitNamed(name)).toBe(name)
  }
)

test('each dimension has one base unit at least, of factor 1 and no offset', () => {
  for (const dimension of new Set(names.map(name => table[name].dimension))) {
    const bases = unitsOf(dimension).filter(name => {
      const { factor, offset } = table[name]
      return factor === '1' && offset === undefined
    })
    expect(bases.length, dimension).toBeGreaterThanOrEqual(1)
  }
})

test.for([
  ['kg', 'g', '1000'],
  ['mg', 'g', '0.001'],
  ['L', 'mL', '1000'],
  ['µm', 'mm', '0.001'],
  ['m²', 'cm²', '10000'],
  ['h', 'min', '60'],
  ['d', 'h', '24'],
  ['g/L', 'g/cm³', '0.001'],
  ['kg/m³', 'g/L', '1'],
  ['g/mL', 'g/cm³', '1'],
  ['cm³/g', 'mL/g', '1'],
  ['%', 'mg/kg', '10000'],
  ['g/kg', '%', '0.1'],
  ['bar', 'kPa', '100'],
  ['kN', 'N', '1000']
] as const)('SI Brochure, 9th edition: %s in %s is %s', ([from, to, factor]) => {
  expect(new Decimal(table[from].factor).div(table[to].factor).toFixed()).toBe(factor)
})

test.for([
  ['ml', 'mL'],
  ['uL', 'µL'],
  ['um', 'µm'],
  ['m2', 'm²'],
  ['degC', '°C'],
  ['g/cm3', 'g/cm³'],
  ['kg/m3', 'kg/m³'],
  ['cm3/g', 'cm³/g'],
  ['g/m2', 'g/m²']
] as const)('%s is written for %s', ([text, unit]) => expect(unitNamed(text)).toBe(unit))

test.for(['', 'lb', 'G', 'toString', '__proto__', 'constructor'])('%s is no unit', text => {
  expect(unitNamed(text)).toBeUndefined()
})
