/** The statement of working of one lot: of its product for everyone, of its process for the workshop. */

import { capital } from './capital.ts'
import type { Tongue } from './languages/tongue.ts'
import { lotUrl } from './lot.ts'
import type { StatementDocument } from './statement-types.ts'
import type { Fact, LotDocument, Paper, ProcessDocument, ProducerText } from './types.ts'

export interface StatementInputs {
  readonly producer: ProducerText
  readonly paper: 'A4' | 'Letter'
  readonly process?: ProcessDocument
  readonly tongue: Tongue
}

/** A file for each language; the English one without its name. */
const statementUrl = (lot: string, { language }: Tongue): string =>
  `${lotUrl(lot)}${lot}-working${language === 'en' ? '' : `-${language}`}.pdf`

/** Undefined where an edition shows no working of the lot. */
function statementOf(
  { lot, kind, grade, made, status, workings, results }: LotDocument,
  { producer, paper, process, tongue }: StatementInputs
): StatementDocument | undefined {
  const own = process?.workings ?? []
  if (workings.length + own.length === 0) return undefined
  const { statement: words } = tongue.working
  const facts: Fact[] = [
    { label: words.facts.product, text: capital(kind) },
    ...(grade
      ? [{ label: words.facts.grade, text: words.grade(grade.title, grade.revision) }]
      : []),
    { label: words.facts.made, text: words.made(made) },
    { label: words.facts.status, text: status.sentence }
  ]
  return {
    title: words.title,
    lot,
    dated: [made, ...results.flatMap(({ testedOn }) => testedOn ?? [])].toSorted().at(-1)!,
    language: tongue.language,
    paper,
    producer,
    facts,
    workings,
    process: own,
    ...(own.length > 0 ? { mark: 'Workshop edition: private' } : {}),
    statements: words.says
  }
}

/** The statement of working, and how the lot's page names it. */
export function statementPaper(document: LotDocument, inputs: StatementInputs) {
  const statement = statementOf(document, inputs)
  const url = statementUrl(document.lot, inputs.tongue)
  const link: Paper = {
    title: inputs.tongue.register.papers.working,
    url,
    mediaType: 'application/pdf'
  }
  return statement && { paper: { document: statement, url }, link }
}
