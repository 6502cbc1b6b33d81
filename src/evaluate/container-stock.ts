/** Incoming lots that stand in several containers: what was taken from each, and what is left. */

import { toDecimal } from '../metrology/rounding.ts'
import type { Material } from '../records/types.ts'
import type { Use } from './use.ts'

type Decimal = ReturnType<typeof toDecimal>
type Container = NonNullable<Material['containers']>[number]
type Count = NonNullable<Material['counted']>[number]

/** A container on a day. */
export interface ContainerStock {
  readonly number: string
  readonly net_g: Decimal
  readonly taken_g: Decimal
  /** By its last count and what was taken since; without one by the records. */
  readonly left_g: Decimal
  /** By the records, found nowhere; below zero where more was found. */
  readonly difference_g: Decimal
  readonly counted?: string
}

export const sum = (masses: readonly number[]): Decimal =>
  masses.reduce((total, mass) => total.plus(toDecimal(mass)), toDecimal(0))

export const massOf = (uses: readonly Use[]): Decimal => sum(uses.map(({ mass_g }) => mass_g))

/** Uses of one container; those of a lot in a single one need not name it. */
export function usesOf(
  { number }: Container,
  { containers = [] }: Material,
  uses: readonly Use[]
): readonly Use[] {
  return uses.filter(({ container }) => (container ?? containers[0]!.number) === number)
}

/** Whether it is known for each use which container it was taken from. */
export const isTold = ({ containers = [] }: Material, uses: readonly Use[]): boolean =>
  containers.length === 1 || uses.every(({ container }) => container !== undefined)

/**
 * The containers of a lot on a day, in the order recorded.
 *
 * @param uses everything taken from the lot
 * @returns with them what was taken without saying from which, in g
 */
export function containerStock(
  material: Material,
  uses: readonly Use[],
  day: string
): { readonly containers: readonly ContainerStock[]; readonly untold_g: Decimal } {
  const past = uses.filter(({ on }) => on <= day)
  const { containers = [] } = material
  const told = containers.length > 1 ? past.filter(use => use.container !== undefined) : past
  return {
    containers: containers.map(one => stockOfOne(one, usesOf(one, material, told), day)),
    untold_g: massOf(past).minus(massOf(told))
  }
}

function stockOfOne(one: Container, uses: readonly Use[], day: string): ContainerStock {
  const { number, net_g, counted = [] } = one
  const last = counted
    .filter(({ on }) => on <= day)
    .reduce<Count | undefined>((a, b) => (a && a.on > b.on ? a : b), undefined)
  const taken_g = massOf(uses)
  const book_g = toDecimal(net_g.value).minus(taken_g)
  const left_g = last
    ? toDecimal(last.mass_g.value).minus(massOf(uses.filter(({ on }) => on > last.on)))
    : book_g
  return {
    number,
    net_g: toDecimal(net_g.value),
    taken_g,
    left_g,
    difference_g: book_g.minus(left_g),
    ...(last ? { counted: last.on } : {})
  }
}
