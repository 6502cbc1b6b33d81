/**
 * What is dissolved around the flake from step to step: acid, salt and liquor, by mass balance.
 *
 * Everything charged that is not graphite counts as liquor, and all acid as dissolved: what the graphite
 * took up is not known before it is dry, and leaving it in makes every demand an upper bound.
 */

import { acidEquivalents, type Base, supplied } from '../chemistry/neutralisation.ts'
import { drained } from '../chemistry/washing.ts'
import { type Estimate, exact, propagate } from '../metrology/estimate.ts'
import type { Batch, Material } from '../records/types.ts'
import { type Bench, read, type Session } from './bench.ts'
import { chargedMass } from './charged.ts'
import { acidsOf, baseOf, percentOf } from './composition.ts'
import { oncePer } from '../records/once.ts'
import { total } from './steps.ts'

export interface Liquor {
  readonly liquor_g: Estimate
  /** Hydrogen ion, mol. */
  readonly acid_mol: Estimate
  /** Hydrogen ion taken up by neutralisers, mol: the charge of the salt they left. */
  readonly salt_mol: Estimate
}

/** One line of the charge with what its material is. */
export interface ChargeLine {
  readonly lot: string
  readonly role: string
  readonly material: Material
  readonly mass_g: Estimate
  readonly index: number
}

/** One step with the liquor before and after. */
export interface Stage {
  readonly index: number
  readonly added: readonly ChargeLine[]
  readonly water_g: Estimate
  /** What the neutralisers among the added can do. */
  readonly base: Neutraliser | undefined
  readonly before: Liquor
  /** All of it once everything was added, before anything drained, g. */
  readonly mixed_g: Estimate
  readonly after: Liquor
  readonly does: string | undefined
  readonly isDrained: boolean
}

/** Lines of a charge, each weighed on the batch's balance: once for all figures of the lot. */
export const chargeLines = (session: Session, batch: Batch): readonly ChargeLine[] =>
  weigh(session.bench, session, batch)

const weigh = oncePer((_: Bench, session: Session, batch: Batch): readonly ChargeLine[] =>
  (batch.charge ?? []).flatMap((line, index) => {
    const material = session.bench.content.materials.get(line.material)?.record
    const mass_g = material && chargedMass(session, material, line, `charged, part ${index + 1}`)
    return mass_g
      ? [
          {
            lot: line.material,
            role: line.as === 'other' && material.kind === 'neutraliser' ? 'neutraliser' : line.as,
            material,
            mass_g,
            index
          }
        ]
      : []
  })
)

/** Hydrogen ion that lines of a charge bring, mol. */
export const acidIn = (lines: readonly ChargeLine[]): Estimate =>
  sum(
    lines.flatMap(({ material, mass_g }) =>
      acidsOf(material).map(({ acid, percent }) =>
        acidEquivalents(acid, { acid_g: partOf(mass_g, percent) })
      )
    )
  )

/** Mass of one substance in lines of a charge, g. */
export const substanceIn = (lines: readonly ChargeLine[], name: string): Estimate =>
  sum(lines.map(({ material, mass_g }) => partOf(mass_g, percentOf(material, name))))

/** A neutraliser, or several by the first one's base. */
export interface Neutraliser {
  readonly base: Base
  /** Its strength, %; ammonia as NH3. */
  readonly percent: Estimate
  /** Hydrogen ion that all of it can take up, mol. */
  readonly supplied_mol: Estimate
}

/** What lines of neutralisers can do; undefined where none holds a base. */
export function baseIn(lines: readonly ChargeLine[]): Neutraliser | undefined {
  const found = lines.flatMap(({ material, mass_g }) => {
    const part = baseOf(material)
    return part
      ? [{ ...part, mol: supplied(part.base, { base_g: mass_g, strength_percent: part.percent }) }]
      : []
  })
  const [first] = found
  return (
    first && { base: first.base, percent: first.percent, supplied_mol: sum(found.map(f => f.mol)) }
  )
}

export const partOf = (mass_g: Estimate, percent: Estimate): Estimate =>
  propagate(x => (x.mass_g * x.percent) / 100, { mass_g, percent })

export const sum = (parts: readonly Estimate[]): Estimate =>
  parts.length === 0 ? exact(0) : total(parts)

const less = (a: Estimate, b: Estimate): Estimate => propagate(x => x.a - x.b, { a, b })

const lesser = (a: Estimate, b: Estimate): Estimate => (a.value <= b.value ? a : b)

/**
 * The stages of a batch whose steps say what they do; undefined where none does. Lines that no step
 * names went in at the start; neutralisers at the first step that neutralises, water at the quench.
 *
 * @throws DomainError where a cake holds more than there was, or ammonia's strength is not said
 */
export function stagesOf(session: Session, batch: Batch): Stage[] | undefined {
  const { steps = [] } = batch
  if (!steps.some(({ does }) => does !== undefined)) return undefined
  const lines = chargeLines(session, batch).filter(({ role }) => role !== 'graphite')
  const named = new Set(steps.flatMap(({ adds = [] }) => adds))
  const at = (line: ChargeLine): number => {
    if (named.has(line.lot)) return steps.findIndex(({ adds = [] }) => adds.includes(line.lot))
    const action = { neutraliser: 'neutralise', water: 'quench' }[line.role]
    return Math.max(
      0,
      steps.findIndex(({ does }) => action !== undefined && does === action)
    )
  }
  const product_g = read(session, batch.product.mass_g, 'g', 'mass', 'product mass')
  let liquor: Liquor = { liquor_g: exact(0), acid_mol: exact(0), salt_mol: exact(0) }
  return steps.map((step, index) => {
    const added = lines.filter(line => at(line) === index)
    const base = baseIn(added)
    const water_g = step.water_g
      ? read(session, step.water_g, 'g', 'mass', `water, step ${index + 1}`)
      : exact(0)
    const before = liquor
    const mixed = mixedLiquor(before, added, base, water_g)
    liquor = step.cake_g
      ? afterDraining(
          mixed,
          read(session, step.cake_g, 'g', 'mass', `cake, step ${index + 1}`),
          product_g
        )
      : mixed
    const mixed_g = mixed.liquor_g
    const isDrained = step.cake_g !== undefined
    return {
      index,
      added,
      water_g,
      base,
      before,
      mixed_g,
      after: liquor,
      does: step.does,
      isDrained
    }
  })
}

/** The liquor once everything was added. */
function mixedLiquor(
  before: Liquor,
  added: readonly ChargeLine[],
  base: Neutraliser | undefined,
  water_g: Estimate
): Liquor {
  const acid_mol = sum([before.acid_mol, acidIn(added)])
  const neutralised = lesser(base?.supplied_mol ?? exact(0), acid_mol)
  return {
    liquor_g: sum([before.liquor_g, water_g, ...added.map(({ mass_g }) => mass_g)]),
    acid_mol: less(acid_mol, neutralised),
    salt_mol: sum([before.salt_mol, neutralised])
  }
}

/** What the wet cake holds back, where one was weighed. */
function afterDraining(
  { liquor_g, acid_mol, salt_mol }: Liquor,
  cake_g: Estimate,
  product_g: Estimate
): Liquor {
  const retained_g = less(cake_g, product_g)
  const left = (dissolved: Estimate) => drained({ dissolved, liquor_g, retained_g })
  return { liquor_g: retained_g, acid_mol: left(acid_mol), salt_mol: left(salt_mol) }
}
