/**
 * Texts of hazard and precautionary statements, quoted as the law prints them.
 *
 * `clp-statements.json` holds those a graphite workshop can reach, in five languages. A `…` is a gap
 * the law leaves for the supplier to fill in.
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

/**
 * A statement's text, its gap filled in.
 *
 * @param filling the supplier's words for the `…`, where the law leaves one
 */
export function statementText(code: string, language: Language, filling?: string): Statement {
  if (!Object.hasOwn(file.statements, code)) return { ok: false, reason: 'unknown code' }
  const text = file.statements[code]![language]
  const gap = text.includes('…')
  if (gap && filling === undefined) return { ok: false, reason: 'gap not filled' }
  if (!gap && filling !== undefined) return { ok: false, reason: 'nothing to fill' }
  return { ok: true, text: filling === undefined ? text : withStop(text.replace('…', filling)) }
}

/** Texts that end in their gap lose their full stop to it. */
const withStop = (text: string) => (/[.!?]$/u.test(text) ? text : `${text}.`)
