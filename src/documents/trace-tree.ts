/** A trace as text: two trees with the lot between them, for a terminal. */

import type { Step, TraceGraph } from '../trace/graph.ts'
import type { Trace } from '../trace/reach.ts'
import {
  accountOf,
  balanceFacts,
  containerFacts,
  complaintsOf,
  complaintText,
  containersOf,
  massText,
  returnedTexts,
  siblingsOf,
  siblingText,
  whatIs
} from './trace.ts'
import type { Fact } from './types.ts'
import { dateText, plainSpaces } from './words.ts'

/**
 * The whole trace of a lot. Each lot unfolds once; where it stands a second time, that is said.
 */
export function traceText(graph: TraceGraph, trace: Trace): string {
  const { lot } = trace
  const { what, state, balance } = accountOf(graph, lot)
  const complaints = complaintsOf(graph, trace).map(complaintText)
  const siblings = siblingsOf(graph, lot.lot)
  const lines = (facts: readonly Fact[]) => {
    const width = Math.max(...facts.map(({ label }) => label.length))
    return facts.map(({ label, text }) => `${label.padEnd(width)}  ${text}`)
  }
  return [
    `${lot.lot}  ${what}, ${dateText(lot.since)}${state === '' ? '' : `, ${state}`}`,
    ...section('Went into it', branches(graph, lot.lot, 'from')),
    ...section('Made from it', branches(graph, lot.lot, 'into')),
    ...section('Where it is', lines(balanceFacts(balance))),
    ...section('Containers', lines(containerFacts(graph, lot.lot))),
    ...section('Complaints', complaints),
    ...section(
      'The same lots lead further',
      siblings.map(one => `${one.lot}  ${siblingText(one)}`)
    )
  ]
    .map(line => `${plainSpaces(line).trimEnd()}\n`)
    .join('')
}

const section = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', title, ...lines.map(line => `  ${line}`)]

type Way = 'from' | 'into'

/** A place in the tree: its line, and what hangs on it. */
interface Branch {
  readonly text: string
  readonly below: readonly Branch[]
}

function branches(graph: TraceGraph, lot: string, way: Way): string[] {
  return drawn(below(graph, lot, way, new Set([lot])), '')
}

function below(graph: TraceGraph, lot: string, way: Way, seen: Set<string>): Branch[] {
  const steps = (graph[way].get(lot) ?? []).map(step => branchOf(graph, step, way, seen))
  return way === 'from' ? steps : [...steps, ...sentBranches(graph, lot)]
}

function branchOf(graph: TraceGraph, step: Step, way: Way, seen: Set<string>): Branch {
  const next = way === 'from' ? step.from : step.into
  const known = graph.lots.get(next)
  const again = seen.has(next)
  seen.add(next)
  const mass = `${massText(step.mass_g)} g`
  const what = known ? `${whatIs(graph, known)}, ${dateText(known.since)}` : 'not on record'
  const leaf = again && (graph[way].get(next) ?? []).length > 0
  return {
    text: `${next}  ${mass}  ${what}${leaf ? ' (unfolded above)' : ''}`,
    below: again ? [] : below(graph, next, way, seen)
  }
}

const sentBranches = (graph: TraceGraph, lot: string): Branch[] =>
  (graph.sent.get(lot) ?? []).map(one => ({
    text: `shipment ${one.shipment}  ${massText(one.mass_g)} g  ${one.customer}${
      one.order === undefined ? '' : `, ${one.order}`
    }, ${dateText(one.on)}`,
    below: [
      ...containersOf(graph, one).map(
        ({ kind, number, net_g }) => `${kind} ${number}  ${net_g.written}`
      ),
      ...returnedTexts(graph, one).map(text => `came back: ${text}`)
    ].map(text => ({ text, below: [] }))
  }))

/** Lines with the strokes that lead to them. */
function drawn(list: readonly Branch[], lead: string): string[] {
  return list.flatMap(({ text, below: lower }, index) => {
    const last = index === list.length - 1
    return [
      `${lead}${last ? '└─' : '├─'} ${text}`,
      ...drawn(lower, `${lead}${last ? '  ' : '│ '} `)
    ]
  })
}
