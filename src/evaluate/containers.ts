/** Checks over what goods were filled into: masses that come out, and numbers that stand for one. */

import { toDecimal } from '../metrology/rounding.ts'
import type { Reading } from '../metrology/written.ts'
import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import type { Entry, Records, Shipment } from '../records/types.ts'

type Part = Shipment['contents'][number]
export type Container = NonNullable<Part['containers']>[number]

type Decimal = ReturnType<typeof toDecimal>

const exact = ({ value }: Reading): Decimal => toDecimal(value)

const sum = (masses: readonly Decimal[]): Decimal =>
  masses.reduce((total, mass) => total.plus(mass), toDecimal(0))

/** Gross mass in g: as weighed, else tare and net together. */
export const grossOf = ({ gross_g, tare_g, net_g }: Container): Decimal =>
  gross_g ? exact(gross_g) : exact(tare_g).plus(exact(net_g))

const text = (mass: Decimal): string => `${mass.toFixed()} g`

/** Everything about containers that cannot be. */
export function checkContainers({ shipments }: Records): Problem[] {
  const entries = [...shipments.values()]
  return [
    ...entries.flatMap(entry => [
      ...entry.record.contents.flatMap((part, index) => checkPart(entry, part, index)),
      ...checkPackages(entry)
    ]),
    ...checkNumbers(entries)
  ]
}

function fault(entry: Entry<Shipment>, field: FieldPath, message: string, hint: string): Problem {
  return problemAt(entry.at(field), 'IMPOSSIBLE_BALANCE', message, hint)
}

/** What the containers hold is what the line sends, to the last digit. */
function checkPart(entry: Entry<Shipment>, part: Part, index: number): Problem[] {
  const { containers, mass_g } = part
  if (!containers) return []
  const held = sum(containers.map(({ net_g }) => exact(net_g)))
  const field = ['contents', index]
  return [
    ...(held.equals(exact(mass_g))
      ? []
      : [
          fault(
            entry,
            [...field, 'mass_g'],
            `the containers hold ${text(held)} together, the line sends ${mass_g.written}`,
            'the net masses add up to the mass of the line, to the last digit'
          )
        ]),
    ...containers.flatMap((one, place) => checkGross(entry, one, [...field, 'containers', place]))
  ]
}

/** A gross mass was weighed by itself: it may differ by a step of the coarsest of the three. */
function checkGross(entry: Entry<Shipment>, one: Container, field: FieldPath): Problem[] {
  const { gross_g, tare_g, net_g } = one
  if (!gross_g) return []
  const due = exact(tare_g).plus(exact(net_g))
  const step = Math.max(gross_g.resolution, tare_g.resolution, net_g.resolution)
  return exact(gross_g).minus(due).abs().greaterThan(toDecimal(step))
    ? [
        fault(
          entry,
          [...field, 'gross_g'],
          `weighs ${gross_g.written}, but tare and net come to ${text(due)}`,
          'check the three'
        )
      ]
    : []
}

/** What was packed weighs no more than the packages do. */
function checkPackages(entry: Entry<Shipment>): Problem[] {
  const { packing, contents } = entry.record
  const containers = contents.flatMap(part => part.containers ?? [])
  const packed = sum(containers.map(grossOf))
  return packing && packed.greaterThan(exact(packing.gross_g))
    ? [
        fault(
          entry,
          ['packing', 'gross_g'],
          `the packages weigh ${packing.gross_g.written}, less than the ${text(packed)} of the containers in them`,
          'check the masses'
        )
      ]
    : []
}

/** A recall goes by container: one number stands for one, whatever the shipment. */
function checkNumbers(entries: readonly Entry<Shipment>[]): Problem[] {
  const seen = new Map<string, string>()
  return entries.flatMap(entry =>
    entry.record.contents.flatMap(({ containers = [] }, index) =>
      containers.flatMap(({ number }, place) => {
        const before = seen.get(number)
        seen.set(number, before ?? entry.record.number)
        return before === undefined
          ? []
          : [
              problemAt(
                entry.at(['contents', index, 'containers', place, 'number']),
                'DUPLICATE_ID',
                `container ${number} is in shipment ${before} already`,
                'each container has a number of its own, whatever the shipment'
              )
            ]
      })
    )
  )
}
