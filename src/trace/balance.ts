/** Where every gram of a lot is: what there was of it is in stock, or went somewhere. */

import { Decimal } from 'decimal.js'
import type { Return } from '../evaluate/uses.ts'
import { decisionOn } from '../quality/status.ts'
import { grams, type TracedLot, type TraceGraph } from './graph.ts'

/**
 * made = in stock + shipped + returned + used + tested + retained + scrapped + lost + difference.
 *
 * Goods that came back are counted once: as shipped no longer, but as returned while they wait in
 * quarantine, as in stock or scrapped once that is decided.
 */
export interface Balance {
  readonly made_g: Decimal
  readonly inStock_g: Decimal
  /** With customers: sent, less what came back. */
  readonly shipped_g: Decimal
  /** Came back and waits in quarantine for a decision. */
  readonly returned_g: Decimal
  /** Went into further lots. */
  readonly used_g: Decimal
  readonly tested_g: Decimal
  readonly retained_g: Decimal
  readonly scrapped_g: Decimal
  /** Thrown away or spilled of it, by the records of waste and incidents. */
  readonly lost_g: Decimal
  /** Made, and found nowhere; below zero where more was found than made. */
  readonly difference_g: Decimal
  /** Day of the last count; without one, in stock is what the records leave. */
  readonly counted?: string
}

/** The parts a lot's mass divides into, in the order they are told. */
export const balanceParts = [
  'inStock_g',
  'shipped_g',
  'returned_g',
  'used_g',
  'tested_g',
  'retained_g',
  'scrapped_g',
  'lost_g'
] as const satisfies readonly (keyof Balance)[]

/** The balance of a lot by the graph's day. */
export function balanceOf(graph: TraceGraph, { lot, made_g }: TracedLot): Balance {
  const taken = graph.taken.get(lot) ?? []
  const returns = graph.returns.get(lot) ?? []
  const takenFor = (purpose: string) => sum(taken.filter(use => use.purpose === purpose))
  const back = (fate: Fate) => sum(returns.filter(part => fateOf(part, graph.asOf) === fate))
  const gone = sum(taken).minus(sum(returns))
  const waiting = { returned_g: back('held'), scrapped_g: back('scrapped') }
  // What was taken and not put back is no longer in stock by the book.
  const book_g = made_g.minus(gone).minus(waiting.returned_g).minus(waiting.scrapped_g)
  const counted = lastCount(graph, lot)
  const found_g = counted
    ? counted.mass_g.minus(movedSince(graph, lot, counted.on))
    : atLeast0(book_g)
  const parts = {
    made_g,
    inStock_g: found_g,
    shipped_g: takenFor('shipped').minus(sum(returns)),
    ...waiting,
    used_g: takenFor('used'),
    tested_g: takenFor('tested'),
    retained_g: takenFor('retained'),
    lost_g: takenFor('lost'),
    difference_g: book_g.minus(found_g),
    ...(counted ? { counted: counted.on } : {})
  }
  return isScrapped(graph, lot) ? scrapped(parts) : parts
}

type Fate = 'held' | 'restocked' | 'scrapped'

/** Where goods that came back are on a day. */
const fateOf = ({ decision }: Return, day: string): Fate =>
  decision && decision.on <= day ? decision.is : 'held'

const atLeast0 = (mass_g: Decimal) => Decimal.max(mass_g, 0)

const sum = (parts: readonly { readonly mass_g: Decimal | number }[]): Decimal =>
  parts.reduce(
    (total, { mass_g }) => total.plus(typeof mass_g === 'number' ? grams(mass_g) : mass_g),
    new Decimal(0)
  )

/** What left stock after a day, less what was put back into it: a count is of the day's end. */
function movedSince({ taken, returns, asOf }: TraceGraph, lot: string, day: string): Decimal {
  const out = (taken.get(lot) ?? []).filter(({ on }) => on > day)
  const back = (returns.get(lot) ?? []).filter(
    part => fateOf(part, asOf) === 'restocked' && part.decision!.on > day
  )
  return sum(out).minus(sum(back))
}

function lastCount({ records, asOf }: TraceGraph, lot: string) {
  const { materials, batches, expansions, foils } = records
  const entry = materials.get(lot) ?? batches.get(lot) ?? expansions.get(lot) ?? foils.get(lot)
  const last = (entry?.record.counted ?? [])
    .filter(({ on }) => on <= asOf)
    .reduce<Count | undefined>((a, b) => (a && a.on > b.on ? a : b), undefined)
  return last && { on: last.on, mass_g: grams(last.mass_g.value) }
}

type Count = { readonly on: string; readonly mass_g: { readonly value: number } }

/** The state a lot of our own is in on the graph's day; undefined for materials and runs. */
export function stateOf({ records, asOf }: TraceGraph, lot: string) {
  const record = (records.batches.get(lot) ?? records.foils.get(lot))?.record
  return record && (decisionOn(record.status ?? [], asOf)?.is ?? 'quarantine')
}

const isScrapped = (graph: TraceGraph, lot: string) => stateOf(graph, lot) === 'scrapped'

/** A lot scrapped as a whole has nothing in stock or waiting: that is what was scrapped. */
const scrapped = (balance: Balance): Balance => ({
  ...balance,
  inStock_g: new Decimal(0),
  returned_g: new Decimal(0),
  scrapped_g: balance.scrapped_g.plus(balance.inStock_g).plus(balance.returned_g)
})
