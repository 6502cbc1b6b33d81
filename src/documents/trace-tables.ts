/** A lot's trace as tables, for its page in the workshop edition. */

import type { Step, TraceGraph } from '../trace/graph.ts'
import { type Trace, traceLot } from '../trace/reach.ts'
import {
  accountOf,
  balanceFacts,
  complaintsOf,
  complaintText,
  massText,
  returnedTexts,
  whatIs
} from './trace.ts'
import type { Table } from './types.ts'
import { dateText } from './words.ts'

const number = (title: string) => ({ title, numeric: true })
const text = (title: string) => ({ title, numeric: false })

/** What went in, what was made, who was sent some, where the rest is; tables of nothing are left out. */
export function traceTables(graph: TraceGraph, lot: string): Table[] {
  const trace = traceLot(graph, lot)
  if (!trace) return []
  const tables = [
    stepTable(graph, 'Everything that went in', trace.up, 'from'),
    stepTable(graph, 'Everything made from it', trace.down, 'into'),
    sentTable(graph, trace),
    accountTable(graph, trace),
    complaintTable(graph, trace)
  ]
  return tables.filter(({ rows }) => rows.length > 0)
}

/** Steps one way, each with what stands at its far end. */
function stepTable(
  graph: TraceGraph,
  caption: string,
  steps: readonly Step[],
  end: 'from' | 'into'
): Table {
  return {
    caption,
    columns: [text('From'), text('Into'), text('What it is'), number('Mass (g)')],
    rows: steps.map(step => {
      const known = graph.lots.get(step[end])
      return [
        step.from,
        step.into,
        known ? whatIs(graph, known) : 'not on record',
        massText(step.mass_g)
      ]
    })
  }
}

const sentTable = (graph: TraceGraph, { sent }: Trace): Table => ({
  caption: 'Sent to customers',
  columns: [
    text('Shipment'),
    text('Lot'),
    text('Customer'),
    text('Order'),
    text('Sent'),
    number('Mass (g)'),
    text('Came back')
  ],
  rows: sent.map(one => [
    one.shipment,
    one.lot,
    one.customer,
    one.order ?? 'none named',
    dateText(one.on),
    massText(one.mass_g),
    returnedTexts(graph, one).join('; ') || 'nothing'
  ])
})

const accountTable = (graph: TraceGraph, { lot }: Trace): Table => ({
  caption: 'Where this lot is',
  columns: [text('Part'), text('Mass')],
  rows: balanceFacts(accountOf(graph, lot).balance).map(({ label, text: told }) => [label, told])
})

const complaintTable = (graph: TraceGraph, trace: Trace): Table => ({
  caption: 'Complaints',
  columns: [text('Lot'), text('Complaint')],
  rows: complaintsOf(graph, trace).map(complaint => [complaint.lot, complaintText(complaint)])
})
