/** What a supplier states of a lot beside what was found here. */

import { describe, expect, test } from 'vitest'
import { incomingPart } from '../../src/documents/incoming.ts'
import { demoFiles, evaluate, problemsOf, withChange } from '../records-on-disk.ts'

const file = 'materials/GR-26-02.yaml'
const changed = (from: string, to: string) => withChange(demoFiles, file, from, to)

/** What is told of a change, beyond what the demo is told anyway. */
const told = (from: string, to: string) =>
  problemsOf(changed(from, to)).filter(line => !problemsOf(demoFiles).includes(line))

const rowsOf = (files = demoFiles) =>
  incomingPart(evaluate(files).content)
    .rows.filter(({ name }) => name === 'GR-26-02')
    .map(({ cells, urgent }) => [...cells.slice(1), urgent ?? false])

describe('side by side', () => {
  test('stand both figures, with the day of the own one', () => {
    expect(rowsOf()).toEqual([
      ['Ash, dry basis', '0.6 %', '0.64 % ± 0.03 %', 'agree, 2026-06-25', false],
      ['Retained on 300 µm (+50 mesh)', '81 %', '', 'not tested here', false]
    ])
  })

  test('a figure that is off is seen and told of', () => {
    expect(rowsOf(changed('own: 0.64 %', 'own: 0.78 %'))[0]).toEqual([
      'Ash, dry basis',
      '0.6 %',
      '0.78 % ± 0.03 %',
      'disagree, 2026-06-25',
      true
    ])
    expect(told('own: 0.64 %', 'own: 0.78 %')).toEqual([
      'CONTRADICTION compared.ash.own: ash, dry basis is 0.78 % as found here and 0.6 % by the supplier'
    ])
  })

  test.for([
    ['own: 0.64 %', 'own: 0.73 %', 0],
    ['own: 0.64 %', 'own: 0.74 %', 1],
    ['own: 0.64 %', 'own: 0.46 %', 1],
    ['stated: 0.6 %', 'stated: 0.60 %', 0],
    ['stated: 0.6 %', 'stated: 0.59 %', 1],
    ['own: 0.64 %, expanded-uncertainty: 0.03 %', 'own: 0.71 %', 0],
    ['own: 0.64 %, expanded-uncertainty: 0.03 %', 'own: 0.72 %', 1]
  ] as const)('%s → %s: told %i times', ([from, to, times]) => {
    expect(told(from, to)).toHaveLength(times)
  })
})

test.for([
  ['on: 2026-06-25', 'on: 2026-06-20', 'DATE_ORDER compared.ash.on: was tested on 2026-06-20'],
  [', on: 2026-06-25', '', 'MISSING_FIELD compared.ash.on: is missing'],
  ['own: 0.64 %, ', '', 'INVALID_VALUE compared.ash.on: is of an own figure']
] as const)('a record: %s → %s', ([from, to, problem]) => {
  expect(told(from, to).join('\n')).toContain(problem)
})
