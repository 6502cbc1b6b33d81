/**
 * Cautions for exactly what goes into a charge: its reagents' labels, how to handle them, what must not
 * meet, gases that can come off, limits of exposure, and a reminder of how waste is disposed of.
 *
 * `cautions.json` holds the sentences, each with its source. A substance of which nothing is known
 * here is named as such, never passed over.
 */

import file from './cautions.json' with { type: 'json' }
import { classify } from './classify.ts'
import type { ClassName, Pictogram, SignalWord } from './classes.ts'
import type { Clause } from './clauses.ts'
import { type Agent, agents } from './exposure.ts'
import { labelElements, type StatementCode } from './label-elements.ts'
import { type Ingredient, nameOf } from './mixture.ts'
import { choosePrecautions } from './precautions.ts'
import { isKnown, type Substance } from './substances.ts'

/** Something weighed in, with what it consists of. */
export interface Charged {
  /** 'Sulfuric acid, 96 %' */
  readonly name: string
  readonly ingredients: readonly Ingredient[]
}

/** One sentence without a full stop, and what it rests on. */
export interface CautionLine extends Clause {
  readonly text: string
}

export interface ReagentLabel {
  readonly name: string
  readonly classes: readonly ClassName[]
  readonly pictograms: readonly Pictogram[]
  readonly signal?: SignalWord
  /** H and EUH statements. */
  readonly statements: readonly StatementCode[]
  /** P statements. */
  readonly precautions: readonly string[]
  /** What is not known of it, as sentences without a full stop: its supplier's sheet decides. */
  readonly gaps: readonly string[]
}

export interface CautionBlock {
  /** What was charged, in its order. */
  readonly reagents: readonly ReagentLabel[]
  readonly handling: readonly CautionLine[]
  /** `together`: both sides are in this charge. */
  readonly incompatible: readonly (CautionLine & { readonly together: boolean })[]
  readonly gases: readonly (CautionLine & { readonly gas: string })[]
  /** Of the substances charged and the gases that can come off; agents without a limit are left out. */
  readonly exposure: readonly Agent[]
  readonly disposal: readonly CautionLine[]
  /** Substances nothing is known of. */
  readonly unknown: readonly string[]
}

interface Group {
  readonly traits?: readonly string[]
  readonly substances: readonly string[]
}

/** The shape of cautions.json, which a schema in the tests holds. */
interface CautionFile {
  readonly groups: Readonly<Record<string, Group>>
  readonly handling: readonly (CautionLine & { readonly of: readonly string[] })[]
  readonly incompatible: readonly (CautionLine & { readonly of: string; readonly with: string })[]
  readonly gases: readonly (CautionLine & {
    readonly agent: string
    readonly from: readonly (readonly string[])[]
  })[]
  readonly disposal: readonly (CautionLine & { readonly of: readonly string[] })[]
}

const data = file as CautionFile

/** The cautions for a charge. Order and amounts make no difference to anything but the labels. */
export function cautionsFor(charge: readonly Charged[]): CautionBlock {
  const substances = charge.flatMap(({ ingredients }) =>
    ingredients.filter(({ percent }) => percent > 0).map(({ substance }) => substance)
  )
  const isIn = (group: string) => substances.some(one => belongs(one, group))
  const allIn = (groups: readonly string[]) => groups.every(isIn)
  const gases = data.gases.filter(({ from }) => from.some(allIn))
  const evolved = gases.map(({ agent }) => agent)
  return {
    reagents: charge.map(reagentLabel),
    handling: data.handling.filter(({ of }) => allIn(of)).map(line),
    incompatible: data.incompatible
      .filter(one => isIn(one.of) || isIn(one.with))
      .map(one => ({ ...line(one), together: allIn([one.of, one.with]) })),
    gases: gases.map(one => ({ ...line(one), gas: agentOf(one.agent).name })),
    exposure: agents.filter(
      agent =>
        evolved.includes(agent.id) || substances.some(({ id }) => agent.substances.includes(id))
    ),
    disposal: data.disposal.filter(({ of }) => allIn(of)).map(line),
    unknown: [...new Set(substances.filter(one => !isKnown(one)).map(nameOf))]
  }
}

const line = ({ text, source, sure }: CautionLine): CautionLine => ({ text, source, sure })

const agentOf = (id: string): Agent => agents.find(agent => agent.id === id)!

const belongs = ({ id, traits }: Substance, name: string): boolean => {
  const group = data.groups[name]!
  return group.substances.includes(id) || traits.some(({ trait }) => group.traits?.includes(trait))
}

/** What a reagent's own label carries, by its composition. */
function reagentLabel({ name, ingredients }: Charged): ReagentLabel {
  const { classes, supplements, gaps } = classify({ ingredients })
  const names = classes.map(({ class: one }) => one)
  const { pictograms, signal, statements } = labelElements(classes, supplements)
  return {
    name,
    classes: names,
    pictograms,
    ...(signal === undefined ? {} : { signal }),
    statements,
    precautions: choosePrecautions(names),
    gaps
  }
}
