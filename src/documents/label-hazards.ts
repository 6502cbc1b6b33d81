/** The hazard block of a label: from the certificate that was issued, or else as computed now. */

import { isPictogram, pictogram } from '../figures/pictograms.ts'
import type { StatementCode } from '../hazards/label-elements.ts'
import { labelProfiles, type LabelProfile } from '../hazards/label-size.ts'
import { type Language, statementText, type StatementFault } from '../hazards/statements.ts'
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
  /** English texts as they were issued, by code. */
  readonly issued: ReadonlyMap<string, string>
}

const none: LabelHazards = { pictograms: [], statements: [], issued: new Map() }

/** Elements of a lot's label; of an issued lot, those that were issued. */
export function labelHazards(
  { grade, hazards }: LotView,
  issued: FrozenCertificate | undefined
): LabelHazards {
  if (issued) return issued.certificate.hazards ? asIssued(issued.certificate.hazards) : none
  if (!grade.hazards) return none
  const label = labelFor(grade.hazards, hazards)
  return {
    pictograms: label.pictograms.flatMap(code =>
      isPictogram(code) ? [{ code, ...pictogram(code) }] : []
    ),
    ...(label.signal === undefined ? {} : { signal: label.signal }),
    statements: [...label.statements, ...label.precautions.map(code => ({ code }))],
    issued: new Map()
  }
}

const asIssued = ({ pictograms, signal, statements }: HazardText): LabelHazards => ({
  pictograms,
  ...(signal === undefined ? {} : { signal }),
  statements: statements.map(({ code }) => ({ code })),
  issued: new Map(statements.map(({ code, text }) => [code, text]))
})

export const isProfile = (text: string): text is LabelProfile =>
  labelProfiles.some(profile => profile === text)

/** A statement in one language, or why there is none. */
export interface Worded {
  readonly code: string
  readonly text?: string
  readonly reason?: StatementFault
}

/** The statements of a label in one language. */
export const wordedIn = (
  { statements, issued }: LabelHazards,
  language: Language,
  hazards: GradeView['hazards']
): Worded[] =>
  statements.map(({ code, fill }) => {
    const frozen = language === 'en' ? issued.get(code) : undefined
    if (frozen !== undefined) return { code, text: frozen }
    const english = hazards?.fill?.[code] ?? fill
    const words = language === 'en' ? english : hazards?.fillInLanguages?.[language]?.[code]
    // Words that say more in English must not be lost on the way.
    if (english !== undefined && words === undefined) return { code, reason: 'gap not filled' }
    const statement = statementText(code, language, words)
    return statement.ok ? { code, text: statement.text } : { code, reason: statement.reason }
  })

/** Spelling of the United States, whose texts are otherwise the same (from memory). */
const spellings: readonly (readonly [RegExp, string])[] = [
  [/oxidiser/gu, 'oxidizer'],
  [/vapour/gu, 'vapor'],
  [/CENTRE/gu, 'CENTER']
]

export const spelt = (text: string, profile: LabelProfile): string =>
  profile === 'us' ? spellings.reduce((all, [from, to]) => all.replace(from, to), text) : text
