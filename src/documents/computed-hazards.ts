/** A lot's computed classification in words. */

import { classEntry } from '../hazards/classes.ts'
import type { Classified } from '../hazards/classify.ts'
import { cited } from '../hazards/clauses.ts'
import { dustText } from '../hazards/dust.ts'
import { explainClass, explainConflict } from '../hazards/explain.ts'
import type { LabelElements } from '../hazards/label-elements.ts'
import { findSubstance } from '../hazards/substances.ts'
import type { HazardDecision, LotHazards } from '../judge/lot-hazards.ts'
import { articleText } from './article.ts'
import type { ComputedHazards, ReasonedClass, ResultRow } from './types.ts'
import { dateText, listText } from './words.ts'

/** Figures of a lot that its classification rests on, by the key of their rows. */
const inputKeys = ['free-acid', 'slurry-ph', 'moisture']

/** The classification of a lot for a reader who may see `rows`; without them, without its figures. */
export function computedHazards(
  lot: LotHazards,
  { omitted }: LabelElements,
  rows: readonly ResultRow[]
): ComputedHazards {
  const { classification, decisions, open } = lot
  const isOpen = rows.length > 0
  const dust = dustOf(lot)
  return {
    sentence: sentenceOf(lot),
    state: open.length > 0 ? 'incomplete' : 'complete',
    from: isOpen ? inputsOf(lot, rows) : [],
    classes: classification.classes.map(one => ({
      ...named(one),
      why: isOpen ? explainClass(one) : []
    })),
    notes: [
      ...(isOpen ? classification.conflicts.map(explainConflict) : []),
      ...open.map(({ text }) => `Open: ${isOpen ? text : 'a competent person has to decide'}.`),
      ...classification.unknown.map(
        ({ form, percent }) =>
          `${percent} % of the mixture consists of ingredients of unknown acute toxicity (${form}).`
      ),
      ...decisions.map(decisionText),
      ...omitted.map(text => `${text}.`)
    ],
    agreement: agreementOf(lot),
    ...(dust === undefined ? {} : { dust })
  }
}

/** The classes computed for a lot, each with its reasons and their clauses. */
export const reasonedClasses = ({ classification }: LotHazards): ReasonedClass[] =>
  classification.classes.map(one => ({
    ...named(one),
    reasons: one.reasons.map(({ text, clauses }) => ({
      text,
      clauses: [...new Set(clauses.map(cited))]
    })),
    ...(one.margin === undefined ? {} : { margin: one.margin })
  }))

const named = ({ class: name, statement }: Classified) => ({
  name,
  statement: statement ?? classEntry(name).statement
})

function sentenceOf({ classification, open, article: said }: LotHazards): string {
  const { article, classes } = classification
  if (article !== undefined)
    return [`Nothing is computed: ${article}.`, ...(said ? [articleText(said)] : [])].join(' ')
  const names = classes.map(({ class: name }) => name)
  if (names.length > 0)
    return `Computed for this lot: ${listText(names)}${open.length > 0 ? ', as far as is known' : ''}.`
  // What is not known is never told as harmless.
  return open.length > 0
    ? 'Computed for this lot: no class so far; the classification is incomplete.'
    : 'Computed for this lot: not classified under CLP.'
}

function inputsOf({ classification }: LotHazards, rows: readonly ResultRow[]): string[] {
  if (classification.article !== undefined) return []
  const flake = findSubstance('expandable graphite')!
  const figures = rows
    .filter(({ key }) => inputKeys.includes(key))
    .flatMap(({ title, value, unit, expandedUncertainty }) =>
      value
        ? [
            `${title}: ${[value.printed, unit.printed].join(' ').trim()}${expandedUncertainty ? ` (U ${expandedUncertainty.printed})` : ''}.`
          ]
        : []
    )
  return [
    ...figures,
    'Free acid counts as sulfuric acid; acid bound between the layers is not free.',
    `The rest counts as expandable graphite, EC ${flake.ec}: ${cited(flake.identity)}.`
  ]
}

const decisionText = ({ about, class: name, take, by, on, because }: HazardDecision): string => {
  const outcome = name ?? (take === 'ph' ? 'the pH holds' : take && 'the concentration limits hold')
  return `Decided on ${dateText(on)} by the ${by} about ${topics[about]}${outcome === undefined ? '' : ` (${outcome})`}: ${because.replace(/\.$/u, '')}.`
}

const topics: Record<HazardDecision['about'], string> = {
  oxidising: 'oxidising residues',
  metals: 'corrosion of metals',
  flammable: 'flammability',
  'limit or ph': 'concentration limit and pH',
  filtrate: 'free acid and pH of one filtrate',
  'missing data': 'missing data',
  declaration: 'the declared classification',
  article: 'what it is'
}

function agreementOf({ comparison, declared }: LotHazards): string {
  const { missing, beyond } = comparison
  if (missing.length > 0)
    return `The producer’s own classification does not hold ${listText(missing)}; the label here does.`
  if (beyond.length > 0)
    return `The producer declares ${listText(beyond)} beyond what is computed, on the side of caution.`
  return declared.length === 0
    ? 'The producer declares no class, and none is computed.'
    : 'The producer’s own classification holds every class computed.'
}

/** What United States' rules say of dust; the European Union has no such class. */
function dustOf({ evidence, classification }: LotHazards): string | undefined {
  const substance = findSubstance('graphite')!
  const form = classification.article === undefined ? 'dust' : 'pieces'
  const dust = dustText({ shares: [{ substance, percent: 100 }] }, form, evidence.dust)
  return (
    dust && `United States: ${dust.signal}. ${dust.text} (${dust.because}; ${cited(dust.clause)}.)`
  )
}
