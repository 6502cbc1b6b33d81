/** Which method a foil's figures are put under when its record names one. */

import { expect, test } from 'vitest'
import { evaluate, problemsOf, smallFiles, withChange } from '../records-on-disk.ts'

const named = (method: string) =>
  withChange(
    smallFiles,
    'foils/FL-1.yaml',
    'measured: { tested: 2026-02-13,',
    `measured: { tested: 2026-02-13, method: ${method},`
  )

test('a method named for the sheets stands beside the quantity it measures, and no other', () => {
  const { foilDensity_g_per_cm3, thickness_mm, porosity_percent } = evaluate(
    named('TM-3')
  ).lots.get('FL-1')!.product
  expect(foilDensity_g_per_cm3!.method!.id).toBe('TM-3')
  expect(thickness_mm!.method).toBeUndefined()
  expect(porosity_percent!.method).toBeUndefined()
})

test('one that is not recorded is told', () => {
  expect(problemsOf(named('TM-33'))).toEqual([
    "UNKNOWN_REFERENCE measured.method: there is no method 'TM-33'"
  ])
})
