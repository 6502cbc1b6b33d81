import { expect, test } from 'vitest'
import { fireCurve_C } from '../../src/physics/fire-curve.ts'
import { asPrinted } from '../metrology/as-printed.ts'

/** ISO 834-1: temperatures of the standard curve, as tables of it give them; from memory, not checked against the print. */
test.for([
  [5, '576'],
  [10, '678'],
  [15, '739'],
  [30, '842'],
  [60, '945'],
  [90, '1006'],
  [120, '1049'],
  [180, '1110'],
  [240, '1153'],
  [360, '1214']
] as const)('%s min', ([minutes, printed]) => {
  expect(asPrinted(fireCurve_C(minutes), printed)).toBe(printed)
})

test('begins at 20 °C and always rises', () => {
  expect(fireCurve_C(0)).toBe(20)
  for (let minutes = 0; minutes < 240; minutes += 1)
    expect(fireCurve_C(minutes + 1)).toBeGreaterThan(fireCurve_C(minutes))
})

test('knows nothing before the start', () => {
  expect(() => fireCurve_C(-1)).toThrow('minutes must be at least 0, got -1')
  expect(() => fireCurve_C(Number.NaN)).toThrow('minutes must be at least 0')
})
