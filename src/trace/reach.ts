/** Ways through the graph: what a lot came from, and what came of it. */

import type { Sent, Step, TracedLot, TraceGraph } from './graph.ts'

/** Everything that went into a lot, and everything made from it. */
export interface Trace {
  readonly lot: TracedLot
  /** Each step once, in the order the lots they lead into were made. */
  readonly up: readonly Step[]
  readonly down: readonly Step[]
  /** The lot and everything made from it, in making order. */
  readonly affected: readonly TracedLot[]
  /** What of those left the workshop, by day. */
  readonly sent: readonly Sent[]
}

/** Trace a lot both ways; undefined where there is none of that number by the graph's day. */
export function traceLot(graph: TraceGraph, name: string): Trace | undefined {
  const lot = graph.lots.get(name)
  if (!lot) return undefined
  const affected = lotsMadeFrom(graph, name)
  return {
    lot,
    up: stepsFrom(graph, name, 'from'),
    down: stepsFrom(graph, name, 'into'),
    affected,
    sent: affected.flatMap(({ lot: one }) => graph.sent.get(one) ?? [])
  }
}

/** A lot and everything made from it, in making order. */
export const lotsMadeFrom = (graph: TraceGraph, name: string): TracedLot[] =>
  inOrder(graph, reach(graph, name, 'into'))

/** Every lot that one came from, in making order. */
export const lotsBefore = (graph: TraceGraph, name: string): TracedLot[] =>
  inOrder(graph, reach(graph, name, 'from')).filter(({ lot }) => lot !== name)

const inOrder = ({ lots }: TraceGraph, names: ReadonlySet<string>): TracedLot[] =>
  [...names].flatMap(name => lots.get(name) ?? []).sort((a, b) => a.place - b.place)

function stepsFrom(graph: TraceGraph, name: string, way: 'from' | 'into'): Step[] {
  const steps = [...reach(graph, name, way)].flatMap(lot => graph[way].get(lot) ?? [])
  const placeOf = (lot: string) => graph.lots.get(lot)?.place ?? -1
  return steps.sort(
    (a, b) => placeOf(a.into) - placeOf(b.into) || placeOf(a.from) - placeOf(b.from)
  )
}

/** A lot and all that steps of one direction lead to from it. */
function reach(graph: TraceGraph, name: string, way: 'from' | 'into'): Set<string> {
  const found = new Set([name])
  for (const lot of found)
    for (const step of graph[way].get(lot) ?? []) found.add(way === 'from' ? step.from : step.into)
  return found
}
