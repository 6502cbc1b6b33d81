/** A furnace run's page: it exists in the workshop edition only. */

import type { EvaluatedContent, EvaluatedExpansion } from '../evaluate/types.ts'
import { lotUrl } from './lot.ts'
import { processDocument } from './process.ts'
import type { ChainLink, LotDocument, LotPage, LotSummary, Table } from './types.ts'
import { dateText, kindTexts } from './words.ts'

const answer: LotDocument['answer'] = {
  word: 'not judged',
  sentence: 'A furnace run is not sold and has no limits to meet.'
}

const status: LotDocument['status'] = {
  state: 'in process',
  sentence: 'Kept in the workshop: worms go into foil.'
}

/** The run's line in lists. */
export const runSummary = ({ lot, entry }: EvaluatedExpansion): LotSummary => ({
  lot,
  url: lotUrl(lot),
  kind: kindTexts.expansion,
  grade: '',
  made: entry.record.made,
  state: status.state,
  answer,
  key: []
})

/** Build the page of one furnace run. */
export function runPage(
  evaluated: EvaluatedContent,
  run: EvaluatedExpansion,
  chain: readonly ChainLink[],
  trace: readonly Table[]
): LotPage {
  const { made } = run.entry.record
  const dataUrl = `${lotUrl(run.lot)}data.json`
  const document: LotDocument = {
    lot: run.lot,
    kind: kindTexts.expansion,
    url: lotUrl(run.lot),
    made,
    status,
    answer,
    facts: [{ label: 'Made', text: dateText(made) }],
    results: [],
    decisionRule: '',
    workings: [],
    chain,
    traceability: [],
    cautions: [
      'Heating expandable flake sets free a large volume of gas and acid fumes: extraction, eye protection, nothing closed over it. Worms are light, conduct electricity and must not reach equipment.',
      'Local codes and competent people decide what the furnace and its extraction must be.'
    ],
    papers: [{ title: 'Figures for programs (JSON)', url: dataUrl, mediaType: 'application/json' }],
    notices: []
  }
  return {
    summary: runSummary(run),
    document,
    process: processDocument(evaluated, run, undefined, trace),
    certificates: [],
    dataUrl
  }
}
