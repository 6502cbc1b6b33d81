/** The hazard block of a label: from the certificate that was issued, or else as computed now. */

import { isPictogram, pictogram } from '../figures/pictograms.ts'
import type { Edition } from '../hazards/editions.ts'
import type { StatementCode } from '../hazards/label-elements.ts'
import {
  editionOfWording,
  editionText,
  type Language,
  statementText,
  type StatementFault
} from '../hazards/statements.ts'
import { labelWords } from './label-words/index.ts'
import type { GradeView } from './lot-view.ts'
import type { HazardText, PictogramText } from './hazard-types.ts'
import { labelFor } from './hazards.ts'
import type { LotView } from './lot-view.ts'
import type { FrozenCertificate } from './frozen-schema.ts'

/** What the label carries, before it is worded in a language. */
export interface LabelHazards {
  readonly pictograms: readonly PictogramText[]
  readonly signal?: string
  readonly statements: readonly StatementCode[]
  /** Texts as they were issued, by code, and their language. */
  readonly issued: ReadonlyMap<string, string>
  readonly issuedIn: Language
  readonly edition: Edition
  /** The statements' wording as papers name it. */
  readonly wording: string
}

/**
 * Elements of a lot's label by an edition; of an issued lot, those that were issued. Undefined where a
 * certificate says what the hazards are, and not by this edition: a label never says more than it.
 */
export function labelHazards(
  { grade, hazards }: LotView,
  issued: FrozenCertificate | undefined,
  edition: Edition
): LabelHazards | undefined {
  const wording = editionText(edition)
  const none = {
    pictograms: [],
    statements: [],
    issued: new Map<string, string>(),
    issuedIn: 'en' as const,
    edition,
    wording
  }
  if (issued) {
    const said = issued.certificate.hazards
    if (!said) return none
    const block = [said, ...(said.editions ?? [])].find(
      one => editionOfWording(one.edition) === edition
    )
    return block && asIssued(block, edition, issued.certificate.language)
  }
  if (!grade.hazards) return none
  const label = labelFor(grade.hazards, hazards, edition)
  return {
    ...none,
    pictograms: label.pictograms.flatMap(code =>
      isPictogram(code) ? [{ code, ...pictogram(code) }] : []
    ),
    ...(label.signal === undefined ? {} : { signal: label.signal }),
    statements: [...label.statements, ...label.precautions.map(code => ({ code }))]
  }
}

type Block = Pick<HazardText, 'pictograms' | 'signal' | 'statements' | 'edition'>

const asIssued = (
  { pictograms, signal, statements, edition: wording }: Block,
  edition: Edition,
  issuedIn: Language
): LabelHazards => ({
  pictograms,
  ...(signal === undefined ? {} : { signal: signalOf(signal, issuedIn) }),
  statements: statements.map(({ code }) => ({ code })),
  issued: new Map(statements.map(({ code, text }) => [code, text])),
  issuedIn,
  edition,
  wording
})

/** Which signal word a word of a language is. */
function signalOf(word: string, language: Language): string {
  const { Danger, Warning } = labelWords[language].signals
  return word === Danger ? 'Danger' : word === Warning ? 'Warning' : word
}

/** A statement in one language, or why there is none. */
export interface Worded {
  readonly code: string
  readonly text?: string
  readonly reason?: StatementFault
}

/** The statements of a label in one language. */
export const wordedIn = (
  { statements, issued, issuedIn, edition, wording }: LabelHazards,
  language: Language,
  hazards: GradeView['hazards']
): Worded[] =>
  statements.map(({ code, fill }) => {
    const frozen = language === issuedIn ? issued.get(code) : undefined
    if (frozen !== undefined) return { code, text: frozen }
    const english = hazards?.fill?.[code] ?? fill
    const words = language === 'en' ? english : hazards?.fillInLanguages?.[language]?.[code]
    // Words that say more in English must not be lost on the way.
    if (english !== undefined && words === undefined) return { code, reason: 'gap not filled' }
    const statement = statementText(code, language, words, edition, wording)
    return statement.ok ? { code, text: statement.text } : { code, reason: statement.reason }
  })
