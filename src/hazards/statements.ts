/**
 * Texts of hazard and precautionary statements, quoted as each edition prints them.
 *
 * `clp-statements.json` holds those a graphite workshop can reach, in five languages; those of the UN
 * and the United States are in English alone.
 */

import type { Certainty } from './clauses.ts'
import { cited } from './clauses.ts'
import clp from './clp-statements.json' with { type: 'json' }
import earlierFile from './earlier-wordings.json' with { type: 'json' }
import { type Edition, editions } from './editions.ts'
import un from './un-statements.json' with { type: 'json' }
import us from './us-statements.json' with { type: 'json' }

export const languages = ['en', 'de', 'fr', 'es', 'it'] as const
export type Language = (typeof languages)[number]

interface StatementFile {
  readonly edition: string
  readonly short: string
  readonly sure: Certainty
  readonly statements: Readonly<Record<string, Readonly<Partial<Record<Language, string>>>>>
}

// The files' shapes are held by a schema in the tests.
const files = { clp, un, us } as unknown as Readonly<Record<Edition, StatementFile>>

/**
 * Wordings this program printed before, the latest first, each with only what it words otherwise than
 * the one after it. Whoever rewords a statement enters here how it stood: papers that were issued with
 * it go on naming that wording.
 */
const earlier = earlierFile as unknown as Readonly<Record<Edition, readonly StatementFile[]>>

const named = ({ edition, sure }: StatementFile) => cited({ source: edition, sure })

/** Regulation, annexes and date of the wording, and how surely it was read: what papers name. */
export const editionText = (edition: Edition): string => named(files[edition])

/** The wording of each edition that a paper names; today's where it names none. */
export type Wordings = ReadonlyMap<Edition, string>

/** Which edition's wording a paper names; undefined of one that this program never printed. */
export const editionOfWording = (wording: string): Edition | undefined =>
  editions.find(edition =>
    [files[edition], ...earlier[edition]].some(file => named(file) === wording)
  )

/**
 * A wording in a few letters that read alike in every language, for a line of a label:
 * 'CLP 2025-09-01'; the wording itself where this program never printed it.
 */
export const shortWording = (wording: string): string =>
  editions
    .flatMap(edition => [files[edition], ...earlier[edition]])
    .find(file => named(file) === wording)?.short ?? wording

type Texts = StatementFile['statements']

/** Texts of an edition as a wording of it has them. */
function textsOf(edition: Edition, wording: string | undefined): Texts {
  if (wording === undefined) return files[edition].statements
  const last = earlier[edition].findIndex(file => named(file) === wording)
  return earlier[edition].slice(0, last + 1).reduce(olderTexts, files[edition].statements)
}

const olderTexts = (newer: Texts, { statements }: StatementFile): Texts => ({
  ...newer,
  ...Object.fromEntries(
    Object.entries(statements).map(([code, texts]) => [code, { ...newer[code], ...texts }])
  )
})

export const statementEdition = editionText('clp')

export const codesIn = (edition: Edition): string[] => Object.keys(files[edition].statements)

export const statementCodes = codesIn('clp')

export type Statement =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly reason: StatementFault }

export type StatementFault =
  'unknown code' | 'gap not filled' | 'nothing to fill' | 'not in this language'

/** What the law leaves to the supplier: `…`, or words in angle brackets that say what belongs there. */
const GAP = /<[^<>]*>|…/u

/** Statements whose gaps the law wants filled only where the supplier knows more. */
const OPTIONAL: ReadonlySet<string> = new Set(
  'H340 H341 H350 H351 H360 H361 H370 H371 H372 H373'.split(' ')
)

/** Words the UN lets a supplier add: 'Wash hands [and …] thoroughly'. */
const OPTIONAL_PART = / \[and …\]/u

/** A last choice among several, which a supplier may leave out: 'a POISON CENTER/doctor/…'. */
const LAST_CHOICE = /(?<=\p{L}{2}) ?\/ ?…(?: ?\/| (?=\.))?(?=(\p{L})?)/u

/**
 * A statement's text, its gap filled in.
 *
 * @param filling the supplier's words for the gap, where the law leaves one
 * @param wording as a paper names it; today's where it names none
 */
export function statementText(
  code: string,
  language: Language,
  filling?: string,
  edition: Edition = 'clp',
  wording?: string
): Statement {
  const statements = textsOf(edition, wording)
  if (!Object.hasOwn(statements, code)) return { ok: false, reason: 'unknown code' }
  const printed = statements[code]![language]
  if (printed === undefined) return { ok: false, reason: 'not in this language' }
  if (filling !== undefined && !GAP.test(printed)) return { ok: false, reason: 'nothing to fill' }
  const filled = filling === undefined ? printed : withStop(fillGap(printed, filling))
  const chosen = OPTIONAL.has(code) ? filled.replace(/ ?<[^<>]*>/gu, '') : filled
  const bare = filling === undefined ? chosen.replace(OPTIONAL_PART, '') : chosen
  const text = LAST_CHOICE.test(bare) ? withStop(withoutChoice(bare)) : bare
  return GAP.test(text) ? { ok: false, reason: 'gap not filled' } : { ok: true, text }
}

/** The choice left to the supplier taken out; some languages print a stroke or a blank beside it. */
const withoutChoice = (text: string) =>
  text.replace(LAST_CHOICE, (_, next?: string) => (next === undefined ? '' : ' '))

/** The first gap filled; the law prints some without the blank before them. */
const fillGap = (text: string, filling: string) =>
  text.replace(/(?<=\p{L})…/u, ' …').replace(GAP, () => filling)

/** Texts that end in their gap lose their full stop to it. */
const withStop = (text: string) => (/[.!?]$/u.test(text) ? text : `${text}.`)
