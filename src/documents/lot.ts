/** A lot's page, from what any edition may know of it. */

import { capital } from './capital.ts'
import { wordOf } from '../judge/judge-lot.ts'
import type { LotHazards } from '../judge/lot-hazards.ts'
import { quantities, type QuantityName, quantityOf } from '../quantities.ts'
import { monthsLater } from '../records/dates.ts'
import type { publicSections } from '../records/schemas/grade.ts'
import { reasonedClasses } from './computed-hazards.ts'
import { hazardText } from './hazards.ts'
import { articleText } from './article.ts'
import type { LotView } from './lot-view.ts'
import { notMeasuredOf, serviceText } from './not-measured.ts'
import { quantityText } from './quantity-made.ts'
import { placesFrom, resultRow, typicalRow } from './result-row.ts'
import type { Fact, LotDocument, Paper, ResultRow, VerdictWord } from './types.ts'
import { unparted } from './words.ts'
import { type Tongue, wordsOf } from './languages/tongue.ts'
import { lotCurves } from './lot-curves.ts'
import { demandText, visualText, visualWorking } from './visual.ts'
import { workingOf } from './working.ts'

export const lotUrl = (lot: string): string => `lots/${lot}/`
export const certificateUrl = (number: string): string => `certificates/${number}/`
export const gradeUrl = (grade: string): string => `grades/${grade}/`

/** Sections of a page that an edition shows. */
export type Sections = ReadonlySet<(typeof publicSections)[number]>

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
    kind: view.tongue.lot.kinds[view.kind],
    url: lotUrl(view.lot),
    grade: {
      id: grade.id,
      title: view.tongue.own(grade.title),
      revision: String(grade.revision),
      url: gradeUrl(grade.id)
    },
    made: view.made,
    status: view.status,
    answer: shownAnswer(view, sections),
    facts: [...lotFacts(view, sections), ...missingFact(view, sections)],
    results: rows,
    ...curvesPart(view, sections),
    decisionRule: view.tongue.lot.rules[view.rule],
    ...(sections.has('working') ? workingPart(view) : { workings: [] }),
    chain: sections.has('chain') ? view.chain : [],
    traceability: sections.has('results') ? view.traceability : [],
    ...hazardText(
      grade.hazards,
      { day: view.asOf, languages: true, tongue: view.tongue },
      view.hazards,
      rows
    ),
    // Reasons name figures: they go where the figures go.
    ...(view.foil?.visual && sections.has('results') ? { visual: view.foil.visual } : {}),
    ...(grade.visual && view.foil?.look && sections.has('results')
      ? { visualDemand: { demand: grade.visual, standing: view.foil.look } }
      : {}),
    ...(view.hazards && rows.length > 0 ? { hazardReasons: reasonedClasses(view.hazards) } : {}),
    cautions: (grade.cautions ?? []).map(view.tongue.own),
    papers,
    notices: noticesOf(view)
  }
}

function curvesPart({ rows, tongue }: LotView, sections: Sections): Pick<LotDocument, 'curves'> {
  const curves = sections.has('results') ? lotCurves(rows, tongue) : []
  return curves.length > 0 ? { curves } : {}
}

/** Workings, and the field they tell of. */
function workingPart(view: LotView): Pick<LotDocument, 'workings' | 'field'> {
  const workings = workingsOf(view)
  const field = workings.find(one => one.field)?.field
  return { workings, ...(field ? { field } : {}) }
}

function workingsOf({ rows, rule, foil, tongue }: LotView) {
  const seen = foil?.visual && visualWorking(foil.visual, tongue)
  return [
    ...rows.flatMap(row =>
      row.result ? [workingOf(row.result, placesFrom(row, rule), tongue)] : []
    ),
    ...(seen ? [seen] : [])
  ]
}

/** What nobody measured on a lot of foil, where its figures are shown. */
function missingFact(view: LotView, sections: Sections): Fact[] {
  if (!view.foil || !sections.has('results')) return []
  return fact(view.tongue.paper.alsoNotMeasured, missingOf(view).join(', '))
}

/** What is not measured, of the grade and of this lot. */
export const missingOf = ({ grade, rows, tongue }: LotView): string[] =>
  notMeasuredOf(
    grade,
    rows.flatMap(({ quantity, result }) => (result ? [quantities[quantity].key] : [])),
    tongue
  )

/** Measured and limited quantities, then what the grade states as typical of others. */
export function resultRows({ rows, rule, grade, tongue }: LotView): ResultRow[] {
  const own = rows.map(row => resultRow(row, rule, tongue))
  const shown = new Set(own.map(({ key }) => key))
  const typical = Object.entries(grade.typical ?? {}).flatMap(([key, reading]) => {
    const quantity = quantityOf(key)
    return quantity && reading && !shown.has(key)
      ? [typicalRow(quantity, reading.decimal, tongue)]
      : []
  })
  return [...own, ...typical]
}

/** The answer, as far as an edition tells it. */
export const shownAnswer = (view: LotView, sections: Sections): LotDocument['answer'] =>
  sections.has('results') ? answerOf(view) : unpublished(view)

