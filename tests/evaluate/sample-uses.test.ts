/** Flake that tests and paint used up, taken from its lot as all else is. */

import { describe, expect, test } from 'vitest'
import { testUses } from '../../src/evaluate/sample-uses.ts'
import { allUses } from '../../src/evaluate/uses.ts'
import { balanceOf } from '../../src/trace/balance.ts'
import { openGraph } from '../../src/trace/graph.ts'
import {
  demoFiles,
  evaluate,
  problemsOf,
  smallFiles,
  withChange,
  withFile
} from '../records-on-disk.ts'

const panel = (number: string, loading: string, lot = 'EB-1') =>
  [
    `number: ${number}`,
    'made: 2026-02-20',
    'kind: own',
    'code: P1',
    `lot: ${lot}`,
    `loading: ${loading}`,
    'plate: { what: mild steel, length: 100.0 mm, width: 100.0 mm, thickness: 3.0 mm }',
    ''
  ].join('\n')

const withPanels = (...panels: readonly string[]) =>
  panels.reduce(
    (files, text) => withFile(files, `panels/${/number: (\S+)/u.exec(text)![1]}.yaml`, text),
    smallFiles
  )

const paintOf = (...panels: readonly string[]) =>
  allUses(evaluate(withPanels(...panels)).content)
    .filter(({ by }) => by.startsWith('the paint'))
    .map(({ purpose, lot, mass_g, by, on }) => [purpose, lot, mass_g, by, on])

describe('flake in the paint of a panel', () => {
  test('is taken from its lot, as weighed', () => {
    expect(paintOf(panel('PN-1', '{ flake: 1.25 g, paint: 10.0 g }'))).toEqual([
      ['tested', 'EB-1', 1.25, 'the paint of panel PN-1', '2026-02-20']
    ])
  })

  test('or as said beside a loading in per cent', () => {
    expect(paintOf(panel('PN-1', '{ wet: 9.1 %, used: 2.50 g }'))).toEqual([
      ['tested', 'EB-1', 2.5, 'the paint of panel PN-1', '2026-02-20']
    ])
    expect(paintOf(panel('PN-1', '{ wet: 9.1 % }'))).toEqual([])
  })

  test('once for all panels of one pot', () => {
    const pot = '{ flake: 1.25 g, paint: 10.0 g'
    const uses = paintOf(panel('PN-1', `${pot} }`), panel('PN-2', `${pot}, pot-of: PN-1 }`))
    expect(uses).toHaveLength(1)
  })

  test.for([
    ['{ flake: 1.25 g, paint: 10.0 g, used: 1.25 g }', 'INVALID_VALUE loading.used'],
    ['{ wet: 9.1 %, used: 1.25 g, pot-of: PN-1 }', 'INVALID_VALUE loading.used'],
    ['{ wet: 9.1 %, pot-of: PN-2 }', "UNKNOWN_REFERENCE loading.pot-of: there is no pot 'PN-2'"],
    ['{ wet: 9.1 %, pot-of: PN-9 }', "UNKNOWN_REFERENCE loading.pot-of: there is no pot 'PN-9'"]
  ] as const)('is said in one way: %s', ([loading, problem]) => {
    const files = withPanels(
      panel('PN-1', '{ flake: 1.25 g, paint: 10.0 g }'),
      panel('PN-2', loading)
    )
    expect(problemsOf(files).join('\n')).toContain(problem)
  })

  test('overdraws the lot that has no more', () => {
    const files = withPanels(panel('PN-1', '{ flake: 100.5 g, paint: 900 g }'))
    expect(problemsOf(files).join('\n')).toMatch(
      /OVERDRAWN .*the paint of panel PN-1 takes 100\.5 g of EB-1/u
    )
  })

  test('is used up in tests by the balance of its lot, and every gram is found', () => {
    const tested = (files: typeof demoFiles) => {
      const { content } = evaluate(files)
      const graph = openGraph(content, '2026-11-20')
      return balanceOf(graph, graph.lots.get('EB-26-015')!)
    }
    const more = withChange(
      demoFiles,
      'panels/PN-26-03.yaml',
      '{ flake: 1.00 g, paint: 10.01 g }',
      '{ flake: 3.00 g, paint: 30.03 g }'
    )
    const [was, is] = [tested(demoFiles), tested(more)]
    expect(is.tested_g.minus(was.tested_g).toString()).toBe('2')
    expect(was.inStock_g.minus(is.inStock_g).toString()).toBe('2')
    expect(is.difference_g.toString()).toBe('0')
  })
})

describe('samples of tests', () => {
  const uses = testUses(evaluate(demoFiles).content.batches.get('EB-26-015')!)
  const massOf = (key: string) => uses.find(({ by }) => by === `the ${key} test`)?.mass_g

  test('are those that the test uses up', () => {
    // By hand, from the readings of the record.
    expect(massOf('expansion-volume')).toBeCloseTo(2.006, 9)
    expect(massOf('free-acid')).toBeCloseTo(20.04, 9)
    expect(massOf('moisture')).toBeCloseTo(5.1317, 9)
    expect(massOf('expansion-curve')).toBeCloseTo(3.005, 9)
    expect(massOf('sulfur')).toBeCloseTo(0.9999, 9)
    expect(['sieve', 'bulk-density', 'tapped-density'].map(massOf)).toEqual([
      undefined,
      undefined,
      undefined
    ])
  })

  test('are counted once where one extract is read for several residues', () => {
    const leached = uses.filter(({ by }) => by.includes('residual'))
    expect(leached.map(({ mass_g }) => mass_g)).toEqual([expect.closeTo(40.04, 9)])
    const other = withChange(
      demoFiles,
      'batches/EB-26-015.yaml',
      '{ mass: 20.03 g, concentration: 0.41 mg/L }',
      '{ mass: 20.04 g, concentration: 0.41 mg/L }'
    )
    const again = testUses(evaluate(other).content.batches.get('EB-26-015')!)
    expect(again.filter(({ by }) => by.includes('residual'))).toHaveLength(2)
  })
})
