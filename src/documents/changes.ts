/** What differs between two states of one certificate, told one difference a sentence. */

import { english } from './languages/tongue.ts'
import type { CertificateDocument, HazardText, MethodText, ResultRow } from './types.ts'
import { plainSpaces } from './words.ts'

/** The parts of a certificate that say something of the lot. */
type Told = Pick<
  CertificateDocument,
  | 'lot'
  | 'issued'
  | 'producer'
  | 'facts'
  | 'answer'
  | 'results'
  | 'notMeasured'
  | 'hazards'
  | 'cautions'
  | 'traceability'
  | 'signatory'
>

/**
 * What `now` says that `before` said otherwise, or not at all.
 *
 * Figures are compared as printed, since that is what a reader relied on. Left out are the state of
 * the lot, which has dates of its own, and the fixed sentences of the paper.
 */
export function changesBetween(before: Told, now: Told): string[] {
  return [
    ...change('Lot', before.lot, now.lot),
    ...change('Issued', before.issued, now.issued),
    ...change('Producer', producerText(before), producerText(now)),
    ...changedItems(labelled(before.facts), labelled(now.facts), (label, was, is) =>
      change(label, was, is)
    ),
    ...changedItems(byKey(before.results), byKey(now.results), changedRow),
    ...change('Overall', before.answer.sentence, now.answer.sentence),
    ...change('Not measured', before.notMeasured.join(', '), missingNow(before, now).join(', ')),
    ...changedHazards(before.hazards, now.hazards),
    ...change('Cautions', before.cautions.join(' '), now.cautions.join(' ')),
    ...change('Traceability', before.traceability.join(' '), now.traceability.join(' ')),
    ...change('Signatory', before.signatory, now.signatory)
  ]
}

/** What this program says by itself was not measured is no change where an earlier one was silent. */
const missingNow = (before: Told, now: Told): string[] =>
  now.notMeasured.filter(text => !ofOurs.includes(text) || before.notMeasured.includes(text))

const ofOurs: readonly string[] = Object.values(english.foil.missing)

/** Differences told in a message before the rest is only counted. */
const TOLD = 3

/** The first few differences, and how many there are beside them. */
export const changesInShort = (changes: readonly string[]): string =>
  [
    ...changes.slice(0, TOLD),
    ...(changes.length > TOLD ? [`And ${changes.length - TOLD} more.`] : [])
  ].join(' ')

/** Longest text that is told as it was and as it is. */
const TELLABLE_LENGTH = 80

/** One difference, or none. */
export function change(what: string, was = '', is = ''): string[] {
  // Which spaces may end a line is a matter of setting, not of what is said.
  if (plainSpaces(was) === plainSpaces(is)) return []
  if (was === '') return [`${what}: added, ${shortened(is)}.`]
  if (is === '') return [`${what}: left out, was ${shortened(was)}.`]
  return Math.max(was.length, is.length) > TELLABLE_LENGTH
    ? [`${what}: the text differs.`]
    : [`${what}: was ${was.replace(/\.$/u, '')}, now ${is.replace(/\.$/u, '')}.`]
}

const shortened = (text: string): string => {
  const plain = text.replace(/\.$/u, '')
  return plain.length > TELLABLE_LENGTH ? `${plain.slice(0, TELLABLE_LENGTH)} …` : plain
}

/** Every key of either side, in the order of the newer. */
export function changedItems<Item>(
  before: ReadonlyMap<string, Item>,
  now: ReadonlyMap<string, Item>,
  told: (key: string, was: Item | undefined, is: Item | undefined) => string[]
): string[] {
  const keys = new Set([...now.keys(), ...before.keys()])
  return [...keys].flatMap(key => told(key, before.get(key), now.get(key)))
}

const labelled = (facts: Told['facts']) => new Map(facts.map(({ label, text }) => [label, text]))
const byKey = (rows: readonly ResultRow[]) => new Map(rows.map(row => [row.key, row]))

