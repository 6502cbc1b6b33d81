/** A lot's trace in words, and as rows for programs. */

import type { Decimal } from 'decimal.js'
import { containerStock } from '../evaluate/container-stock.ts'
import { allUses } from '../evaluate/uses.ts'
import { type Balance, balanceOf, balanceParts, stateOf } from '../trace/balance.ts'
import { openGraph, type Sent, type TracedLot, type TraceGraph } from '../trace/graph.ts'
import { lotsBefore, type Trace, traceLot } from '../trace/reach.ts'
import { latestDate } from '../records/dates.ts'
import type { Complaint, Records } from '../records/types.ts'
import type { Fact } from './types.ts'
import { counted, dateText, kindTexts, listText } from './words.ts'

/** A mass as it is told: all digits it was recorded with, a number without its unit. */
export const massText = (mass_g: Decimal): string => mass_g.toFixed()

const BALANCE_WORDS: Record<(typeof balanceParts)[number], string> = {
  inStock_g: 'In stock',
  shipped_g: 'With customers',
  returned_g: 'Returned, in quarantine',
  used_g: 'Used in further lots',
  tested_g: 'Used up in tests',
  retained_g: 'Retained',
  scrapped_g: 'Scrapped',
  lost_g: 'Lost, by waste and incidents'
}

/** What a lot is: 'sulfuric acid, 96 %' for a material, 'furnace run' and the like for our own. */
export function whatIs({ records }: TraceGraph, { lot, kind }: TracedLot): string {
  return kind === 'material' ? records.materials.get(lot)!.record.title : kindTexts[kind]
}

/** Where a lot's mass is, part by part; parts of nothing are left out. */
export function balanceFacts(balance: Balance): Fact[] {
  const { made_g, difference_g } = balance
  return [
    { label: 'Made or received', text: `${massText(made_g)} g` },
    ...balanceParts
      .filter(part => !balance[part].isZero())
      .map(part => ({ label: BALANCE_WORDS[part], text: `${massText(balance[part])} g` })),
    ...(difference_g.isZero()
      ? []
      : [{ label: 'Difference', text: `${massText(difference_g)} g` }]),
    { label: 'Reconciled', text: differenceText(balance) }
  ]
}

/** An incoming lot's containers: 'D1: 1.2 kg left of 2.5 kg; adds up; stock by the records, not counted'. */
export function containerFacts({ records, asOf }: TraceGraph, lot: string): Fact[] {
  const material = records.materials.get(lot)?.record
  if (!material?.containers) return []
  const uses = allUses(records).filter(use => use.lot === lot)
  const { containers, untold_g } = containerStock(material, uses, asOf)
  return [
    ...containers.map(one => ({
      label: one.number,
      text: `${massText(one.left_g)} g left of ${massText(one.net_g)} g; ${differenceText(one)}`
    })),
    ...(untold_g.isZero()
      ? []
      : [
          {
            label: 'Not told',
            text: `${massText(untold_g)} g were taken without a container named`
          }
        ])
  ]
}

/** Whether a lot's masses add up, and the difference named where they do not. */
export function differenceText({
  difference_g,
  counted: day
}: Pick<Balance, 'difference_g' | 'counted'>): string {
  const basis = day === undefined ? 'by the records, not counted' : `counted on ${dateText(day)}`
  if (difference_g.isZero()) return `adds up; stock ${basis}`
  const mass = `${massText(difference_g.abs())} g`
  if (difference_g.isPositive()) return `${mass} not accounted for; stock ${basis}`
  return day === undefined
    ? `${mass} more taken than there was`
    : `${mass} more found than the records leave; stock ${basis}`
}

/** What a lot was filled into in a shipment. */
export const containersOf = (
  { records }: TraceGraph,
  { lot, shipment }: Pick<Sent, 'lot' | 'shipment'>
) =>
  (records.shipments.get(shipment)?.record.contents ?? [])
    .filter(part => part.lot === lot)
    .flatMap(({ containers = [] }) => containers)

/** How goods of a shipment that came back stand: '8.4 g on 15 September 2026, in quarantine'. */
export const returnedTexts = (
  graph: TraceGraph,
  { lot, shipment }: Pick<Sent, 'lot' | 'shipment'>
) =>
  (graph.returns.get(lot) ?? [])
    .filter(part => part.shipment === shipment)
    .map(({ entry, field, on, decision }) => {
      const { written } = entry.record.returned![Number(field[1])]!.mass_g
      const fate =
        decision && decision.on <= graph.asOf
          ? `${decision.is} on ${dateText(decision.on)}`
          : 'in quarantine'
      return `${written} on ${dateText(on)}, ${fate}`
    })

/** A complaint in one line: what was reported, who was told, what was decided. */
export function complaintText({ number, received, reported, told, decision }: Complaint): string {
  const whom = (told ?? []).map(({ who, on }) => `${who} on ${dateText(on)}`)
  return [
    `${number}, received ${dateText(received)}: ${reported}`,
    whom.length > 0 ? `told ${listText(whom)}` : 'nobody told',
    decision
      ? `${decision.is} on ${dateText(decision.on)} by the ${decision.by}: ${decision.because}`
      : 'not decided'
  ].join('; ')
}

/** Lots a trace came from that others came from as well: where to look further. */
export interface Sibling {
  readonly lot: string
  readonly lots: number
  readonly shipments: number
}

/** What else each of the lots before one went into. */
export const siblingsOf = (graph: TraceGraph, name: string): Sibling[] =>
  lotsBefore(graph, name).map(({ lot }) => {
    const { affected, sent } = traceLot(graph, lot)!
    return {
      lot,
      lots: affected.length - 1,
      shipments: new Set(sent.map(({ shipment }) => shipment)).size
    }
  })

/** 'went into 3 lots and 2 shipments'. */
export const siblingText = ({ lots, shipments }: Sibling): string =>
  `leads to ${counted(lots, 'lot')} and ${counted(shipments, 'shipment')}`

/** Complaints about a lot or anything made from it. */
export const complaintsOf = (graph: TraceGraph, { affected }: Trace): Complaint[] =>
  affected.flatMap(({ lot }) => graph.complaints.get(lot) ?? [])

/** The lot's own balance, state and complaints. */
export interface LotAccount {
  readonly lot: TracedLot
  readonly what: string
  readonly state: string
  readonly balance: Balance
}

export const accountOf = (graph: TraceGraph, lot: TracedLot): LotAccount => ({
  lot,
  what: whatIs(graph, lot),
  state: stateOf(graph, lot.lot) ?? '',
  balance: balanceOf(graph, lot)
})

/** The trace of one lot by a day, the latest in the records by default; undefined where there is none. */
export function openTrace(
  records: Records,
  lot: string,
  asOf = latestDate(records)
): { readonly graph: TraceGraph; readonly trace: Trace } | undefined {
  const graph = openGraph(records, asOf)
  const trace = traceLot(graph, lot)
  return trace && { graph, trace }
}
