/**
 * Checks over incoming lots by their containers. Several of these substances are regulated: a loss that
 * nobody can explain is told.
 */

import { toDecimal } from '../metrology/rounding.ts'
import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import type { Entry, Material, Records } from '../records/types.ts'
import { suggestion } from '../records/validate.ts'
import { isTold, massOf, sum, usesOf } from './container-stock.ts'
import type { Use } from './use.ts'
import { allUses } from './uses.ts'

type Container = NonNullable<Material['containers']>[number]
type Count = NonNullable<Material['counted']>[number]

/** Everything about the containers of incoming lots that cannot be. */
export function checkStockContainers({ materials }: Records, uses: readonly Use[]): Problem[] {
  const named = uses.filter(({ container }) => container !== undefined)
  const kept = [...materials.values()].filter(({ record }) => record.containers)
  return [
    ...named.flatMap(use => checkNamed(materials.get(use.lot)?.record, use)),
    ...kept.flatMap(entry => {
      const own = uses.filter(({ lot }) => lot === entry.record.lot)
      return [...checkNet(entry), ...checkTaken(entry.record, own)]
    })
  ]
}

/** Counts of incoming lots that all records together do not explain: a part of them never could. */
export function checkStockCounts(records: Records): Problem[] {
  const uses = allUses(records)
  return [...records.materials.values()]
    .filter(({ record }) => record.counted ?? record.containers)
    .flatMap(entry =>
      checkCounted(
        entry,
        uses.filter(({ lot }) => lot === entry.record.lot)
      )
    )
}

function checkNet(entry: Entry<Material>): Problem[] {
  const { containers, quantity_g } = entry.record
  if (!containers) return []
  const held = sum(containers.map(({ net_g }) => net_g.value))
  const twice = containers.flatMap(({ number }, index) =>
    containers.findIndex(other => other.number === number) < index
      ? [
          problemAt(
            entry.at(['containers', index, 'number']),
            'DUPLICATE_ID',
            `container ${number} stands above already`,
            'each container of a lot has a number of its own'
          )
        ]
      : []
  )
  if (held.equals(toDecimal(quantity_g.value))) return twice
  return [
    problemAt(
      entry.at(['quantity_g']),
      'IMPOSSIBLE_BALANCE',
      `is ${quantity_g.written}, but the containers hold ${held.toFixed()} g together`,
      'the net masses of the containers add up to the quantity, to the last digit'
    ),
    ...twice
  ]
}

const containerField = ({ field }: Use): FieldPath => [...field.slice(0, -1), 'container']

function checkNamed(material: Material | undefined, use: Use): Problem[] {
  const numbers = (material?.containers ?? []).map(({ number }) => number)
  if (!material || use.container === undefined || numbers.includes(use.container)) return []
  return [
    problemAt(
      use.entry.at(containerField(use)),
      'UNKNOWN_REFERENCE',
      `${material.lot} has no container '${use.container}'`,
      suggestion(use.container, numbers, 'its containers')
    )
  ]
}

/** The use that takes more than its container holds gets the problem. */
function checkTaken(material: Material, uses: readonly Use[]): Problem[] {
  return (material.containers ?? []).flatMap(one => {
    let left = toDecimal(one.net_g.value)
    return usesOf(one, material, uses)
      .filter(({ container }) => container !== undefined)
      .toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
      .flatMap(use => {
        const before = left
        left = left.minus(toDecimal(use.mass_g))
        if (!left.isNegative()) return []
        return [
          problemAt(
            use.entry.at(containerField(use)),
            'OVERDRAWN',
            `${use.by} takes ${use.mass_g} g from container ${one.number} of ${material.lot}, which has ${before.toFixed()} g left`,
            'check the masses, and the containers they were taken from'
          )
        ]
      })
  })
}

/** What was counted, beside what the records leave since the count before. */
interface Held {
  readonly what: string
  readonly full: Container['net_g']
  readonly counts: readonly Count[]
  readonly field: FieldPath
}

function checkCounted(entry: Entry<Material>, uses: readonly Use[]): Problem[] {
  const { lot, quantity_g, counted = [], containers = [] } = entry.record
  const whole: Held = { what: lot, full: quantity_g, counts: counted, field: ['counted'] }
  const each = containers.flatMap((one, index) => {
    const what = `container ${one.number} of ${lot}`
    const field = ['containers', index, 'counted']
    const held: Held = { what, full: one.net_g, counts: one.counted ?? [], field }
    return isTold(entry.record, uses)
      ? differences(entry, held, usesOf(one, entry.record, uses))
      : []
  })
  return [...differences(entry, whole, uses), ...each]
}

function differences(entry: Entry<Material>, held: Held, uses: readonly Use[]): Problem[] {
  const inOrder = held.counts
    .map((count, index) => ({ ...count, index }))
    .sort((a, b) => (a.on < b.on ? -1 : 1))
  return inOrder.flatMap((count, place) => {
    const before = inOrder[place - 1]
    const start = before?.mass_g ?? held.full
    const between = uses.filter(({ on }) => on > (before?.on ?? '') && on <= count.on)
    const missing = toDecimal(start.value)
      .minus(massOf(between))
      .minus(toDecimal(count.mass_g.value))
    // Each mass is known to its last digit.
    const steps = [
      start.resolution,
      count.mass_g.resolution,
      ...between.map(use => use.step_g ?? 0)
    ]
    if (missing.abs().lessThanOrEqualTo(sum(steps))) return []
    return [
      problemAt(
        entry.at([...held.field, count.index, 'mass_g']),
        'STOCK_DIFFERENCE',
        `of ${held.what}, ${count.mass_g.written} was found on ${count.on}, ${missing.abs().toFixed()} g ${missing.isNegative() ? 'more' : 'less'} than the records leave`,
        'look for what was not written down: a spill, waste, a use; where a loss of a regulated substance stays unexplained, local law says who must be told'
      )
    ]
  })
}