function changedRow(_key: string, was?: ResultRow, is?: ResultRow): string[] {
  const { title } = (is ?? was)!
  if (!was || !is) return change(title, was && resultText(was), is && resultText(is))
  return rowParts.flatMap(([part, text]) => change(`${title}, ${part}`, text(was), text(is)))
}

const rowParts: readonly (readonly [string, (row: ResultRow) => string | undefined])[] = [
  ['result', resultText],
  ['standing', row => row.basis],
  ['limit', row => row.limit && `${row.limit.printed} (${row.limit.of})`],
  ['verdict', row => row.verdict?.word],
  ['decided by', row => row.decidedBy?.printed],
  ['method', row => methodText(row.method)],
  ['tested', row => row.testedOn],
  ['readings', row => row.n?.toString()],
  ['spread', row => row.spread],
  ['report', row => row.report?.sentence.replace(/^(?:External|Own earlier) result: /u, '')],
  ['file of the report', row => row.report?.sha256]
]

/** '262 mL/g ± 8 mL/g', '< 0.02 %', 'not stated'. */
function resultText({ value, below, unit, expandedUncertainty, basis }: ResultRow): string {
  if (!value) return basis
  const withUnit = (text: string) => [text, unit.printed].filter(Boolean).join('\u00a0')
  const figure = withUnit(value.printed)
  return expandedUncertainty && !below
    ? `${figure} ± ${withUnit(expandedUncertainty.printed)}`
    : figure
}

const methodText = (method: MethodText | undefined) =>
  method &&
  [`${method.id} edition ${method.edition}`, method.conditions, method.deviation]
    .filter(Boolean)
    .join('; ')

/** The label, then what it rests on; of a block that came or went, the label says it all. */
function changedHazards(was?: HazardText, is?: HazardText): string[] {
  if (!was || !is) return change('Hazards', was && labelText(was), is && labelText(is))
  const parts: readonly (readonly [string, (hazards: HazardText) => string | undefined])[] = [
    ['Hazards', labelText],
    ['Hazards, pictograms', ({ pictograms }) => pictograms.map(({ code }) => code).join(' ')],
    ['Hazards, classes', ({ classified }) => classified.join(', ')],
    ['Hazards, computed', ({ computed }) => computed?.sentence],
    ['Hazards, beside the declaration', ({ computed }) => computed?.agreement],
    ['Hazards, reasons', reasonText],
    ['Hazards, dust', ({ computed }) => computed?.dust],
    ['Hazards, basis', ({ basis }) => basis],
    ['Hazards, edition of the wording', ({ edition }) => edition],
    ['Hazards, other editions', ({ editions }) => editions && editionsText(editions)],
    ['Hazards, transport', ({ transport }) => transport]
  ]
  const words = new Map(was.statements.map(({ code, text }) => [code, text]))
  return [
    ...parts.flatMap(([part, text]) => change(part, text(was), text(is))),
    ...is.statements.flatMap(({ code, text }) =>
      change(`Hazards, words of ${code}`, words.get(code) ?? text, text)
    )
  ]
}

/** Every word of the other editions: they are short. */
const editionsText = (editions: NonNullable<HazardText['editions']>) =>
  editions
    .map(one =>
      [
        one.title,
        one.sentence,
        labelText(one),
        one.edition,
        ...one.statements.map(({ text }) => text)
      ].join(' ')
    )
    .join(' ')

const labelText = ({ signal, statements }: Pick<HazardText, 'signal' | 'statements'>) =>
  [signal, ...statements.map(({ code }) => code)].filter(Boolean).join(' ')

const reasonText = ({ computed }: HazardText) =>
  computed &&
  [...computed.classes.flatMap(({ why }) => why), ...computed.from, ...computed.notes].join(' ')

const producerText = ({ producer }: Told) => [producer.name, ...producer.address].join(', ')