/** A verdict tells of figures: where these are not shown, only the lot's status is. */
const unpublished = ({ grade, tongue }: LotView): LotDocument['answer'] => ({
  word: 'not published',
  sentence: tongue.pages.lot.unpublished(grade.id)
})

/** Does it meet its grade: the first thing a reader wants to know. */
export function answerOf(view: LotView): LotDocument['answer'] {
  const { word, foil, tongue } = view
  const look = foil?.look && tongue.foil.looks[foil.look]
  return { word, sentence: [limitsAnswer(view), ...(look ? [look] : [])].join(' ') }
}

/** How it stands to the limits of its grade. */
function limitsAnswer({ rows, grade, tongue }: LotView): string {
  const { lot: words } = tongue
  const limited = rows.filter(row => row.limit)
  const name = words.gradeName(grade.id, grade.revision)
  if (limited.length === 0) return words.noLimit(name)
  const word = wordOf(rows)
  const having = (...wanted: (VerdictWord | undefined)[]) =>
    limited.filter(row => wanted.includes(row.verdict?.word))
  const found = {
    pass: [],
    'conditional pass': having('conditional pass'),
    'conditional fail': having('fail', 'conditional fail'),
    fail: having('fail', 'conditional fail'),
    'not decidable': having('not decidable'),
    'not judged': having(undefined)
  }
  const titles = (named: LotView['rows']) =>
    tongue.numbers.list(named.map(({ quantity }) => titleIn(tongue, quantity)))
  const aside = (about: 'not decidable' | 'not judged', text: (titles: string) => string) =>
    found[about].length === 0 || word === about ? '' : ` ${text(titles(found[about]))}`
  const count = {
    n: found[word].length,
    total: limited.length,
    grade: name,
    titles: titles(found[word])
  }
  return [
    words.answers[word](count),
    aside('not decidable', words.alsoUndecided),
    aside('not judged', words.alsoMissing)
  ].join('')
}

/** A quantity's title in a sentence. */
const titleIn = (tongue: Tongue, quantity: QuantityName): string =>
  tongue.numbers.inSentence(wordsOf(tongue, quantity).title)

/** Facts at the head of a page or certificate. */
export function lotFacts(view: LotView, sections: Sections): Fact[] {
  const { made, grade, kind, hazards, tongue } = view
  const { facts, kinds, gradeFact } = tongue.lot
  const { date } = tongue.numbers
  const said = (text: string | undefined) => text && tongue.own(text)
  const months = grade.retestAfterMonths
  return [
    { label: facts.product, text: capital(kinds[kind]) },
    { label: facts.grade, text: gradeFact(tongue.own(grade.title), grade.id, grade.revision) },
    { label: facts.made, text: date(made) },
    ...fact(
      facts.quantity,
      sections.has('quantity') && view.quantity ? quantityText(view.quantity, tongue) : ''
    ),
    ...fact(facts.retest, months && date(monthsLater(made, months))),
    ...fact(facts.sampling, sections.has('sampling') ? samplingText(view) : ''),
    ...foilFacts(view, sections),
    ...fact(facts.cas, grade.casNumber),
    ...fact(facts.article, hazards && standing(hazards, tongue)),
    ...fact(facts.sheet, grade.safetyDataSheet),
    ...fact(facts.packing, said(grade.packing)),
    ...fact(facts.storage, said(grade.storage))
  ]
}

/** Of foil: how it lies, what is in it, how it looks, what is reported of its grade in service. */
function foilFacts({ foil, grade, tongue }: LotView, sections: Sections): Fact[] {
  const { facts, directions } = tongue.foil
  if (!foil) return []
  const { direction, inhibitor, visual } = foil
  const isShown = sections.has('results')
  const look = [visual && visualText(visual, tongue), demandText(grade, foil, tongue)]
  return [
    ...fact(facts.direction, direction && directions[direction]),
    ...fact(facts.inhibitor, inhibitor && tongue.own(inhibitor)),
    ...fact(facts.visual, isShown ? look.filter(Boolean).join(' ') : ''),
    ...(['fireSafe', 'oxygen'] as const).flatMap(key => {
      const report = isShown ? grade.service?.[key] : undefined
      return fact(facts[key], report && serviceText(report, tongue))
    })
  ]
}

function samplingText({ sampling = {}, tongue }: LotView): string {
  const { plan, increments, on } = sampling
  const taken = [plan, increments].flatMap(part => (part === undefined ? [] : tongue.own(part)))
  return [...taken, ...(on === undefined ? [] : [tongue.numbers.date(on)])].join('; ')
}

/** Of foil: who stated that it is an article, or that it is open. */
const standing = (
  { article, classification, open }: LotHazards,
  tongue: Tongue
): string | undefined =>
  open.some(({ about }) => about === 'article')
    ? tongue.lot.notSettled
    : classification.article && article && articleText(article, tongue)

/** A fact, where there is something to say. */
const fact = (label: string, text: string | number | undefined): Fact[] =>
  text ? [{ label, text: unparted(String(text)) }] : []

function noticesOf({ state, status, calledBack, tongue }: LotView): string[] {
  const { lot: words } = tongue.pages
  if (calledBack) return [`${tongue.lot.marks.calledBack}. ${status.sentence}`]
  if (state === 'concession') return [words.concession]
  return state === 'rejected' ? [words.rejected] : []
}
