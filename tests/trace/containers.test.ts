/** A recall goes by container: what each held, and what of it is still with the customer. */

import { describe, expect, test } from 'vitest'
import { recallRows } from '../../src/documents/recall.ts'
import { openTrace } from '../../src/documents/trace.ts'
import { traceText } from '../../src/documents/trace-tree.ts'
import { loadContent } from '../../src/records/content.ts'
import { base } from '../records/workshop.ts'

const shipment = {
  path: 'shipments/SH-1.yaml',
  text: [
    'number: SH-1',
    'sent: 2026-03-02',
    'customer: Brask Seals',
    'contents:',
    '  - lot: EB-1',
    '    mass: 9.00 g',
    '    containers:',
    '      - { number: C-1, kind: jar, tare: 30 g, net: 5.25 g }',
    '      - { number: C-2, kind: pouch, tare: 2 g, net: 3.75 g }',
    ''
  ].join('\n')
}

const complaint = (returned: string) => ({
  path: 'complaints/CP-1.yaml',
  text: `number: CP-1\nshipment: SH-1\nlot: EB-1\nreceived: 2026-03-05\nreported: torn\nreturned: [${returned}]\n`
})

function opened(...files: readonly { path: string; text: string }[]) {
  const content = loadContent([...base, shipment, ...files])
  if (!content.ok) throw new Error(content.problems.map(({ message }) => message).join('\n'))
  return openTrace(content.value, 'GR-1')!
}

/** Rows of containers: number, kind, what it held, what is still held. */
function containers(...files: readonly { path: string; text: string }[]): string[][] {
  const { graph, trace } = opened(...files)
  const { columns, rows } = recallRows(graph, trace)
  const wanted = ['container', 'what', 'shipment', 'customer', 'quantity_g', 'still_held_g']
  return rows
    .filter(row => row[0] === 'container')
    .map(row => wanted.map(name => row[columns.indexOf(name)]!))
}

describe('each container has a row', () => {
  test('with what it holds, while nothing came back', () => {
    expect(containers()).toEqual([
      ['C-1', 'jar', 'SH-1', 'Brask Seals', '5.25', '5.25'],
      ['C-2', 'pouch', 'SH-1', 'Brask Seals', '3.75', '3.75']
    ])
  })

  test('less what came back in it', () => {
    const back = complaint('{ on: 2026-03-06, container: C-2, mass: 3.70 g }')
    expect(containers(back).map(row => row.at(-1))).toEqual(['5.25', '0.05'])
  })

  test('and nothing is said of what is left where a return names no container', () => {
    const back = complaint('{ on: 2026-03-06, mass: 3.70 g }')
    expect(containers(back).map(row => row.at(-1))).toEqual(['', ''])
  })

  test('and their masses make up that of the shipment', () => {
    const { graph, trace } = opened()
    const { columns, rows } = recallRows(graph, trace)
    const at = (name: string) => columns.indexOf(name)
    const sum = (kind: string) =>
      rows
        .filter(row => row[0] === kind)
        .reduce((all, row) => all + Number(row[at('quantity_g')]), 0)
    expect(sum('container')).toBe(sum('shipment'))
  })
})

test('the tree shows them below their shipment', () => {
  const { graph, trace } = opened(complaint('{ on: 2026-03-06, container: C-2, mass: 3.70 g }'))
  expect(traceText(graph, trace)).toMatch(
    /shipment SH-1 .*\n.*├─ jar C-1 {2}5\.25 g\n.*├─ pouch C-2 {2}3\.75 g\n.*└─ came back: 3\.70 g/u
  )
})
