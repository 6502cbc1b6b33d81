/** Which material lots a part is taken from: the oldest that may still be used, first. */

import { containerStock } from '../evaluate/container-stock.ts'
import { allUses } from '../evaluate/uses.ts'
import { partsOf } from '../evaluate/composition.ts'
import { substanceName } from '../evaluate/substance-name.ts'
import type { Material } from '../records/types.ts'
import { balanceOf } from '../trace/balance.ts'
import type { TraceGraph } from '../trace/graph.ts'
import { Refusal, type Taking } from './types.ts'

/** A part of a recipe. */
export interface RecipePart {
  readonly as: string
  readonly title?: string | undefined
  readonly substance?: string | undefined
  readonly strength_percent?: { readonly value: number; readonly written: string } | undefined
  readonly perGram?: { readonly value: number } | undefined
}

/** How far a lot's stated strength may lie from the recipe's, in % of the solution. */
const STRENGTH_SLACK = 1

/** Where a recipe names no strength, a lot is mostly what it asks for: above this, %. */
const MAIN = 50

export const partName = ({ as, title, substance, strength_percent }: RecipePart): string =>
  [title ?? substance ?? as, strength_percent?.written].filter(Boolean).join(', ')

/** Whether a lot is what a part of the recipe asks for. */
export function suits(material: Material, part: RecipePart): boolean {
  if (part.title !== undefined && material.title !== part.title) return false
  // Acid holds water too, and is none.
  if (material.kind !== (part.as === 'water' ? 'other' : part.as)) return false
  if (part.substance === undefined) return true
  const wanted = substanceName(part.substance)
  const held = partsOf(material).find(({ name }) => name === wanted)
  if (!held) return false
  const strength = part.strength_percent?.value
  if (strength === undefined) return held.percent.value > MAIN
  const { unsaid } = held
  const near = (percent: number) => Math.abs(percent - strength) <= STRENGTH_SLACK
  if (!unsaid) return near(held.percent.value)
  const isBetween = unsaid.least_percent <= strength && strength <= held.percent.value
  return near(held.percent.value) || near(unsaid.least_percent) || (unsaid.between && isBetween)
}

/** Lots a part may be taken from on the stock's day, oldest first, with what is left of each. */
export function usableLots(stock: TraceGraph, part: RecipePart): Taking[] {
  const { records, asOf: day, lots } = stock
  return [...records.materials.values()]
    .map(({ record }) => record)
    .filter(({ received, expires }) => received <= day && day <= (expires ?? day))
    .filter(material => suits(material, part))
    .sort((a, b) =>
      a.received < b.received ? -1 : a.received > b.received ? 1 : a.lot < b.lot ? -1 : 1
    )
    .flatMap(material => {
      const traced = lots.get(material.lot)
      const left_g = traced ? balanceOf(stock, traced).inStock_g.toNumber() : 0
      return left_g > 0 ? [{ material, mass_g: 0, left_g }] : []
    })
}

/** What is taken of a lot, container by container: those already opened first. */
function byContainer({ records, asOf }: TraceGraph, taking: Taking): Taking[] {
  const uses = allUses(records).filter(({ lot }) => lot === taking.material.lot)
  const { containers } = containerStock(taking.material, uses, asOf)
  const isOpened = ({ taken_g }: (typeof containers)[number]) => !taken_g.isZero()
  let wanted = taking.mass_g
  const parts = [
    ...containers.filter(isOpened),
    ...containers.filter(one => !isOpened(one))
  ].flatMap(({ number, left_g }) => {
    const mass_g = Math.min(wanted, left_g.toNumber())
    wanted -= mass_g
    const container = { number, left_g: left_g.toNumber() }
    return mass_g > 0 ? [{ ...taking, mass_g, container }] : []
  })
  // What counts of single containers do not cover: the lot has it, somewhere.
  return wanted > taking.mass_g * 1e-9 ? [...parts, { ...taking, mass_g: wanted }] : parts
}

/**
 * Masses to take of each lot, oldest first.
 *
 * @throws Refusal where there is not enough of what the recipe asks for
 */
export function takeFrom(stock: TraceGraph, part: RecipePart, mass_g: number): Taking[] {
  let wanted = mass_g
  const takings = usableLots(stock, part).flatMap(lot => {
    const taken = Math.min(wanted, lot.left_g)
    wanted -= taken
    return taken > 0 ? byContainer(stock, { ...lot, mass_g: taken }) : []
  })
  if (wanted > mass_g * 1e-9)
    throw new Refusal(
      `${Number(mass_g.toPrecision(4))} g of ${partName(part)} are needed, and usable lots have ${Number((mass_g - wanted).toPrecision(4))} g left`
    )
  return takings
}
