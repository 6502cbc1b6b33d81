/** A lot's page, from what any edition may know of it. */

import { quantities, quantityOf } from '../quantities.ts'
import { hazardText } from './hazards.ts'
import type { LotView } from './lot-view.ts'
import { resultRow, typicalRow } from './result-row.ts'
import type { Fact, LotDocument, Paper, ResultRow } from './types.ts'
import { counted, dateText, inSentence, kindTexts, listText, ruleTexts } from './words.ts'
import { workingOf } from './working.ts'

export const lotUrl = (lot: string): string => `lots/${lot}/`
export const gradeUrl = (grade: string): string => `grades/${grade}/`

/** Sections of a page that an edition shows. */
export type Sections = ReadonlySet<'results' | 'working' | 'chain' | 'sampling'>

/** Build the page of one lot. */
export function lotDocument(
  view: LotView,
  sections: Sections,
  papers: readonly Paper[]
): LotDocument {
  const { grade, rows } = view
  const measured = rows.flatMap(({ result }) => (result ? [result] : []))
  return {
    lot: view.lot,
    kind: kindTexts[view.kind],
    url: lotUrl(view.lot),
    grade: {
      id: grade.id,
      title: grade.title,
      revision: String(grade.revision),
      url: gradeUrl(grade.id)
    },
    made: view.made,
    status: view.status,
    answer: answerOf(view),
    facts: lotFacts(view, sections),
    results: sections.has('results') ? resultRows(view) : [],
    decisionRule: ruleTexts[view.rule],
    workings: sections.has('working') ? measured.map(workingOf) : [],
    chain: sections.has('chain') ? view.chain : [],
    traceability: sections.has('results') ? view.traceability : [],
    ...hazardText(grade.hazards),
    cautions: grade.cautions ?? [],
    papers,
    notices: noticesOf(view)
  }
}

/** Measured and limited quantities, then what the grade states as typical beside them. */
export function resultRows({ rows, rule, grade }: LotView): ResultRow[] {
  const own = rows.map(row => resultRow(row, rule))
  const shown = new Set(own.filter(({ basis }) => basis === 'measured').map(({ key }) => key))
  const typical = Object.entries(grade.typical ?? {}).flatMap(([key, reading]) => {
    const quantity = quantityOf(key)
    return quantity && reading && !shown.has(key) ? [typicalRow(quantity, reading.decimal)] : []
  })
  return [...own, ...typical]
}

/** Does it meet its grade: the first thing a reader wants to know. */
export function answerOf({ rows, word, grade }: LotView): LotDocument['answer'] {
  const limited = rows.filter(row => row.limit)
  const name = `grade ${grade.id}, revision ${grade.revision}`
  if (limited.length === 0)
    return { word: 'not judged', sentence: `The ${name} sets no limit to judge it by.` }
  const titles = (wanted: (row: LotView['rows'][number]) => boolean) =>
    listText(limited.filter(wanted).map(({ quantity }) => inSentence(quantities[quantity].title)))
  if (word === 'not judged')
    return {
      word,
      sentence: `Not judged: ${titles(row => !row.result)} not measured, of ${counted(limited.length, 'limit')} of ${name}.`
    }
  const all = limited.length === 1 ? 'its 1 limit' : `all ${limited.length} limits`
  if (word === 'pass') return { word, sentence: `Meets ${all} of ${name}.` }
  const which = titles(row => row.verdict?.word !== 'pass')
  if (word === 'conditional pass')
    return {
      word,
      sentence: `Within ${all} of ${name}, but ${which} by less than the uncertainty.`
    }
  const failing = limited.filter(
    row => row.verdict?.word !== 'pass' && row.verdict?.word !== 'conditional pass'
  )
  const verb = word === 'not decidable' ? 'Cannot be decided against' : 'Does not meet'
  const missed = titles(row => failing.includes(row))
  return {
    word,
    sentence: `${verb} ${counted(failing.length, 'limit')} of the ${limited.length} of ${name}: ${missed}.`
  }
}

/** Facts at the head of a page or certificate. */
export function lotFacts({ made, grade, kind, sampling }: LotView, sections: Sections): Fact[] {
  const taken = [sampling?.plan, sampling?.increments].filter(part => part !== undefined)
  const on = sampling?.on === undefined ? [] : [dateText(sampling.on)]
  return [
    { label: 'Product', text: capital(kindTexts[kind]) },
    { label: 'Grade', text: `${grade.title} (${grade.id}), revision ${grade.revision}` },
    { label: 'Made', text: dateText(made) },
    ...(sections.has('sampling') && taken.length + on.length > 0
      ? [{ label: 'Sampling', text: [...taken, ...on].join('; ') }]
      : []),
    ...(grade.packing === undefined ? [] : [{ label: 'Packing', text: grade.packing }]),
    ...(grade.storage === undefined ? [] : [{ label: 'Storage', text: grade.storage }])
  ]
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

function noticesOf({ state, status }: LotView): string[] {
  if (state === 'withdrawn') return [`Do not use this lot. ${status.sentence}`]
  if (state === 'concession')
    return ['This lot does not meet its grade in full and was let go under a concession.']
  return state === 'rejected' ? ['This lot was rejected and is not for sale.'] : []
}
