/** What differs between two states of one certificate, told one difference a sentence. */

import { bareWords } from '../records/placeholders.ts'
import type { Catalogue } from './languages/catalogue.ts'
import { en } from './languages/en/index.ts'
import { catalogues } from './languages/index.ts'
import type { CertificateDocument, HazardText, MethodText, ResultRow } from './types.ts'
import { plainSpaces, unstopped } from './words.ts'

type Words = Pick<Catalogue, 'changes' | 'paper' | 'numbers'>

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
 *
 * @param language that of the paper the differences are told on; English for messages
 */
export function changesBetween(before: Told, now: Told, language: Words = en): string[] {
  const { changes: words } = language
  const differ = (what: string, was?: string, is?: string) => change(what, was, is, language)
  const parts = rowParts(language)
  return [
    ...differ(words.lot, before.lot, now.lot),
    ...differ(words.issued, before.issued, now.issued),
    ...differ(words.producer, producerText(before), producerText(now)),
    ...changedItems(labelled(before.facts), labelled(now.facts), differ),
    ...changedItems(byKey(before.results), byKey(now.results), (_key, was, is) =>
      changedRow(language, parts, was, is)
    ),
    ...differ(words.overall, before.answer.sentence, now.answer.sentence),
    ...differ(words.notMeasured, before.notMeasured.join(', '), missingNow(before, now).join(', ')),
    ...changedHazards(language, before.hazards, now.hazards),
    ...differ(words.cautions, before.cautions.join(' '), now.cautions.join(' ')),
    ...differ(words.traceability, before.traceability.join(' '), now.traceability.join(' ')),
    ...differ(words.signatory, before.signatory, now.signatory)
  ]
}

/** What this program says by itself was not measured is no change where an earlier one was silent. */
const missingNow = (before: Told, now: Told): string[] =>
  now.notMeasured.filter(text => !ofOurs.includes(text) || before.notMeasured.includes(text))

const ofOurs: readonly string[] = Object.values(catalogues).flatMap(({ foil }) =>
  Object.values(foil.missing)
)

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
export function change(what: string, was = '', is = '', { changes: words }: Words = en): string[] {
  // Which spaces may end a line is a matter of setting, not of what is said.
  if (plainSpaces(was) === plainSpaces(is)) return []
  if (was === '') return [words.added(what, shortened(is))]
  if (is === '') return [words.leftOut(what, shortened(was))]
  return Math.max(was.length, is.length) > TELLABLE_LENGTH
    ? [words.textDiffers(what)]
    : [words.differs(what, unstopped(was), unstopped(is))]
}

const shortened = (text: string): string => {
  const plain = unstopped(text)
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

function changedRow(
  words: Words,
  parts: readonly RowPart[],
  was?: ResultRow,
  is?: ResultRow
): string[] {
  const { title } = (is ?? was)!
  const told = (row: ResultRow) => resultText(row, words)
  if (!was || !is) return change(title, was && told(was), is && told(is), words)
  return parts.flatMap(([part, text]) => change(`${title}, ${part}`, text(was), text(is), words))
}

type RowPart = readonly [string, (row: ResultRow) => string | undefined]

const rowParts = (language: Words): readonly RowPart[] => {
  const { paper, changes, numbers } = language
  const { row: words, edition, bareReport } = changes
  return [
    [words.result, row => resultText(row, language)],
    [words.standing, row => paper.bases[row.basis]],
    [words.limit, row => row.limit && `${row.limit.printed} (${row.limit.of})`],
    [words.verdict, row => row.verdict && paper.verdicts[row.verdict.word]],
    [words.decidedBy, row => row.decidedBy?.printed],
    [words.method, row => methodText(row.method, edition)],
    [words.tested, row => row.testedOn && numbers.date(row.testedOn)],
    [words.readings, row => row.n?.toString()],
    [words.spread, row => row.spread],
    [words.report, row => row.report && bareReport(row.report.sentence)],
    [words.file, row => row.report?.sha256]
  ]
}

/** '262 mL/g ± 8 mL/g', '< 0.02 %', 'not stated'. */
function resultText(row: ResultRow, { paper }: Words): string {
  const { value, below, unit, expandedUncertainty, basis } = row
  if (!value) return paper.bases[basis]
  const withUnit = (text: string) => [text, unit.printed].filter(Boolean).join('\u00a0')
  const figure = withUnit(value.printed)
  return expandedUncertainty && !below
    ? `${figure} ± ${withUnit(expandedUncertainty.printed)}`
    : figure
}

const methodText = (method: MethodText | undefined, edition: Words['changes']['edition']) =>
  method &&
  [edition(method.id, method.edition), method.conditions, method.deviation]
    .filter(Boolean)
    .join('; ')

/** The label, then what it rests on; of a block that came or went, the label says it all. */
function changedHazards(language: Words, was?: HazardText, is?: HazardText): string[] {
  const { changes: words, paper } = language
  const { block } = words
  const differ = (what: string, before?: string, now?: string) =>
    change(what, before, now, language)
  if (!was || !is) return differ(words.hazards, was && labelText(was), is && labelText(is))
  const parts: readonly (readonly [string, (hazards: HazardText) => string | undefined])[] = [
    [words.hazards, labelText],
    [block.pictograms, ({ pictograms }) => pictograms.map(({ code }) => code).join(' ')],
    [block.classes, ({ classified }) => classified.join(', ')],
    [block.computed, ({ computed }) => computed?.sentence],
    [block.agreement, ({ computed }) => computed?.agreement],
    [block.reasons, reasonText],
    [block.basis, ({ basis }) => basis],
    [block.edition, ({ edition }) => paper.wording(edition)],
    [block.editions, ({ editions }) => editions && editionsText(editions)],
    [block.transport, ({ transport }) => transport]
  ]
  const said = new Map(was.statements.map(({ code, text }) => [code, text]))
  return [
    ...parts.flatMap(([part, text]) => differ(part, text(was), text(is))),
    ...(wordsOfDust(was) === wordsOfDust(is)
      ? []
      : differ(block.dust, was.computed?.dust, is.computed?.dust)),
    ...is.statements.flatMap(({ code, text }) =>
      differ(words.words(code), said.get(code) ?? text, text)
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

/** Its words alone are what is said: an earlier paper may point the sentence otherwise. */
const wordsOfDust = ({ computed }: HazardText) => bareWords(computed?.dust ?? '')

const reasonText = ({ computed }: HazardText) =>
  computed &&
  [...computed.classes.flatMap(({ why }) => why), ...computed.from, ...computed.notes].join(' ')

const producerText = ({ producer }: Told) => [producer.name, ...producer.address].join(', ')
