/** The statement of working of one lot: of its product for everyone, of its process for the workshop. */

import { english } from './languages/tongue.ts'
import { lotUrl } from './lot.ts'
import type { StatementDocument } from './statement-types.ts'
import type { Fact, LotDocument, Paper, ProcessDocument, ProducerText } from './types.ts'

export interface StatementInputs {
  readonly producer: ProducerText
  readonly paper: 'A4' | 'Letter'
  readonly process?: ProcessDocument
}

const statementUrl = (lot: string): string => `${lotUrl(lot)}${lot}-working.pdf`

/** Undefined where an edition shows no working of the lot. */
function statementOf(
  { lot, kind, grade, made, status, workings, results }: LotDocument,
  { producer, paper, process }: StatementInputs
): StatementDocument | undefined {
  const own = process?.workings ?? []
  if (workings.length + own.length === 0) return undefined
  const facts: Fact[] = [
    { label: 'Product', text: kind.charAt(0).toUpperCase() + kind.slice(1) },
    ...(grade ? [{ label: 'Grade', text: `${grade.title}, revision ${grade.revision}` }] : []),
    { label: 'Made', text: made },
    { label: 'Status', text: status.sentence }
  ]
  return {
    title: 'Statement of working',
    lot,
    dated: [made, ...results.flatMap(({ testedOn }) => testedOn ?? [])].toSorted().at(-1)!,
    language: 'en',
    paper,
    producer,
    facts,
    workings,
    process: own,
    ...(own.length > 0 ? { mark: 'Workshop edition: private' } : {}),
    statements: [
      'Each figure is told with its formula, its readings as recorded, the inputs of one reading, and every cause of its uncertainty with its share of the variance.',
      'Expanded uncertainty is k times the standard uncertainty, for a coverage probability of about 95 %; k by Student’s t from the effective degrees of freedom.',
      'This is no certificate: it judges nothing and is not entered in the register.'
    ]
  }
}

/** The statement of working, and how the lot's page names it. */
export function statementPaper(document: LotDocument, inputs: StatementInputs) {
  const statement = statementOf(document, inputs)
  const url = statementUrl(document.lot)
  return (
    statement && {
      paper: { document: statement, url },
      link: statementLink(document.lot)
    }
  )
}

/** The link to a lot's statement, which is in English whatever the page is in. */
export const statementLink = (lot: string, { register } = english): Paper => ({
  title: register.papers.working,
  url: statementUrl(lot),
  mediaType: 'application/pdf'
})
