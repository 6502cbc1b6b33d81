/** What a test was set to: refused where it cannot be, told of where it hardly was. */

import { describe, expect, test } from 'vitest'
import { type Condition, conditions, unusualIn } from '../../src/records/conditions.ts'
import { readQuantity } from '../../src/metrology/written.ts'
import { unitNames } from '../../src/metrology/units.ts'
import { condition, fields, list } from '../../src/records/fields.ts'
import { demoFiles, problemsOf, withChange } from '../records-on-disk.ts'

const known = problemsOf(demoFiles)

/** What is told of a change, beyond what the demo is told anyway. */
const told = (path: string, from: string, to: string) =>
  problemsOf(withChange(demoFiles, path, from, to)).filter(line => !known.includes(line))

const CREEP = 'foils/FL-26-014.yaml'

describe('a condition is held to what it can be', () => {
  test.for([
    [CREEP, '    temperature: 100 °C', '    temperature: -300 °C', 'from −273.15 to 3650 °C'],
    [CREEP, '    temperature: 100 °C', '    temperature: 1e9 °C', 'from −273.15 to 3650 °C'],
    [CREEP, '    temperature: 100 °C', '    temperature: 3.7 K', undefined],
    [CREEP, '    temperature: 100 °C', '    temperature: -0.1 K', 'from −273.15 to 3650 °C'],
    ['batches/EB-26-015.yaml', '    at: 23 °C', '    at: 104 °C', 'from 0 to 100 °C'],
    ['expansions/XR-26-01.yaml', 'temperature: 948 °C', 'temperature: 4000 °C', 'from −273.15']
  ] as const)('%s: %s → %s', ([path, from, to, bounds]) => {
    const errors = told(path, from, to).filter(line => line.startsWith('INVALID_VALUE'))
    if (bounds === undefined) expect(errors).toEqual([])
    else {
      expect(errors).toHaveLength(1)
      expect(errors[0]).toContain(`must be ${bounds}`)
    }
  })

  test('as is any temperature, whatever it is of', () => {
    expect(told('grades/flake-250-r3.yaml', 'min: 180 °C', 'min: -280 °C')).toEqual([
      "INVALID_VALUE limits.onset.min: must be at least −273.15 °C, absolute zero, got '-280 °C'"
    ])
  })
})

describe('a condition beyond what is usual is told of, and stands', () => {
  test.for([
    [
      CREEP,
      '    temperature: 100 °C',
      '    temperature: 1000 °C',
      'tests.creep-relaxation.temperature: is 1000 °C, outside the usual −200 to 700 °C'
    ],
    [
      CREEP,
      '    for: 22 h',
      '    for: 22 s',
      'tests.creep-relaxation.for: is 22 s, outside the usual 0.1 to 20000 h'
    ]
  ] as const)('%s: %s → %s', ([path, from, to, text]) => {
    expect(told(path, from, to)).toContain(`IMPLAUSIBLE ${text}`)
  })

  test('once for all lines of a log', () => {
    const at = (text: string) => `  - { at: 60 s, temperature: ${text} }\n`
    const hot = demoFiles.find(({ path }) => path === 'content/expansions/XR-26-01.yaml')!
    const files = [
      ...demoFiles.filter(file => file !== hot),
      { path: hot.path, text: `${hot.text}log:\n${at('1500 °C')}${at('22 °C')}${at('1600 °C')}` }
    ]
    expect(problemsOf(files).filter(line => !known.includes(line))).toEqual([
      'IMPLAUSIBLE log.0.temperature: is 1500 °C, outside the usual −20 to 1400 °C; so is one more line'
    ])
  })
})

describe('the table', () => {
  test.for(Object.entries(conditions))('%s: what is usual is possible', ([, one]) => {
    const { usual, possible = [Number.MIN_VALUE, Infinity] }: Condition = one
    expect(usual[0]).toBeLessThan(usual[1])
    expect(usual[0]).toBeGreaterThanOrEqual(possible[0])
    expect(usual[1]).toBeLessThanOrEqual(possible[1])
  })

  test.for(Object.keys(conditions) as (keyof typeof conditions)[])(
    '%s: both ends are usual, just beyond them is not',
    name => {
      const { unit, usual }: Condition = conditions[name]
      const one = fields({ of: list(condition(name)) })
      const written = (value: number) => `${value}${unit === '1' ? '' : ` ${unitNames(unit)[0]}`}`
      const step = (usual[1] - usual[0]) * 1e-9
      const values = [usual[0], usual[1], usual[1] + step].map(written)
      expect('fault' in readQuantity(values[2]!, unit)).toBe(false)
      const read = one.safeParse({ of: values.slice(0, 2) })
      expect(read.success && unusualIn(read.data)).toEqual([])
      const beyond = one.safeParse({ of: values })
      if (beyond.success) expect(unusualIn(beyond.data)).toHaveLength(1)
    }
  )
})
