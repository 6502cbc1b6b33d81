/** One label: what stands on a package of a lot, in the languages wanted. */

import { labelMinima, labelSizes, SMALL_US_L, TINY_US_L } from '../hazards/label-size.ts'
import { dustText } from '../hazards/dust.ts'
import { shown } from '../hazards/mixture.ts'
import { type Language, shortWording } from '../hazards/statements.ts'
import { findSubstance } from '../hazards/substances.ts'
import { isPictogram } from '../figures/pictograms.ts'
import { monthsLater } from '../records/dates.ts'
import type { Container } from '../records/types.ts'
import type { LabelHazards, Worded } from './label-hazards.ts'
import type { LabelBlock, LabelContent, LabelDocument, LabelWish } from './label-types.ts'
import { labelWords } from './label-words/index.ts'
import type { Route } from './label-words/types.ts'
import { lotUrl } from './lot.ts'
import type { LotView } from './lot-view.ts'
import type { ProducerText } from './types.ts'
import { siteRoot } from './site-address.ts'

export interface LabelInputs {
  readonly view: LotView
  readonly producer: ProducerText
  readonly hazards: LabelHazards
  /** The statements by language, each with its text. */
  readonly statements: ReadonlyMap<Language, readonly Worded[]>
  /** Ingredients the label has to name, by their English names. */
  readonly named: readonly string[]
}

/** The label of one container. */
export function labelDocument(
  inputs: LabelInputs,
  wish: LabelWish,
  container: Container
): LabelDocument {
  const { view, producer, hazards } = inputs
  const { profile, languages, wording } = wish
  const capacity = written(container.capacity_L.written, '.')
  const minima = labelMinima(container.capacity_L.value, profile)
  const place = `${container.kind}-${capacity.replace('\u00a0', '')}`
  return {
    lot: view.lot,
    title: `Label ${view.lot}, ${container.kind} of ${capacity}`,
    subject: `CLP Annex I, Table 1.3, sizes of profile ${profile}; wording of the statements: ${hazards.wording}`,
    author: producer.name,
    dated: view.made,
    languages,
    minima,
    sizes_mm: labelSizes(minima),
    contents: contentsOf(inputs, wish, container),
    fileName: `${[
      view.lot,
      place,
      ...languages,
      ...(profile === 'eu-2028' ? [] : [profile]),
      ...(wording === 'un' ? [wording] : [])
    ].join('-')}.pdf`
  }
}

/** The full label, and in the United States what may do on a container too small for it. */
function contentsOf(
  inputs: LabelInputs,
  wish: LabelWish,
  container: Container
): readonly LabelContent[] {
  const full = fullContent(inputs, wish, container)
  const capacity = container.capacity_L.value
  if (wish.profile !== 'us' || capacity > SMALL_US_L) return [full]
  const [name, , telephone] = full.supplier
  // Without statements there is no wording to name: the outer package and the PDF's subject do.
  const reduced: LabelContent = {
    name: full.name,
    product: full.product,
    identifiers: [],
    pictograms: full.pictograms,
    blocks: full.blocks.map(({ language, signal }) => ({
      language,
      ...(signal === undefined ? {} : { signal }),
      hazards: [],
      precautions: [],
      outer: labelWords[language].outerPackage
    })),
    facts: [],
    supplier: [name!, telephone!]
  }
  const named = { ...reduced, pictograms: [], blocks: [], supplier: [] }
  return capacity <= TINY_US_L ? [full, reduced, named] : [full, reduced]
}

function fullContent(inputs: LabelInputs, wish: LabelWish, container: Container): LabelContent {
  const { view, producer, hazards } = inputs
  const { languages } = wish
  const site = producer.site && siteRoot(producer.site)
  const blocks = languages.map(language => blockIn(inputs, language))
  const says = blocks.some(one => one.hazards.length + one.precautions.length > 0)
  const url = `${site}/${lotUrl(view.lot)}`
  return {
    name: view.grade.id,
    product: languages.map(language => ({ language, text: productIn(view, language) })),
    identifiers: identifiersOf(view, languages),
    pictograms: hazards.pictograms.map(one => ({
      ...one,
      title: isPictogram(one.code) ? labelWords[languages[0]!].pictograms[one.code] : one.title
    })),
    blocks,
    facts: factsOf(view, languages, container),
    supplier: [
      producer.name,
      producer.address.join(', '),
      `${labelWords[languages[0]!].telephone} ${producer.telephone}`
    ],
    ...(says ? { wording: shortWording(hazards.wording) } : {}),
    ...(site === undefined ? {} : { code: { url, alt: labelWords[languages[0]!].qr(url) } })
  }
}

