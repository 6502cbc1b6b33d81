/**
 * Mass of what was charged: as weighed, or of a solution measured out by its density, which is the one
 * stated on the line, or its table's at the strength of the material's composition.
 */

import { massFractions } from '../chemistry/hydrometer.ts'
import {
  densityAt,
  densityTables,
  isSolute,
  massOfVolume,
  type Solute
} from '../chemistry/solutions.ts'
import { DomainError } from '../metrology/domain.ts'
import { type Estimate, exact, measured, propagate, rectangular } from '../metrology/estimate.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { Batch, Material, Records } from '../records/types.ts'
import { type Session, read } from './bench.ts'
import { baseOf, partsOf } from './composition.ts'
import { asStated } from './steps.ts'

export type Line = NonNullable<Batch['charge']>[number]

/** A room's temperature where a line names none, and how far off it may be, °C. */
const ROOM_C = 20
const ROOM_SPREAD_C = 5

/** The dissolved substance whose table tells the density, and its part, %; ammonia as NH3. */
function soluteOf(material: Material): { solute: Solute; percent: Estimate } | undefined {
  const known = partsOf(material).filter(({ name, percent }) => isSolute(name) && percent.value > 0)
  const [only, other] = known
  if (!only || other || !isSolute(only.name)) return undefined
  const percent = only.name === 'ammonia' ? baseOf(material)?.percent : only.percent
  return percent && { solute: only.name, percent }
}

/** The density that its record tells its strength by. */
const ownDensity = ({ composition = [] }: Material) =>
  composition.find(part => part.density_g_per_cm3)?.density_g_per_cm3

/**
 * Mass of a volume charged, g.
 *
 * @returns undefined where nothing tells its density
 * @throws DomainError outside the table of its density
 */
function massOf(
  material: Material,
  line: Line,
  volume_mL: Estimate,
  what: string
): Estimate | undefined {
  const stated = line.density_g_per_cm3 ?? ownDensity(material)
  if (stated) {
    const density = asStated(stated, `density of ${material.lot}`)
    return propagate(x => x.density * x.volume_mL, { density, volume_mL })
  }
  const found = soluteOf(material)
  if (!found) return undefined
  const { temperature_C } = line
  const inputs = {
    massFraction_percent: found.percent,
    temperature_C: temperature_C
      ? asStated(temperature_C, `temperature of ${what}`)
      : measured(ROOM_C, rectangular(ROOM_SPREAD_C), 'room temperature, not recorded'),
    volume_mL
  }
  return massOfVolume(found.solute, inputs)
}

/** Mass of a line as an estimate; undefined where it cannot be told, of which the check tells. */
export function chargedMass(
  session: Session,
  material: Material,
  line: Line,
  what: string
): Estimate | undefined {
  if (line.mass_g) return read(session, line.mass_g, 'g', 'mass', what)
  const { volume_mL } = line
  if (!volume_mL) return undefined
  const found = told(() =>
    massOf(material, line, read(session, volume_mL, 'mL', 'volume', what), what)
  )
  return found instanceof DomainError ? undefined : found
}

/** What is worked out, or why tables do not reach so far. */
function told<Value>(work: () => Value): Value | DomainError {
  try {
    return work()
  } catch (error) {
    if (error instanceof DomainError) return error
    throw error
  }
}

/** Mass of a line for stock and balance, g, and its last digit. */
export interface PlainMass {
  readonly value: number
  readonly step: number
}

const NOTHING: PlainMass = { value: 0, step: 0 }

export function plainMass({ materials }: Records, line: Line): PlainMass {
  const { mass_g, volume_mL } = line
  if (mass_g) return { value: mass_g.value, step: mass_g.resolution }
  const material = materials.get(line.material)?.record
  if (!volume_mL || !material) return NOTHING
  const mass = told(() => massOf(material, line, exact(volume_mL.value), 'this'))
  if (!mass || mass instanceof DomainError) return NOTHING
  return { value: mass.value, step: (mass.value * volume_mL.resolution) / volume_mL.value }
}

/** Volumes charged whose mass nothing tells. */
export const checkCharged = (content: Records): Problem[] =>
  [...content.batches.values()].flatMap(entry =>
    (entry.record.charge ?? []).flatMap((line, index) => {
      const material = content.materials.get(line.material)?.record
      const why =
        line.volume_mL && material ? untold(material, line, line.volume_mL.value) : undefined
      return why === undefined
        ? []
        : [problemAt(entry.at(['charge', index, 'volume']), 'INVALID_VALUE', ...why)]
    })
  )

function untold(material: Material, line: Line, volume: number): [string, string] | undefined {
  const mass = told(() => massOf(material, line, exact(volume), 'this'))
  if (mass instanceof DomainError)
    return [`tells no mass: ${mass.message}`, "weigh it, or add 'density:' beside it"]
  return mass
    ? undefined
    : [
        `is of ${material.lot}, of whose density nothing is known, so that it tells no mass`,
        "add 'density:' beside it, as measured or as its supplier states it, or its composition"
      ]
}

/** What a volume was taken to weigh, and by which density: for a reader. */
export function volumeText(content: Records, line: Line): string {
  const written = line.volume_mL?.written ?? ''
  const { value } = plainMass(content, line)
  if (!(value > 0) || !line.volume_mL) return written
  const density = value / line.volume_mL.value
  const material = content.materials.get(line.material)?.record
  const isStated = line.density_g_per_cm3 ?? (material && ownDensity(material))
  const by = isStated ? 'as stated' : 'by its table'
  const found = material && soluteOf(material)
  const note = found ? ambiguity(found.solute, density, line.temperature_C?.value ?? ROOM_C) : ''
  return `${written}, ${digits(value)} g at ${digits(density, 5)} g/cm³ ${by}${note}`
}

const digits = (value: number, most = 4) => Number(value.toPrecision(most)).toString()

/** Near its greatest density an acid's density belongs to two strengths, and does not tell which. */
function ambiguity(solute: Solute, density: number, temperature: number): string {
  const table = densityTables[solute]
  const [end] = table.massFraction_percent.slice(-1)
  if (density <= densityAt(table, end!, temperature)) return ''
  if (Math.max(...table.density_g_per_cm3) === table.density_g_per_cm3.at(-1)) return ''
  const both = strengthsText(solute, density, temperature)
  return `; such a density does not tell the strength${both}: that is as its composition says`
}

function strengthsText(solute: Solute, density: number, temperature: number): string {
  const found = told(() =>
    massFractions(solute, {
      density_g_per_cm3: exact(density),
      temperature_C: exact(temperature)
    })
  )
  return found instanceof DomainError || found.length < 2
    ? ''
    : ` (${found.map(({ value }) => `${digits(value)} %`).join(' or ')})`
}
