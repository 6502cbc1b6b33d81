/** Incoming lots by the container: what is left in each, and what a count does not find. */

import { describe, expect, test } from 'vitest'
import { containerStock } from '../../src/evaluate/container-stock.ts'
import { allUses } from '../../src/evaluate/uses.ts'
import { planCharge } from '../../src/plan/plan.ts'
import { traceText } from '../../src/documents/trace-tree.ts'
import { openGraph } from '../../src/trace/graph.ts'
import { traceLot } from '../../src/trace/reach.ts'
import { demoFiles, evaluate, smallFiles, wholeProblemsOf, withChange } from '../records-on-disk.ts'

/** The small workshop's graphite, 500 g, in two drums; 100.00 g of it were charged on 2 February. */
function inDrums(
  drums: string,
  { from = ', container: D1', counted = '' }: { from?: string; counted?: string } = {}
) {
  const stocked = withChange(
    smallFiles,
    'materials/GR-1.yaml',
    'quantity: 500 g\n',
    `quantity: 500 g\ncontainers: [${drums}]\n${counted}`
  )
  return withChange(stocked, 'batches/EB-1.yaml', 'as: graphite,', `as: graphite${from},`)
}

const two = '{ number: D1, net: 300.0 g }, { number: D2, net: 200.0 g }'
const countedD1 = (count: string) =>
  two.replace('300.0 g', `300.0 g, counted: [{ on: 2026-02-10, mass: ${count} }]`)

function stockOf(files: typeof smallFiles, day = '2026-12-31') {
  const { content } = evaluate(files)
  const uses = allUses(content).filter(({ lot }) => lot === 'GR-1')
  const { containers, untold_g } = containerStock(content.materials.get('GR-1')!.record, uses, day)
  return [
    ...containers.map(one => [one.number, one.left_g.toFixed(), one.difference_g.toFixed()]),
    untold_g.toFixed()
  ]
}

describe('what is left', () => {
  test('in each container is its net mass less what was taken from it', () => {
    expect(stockOf(inDrums(two))).toEqual([['D1', '200', '0'], ['D2', '200', '0'], '0'])
    expect(stockOf(inDrums(two), '2026-02-01')).toEqual([
      ['D1', '300', '0'],
      ['D2', '200', '0'],
      '0'
    ])
  })

  test('by a count is what was found then, and the difference is told', () => {
    expect(stockOf(inDrums(countedD1('199.4 g')))).toEqual([
      ['D1', '199.4', '0.6'],
      ['D2', '200', '0'],
      '0'
    ])
  })

  test('is not known by container where a charge does not say which', () => {
    expect(stockOf(inDrums(two, { from: '' }))).toEqual([
      ['D1', '300', '0'],
      ['D2', '200', '0'],
      '100'
    ])
  })

  test('of a single container needs no word of it', () => {
    const one = inDrums('{ number: D1, net: 500 g }', { from: '' })
    expect(stockOf(one)).toEqual([['D1', '400', '0'], '0'])
  })
})

const told = (files: typeof smallFiles) =>
  wholeProblemsOf(files).filter(one => /container|GR-1/u.test(one))

describe('is refused', () => {
  test.for([
    [
      'two that do not add up',
      inDrums('{ number: D1, net: 300 g }, { number: D2, net: 100 g }'),
      'IMPOSSIBLE_BALANCE quantity: is 500 g, but the containers hold 400 g together'
    ],
    [
      'one number for two',
      inDrums(two.replace('D2', 'D1')),
      'DUPLICATE_ID containers.1.number: container D1 stands above already'
    ],
    [
      'a container that is not there',
      inDrums(two, { from: ', container: D3' }),
      "UNKNOWN_REFERENCE charge.0.container: GR-1 has no container 'D3'"
    ],
    [
      'a container of a lot that has none',
      withChange(smallFiles, 'batches/EB-1.yaml', 'as: acid,', 'as: acid, container: K1,'),
      "UNKNOWN_REFERENCE charge.1.container: SA-1 has no container 'K1'"
    ],
    [
      'more than it held',
      inDrums('{ number: D1, net: 99.9 g }, { number: D2, net: 400.1 g }'),
      'OVERDRAWN charge.0.container: EB-1 takes 100 g from container D1 of GR-1, which has 99.9 g left'
    ]
  ] as const)('%s', ([, files, problem]) => {
    expect(told(files)).toEqual([problem])
  })
})

describe('a count', () => {
  // 300.0 − 100.00 = 200.00; last digits: 0.1 + 0.1 + 0.01 g.
  test.for([
    ['200.2 g', []],
    ['199.8 g', []],
    ['199.7 g', ['0.3 g less']],
    ['200.3 g', ['0.3 g more']]
  ] as const)('of %s in the drum that should hold 200.0 g: %j', ([count, expected]) => {
    const problems = told(inDrums(countedD1(count)))
    expect(problems.map(one => /0\.3 g (?:less|more)/u.exec(one)?.[0])).toEqual(expected)
    for (const one of problems)
      expect(one).toMatch(
        /^STOCK_DIFFERENCE containers\.0\.counted\.0\.mass: of container D1 of GR-1, /u
      )
  })

  test('is of what the count before found', () => {
    const twice = two.replace(
      '300.0 g',
      '300.0 g, counted: [{ on: 2026-02-12, mass: 190.0 g }, { on: 2026-02-10, mass: 190.0 g }]'
    )
    expect(told(inDrums(twice))).toHaveLength(1)
  })

  test('of a container says nothing where a charge does not say which', () => {
    expect(told(inDrums(countedD1('150.0 g'), { from: '' }))).toEqual([])
  })

  test('of the whole lot is held against it all', () => {
    const counted = 'counted: [{ on: 2026-02-10, mass: 390 g }]\n'
    expect(told(inDrums(two, { from: '', counted }))).toEqual([
      'STOCK_DIFFERENCE counted.0.mass: of GR-1, 390 g was found on 2026-02-10, 10 g less than the records leave'
    ])
  })
})

describe('of the demo', () => {
  const demo = evaluate(demoFiles)

  test('the acid is reconciled can by can', () => {
    const graph = openGraph(demo.content, '2026-11-10')
    const text = traceText(graph, traceLot(graph, 'SA-26-02')!)
    expect(text).toContain('465.7 g left of 2300 g; 0.2 g not accounted for; stock counted on')
    expect(text).toContain('1693.9 g left of 2300 g; adds up; stock by the records, not counted')
  })

  test('a plan takes from the can that was opened first, then from the next', () => {
    const used = demoFiles.map(file =>
      file.path.endsWith('materials/SA-26-01.yaml')
        ? { ...file, text: file.text.replace('expires: 2028-01-31', 'expires: 2026-06-01') }
        : file
    )
    const result = planCharge(evaluate(used), {
      grade: 'flake-250',
      wish: { graphite_g: 160 },
      vessel: 'V-2',
      day: '2026-11-10'
    })
    if (!result.ok) throw new Error(result.reasons.join('\n'))
    const acid = result.plan.parts.find(({ role }) => role === 'acid')!
    expect(acid.takings.map(({ container, mass_g }) => [container?.number, mass_g])).toEqual([
      ['Quibblecan-1', 465.7],
      ['Quibblecan-2', expect.closeTo(160 * 3.02 - 465.7, 9)]
    ])
  })
})