const productIn = ({ kind }: LotView, language: Language): string =>
  labelWords[language].products[kind === 'foil' ? 'foil' : 'batch']

function identifiersOf({ grade }: LotView, languages: readonly Language[]): string[] {
  const { casNumber } = grade
  if (casNumber === undefined) return []
  const ec = findSubstance(casNumber)?.ec
  const list = inAll(languages, ({ ec: abbreviation }) => abbreviation)
  return [`CAS\u00a0${casNumber}`, ...(ec === undefined ? [] : [`${list}\u00a0${ec}`])]
}

/** A word in all the languages, said once where they share it: 'Lot / Charge'. */
export const inAll = (
  languages: readonly Language[],
  word: (words: (typeof labelWords)[Language]) => string
): string => [...new Set(languages.map(language => word(labelWords[language])))].join(' / ')

/** Dates as year, month and day: the same in every language. */
function factsOf({ lot, made, grade }: LotView, languages: readonly Language[], filled: Container) {
  const sign = languages.every(language => labelWords[language].decimalSign === ',') ? ',' : '.'
  const months = grade.retestAfterMonths
  return [
    { label: inAll(languages, words => words.lot), text: lot },
    {
      label: inAll(languages, words => words.quantity),
      text: written(filled.holds_g.written, sign)
    },
    { label: inAll(languages, words => words.made), text: made },
    ...(months === undefined
      ? []
      : [{ label: inAll(languages, words => words.retest), text: monthsLater(made, months) }])
  ]
}

/** A quantity as written, its number held to its unit, with a language's decimal sign. */
const written = (text: string, sign: '.' | ','): string =>
  text.replace(/(?<=\d)\s*(?=\p{L}|°)/u, '\u00a0').replace(/(?<=\d)\.(?=\d)/u, sign)

function blockIn(inputs: LabelInputs, language: Language): LabelBlock {
  const { view, hazards, statements, named } = inputs
  const words = labelWords[language]
  const texts = statements.get(language) ?? []
  const isPrecaution = ({ code }: Worded) => code.startsWith('P')
  const textsOf = (chosen: readonly Worded[]) => chosen.map(({ text = '' }) => text)
  const dust = hazards.edition === 'us' ? dustOf(view) : undefined
  const signal = hazards.signal ?? dust?.signal
  const storage = storageIn(view, language)
  return {
    language,
    ...(signal === 'Danger' || signal === 'Warning' ? { signal: words.signals[signal] } : {}),
    hazards: [
      ...textsOf(texts.filter(one => !isPrecaution(one))),
      ...(dust ? [dust.text] : []),
      ...unknownIn(view, language)
    ],
    precautions: textsOf(texts.filter(isPrecaution)),
    ...(named.length === 0
      ? {}
      : { contains: `${words.contains}: ${named.map(name => words.substances[name]).join(', ')}` }),
    ...(storage === '' ? {} : { storage })
  }
}

function storageIn({ grade: { keep } }: LotView, language: Language): string {
  const { keepDry, keepBelow, decimalSign } = labelWords[language]
  return [
    ...(keep?.dry ? [keepDry] : []),
    ...(keep?.below_C ? [keepBelow(written(keep.below_C.written, decimalSign))] : [])
  ].join(' ')
}

/**
 * What is of unknown acute toxicity, from 1 % on; of vapours, mists and gases the most.
 *
 * Source: CLP Annex I, 3.1.3.6.2.2; 29 CFR 1910.1200, Appendix A, A.1.3.6.2.3 (from memory, not checked
 * against the print).
 */
function unknownIn({ hazards }: LotView, language: Language): string[] {
  if (!hazards || hazards.classification.article !== undefined) return []
  const { unknown, decimalSign } = labelWords[language]
  const most = new Map<Route, number>()
  for (const { form, percent } of hazards.classification.unknown) {
    const route = form === 'oral' || form === 'dermal' ? form : 'inhalation'
    most.set(route, Math.max(percent, most.get(route) ?? 0))
  }
  return [...most].map(([route, percent]) => unknown(written(shown(percent), decimalSign), route))
}

/** What the United States want said of dust. */
function dustOf({ hazards }: LotView) {
  if (!hazards || hazards.classification.article !== undefined) return undefined
  const shares = [{ substance: findSubstance('graphite')!, percent: 100 }]
  return dustText({ shares }, 'dust', hazards.evidence.dust)
}
