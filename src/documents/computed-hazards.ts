/** A lot's computed classification in words. */

import { classEntry } from '../hazards/classes.ts'
import type { Classified, Conflict } from '../hazards/classify.ts'
import { cited, clauses } from '../hazards/clauses.ts'
import { dustText } from '../hazards/dust.ts'
import type { LabelElements } from '../hazards/label-elements.ts'
import type { Finding } from '../hazards/mixture.ts'
import type { Saying } from '../hazards/sayings.ts'
import { findSubstance } from '../hazards/substances.ts'
import type { HazardDecision, LotHazards } from '../judge/lot-hazards.ts'
import { articleText } from './article.ts'
import type { ComputedHazards, ReasonedClass, ResultRow } from './types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { unstopped } from './words.ts'

/** Figures of a lot that its classification rests on, by the key of their rows. */
const inputKeys = ['free-acid', 'slurry-ph', 'moisture']

/** The classification of a lot for a reader who may see `rows`; without them, without its figures. */
export function computedHazards(
  lot: LotHazards,
  { omitted }: LabelElements,
  rows: readonly ResultRow[],
  tongue = english
): ComputedHazards {
  const { classification, open } = lot
  const { hazards: words } = tongue
  const isOpen = rows.length > 0
  const dust = dustOf(lot, tongue)
  return {
    sentence: sentenceOf(lot, tongue),
    state: open.length > 0 ? 'incomplete' : 'complete',
    from: isOpen ? inputsOf(lot, rows, tongue) : [],
    classes: classification.classes.map(one => ({
      name: words.className(one.class),
      statement: named(one).statement,
      why: isOpen ? words.why({ ...one, ...inTongue(one, tongue) }) : []
    })),
    notes: [
      ...(isOpen ? classification.conflicts.map(one => conflictText(one, tongue)) : []),
      ...open.map(({ about, text }) =>
        // Both sides of limit and pH are told already.
        words.open(about, isOpen && about !== 'limit or ph' ? text : undefined)
      ),
      ...classification.unknown.map(({ form, percent }) => words.unknown(percent, form)),
      ...lot.decisions.map(one => decisionText(one, tongue)),
      ...omitted.map(words.omitted)
    ],
    agreement: agreementOf(lot, tongue),
    ...(dust === undefined ? {} : { dust })
  }
}

const conflictText = ({ byLimits, byPH, ...rest }: Conflict, tongue: Tongue): string =>
  tongue.hazards.conflict({
    ...rest,
    byPH: inTongue(byPH, tongue),
    ...(byLimits ? { byLimits: inTongue(byLimits, tongue) } : {})
  })

/** Reasons with what only the record names or says in the language. */
const inTongue = (finding: Finding, tongue: Tongue): Finding => ({
  ...finding,
  reasons: finding.reasons.map(reason => ({ ...reason, said: saidIn(reason.said, tongue) }))
})

function saidIn(said: Saying, { own, knowsSubstance }: Tongue): Saying {
  const name = (one: string) => (knowsSubstance(one) ? one : own(one))
  const renamed = <Part extends { readonly name: string }>(part: Part): Part => ({
    ...part,
    name: name(part.name)
  })
  switch (said.is) {
    case 'recorded':
      return { ...said, because: own(said.because) }
    case 'sum':
      return { ...said, parts: said.parts.map(renamed) }
    case 'toxicity':
      return { ...said, parts: said.parts.map(renamed) }
    case 'weighed':
      return { ...said, parts: said.parts.map(renamed) }
    case 'band':
      return { ...said, part: renamed(said.part) }
    case 'alone':
    case 'as such':
      return renamed(said)
    default:
      return said
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

/** What is not known is never told as harmless, whoever decided to let the lot go without it. */
export const isIncomplete = ({
  classification,
  open
}: Pick<LotHazards, 'classification' | 'open'>): boolean =>
  open.length > 0 || classification.gaps.length > 0

function sentenceOf({ classification, open, article: said }: LotHazards, tongue: Tongue): string {
  const { hazards: words } = tongue
  const { article, classes } = classification
  if (article !== undefined)
    return [words.noneComputed(clauses.article), ...(said ? [articleText(said, tongue)] : [])].join(
      ' '
    )
  return words.computed(
    classes.map(({ class: name }) => name),
    isIncomplete({ classification, open })
  )
}

function inputsOf(
  { classification }: LotHazards,
  rows: readonly ResultRow[],
  { hazards: words }: Tongue
): string[] {
  if (classification.article !== undefined) return []
  const flake = findSubstance('expandable graphite')!
  const figures = rows
    .filter(({ key }) => inputKeys.includes(key))
    .flatMap(({ title, value, unit, expandedUncertainty }) =>
      value
        ? [
            words.input(
              title,
              [value.printed, unit.printed].join(' ').trim(),
              expandedUncertainty?.printed
            )
          ]
        : []
    )
  return [...figures, words.freeAcid, words.rest(flake.ec, flake.identity)]
}

function decisionText(decision: HazardDecision, { hazards: words, own }: Tongue): string {
  const { class: name, take, because, by } = decision
  const outcome = name ?? (take === 'ph' ? words.phHolds : take && words.limitsHold)
  return words.decided({ ...decision, by: own(by), because: unstopped(own(because)) }, outcome)
}

function agreementOf({ comparison, declared }: LotHazards, { hazards: words }: Tongue): string {
  const { missing, beyond } = comparison
  if (missing.length > 0) return words.notHeld(missing)
  if (beyond.length > 0) return words.beyond(beyond)
  return declared.length === 0 ? words.agreesOnNone : words.agrees
}

/** What United States' rules say of dust; the European Union has no such class. */
function dustOf({ evidence, classification }: LotHazards, { hazards }: Tongue): string | undefined {
  const substance = findSubstance('graphite')!
  const form = classification.article === undefined ? 'dust' : 'pieces'
  const dust = dustText({ shares: [{ substance, percent: 100 }] }, form, evidence.dust)
  return dust && hazards.dust(dust, form)
}
