/** A roll of the demo: its length, width and splices, and what its mass says of them. */

import { expect, test } from 'vitest'
import { catalogues } from '../../src/documents/languages/index.ts'
import { english } from '../../src/documents/languages/tongue.ts'
import { demoFiles, evaluate, problemsOf, withChange } from '../records-on-disk.ts'

const file = 'foils/FL-26-015.yaml'
const rollOf = (files = demoFiles) => evaluate(files).lots.get('FL-26-015')!.product

test('is as long as its pieces, read on one rule', () => {
  const { estimate, trace } = rollOf().rollLength_m!
  expect(estimate.value).toBeCloseTo(1.49, 12)
  expect(trace().instrumentOf).toEqual({ piece1_m: 'RULE-1', piece2_m: 'RULE-1' })
  const common = [...estimate.terms.values()].find(({ cause }) => cause.pool === 'RULE-1 tolerance')
  // Half a millimetre either way, alike in both pieces.
  expect(common!.u).toBeCloseTo((2 * 0.0005) / Math.sqrt(3), 12)
})

test('is as wide as its places are on the mean, by the caliper', () => {
  const { estimate, n, trace } = rollOf().rollWidth_mm!
  expect(estimate.value).toBeCloseTo((30.05 + 30.02 + 30.08 + 29.97) / 4, 12)
  expect(n).toBe(4)
  expect(trace().instrumentOf).toEqual({ width_mm: 'CAL-1' })
  // What the trace names is what was read: no share of the rule is in it.
  const pools = [...estimate.terms.values()].map(({ cause }) => cause.pool)
  expect(pools).toContain('CAL-1 tolerance')
  expect(pools.filter(pool => pool.startsWith('RULE-1'))).toEqual([])
})

test('tells where it is spliced, and its longest piece', () => {
  const said = (pieces: string) =>
    rollOf(withChange(demoFiles, file, '[0.912 m, 0.578 m]', pieces)).rollLength_m!.remark!
  expect(english.results.remark(said('[0.912 m, 0.578 m]'))).toBe(
    '1 splice, at 0.912 m; longest piece 0.912 m.'
  )
  expect(english.results.remark(said('[0.30 m, 0.612 m, 0.578 m]'))).toBe(
    '2 splices, at 0.300 m, 0.912 m; longest piece 0.612 m.'
  )
  expect(english.results.remark(said('[149.0 cm]'))).toBe('In one piece, without a splice.')
  expect(catalogues.de.results.remark(said('[0.30 m, 0.612 m, 0.578 m]'))).toBe(
    '2 Stöße, bei 0,300 m; 0,912 m; längstes Stück 0,612 m.'
  )
  expect(catalogues.de.results.remark(said('[0.912 m, 0.578 m]'))).toBe(
    '1 Stoß, bei 0,912 m; längstes Stück 0,912 m.'
  )
})

test('of another mass than its length, width and areal mass make is told of', () => {
  const told = (mass: string) =>
    problemsOf(withChange(demoFiles, file, '    mass: 31.36 g', `    mass: ${mass}`)).filter(line =>
      line.startsWith('CONTRADICTION')
    )
  expect(told('31.36 g')).toEqual([])
  expect(told('32.6 g')).toEqual([])
  expect(told('43.9 g')).toEqual([
    'CONTRADICTION tests.roll: a roll of 1.49 m does not go with its mass of 43.9 g, which its areal mass and width make 2.09 m'
  ])
})
