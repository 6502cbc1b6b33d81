import { expect, test } from 'vitest'
import { amount, date, list, maybe, quantity, text, whole } from '../../src/records/fields.ts'
import { once } from '../../src/records/once.ts'

test('makes a result once for the same arguments, and another for others', () => {
  let made = 0
  const named = once((name: string, number: number) => `${name} ${number} ${(made += 1)}`)
  expect(named('a', 1)).toBe('a 1 1')
  expect(named('a', 2)).toBe('a 2 2')
  expect(named('a', 1)).toBe('a 1 1')
})

test('fields alike are one schema, and fields that differ are two', () => {
  expect(text()).toBe(text())
  expect(maybe(list(date()))).toBe(maybe(list(date())))
  expect(amount('g')).toBe(amount('g', 'any'))
  expect(amount('g')).not.toBe(amount('g', 'above 0'))
  expect(amount('g')).not.toBe(amount('kg'))
  expect(whole(0)).not.toBe(whole(1))
})

test('an amount whose surroundings fix its unit is none that names it', () => {
  expect(quantity('g')).toHaveProperty('fieldUnit', 'g')
  expect(maybe(list(quantity('g')))).toHaveProperty('fieldUnit', 'g')
  expect(amount('g')).not.toHaveProperty('fieldUnit')
  expect(maybe(amount('g'))).not.toHaveProperty('fieldUnit')
})
