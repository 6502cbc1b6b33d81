/** The hazard block of a grade or lot: label elements with the law's own texts, and their reasons. */

import { isPictogram, pictogram } from '../figures/pictograms.ts'
import { type ClassName, isClassName } from '../hazards/classes.ts'
import { classifyFlake } from '../hazards/classify-lot.ts'
import { type Edition, isIn, nameIn, precautionsIn } from '../hazards/editions.ts'
import { mostSevere } from '../hazards/findings.ts'
import { labelElements, type LabelElements, type StatementCode } from '../hazards/label-elements.ts'
import type { Finding } from '../hazards/mixture.ts'
import { choosePrecautions } from '../hazards/precautions.ts'
import { editionText, statementText, type Wordings } from '../hazards/statements.ts'
import type { LotHazards } from '../judge/lot-hazards.ts'
import type { Grade } from '../records/types.ts'
import { computedHazards, isIncomplete } from './computed-hazards.ts'
import { fillFor, languageBlocks } from './hazard-languages.ts'
import type { HazardEdition } from './hazard-types.ts'
import { transportText } from './transport.ts'
import type { HazardText, ResultRow } from './types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { labelWords } from './label-words/index.ts'
import { unstopped } from './words.ts'

type Hazards = NonNullable<Grade['hazards']>

/** What goes on the label: what is declared and what is computed, the more severe of each family. */
export interface Label extends LabelElements {
  readonly classified: readonly ClassName[]
  readonly precautions: readonly string[]
}

/** Label elements of a grade, or of a lot of it, as an edition has them. */
export function labelFor(hazards: Hazards, lot?: LotHazards, edition: Edition = 'clp'): Label {
  const declared = hazards.classified.filter(isClassName)
  const computed = lot && classificationIn(lot, edition)
  const found: Finding[] = mostSevere([
    ...declared
      .filter(name => isIn(edition, name))
      .map((name): Finding => ({ class: name, reasons: [] })),
    ...(computed?.classes ?? [])
  ])
  const classified = found.map(({ class: name }) => name)
  const chosen = hazards.precautions
  const precautions = choosePrecautions(classified, chosen ? { chosen } : {})
  return {
    ...labelElements(found, computed?.supplements),
    classified,
    precautions: precautionsIn(edition, precautions, classified)
  }
}

/** A lot's classification by an edition's own categories and limits. */
export const classificationIn = ({ classification, evidence }: LotHazards, edition: Edition) =>
  edition === 'clp' || classification.article !== undefined
    ? classification
    : classifyFlake(evidence, edition)

/** Editions a grade's papers carry, the label's first. */
export const editionsOf = ({ editions: [first, ...others] = [] }: Hazards): readonly Edition[] => [
  first ?? 'clp',
  ...others.filter(other => other !== first)
]

/** Pictograms, signal word and statements as readers see them; a text nobody wrote is told before. */
export function labelText(
  hazards: Hazards,
  label: Label,
  edition: Edition,
  reader: Omit<HazardReader, 'day'>
) {
  const { wordings, tongue = english } = reader
  const { language } = tongue
  const quoted = mayQuote(reader) && isForeign(edition, tongue) ? { language: 'en' as const } : {}
  const wording = wordings?.get(edition)
  const codes: StatementCode[] = [...label.statements, ...label.precautions.map(code => ({ code }))]
  return {
    pictograms: label.pictograms.flatMap(code =>
      isPictogram(code)
        ? [{ code, ...pictogram(code), title: tongue.hazards.pictograms[code] }]
        : []
    ),
    ...(label.signal === undefined ? {} : { signal: labelWords[language].signals[label.signal] }),
    statements: codes.flatMap(one =>
      statementIn(hazards, one, edition, { wording, tongue: { ...tongue, ...quoted } })
    ),
    ...quoted,
    classified: label.classified.map(name => tongue.hazards.className(nameIn(edition, name))),
    edition: wording ?? editionText(edition)
  }
}

