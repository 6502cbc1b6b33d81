/** What lots had, and everything that was taken from them. */

import type { FieldPath } from '../problem.ts'
import type { Batch, Complaint, Records, Entry, Foil, Incident, Waste } from '../records/types.ts'
import { plainMass } from './charged.ts'
import { paintUses, testUses } from './sample-uses.ts'
import type { Use } from './use.ts'

/** What a lot had, and since when. */
export interface Stock {
  readonly mass_g: number
  readonly since: string
  readonly until?: string | undefined
}

/** What a lot had to begin with; undefined for a number that stands for nothing. */
export function stockOf(content: Records, lot: string): Stock | undefined {
  const material = content.materials.get(lot)?.record
  if (material)
    return {
      mass_g: material.quantity_g.value,
      since: material.received,
      until: material.expires
    }
  const batch = content.batches.get(lot)?.record
  if (batch) return { mass_g: batch.product.mass_g.value, since: batch.made }
  const run = content.expansions.get(lot)?.record
  if (run) return { mass_g: run.worms.mass_g.value, since: run.made }
  const foil = content.foils.get(lot)?.record
  return foil && { mass_g: foilMass_g(foil), since: foil.made }
}

const foilMass_g = ({ saleable_g, sheets = [] }: Foil): number =>
  saleable_g?.value ?? sheets.reduce((sum, sheet) => sum + sheet.mass_g.value, 0)

/** Everything taken from any lot: charged, put in, weighed in for tests, retained, shipped, lost. */
export function allUses(content: Records): Use[] {
  const { batches, expansions, foils } = content
  const charged = [...batches.values()].flatMap(entry =>
    (entry.record.charge ?? []).map((line, index) => {
      const { value, step } = plainMass(content, line)
      return {
        purpose: 'used' as const,
        lot: line.material,
        mass_g: value,
        step_g: step,
        container: line.container,
        by: entry.record.lot,
        on: entry.record.made,
        entry,
        field: ['charge', index, 'material']
      }
    })
  )
  const made: readonly Entry<{
    lot: string
    made: string
    from?: readonly { lot: string; mass_g: { value: number } }[] | undefined
  }>[] = [...batches.values(), ...expansions.values(), ...foils.values()]
  const put = made.flatMap(entry =>
    (entry.record.from ?? []).map((use, index) => ({
      purpose: 'used' as const,
      lot: use.lot,
      mass_g: use.mass_g.value,
      by: entry.record.lot,
      on: entry.record.made,
      entry,
      field: ['from', index, 'lot']
    }))
  )
  return [
    ...charged,
    ...put,
    ...[...batches.values()].flatMap(testUses),
    ...paintUses(content),
    ...[...batches.values(), ...foils.values()].flatMap(retainedUse),
    ...shipped(content),
    ...lost(content)
  ]
}

/** What was put aside of a lot. */
function retainedUse(entry: Entry<Batch> | Entry<Foil>): Use[] {
  const { lot, made, sampling } = entry.record
  const mass = sampling?.retainedMass_g
  if (!mass) return []
  const field = ['sampling', 'retained-mass']
  return [
    {
      purpose: 'retained',
      lot,
      mass_g: mass.value,
      by: 'the retained sample',
      on: sampling.on ?? made,
      entry,
      field
    }
  ]
}

/** What customers were sent. */
const shipped = ({ shipments }: Records): Use[] =>
  [...shipments.values()].flatMap(entry =>
    entry.record.contents.map(({ lot, mass_g }, index) => ({
      purpose: 'shipped' as const,
      lot,
      mass_g: mass_g.value,
      by: `shipment ${entry.record.number}`,
      on: entry.record.sent,
      entry,
      field: ['contents', index, 'lot']
    }))
  )

/** What was thrown away or spilled of a lot itself. */
const lost = ({ waste, incidents }: Records): Use[] => [
  ...[...waste.values()].flatMap(entry =>
    lostBy(entry, `waste ${entry.record.number}`, entry.record.collected)
  ),
  ...[...incidents.values()].flatMap(entry =>
    lostBy(entry, `incident ${entry.record.number}`, entry.record.happened)
  )
]

const lostBy = (entry: Entry<Waste> | Entry<Incident>, by: string, on: string): Use[] =>
  (entry.record.lost ?? []).map(({ lot, container, mass_g }, index) => ({
    purpose: 'lost',
    lot,
    mass_g: mass_g.value,
    step_g: mass_g.resolution,
    container,
    by,
    on,
    entry,
    field: ['lost', index, 'lot']
  }))

type ReturnedPart = NonNullable<Complaint['returned']>[number]

/** Goods of a lot that came back from a shipment. */
export interface Return {
  readonly lot: string
  readonly shipment: string
  readonly mass_g: number
  readonly on: string
  /** The container it came back in, where that was recorded. */
  readonly container?: string | undefined
  /** What was decided on them; goods without a decision are in quarantine. */
  readonly decision?: ReturnedPart['decision']
  readonly entry: Entry<Complaint>
  readonly field: FieldPath
}

/** Everything customers sent back. */
export const allReturns = ({ complaints }: Pick<Records, 'complaints'>): Return[] =>
  [...complaints.values()].flatMap(entry =>
    (entry.record.returned ?? []).map(({ mass_g, on, container, decision }, index) => ({
      lot: entry.record.lot,
      shipment: entry.record.shipment,
      mass_g: mass_g.value,
      on,
      container,
      decision,
      entry,
      field: ['returned', index, 'mass_g']
    }))
  )

/** Mass of a lot that came back and was put into stock again by a day. */
export const restockedBy = (returns: readonly Return[], lot: string, day: string): number =>
  returns
    .filter(part => part.lot === lot && part.decision?.is === 'restocked')
    .filter(({ decision }) => decision !== undefined && decision.on <= day)
    .reduce((sum, { mass_g }) => sum + mass_g, 0)
