/** The chain a lot stands in: what it was made from, and what was made from it. */

import { compareText } from '../problem.ts'
import type { Content } from '../records/types.ts'
import { lotUrl } from './lot.ts'
import type { ChainLink } from './types.ts'
import { english, type Tongue } from './languages/tongue.ts'

interface Made {
  readonly made: string
  readonly kind: keyof Tongue['lot']['kinds']
  readonly from: readonly string[]
  readonly into: string[]
}

/** Lots of our own making with what each was made from and into; materials are not among them. */
export function madeFrom(content: Content): ReadonlyMap<string, Made> {
  const rows = (
    kind: Made['kind'],
    entries: ReadonlyMap<
      string,
      { readonly record: { made: string; from?: readonly { lot: string }[] | undefined } }
    >
  ): [string, Made][] =>
    [...entries].map(([lot, { record }]) => [
      lot,
      { made: record.made, kind, from: (record.from ?? []).map(use => use.lot), into: [] }
    ])
  const lots = new Map([
    ...rows('batch', content.batches),
    ...rows('expansion', content.expansions),
    ...rows('foil', content.foils)
  ])
  for (const [lot, { from }] of lots) for (const earlier of from) lots.get(earlier)?.into.push(lot)
  return lots
}

/**
 * Ancestors, the lot itself and descendants, in the order they were made.
 *
 * A lot is named with everything it was made from. What was made from it is named only where it has
 * a page in this edition, and furnace runs where they lead to one: a failed or unfinished lot is
 * nobody's business outside.
 */
export function chainOf(
  lots: ReadonlyMap<string, Made>,
  lot: string,
  hasPage: (lot: string) => boolean,
  tongue = english
): ChainLink[] {
  const leadsToPage = (run: string) => isRun(lots, run) && reach(lots, run, 'into').some(hasPage)
  const later = reach(lots, lot, 'into').filter(name => hasPage(name) || leadsToPage(name))
  return linksOf(lots, [...reach(lots, lot, 'from'), lot, ...later], hasPage, tongue)
}

/** The lot and what it was made from: the part of its chain that later lots leave as it is. */
export const originOf = (lots: ReadonlyMap<string, Made>, lot: string): ChainLink[] =>
  linksOf(lots, [...reach(lots, lot, 'from'), lot], () => false, english)

function linksOf(
  lots: ReadonlyMap<string, Made>,
  names: readonly string[],
  hasPage: (lot: string) => boolean,
  { lot: words, numbers }: Tongue
): ChainLink[] {
  // A bought lot stands among the names, and is nobody’s business outside.
  const shown = new Set(names.filter(name => lots.has(name)))
  return names
    .flatMap(name => {
      const made = lots.get(name)
      return made ? [{ name, made }] : []
    })
    .sort((a, b) => compareText(a.made.made, b.made.made) || compareText(a.name, b.name))
    .map(({ name, made }) => ({
      lot: name,
      kind: words.kinds[made.kind],
      made: numbers.date(made.made),
      from: shownBefore(lots, name, shown),
      ...(hasPage(name) ? { url: lotUrl(name) } : {})
    }))
}

/** Lots shown that one was made from, looked for through those that are not. */
function shownBefore(
  lots: ReadonlyMap<string, Made>,
  lot: string,
  shown: ReadonlySet<string>
): string[] {
  const before = (lots.get(lot)?.from ?? []).flatMap(name =>
    shown.has(name) ? [name] : shownBefore(lots, name, shown)
  )
  return [...new Set(before)]
}

const isRun = (lots: ReadonlyMap<string, Made>, lot: string) => lots.get(lot)?.kind === 'expansion'

/** Every lot reached from one by stepping to what it was made from, or into; each once. */
function reach(lots: ReadonlyMap<string, Made>, lot: string, step: 'from' | 'into'): string[] {
  const found = new Set<string>()
  const walk = (at: string): void => {
    for (const next of lots.get(at)?.[step] ?? [])
      if (!found.has(next)) {
        found.add(next)
        walk(next)
      }
  }
  walk(lot)
  return [...found]
}