/** Editions other than CLP have their texts in English alone. */
const isForeign = (edition: Edition, { language }: Tongue): boolean =>
  edition !== 'clp' && language !== 'en'

const mayQuote = ({ languages = false, isPreview = false }: Omit<HazardReader, 'day'>): boolean =>
  languages || isPreview

/** What a paper cannot say; a page has room to quote it in English, and a preview is no paper yet. */
function lackEdition(edition: Edition, reader: HazardReader) {
  const { tongue = english } = reader
  if (!mayQuote(reader) && isForeign(edition, tongue))
    tongue.lacks({ is: 'edition', text: tongue.hazards.editions[edition] })
}

interface Worded {
  readonly wording: string | undefined
  readonly tongue: Tongue
}

/** A statement in a language: words that fill its gap in English must not be lost on the way. */
function statementIn(
  hazards: Hazards,
  { code, fill }: StatementCode,
  edition: Edition,
  { wording, tongue }: Worded
): { code: string; text: string }[] {
  const { language, lacks } = tongue
  const inEnglish = fillFor(hazards, code, 'en') ?? fill
  const filling = language === 'en' ? inEnglish : fillFor(hazards, code, language)
  const isLost = inEnglish !== undefined && filling === undefined
  const statement = statementText(code, language, filling, edition, wording)
  if (statement.ok && !isLost) return [{ code, text: statement.text }]
  if (edition === 'clp') lacks({ is: 'statement', text: code })
  return []
}

/** Who reads it: the page alone has room for other languages; a decision is good on a day. */
export interface HazardReader {
  readonly day: string
  readonly languages?: boolean
  /** Of a paper that nobody answers for: better a statement in English on it than none. */
  readonly isPreview?: boolean
  /** Of a paper that was worded earlier; today's where nothing is said. */
  readonly wordings?: Wordings
  /** English where nothing is said. */
  readonly tongue?: Tongue
}

/**
 * The block, for spreading into a document; nothing where the grade declares nothing.
 *
 * @param rows figures a reader of the document may see; without them reasons stay out
 */
export function hazardText(
  hazards: Grade['hazards'],
  reader: HazardReader,
  lot?: LotHazards,
  rows: readonly ResultRow[] = []
): { hazards?: HazardText } {
  if (!hazards) return {}
  const { day, languages = false, tongue = english } = reader
  const [main, ...others] = editionsOf(hazards)
  lackEdition(main!, reader)
  const label = labelFor(hazards, lot, main)
  const editions = others.map(edition => editionBlock(hazards, lot, edition, reader))
  const words = languages && main === 'clp' ? languageBlocks(hazards, label, tongue.language) : []
  return {
    hazards: {
      ...labelText(hazards, label, main!, reader),
      basis: basisText(hazards, tongue),
      ...(editions.length > 0 ? { editions } : {}),
      ...(words.length > 0 ? { languages: words } : {}),
      ...(lot ? { computed: computedHazards(lot, label, rows, tongue) } : {}),
      transport: transportText(hazards.transport, day, tongue)
    }
  }
}

/** The same lot under another edition. */
function editionBlock(
  hazards: Hazards,
  lot: LotHazards | undefined,
  edition: Edition,
  reader: HazardReader
): HazardEdition {
  const { hazards: words } = reader.tongue ?? english
  lackEdition(edition, reader)
  const label = labelFor(hazards, lot, edition)
  const names = label.classified.map(name => nameIn(edition, name))
  const isOpen = lot !== undefined && isIncomplete(lot)
  return {
    title: words.editions[edition],
    ...labelText(hazards, label, edition, reader),
    sentence: words.ofEdition(names, isOpen)
  }
}

function basisText(hazards: Hazards, { hazards: words, own }: Tongue): string {
  const { basis, precautionsBy: by, precautionsBecause: because } = hazards
  const chosen =
    by === undefined || because === undefined ? '' : words.chosen(own(by), unstopped(own(because)))
  return words.basis(unstopped(own(basis)), chosen, words.aid)
}
