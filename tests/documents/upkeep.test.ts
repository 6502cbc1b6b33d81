/** Waste and incidents on the page of the workshop's state, and nowhere else. */

import { expect, test } from 'vitest'
import { demoFiles, problemsOf, withChange } from '../records-on-disk.ts'
import { publicSite, siteOf, workshopSite } from './demo.ts'

const partOf = (id: string, site = workshopSite) =>
  site.boards[0]!.parts.find(part => part.id === id)!

test('waste is told with what is in it and where it is, the newest first', () => {
  const { about, rows } = partOf('waste')
  expect(about).toContain('Local law, permits and competent people decide')
  expect(rows.map(({ name, cells }) => [name, ...cells])).toEqual([
    [
      'WA-26-02',
      'wash water, neutralised',
      '2026-10-14',
      '5200 mL',
      'pH 7.4, ammonium 2 mg/L',
      'EB-26-015',
      'in store, WC-4'
    ],
    [
      'WA-26-01',
      'spent acid, filtrate of the quench',
      '2026-10-13',
      '2600 mL',
      'nitrate 4.1 mg/L, manganese 0.6 mg/L',
      'EB-26-015',
      '2026-10-27 to Flummerbeck Disposal, collection contract 5550-31, consignment note 88-204'
    ]
  ])
})

test('as of a day, nothing is told that came later', () => {
  const site = siteOf(demoFiles, { edition: 'workshop', asOf: '2026-10-13' })
  expect(partOf('waste', site).rows.map(({ cells }) => cells.at(-1))).toEqual(['in store, WC-3'])
  expect(partOf('incidents', site).rows.map(({ cells, urgent }) => [cells.at(-1), urgent])).toEqual(
    [['open', true]]
  )
})

test('an incident is open, and stands out, until somebody has closed it', () => {
  const [closed] = partOf('incidents').rows
  expect(closed!.cells).toEqual([
    'spill, 2 g, hood 1, a splash of acid on the tray while the Wobblethorpe pump was primed',
    '2026-10-13, 08:05',
    'SA-26-02, 2 g of SA-26-02 lost',
    'taken up with the binder, washed down, pump hose replaced, told to workshop manager on 13 October 2026',
    'closed on 20 October 2026: the hose is checked before each charge'
  ])
  expect(closed!.urgent).toBeUndefined()
  const left = withChange(demoFiles, 'incidents/IN-26-01.yaml', 'closed: {', '# {')
  const [open] = partOf('incidents', siteOf(left, { edition: 'workshop' })).rows
  expect([open!.cells.at(-1), open!.urgent]).toEqual(['open', true])
})

test('an incident closed after all else is closed', () => {
  const late = withChange(
    demoFiles,
    'incidents/IN-26-01.yaml',
    'closed: { on: 2026-10-20',
    'closed: { on: 2026-12-01'
  )
  const [closed] = partOf('incidents', siteOf(late, { edition: 'workshop' })).rows
  expect(closed!.cells.at(-1)).toMatch(/^closed on 1 December 2026:/u)
})

test('the public edition has no word of either', () => {
  expect(publicSite.boards).toEqual([])
})

test('an incident is closed and told of no earlier than it happened', () => {
  const early = withChange(
    withChange(
      demoFiles,
      'incidents/IN-26-01.yaml',
      'closed: { on: 2026-10-20',
      'closed: { on: 2026-10-12'
    ),
    'incidents/IN-26-01.yaml',
    'manager, on: 2026-10-13',
    'manager, on: 2026-10-12'
  )
  expect(problemsOf(early).filter(one => one.startsWith('DATE_ORDER'))).toEqual([
    'DATE_ORDER told.0.on: is 2026-10-12, before it happened on 2026-10-13',
    'DATE_ORDER closed.on: is 2026-10-12, before it happened on 2026-10-13'
  ])
})
