/**
 * A charge from the producer's own recipe and records. It invents neither a ratio nor a limit, goes
 * beyond none, and calls nothing safe.
 */

import { volumeOfMass, isSolute } from '../chemistry/solutions.ts'
import {
  chargeLimitOn,
  type ChargeLimit,
  exceeded,
  type ChargeMasses,
  massesOf
} from '../evaluate/charge-limits.ts'
import { substanceName } from '../evaluate/substance-name.ts'
import { withSide } from '../evaluate/strength.ts'
import { partsOf } from '../evaluate/composition.ts'
import type { EvaluatedContent } from '../evaluate/types.ts'
import { DomainError, inWords } from '../metrology/domain.ts'
import { exact } from '../metrology/estimate.ts'
import { versionOn } from '../records/references.ts'
import type { Grade, Material, Producer } from '../records/types.ts'
import { openGraph, type TraceGraph } from '../trace/graph.ts'
import { cautionsOf } from './cautions.ts'
import { largestLoss, pastYields } from './past.ts'
import {
  chargeOf,
  neutraliserOf,
  plannedGas,
  plannedHeats,
  plannedNeutralising,
  plannedWashing
} from './process.ts'
import { partName, type RecipePart, suits, takeFrom, usableLots } from './stock.ts'
import {
  type PastYields,
  type Plan,
  type Planned,
  type PlannedPart,
  type PlanRequest,
  Refusal
} from './types.ts'

/** Plan a charge, or say every reason why not. */
export function planCharge(content: EvaluatedContent, request: PlanRequest): Planned {
  try {
    return plan(content, request)
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, reasons: [error.message] }
    if (error instanceof DomainError)
      return { ok: false, reasons: [`${inWords(error.input)} ${error.reason}: ${error.hint}`] }
    throw error
  }
}

type Recipe = NonNullable<Grade['recipe']>

function plan(given: EvaluatedContent, request: PlanRequest): Planned {
  const content = request.acid ? withSide(given.content, request.acid) : given.content
  const evaluated = { ...given, content }
  const { grade, recipe } = recipeOf(evaluated, request)
  const yields = pastYields(evaluated, grade.id, request.day)
  const stock = openGraph(content, request.day)
  const graphite_g = graphiteFor(stock, recipe, yields, request)
  const masses = massesFor(recipe, graphite_g)
  const limit = limitFor(content.producer.record, request)
  const over = exceeded(masses, limit)
  if (over.length > 0)
    return {
      ok: false,
      over: { limit, exceeded: over },
      reasons: over.map(
        ({ text }) =>
          `${text}, the documented limit of vessel ${limit.vessel} (${limit.assessment})`
      )
    }
  const parts = recipe.parts.flatMap(part => partFor(stock, part, graphite_g))
  requireOnce(parts)
  requireTold(parts)
  return {
    ok: true,
    plan: {
      grade,
      day: request.day,
      graphite_g,
      parts,
      masses,
      limit,
      yields,
      ...consequences(evaluated, recipe, parts, graphite_g, yields, request),
      cautions: cautionsOf([
        ...parts.flatMap(({ takings }) => takings.map(({ material }) => material)),
        ...unmeasured(stock, recipe)
      ])
    }
  }
}

/** A lot that two parts ask for has to hold both. */
function requireOnce(parts: readonly PlannedPart[]): void {
  const taken = new Map<string, number>()
  for (const { material, mass_g, left_g } of parts.flatMap(({ takings }) => takings)) {
    const all = (taken.get(material.lot) ?? 0) + mass_g
    taken.set(material.lot, all)
    if (all > left_g * (1 + 1e-9))
      throw new Refusal(`two parts of the recipe ask for more of ${material.lot} than it has left`)
  }
}

/** A density that belongs to two strengths does not tell which was meant, and none is guessed. */
function requireTold(parts: readonly PlannedPart[]): void {
  const [unsaid] = parts
    .flatMap(({ takings }) => takings.flatMap(({ material }) => partsOf(material)))
    .flatMap(part => part.unsaid ?? [])
  if (!unsaid) return
  throw new Refusal(
    unsaid.between
      ? `${unsaid.why}: take the strength from the supplier’s certificate, or titrate it, and record it as a fraction`
      : `${unsaid.why}: look at the label, and give --acid weaker or --acid stronger`
  )
}

/** Lots that go in by need, such as a neutraliser: what may go wrong with them counts too. */
const unmeasured = (stock: TraceGraph, { parts }: Recipe): Material[] =>
  parts
    .filter(({ as, perGram }) => as !== 'graphite' && !perGram)
    .flatMap(part => usableLots(stock, part).slice(0, 1))
    .map(({ material }) => material)

function recipeOf({ content }: EvaluatedContent, { grade: id, day }: PlanRequest) {
  const versions = content.grades.get(id)
  if (!versions) throw new Refusal(`there is no grade ${id}`)
  const grade = versionOn(versions, day)?.record
  if (!grade) throw new Refusal(`grade ${id} has no revision valid on ${day}`)
  if (!grade.recipe)
    throw new Refusal(
      `grade ${id}, revision ${grade.revision}, has no recipe: write your own ratios under 'recipe:'; none is made up here`
    )
  return { grade, recipe: grade.recipe }
}

