/** A lot's page, from what any edition may know of it. */

import type { LotHazards } from '../judge/lot-hazards.ts'
import { quantityOf, titleInSentence } from '../quantities.ts'
import { monthsLater } from '../records/dates.ts'
import { reasonedClasses } from './computed-hazards.ts'
import { hazardText } from './hazards.ts'
import { articleText } from './article.ts'
import type { LotView } from './lot-view.ts'
import { placesFrom, resultRow, typicalRow } from './result-row.ts'
import type { Fact, LotDocument, Paper, ResultRow, VerdictWord } from './types.ts'
import { dateText, kindTexts, listText, marks, ruleTexts, unparted } from './words.ts'
import { workingOf } from './working.ts'

export const lotUrl = (lot: string): string => `lots/${lot}/`
export const certificateUrl = (number: string): string => `certificates/${number}/`
export const gradeUrl = (grade: string): string => `grades/${grade}/`

/** Sections of a page that an edition shows. */
export type Sections = ReadonlySet<'results' | 'working' | 'chain' | 'sampling'>

/** Build the page of one lot. */
export function lotDocument(
  view: LotView,
  sections: Sections,
  papers: readonly Paper[]
): LotDocument {
  const { grade } = view
  const rows = sections.has('results') ? resultRows(view) : []
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
    answer: shownAnswer(view, sections),
    facts: lotFacts(view, sections),
    results: rows,
    decisionRule: ruleTexts[view.rule],
    workings: sections.has('working') ? workingsOf(view) : [],
    chain: sections.has('chain') ? view.chain : [],
    traceability: sections.has('results') ? view.traceability : [],
    ...hazardText(grade.hazards, { day: view.asOf, languages: true }, view.hazards, rows),
    // Reasons name figures: they go where the figures go.
    ...(view.hazards && rows.length > 0 ? { hazardReasons: reasonedClasses(view.hazards) } : {}),
    cautions: grade.cautions ?? [],
    papers,
    notices: noticesOf(view)
  }
}

const workingsOf = ({ rows, rule }: LotView) =>
  rows.flatMap(row => (row.result ? [workingOf(row.result, placesFrom(row, rule))] : []))

/** Measured and limited quantities, then what the grade states as typical of others. */
export function resultRows({ rows, rule, grade }: LotView): ResultRow[] {
  const own = rows.map(row => resultRow(row, rule))
  const shown = new Set(own.map(({ key }) => key))
  const typical = Object.entries(grade.typical ?? {}).flatMap(([key, reading]) => {
    const quantity = quantityOf(key)
    return quantity && reading && !shown.has(key) ? [typicalRow(quantity, reading.decimal)] : []
  })
  return [...own, ...typical]
}

/** The answer, as far as an edition tells it. */
export const shownAnswer = (view: LotView, sections: Sections): LotDocument['answer'] =>
  sections.has('results') ? answerOf(view) : unpublished(view)

/** A verdict tells of figures: where these are not shown, only the lot's status is. */
const unpublished = ({ grade }: LotView): LotDocument['answer'] => ({
  word: 'not published',
  sentence: `The results of grade ${grade.id} are not published; whether the lot was let go is its status.`
})

/** Does it meet its grade: the first thing a reader wants to know. */
export function answerOf({ rows, word, grade }: LotView): LotDocument['answer'] {
  const limited = rows.filter(row => row.limit)
  const name = `grade ${grade.id}, revision ${grade.revision}`
  if (limited.length === 0)
    return { word: 'not judged', sentence: `There is no limit in ${name} to judge it by.` }
  const total = limited.length
  const having = (...words: (VerdictWord | undefined)[]) =>
    limited.filter(row => words.includes(row.verdict?.word))
  const counts =
    total === 1 ? 'the only limit' : total === 2 ? 'both limits' : `all ${total} limits`
  const all = `${counts} of ${name}`
  const some = (rows: LotView['rows']) =>
    `${total === 1 ? 'the only limit' : `${rows.length} of the ${total} limits`} of ${name}`
  const failing = having('fail', 'conditional fail')
  const undecided = having('not decidable')
  const missing = having(undefined)
  const sentences: Record<typeof word, string> = {
    pass: `Meets ${all}.`,
    'conditional pass': `Within ${all}, but ${titles(having('conditional pass'))} by less than the uncertainty.`,
    'conditional fail': `Outside ${some(failing)}, but by no more than the uncertainty: ${titles(failing)}.`,
    fail: `Does not meet ${some(failing)}: ${titles(failing)}.`,
    'not decidable': `Cannot be decided against ${some(undecided)}: ${titles(undecided)}.`,
    'not judged': `Measurements are missing for ${some(missing)}: ${titles(missing)}.`
  }
  const aside = (text: string, rows: LotView['rows'], toldBy: typeof word) =>
    rows.length === 0 || word === toldBy ? '' : ` ${text}: ${titles(rows)}.`
  return {
    word,
    sentence: [
      sentences[word],
      aside('Cannot be decided', undecided, 'not decidable'),
      aside('Not measured', missing, 'not judged')
    ].join('')
  }
}

const titles = (rows: LotView['rows']) =>
  listText(rows.map(({ quantity }) => titleInSentence(quantity)))

/** Facts at the head of a page or certificate. */
export function lotFacts(
  { made, grade, kind, sampling, hazards }: LotView,
  sections: Sections
): Fact[] {
  const taken = [sampling?.plan, sampling?.increments].filter(part => part !== undefined)
  const on = sampling?.on === undefined ? [] : [dateText(sampling.on)]
  const sampled = sections.has('sampling') ? [...taken, ...on].join('; ') : ''
  const months = grade.retestAfterMonths
  return [
    { label: 'Product', text: capital(kindTexts[kind]) },
    { label: 'Grade', text: `${grade.title} (${grade.id}), revision ${grade.revision}` },
    { label: 'Made', text: dateText(made) },
    ...fact('Retest by', months && dateText(monthsLater(made, months))),
    ...fact('Sampling', sampled),
    ...fact('CAS number', grade.casNumber),
    ...fact('Article', hazards && standing(hazards)),
    ...fact('Safety data sheet', grade.safetyDataSheet),
    ...fact('Packing', grade.packing),
    ...fact('Storage', grade.storage)
  ]
}

/** Of foil: who stated that it is an article, or that it is open. */
const standing = ({ article, classification, open }: LotHazards): string | undefined =>
  open.some(({ about }) => about === 'article')
    ? 'not settled: a competent person has to decide'
    : classification.article && article && articleText(article)

/** A fact, where there is something to say. */
const fact = (label: string, text: string | number | undefined): Fact[] =>
  text ? [{ label, text: unparted(String(text)) }] : []

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

function noticesOf({ state, status, calledBack }: LotView): string[] {
  if (calledBack) return [`${marks.calledBack}. ${status.sentence}`]
  if (state === 'concession')
    return ['This lot was let go under a concession and is not released for general sale.']
  return state === 'rejected' ? ['This lot was rejected and is not for sale.'] : []
}
