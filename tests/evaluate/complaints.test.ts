/** Complaints and returns that the shipments do not bear out. */

import { expect, test } from 'vitest'
import { judgeContent } from '../../src/pipeline.ts'
import { problemData } from '../../src/problem.ts'
import { withFile } from '../records/workshop.ts'

const shipment = `number: SH-1
sent: 2026-02-20
customer: Brask Seals
contents:
  - { lot: EB-1, mass: 20.00 g }
`

const complaint = (lines: string, { lot = 'EB-1', received = '2026-03-01' } = {}) =>
  `number: CP-1\nshipment: SH-1\nlot: ${lot}\nreceived: ${received}\nreported: too coarse\n${lines}`

const rows: readonly (readonly [text: string, ...problems: string[]])[] = [
  [complaint('')],
  [complaint('returned:\n  - { on: 2026-03-02, mass: 20.00 g }\n')],
  [
    complaint('', { lot: 'FL-1' }),
    "UNKNOWN_REFERENCE lot: there is no lot in shipment SH-1 'FL-1'"
  ],
  [
    complaint('', { received: '2026-02-19' }),
    'DATE_ORDER received: was received on 2026-02-19, before the goods were sent on 2026-02-20'
  ],
  [
    complaint('told:\n  - { who: Brask, on: 2026-02-19 }\n'),
    'DATE_ORDER told › 1 › on: was told on 2026-02-19, before the goods were sent on 2026-02-20'
  ],
  [
    complaint('decision: { is: accepted, on: 2026-02-28, by: quality manager, because: x }\n'),
    'DATE_ORDER decision › on: was decided on 2026-02-28, before the complaint was received on 2026-03-01'
  ],
  [
    complaint('decision: { is: accepted, on: 2026-03-02, by: stranger, because: x }\n'),
    "UNKNOWN_REFERENCE decision › by: there is no role of the producer 'stranger'"
  ],
  [
    complaint('returned:\n  - { on: 2026-02-19, mass: 1 g }\n'),
    'DATE_ORDER returned › 1 › on: came back on 2026-02-19, before the goods were sent on 2026-02-20'
  ],
  [
    complaint(
      'returned:\n  - { on: 2026-03-02, mass: 1 g, decision: { is: scrapped, on: 2026-03-01, by: quality manager } }\n'
    ),
    'DATE_ORDER returned › 1 › decision › on: was decided on 2026-03-01, before the goods came back on 2026-03-02'
  ],
  [
    complaint('returned:\n  - { on: 2026-03-02, mass: 20.01 g }\n'),
    'OVER_RETURNED returned › 1 › mass: 20.01 g of EB-1 came back, but shipment SH-1 held 20 g'
  ],
  [
    complaint('returned:\n  - { on: 2026-03-05, mass: 15 g }\n  - { on: 2026-03-02, mass: 6 g }\n'),
    'OVER_RETURNED returned › 1 › mass: 15 g of EB-1 came back, but shipment SH-1 held 20 g, of which 6 g came back earlier'
  ]
]

const problemsOf = (text: string) =>
  judgeContent([
    ...withFile('shipments/SH-1.yaml', shipment),
    { path: 'complaints/CP-1.yaml', text }
  ]).problems.map(problem => {
    const { code, field, message } = problemData(problem)
    return `${code} ${field}: ${message}`
  })

test.each(rows)('%s', (text, ...problems) => {
  expect(problemsOf(text)).toEqual(problems)
})

/** Of EB-1 48.483 g are left before the shipment, which takes 20 g and a second one 30 g. */
test('what came back can be sent again once it is restocked, and not before', () => {
  const second = `number: SH-2\nsent: 2026-03-10\ncustomer: Brask Seals\ncontents:\n  - { lot: EB-1, mass: 30 g }\n`
  const codes = (decision: string) =>
    judgeContent([
      ...withFile('shipments/SH-1.yaml', shipment),
      { path: 'shipments/SH-2.yaml', text: second },
      {
        path: 'complaints/CP-1.yaml',
        text: complaint(`returned:\n  - { on: 2026-03-02, mass: 10 g${decision} }\n`)
      }
    ]).problems.map(({ code }) => code)
  const decided = (is: string, on: string) =>
    `, decision: { is: ${is}, on: ${on}, by: quality manager }`
  expect(codes('')).toEqual(['OVERDRAWN'])
  expect(codes(decided('scrapped', '2026-03-03'))).toEqual(['OVERDRAWN'])
  expect(codes(decided('restocked', '2026-03-11'))).toEqual(['OVERDRAWN'])
  expect(codes(decided('restocked', '2026-03-10'))).toEqual([])
})

test('goods of two complaints count together against what was sent', () => {
  const part = (number: string, on: string) => ({
    path: `complaints/${number}.yaml`,
    text: complaint(`returned:\n  - { on: ${on}, mass: 12 g }\n`).replace('CP-1', number)
  })
  const files = [...withFile('shipments/SH-1.yaml', shipment), part('CP-1', '2026-03-05')]
  expect(judgeContent(files).problems).toEqual([])
  const found = judgeContent([...files, part('CP-2', '2026-03-04')]).problems
  expect(found.map(({ code, file }) => [code, file.path])).toEqual([
    ['OVER_RETURNED', 'complaints/CP-1.yaml']
  ])
})
