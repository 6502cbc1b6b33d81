/**
 * What went into what: every lot of a workshop, and every amount that passed from one to another.
 *
 * Masses are exact decimals of the figures as recorded, so that sums come out to the last digit.
 */

import { Decimal } from 'decimal.js'
import type { Purpose } from '../evaluate/use.ts'
import { allReturns, allUses, type Return, stockOf } from '../evaluate/uses.ts'
import { compareText } from '../problem.ts'
import type { Complaint, Records } from '../records/types.ts'

export type LotKind = 'material' | 'batch' | 'expansion' | 'foil'

/** A lot with what there was of it to begin with. */
export interface TracedLot {
  readonly lot: string
  readonly kind: LotKind
  readonly since: string
  readonly made_g: Decimal
  /** Where it stands in making order: after everything it was made from. */
  readonly place: number
}

/** An amount of one lot that went into another, on the day that one was made. */
export interface Step {
  readonly from: string
  readonly into: string
  readonly mass_g: Decimal
  readonly on: string
}

/** An amount of a lot that left with a shipment. */
export interface Sent {
  readonly lot: string
  readonly shipment: string
  readonly mass_g: Decimal
  readonly on: string
  readonly customer: string
  readonly order?: string | undefined
}

/** An amount taken from a lot for its tests or put aside. */
export interface Taken {
  readonly purpose: Purpose
  readonly mass_g: Decimal
  readonly on: string
}

/** Everything recorded up to a day, by lot. */
export interface TraceGraph {
  readonly records: Records
  readonly asOf: string
  /** By number; each before those made from it. */
  readonly lots: ReadonlyMap<string, TracedLot>
  readonly from: ReadonlyMap<string, readonly Step[]>
  readonly into: ReadonlyMap<string, readonly Step[]>
  readonly sent: ReadonlyMap<string, readonly Sent[]>
  readonly taken: ReadonlyMap<string, readonly Taken[]>
  readonly returns: ReadonlyMap<string, readonly Return[]>
  readonly complaints: ReadonlyMap<string, readonly Complaint[]>
}

/** A recorded mass as an exact decimal; differences of readings keep the digits they had. */
export const grams = (mass_g: number): Decimal => new Decimal(mass_g.toPrecision(12))

/** The graph of everything recorded by day `asOf`. */
export function openGraph(records: Records, asOf: string): TraceGraph {
  const uses = allUses(records).filter(({ on }) => on <= asOf)
  const steps = merged(
    uses
      .filter(({ purpose }) => purpose === 'used')
      .map(({ lot, by, mass_g, on }) => ({ from: lot, into: by, mass_g: grams(mass_g), on })),
    ({ from, into }) => [from, into]
  ).sort((a, b) => compareText(a.from, b.from) || compareText(a.into, b.into))
  const from = groupedBy(steps, ({ into }) => into)
  const complaints = [...records.complaints.values()]
    .map(({ record }) => record)
    .filter(({ received }) => received <= asOf)
  return {
    records,
    asOf,
    lots: inOrder(lotsOf(records, asOf), from),
    from,
    into: groupedBy(steps, step => step.from),
    sent: groupedBy(sentOf(records, asOf), ({ lot }) => lot),
    taken: groupedBy(
      uses.map(use => ({ ...use, mass_g: grams(use.mass_g) })),
      ({ lot }) => lot
    ),
    returns: groupedBy(
      allReturns(records).filter(({ on }) => on <= asOf),
      ({ lot }) => lot
    ),
    complaints: groupedBy(complaints, ({ lot }) => lot)
  }
}

type Unplaced = Omit<TracedLot, 'place'>

function lotsOf(records: Records, asOf: string): Unplaced[] {
  const kinds = {
    material: records.materials,
    batch: records.batches,
    expansion: records.expansions,
    foil: records.foils
  }
  return (Object.keys(kinds) as LotKind[])
    .flatMap(kind =>
      [...kinds[kind].keys()].flatMap(lot => {
        const stock = stockOf(records, lot)
        return stock && stock.since <= asOf
          ? [{ lot, kind, since: stock.since, made_g: grams(stock.mass_g) }]
          : []
      })
    )
    .sort((a, b) => compareText(a.since, b.since) || compareText(a.lot, b.lot))
}

/** Lots by day, and each after those it was made from also where all were made on one day. */
function inOrder(
  lots: readonly Unplaced[],
  from: ReadonlyMap<string, readonly Step[]>
): Map<string, TracedLot> {
  const known = new Map(lots.map(lot => [lot.lot, lot]))
  const ordered = new Map<string, TracedLot>()
  const open = new Set<string>()
  const visit = (name: string): void => {
    const lot = known.get(name)
    if (!lot || ordered.has(name) || open.has(name)) return
    open.add(name)
    for (const step of from.get(name) ?? []) visit(step.from)
    ordered.set(name, { ...lot, place: ordered.size })
  }
  for (const { lot } of lots) visit(lot)
  return ordered
}

const sentOf = ({ shipments }: Records, asOf: string): Sent[] =>
  merged(
    [...shipments.values()].flatMap(({ record: { number, sent, customer, order, contents } }) =>
      contents.map(({ lot, mass_g }) => ({
        lot,
        shipment: number,
        mass_g: grams(mass_g.value),
        on: sent,
        customer,
        order
      }))
    ),
    ({ lot, shipment }) => [lot, shipment]
  )
    .filter(({ on }) => on <= asOf)
    .sort((a, b) => compareText(a.on, b.on) || compareText(a.shipment, b.shipment))

/** Amounts that go the same way as one: a lot may stand in two lines of one record. */
function merged<Item extends { readonly mass_g: Decimal }>(
  items: readonly Item[],
  way: (item: Item) => readonly string[]
): Item[] {
  const sums = new Map<string, Item>()
  for (const item of items) {
    const key = JSON.stringify(way(item))
    const before = sums.get(key)
    sums.set(key, before ? { ...before, mass_g: before.mass_g.plus(item.mass_g) } : item)
  }
  return [...sums.values()]
}

function groupedBy<Item>(items: readonly Item[], key: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>()
  for (const item of items) {
    const group = groups.get(key(item))
    if (group) group.push(item)
    else groups.set(key(item), [item])
  }
  return groups
}
