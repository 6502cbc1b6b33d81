/** The recall list: every lot a suspect one is in, where its mass is, and who holds some. */

import { Decimal } from 'decimal.js'
import { grams, type Sent, type TraceGraph } from '../trace/graph.ts'
import type { Trace } from '../trace/reach.ts'
import {
  accountOf,
  complaintsOf,
  containersOf,
  differenceText,
  type LotAccount,
  massText
} from './trace.ts'
import type { Complaint } from '../records/types.ts'

/** A table for programs: its head, and rows with as many fields. */
export interface Rows {
  readonly columns: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** Columns in the order they stand. A row leaves those empty that are not of its kind. */
const columns = [
  'row',
  'lot',
  'what',
  'date',
  'state',
  'made_g',
  'in_stock_g',
  'shipped_g',
  'returned_g',
  'used_g',
  'tested_g',
  'retained_g',
  'scrapped_g',
  'lost_g',
  'difference_g',
  'reconciled',
  'shipment',
  'customer',
  'order',
  'container',
  'quantity_g',
  'still_held_g',
  'complaint',
  'told'
] as const

type Row = Partial<Record<(typeof columns)[number], string>>

/**
 * One row a lot, then one a lot in a shipment, each followed by one a container, then one a complaint. In each row of a lot, made_g is
 * the sum of the nine columns after it.
 */
export function recallRows(graph: TraceGraph, trace: Trace): Rows {
  const rows: Row[] = [
    ...trace.affected.map(lot => lotRow(accountOf(graph, lot))),
    ...trace.sent.flatMap(one => [shipmentRow(graph, one), ...containerRows(graph, one)]),
    ...complaintsOf(graph, trace).map(complaintRow)
  ]
  return { columns, rows: rows.map(row => columns.map(column => row[column] ?? '')) }
}

const lotRow = ({ lot, what, state, balance }: LotAccount): Row => ({
  row: 'lot',
  lot: lot.lot,
  what,
  date: lot.since,
  state,
  made_g: massText(balance.made_g),
  in_stock_g: massText(balance.inStock_g),
  shipped_g: massText(balance.shipped_g),
  returned_g: massText(balance.returned_g),
  used_g: massText(balance.used_g),
  tested_g: massText(balance.tested_g),
  retained_g: massText(balance.retained_g),
  scrapped_g: massText(balance.scrapped_g),
  lost_g: massText(balance.lost_g),
  difference_g: massText(balance.difference_g),
  reconciled: differenceText(balance)
})

function shipmentRow(graph: TraceGraph, { lot, shipment, customer, order, on, mass_g }: Sent): Row {
  const back = (graph.returns.get(lot) ?? [])
    .filter(part => part.shipment === shipment)
    .reduce((sum, part) => sum.plus(grams(part.mass_g)), new Decimal(0))
  return {
    row: 'shipment',
    lot,
    date: on,
    shipment,
    customer,
    order: order ?? '',
    quantity_g: massText(mass_g),
    still_held_g: massText(mass_g.minus(back))
  }
}

/** Each container of a lot in a shipment; what is left in it is known where returns name theirs. */
function containerRows(graph: TraceGraph, sent: Sent): Row[] {
  const { lot, shipment, customer, on } = sent
  const back = (graph.returns.get(lot) ?? []).filter(part => part.shipment === shipment)
  const isKnown = back.every(({ container }) => container !== undefined)
  return containersOf(graph, sent).map(({ number, kind, net_g }) => {
    const returned = back
      .filter(({ container }) => container === number)
      .reduce((sum, part) => sum.plus(grams(part.mass_g)), new Decimal(0))
    const net = grams(net_g.value)
    return {
      row: 'container',
      lot,
      what: kind,
      date: on,
      shipment,
      customer,
      container: number,
      quantity_g: massText(net),
      still_held_g: isKnown ? massText(net.minus(returned)) : ''
    }
  })
}

const complaintRow = ({
  number,
  lot,
  shipment,
  received,
  reported,
  told,
  decision
}: Complaint): Row => ({
  row: 'complaint',
  lot,
  what: reported,
  date: received,
  state: decision?.is ?? 'not decided',
  shipment,
  complaint: number,
  told: (told ?? []).map(({ who, on }) => `${who} ${on}`).join('; ')
})

/** Every step of a trace, one row each, and every shipment at its end. */
export const stepRows = (trace: Trace): Rows => ({
  columns: ['direction', 'from', 'into', 'mass_g', 'date', 'customer', 'order'],
  rows: [
    ...trace.up.map(({ from, into, mass_g, on }) => [
      'up',
      from,
      into,
      massText(mass_g),
      on,
      '',
      ''
    ]),
    ...trace.down.map(({ from, into, mass_g, on }) => [
      'down',
      from,
      into,
      massText(mass_g),
      on,
      '',
      ''
    ]),
    ...trace.sent.map(({ lot, shipment, mass_g, on, customer, order }) => [
      'shipped',
      lot,
      shipment,
      massText(mass_g),
      on,
      customer,
      order ?? ''
    ])
  ]
})

/** A trace for programs: masses as decimals in grams, written as texts so that no digit is lost. */
export function traceData(graph: TraceGraph, trace: Trace) {
  const lots = trace.affected.map(lot => accountOf(graph, lot))
  return {
    format: 'lotfolio-trace',
    formatVersion: 1,
    asOf: graph.asOf,
    lot: trace.lot.lot,
    massUnit: 'g',
    steps: objects(stepRows(trace)),
    lots: lots.map(lotRow).map(withoutRow),
    shipments: trace.sent.map(one => withoutRow(shipmentRow(graph, one))),
    containers: trace.sent.flatMap(one => containerRows(graph, one)).map(withoutRow),
    complaints: complaintsOf(graph, trace).map(complaintRow).map(withoutRow)
  }
}

const objects = ({ columns: names, rows }: Rows) =>
  rows.map(row => Object.fromEntries(names.map((name, index) => [name, row[index] ?? ''])))

const withoutRow = (row: Row): Row =>
  Object.fromEntries(Object.entries(row).filter(([name]) => name !== 'row'))