/** Graphite to charge for what is asked. */
function graphiteFor(
  stock: TraceGraph,
  { parts }: Recipe,
  { mean_percent }: PastYields,
  { wish, day, grade }: PlanRequest
): number {
  if ('graphite_g' in wish) return wish.graphite_g
  if ('product_g' in wish) {
    if (mean_percent === undefined)
      throw new Refusal(
        `there is no past batch of ${grade} whose yield is known: plan from a charge, with --graphite`
      )
    return (100 * wish.product_g) / mean_percent
  }
  const material = stock.records.materials.get(wish.useUp)?.record
  if (!material) throw new Refusal(`there is no material lot ${wish.useUp}`)
  const part = parts.find(one => suits(material, one))
  if (!part) throw new Refusal(`${wish.useUp} is nothing that the recipe of ${grade} asks for`)
  const lot = usableLots(stock, part).find(one => one.material === material)
  if (!lot) throw new Refusal(`${wish.useUp} has nothing left, or may not be used on ${day}`)
  return lot.left_g / ratioOf(part, wish.useUp)
}

function ratioOf({ as, perGram }: RecipePart, lot: string): number {
  if (as === 'graphite') return 1
  if (perGram) return perGram.value
  throw new Refusal(`the recipe gives no ratio for ${lot} to be used up by`)
}

function massesFor({ parts }: Recipe, graphite_g: number): ChargeMasses {
  const lines = parts
    .filter(({ as }) => as !== 'graphite')
    .map(({ as, perGram }) => ({ as, mass_g: { value: (perGram?.value ?? 0) * graphite_g } }))
  return massesOf({ charge: [{ as: 'graphite', mass_g: { value: graphite_g } }, ...lines] })
}

/** The documented limit of the vessel asked for, or of the only one there is. */
function limitFor(producer: Producer, { vessel, day }: PlanRequest): ChargeLimit {
  const vessels = [...new Set((producer.chargeLimits ?? []).map(limit => limit.vessel))]
  const named = vessel ?? (vessels.length === 1 ? vessels[0] : undefined)
  if (named === undefined)
    throw new Refusal(
      vessels.length === 0
        ? "no charge limit is documented: state yours in producer.yaml under 'charge-limits', with the assessment it rests on; none is made up here"
        : `the vessel is not named: give --vessel with one of ${vessels.join(', ')}`
    )
  const limit = chargeLimitOn(producer, named, day)
  if (!limit) throw new Refusal(`vessel ${named} has no documented limit in force on ${day}`)
  return limit
}

function partFor(stock: TraceGraph, part: RecipePart, graphite_g: number): PlannedPart[] {
  if (part.as !== 'graphite' && !part.perGram) return []
  const mass_g = (part.perGram?.value ?? 1) * graphite_g
  const takings = takeFrom(stock, part, mass_g)
  return [{ role: part.as, name: partName(part), mass_g, takings, ...volumeFor(part, mass_g) }]
}

/** Volume at 20 °C of a solution whose density is tabulated. */
function volumeFor(part: RecipePart, mass_g: number): Pick<PlannedPart, 'volume_mL'> {
  const solute = substanceName(part.substance ?? '')
  const strength = part.strength_percent?.value
  if (!isSolute(solute) || strength === undefined || solute === 'ammonia') return {}
  try {
    return {
      volume_mL: volumeOfMass(solute, {
        massFraction_percent: exact(strength),
        temperature_C: exact(20),
        mass_g: exact(mass_g)
      })
    }
  } catch (error) {
    // A solid, or stronger than the table: it is weighed.
    if (error instanceof DomainError) return {}
    throw error
  }
}

/** Everything that follows from the masses. */
function consequences(
  evaluated: EvaluatedContent,
  recipe: Recipe,
  parts: readonly PlannedPart[],
  graphite_g: number,
  yields: PastYields,
  request: PlanRequest
): Pick<Plan, 'product_g' | 'heats' | 'neutralising' | 'washing' | 'gas' | 'waste'> {
  const charge = chargeOf(parts)
  const product_g = productOf(yields, graphite_g)
  const heats = plannedHeats(charge)
  const washing =
    recipe.washing && product_g
      ? plannedWashing(charge, graphite_g, product_g.expected, recipe.washing)
      : undefined
  const neutraliser = recipe.parts.find(({ as }) => as === 'neutraliser')
  const base =
    neutraliser &&
    neutraliserOf(
      parts.find(({ role }) => role === 'neutraliser'),
      neutraliser,
      request
    )
  const neutralising = base && plannedNeutralising(charge, base, washing)
  const liquor_g = charge.reacting_g + charge.water_g.value
  return {
    ...(product_g ? { product_g } : {}),
    ...(heats ? { heats } : {}),
    ...(neutralising ? { neutralising } : {}),
    ...(washing ? { washing } : {}),
    ...gasOf(evaluated, product_g?.expected, yields, request.day),
    waste: {
      liquor_g: liquor_g - (washing?.retained_g ?? 0),
      acid_g: charge.acid_g.value,
      ...(washing ? { washWater_g: washing.washes * washing.wash_g } : {})
    }
  }
}

function productOf({ mean_percent, next }: PastYields, graphite_g: number): Plan['product_g'] {
  const of = (percent: number) => (percent / 100) * graphite_g
  return mean_percent === undefined
    ? undefined
    : {
        expected: of(mean_percent),
        ...(next ? { low: of(next.low_percent), high: of(next.high_percent) } : {})
      }
}

/** From the largest loss there was, or before the first furnace run from all that was taken up. */
function gasOf(
  evaluated: EvaluatedContent,
  product_g: number | undefined,
  { mean_percent = 0 }: PastYields,
  day: string
): Pick<Plan, 'gas'> {
  if (product_g === undefined) return {}
  const loss = largestLoss(evaluated, day)
  const basis: readonly [number, string] =
    loss === undefined
      ? [Math.max(0, 100 - 10000 / mean_percent), 'all that is taken up']
      : [loss, "the largest loss of this workshop's furnace runs"]
  return { gas: plannedGas(product_g, basis, evaluated.content.producer.record.room_m3) }
}
