/** The chain a lot stands in: what it was made from, and what was made from it. */

import type { Content } from '../records/types.ts'
import { lotUrl } from './lot.ts'
import type { ChainLink } from './types.ts'
import { dateText, kindTexts } from './words.ts'

interface Made {
  readonly made: string
  readonly kind: keyof typeof kindTexts
  readonly from: readonly string[]
}

/** Lots of our own making with what each was made from; materials are not among them. */
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
      { made: record.made, kind, from: (record.from ?? []).map(use => use.lot) }
    ])
  return new Map([
    ...rows('batch', content.batches),
    ...rows('expansion', content.expansions),
    ...rows('foil', content.foils)
  ])
}

/**
 * Ancestors, the lot itself and descendants, in the order they were made.
 *
 * A lot is named with everything it was made from. What was made from it is named only where it has
 * a page in this edition: a failed or unfinished lot is nobody's business outside.
 */
export function chainOf(
  lots: ReadonlyMap<string, Made>,
  lot: string,
  hasPage: (lot: string) => boolean
): ChainLink[] {
  const later = descendants(lots, lot).filter(name => hasPage(name) || isRun(lots, name))
  const related = new Set([...ancestors(lots, lot), lot, ...later])
  return [...related]
    .flatMap(name => {
      const made = lots.get(name)
      return made ? [{ name, made }] : []
    })
    .sort((a, b) => compare(a.made.made, b.made.made) || compare(a.name, b.name))
    .map(({ name, made }) => ({
      lot: name,
      kind: kindTexts[made.kind],
      made: dateText(made.made),
      ...(hasPage(name) ? { url: lotUrl(name) } : {})
    }))
}

const isRun = (lots: ReadonlyMap<string, Made>, lot: string) => lots.get(lot)?.kind === 'expansion'

function ancestors(lots: ReadonlyMap<string, Made>, lot: string): string[] {
  return (lots.get(lot)?.from ?? []).flatMap(earlier => [...ancestors(lots, earlier), earlier])
}

function descendants(lots: ReadonlyMap<string, Made>, lot: string): string[] {
  return [...lots]
    .filter(([, { from }]) => from.includes(lot))
    .flatMap(([later]) => [later, ...descendants(lots, later)])
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
