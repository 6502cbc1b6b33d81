/**
 * Texts of hazard and precautionary statements, quoted as the law prints them.
 *
 * `clp-statements.json` holds those a graphite workshop can reach, in five languages.
 */

import clp from './clp-statements.json' with { type: 'json' }

export type Language = 'en' | 'de' | 'fr' | 'es' | 'it'

interface StatementFile {
  readonly edition: string
  readonly statements: Readonly<Record<string, Readonly<Record<Language, string>>>>
}

const file: StatementFile = clp

/** Regulation, annexes and date of the wording. */
export const statementEdition = file.edition

export const statementCodes = Object.keys(file.statements)

export type Statement =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly reason: 'unknown code' | 'gap not filled' | 'nothing to fill' }

/** What the law leaves to the supplier: `…`, or words in angle brackets that say what belongs there. */
const GAP = /<[^<>]*>|…/u

/** Statements whose gaps the law wants filled only where the supplier knows more. */
const OPTIONAL: ReadonlySet<string> = new Set(
  'H340 H341 H350 H351 H360 H361 H370 H371 H372 H373'.split(' ')
)

/** A last choice among several, which a supplier may leave out: 'a POISON CENTER/doctor/…'. */
const LAST_CHOICE = /(?<=\p{L}{2}) ?\/ ?…(?: ?\/| (?=\.))?(?=(\p{L})?)/u

/**
 * A statement's text, its gap filled in.
 *
 * @param filling the supplier's words for the gap, where the law leaves one
 */
export function statementText(code: string, language: Language, filling?: string): Statement {
  if (!Object.hasOwn(file.statements, code)) return { ok: false, reason: 'unknown code' }
  const printed = file.statements[code]![language]
  if (filling !== undefined && !GAP.test(printed)) return { ok: false, reason: 'nothing to fill' }
  const filled = filling === undefined ? printed : withStop(fillGap(printed, filling))
  const chosen = OPTIONAL.has(code) ? filled.replace(/ ?<[^<>]*>/gu, '') : filled
  const text = LAST_CHOICE.test(chosen) ? withStop(withoutChoice(chosen)) : chosen
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
