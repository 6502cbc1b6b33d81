/** A method's repeatability: in the unit of its quantity, or in % of the result. */

import { expect, test } from 'vitest'
import { budgetOf } from '../../src/metrology/estimate.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { evaluate, problemsOf, smallFiles, withChange } from '../records-on-disk.ts'

const acid = (to: string) =>
  withChange(smallFiles, 'methods/TM-2.yaml', 'repeatability: { s: 0.002 %', to)
const volume = (to: string) =>
  withChange(smallFiles, 'methods/TM-1.yaml', 'repeatability: { s: 4 mL/g', to)

/** Value and type A line of a figure of EB-1: both tests rest on pooled scatter alone. */
function scatterOf(files: Parameters<typeof evaluate>[0], quantity: QuantityName) {
  const { estimate, n } = evaluate(files).lots.get('EB-1')!.product[quantity]!
  const [line, ...others] = budgetOf(estimate).filter(({ pool }) => pool.includes('repeatability'))
  expect(others).toEqual([])
  return { value: estimate.value, n, ...line! }
}

test('in % of a quantity that is in %, a bare % is its own: 1.5 % of acid, not of the result', () => {
  const { u, n, pool } = scatterOf(acid('repeatability: { s: 1.5 %'), 'freeAcid_percent')
  expect(u).toBeCloseTo(1.5 / Math.sqrt(n), 12)
  expect(pool).toBe('TM-2 repeatability (6 lots)')
})

test('a relative one is of the result, whatever the unit of the quantity', () => {
  for (const [files, quantity, method] of [
    [acid('relative-repeatability: { s: 1.5 %'), 'freeAcid_percent', 'TM-2'],
    [volume('relative-repeatability: { s: 1.5 %'), 'expansionVolume_mL_per_g', 'TM-1']
  ] as const) {
    expect(problemsOf(files)).toEqual([])
    const { value, u, n, df, pool } = scatterOf(files, quantity)
    expect(u).toBeCloseTo((0.015 * value) / Math.sqrt(n), 12)
    expect(df).toBe(quantity === 'freeAcid_percent' ? 12 : 20)
    expect(pool).toContain(`${method} repeatability, 1.5 % of the result (`)
  }
})

test('a bare % of a quantity in another unit can only be of the result', () => {
  const bare = scatterOf(volume('repeatability: { s: 1.5 %'), 'expansionVolume_mL_per_g')
  const said = scatterOf(volume('relative-repeatability: { s: 1.5 %'), 'expansionVolume_mL_per_g')
  expect(bare.u).toBeCloseTo(said.u, 12)
})
