/** The labels of a lot, or why it can have none. */

import type { JudgedLot } from '../judge/types.ts'
import { type Edition, editionNames } from '../hazards/editions.ts'
import type { Language } from '../hazards/statements.ts'
import { ingredientsToName } from '../hazards/label-names.ts'
import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import type { Content, Entry, Grade } from '../records/types.ts'
import { producerText } from './certificate.ts'
import type { FrozenCertificate } from './frozen-schema.ts'
import { classificationIn } from './hazards.ts'
import type { Issued } from './issued.ts'
import { labelDocument } from './label.ts'
import { labelHazards, type Worded, wordedIn } from './label-hazards.ts'
import type { LabelDocument, LabelWish } from './label-types.ts'
import { editionWanted, rulesFor } from './label-wish.ts'
import { labelWords } from './label-words/index.ts'
import { viewLot } from './lot-view.ts'
import { lotUrl } from './lot.ts'
import type { LabelPaper, Paper, ProducerText } from './types.ts'

export interface Labels {
  /** None where any problem stands in their way. */
  readonly labels: readonly LabelDocument[]
  readonly problems: readonly Problem[]
}

/**
 * The labels wanted for a lot, one a container.
 *
 * @param issued certificates: what stands on the lot's current one goes on its labels
 */
export function labelDocuments(
  content: Content,
  lot: JudgedLot,
  issued: readonly Issued[],
  wish: LabelWish
): Labels {
  const frozen = issued.findLast(
    ({ state, revision }) => state === 'current' && revision.lot === lot.evaluated.lot
  )?.frozen
  const view = viewLot(content, lot, [])
  const edition = editionWanted(wish)
  const hazards = labelHazards(view, frozen, edition)
  const statements = new Map(
    wish.languages.map(language => [
      language,
      hazards ? wordedIn(hazards, language, view.grade.hazards) : []
    ])
  )
  const named = ingredientsToName(lot.hazards ? classificationIn(lot.hazards, edition).classes : [])
  const untold = untoldIn(lot, edition, wish.languages)
  const { containers = containersOf(lot.grade, wish.kind) } = wish
  const problems = [
    ...refusals(lot, frozen),
    ...(containers.length === 0 ? [noContainer(lot, wish.kind)] : []),
    ...(hazards ? [] : [notIssued(lot, edition)]),
    ...(untold.length > 0 ? untold : missingTexts(content, lot, statements)),
    ...missingNames(lot, wish.languages, named)
  ]
  if (!hazards || problems.length > 0) return { labels: [], problems }
  const inputs = { view, producer: supplier(content, frozen), hazards, statements, named }
  return { labels: containers.map(one => labelDocument(inputs, wish, one)), problems }
}

/** The labels a lot's page offers, and its links to them; none where anything stands against them. */
export function labelPapers(
  content: Content,
  lot: JudgedLot,
  issued: readonly Issued[]
): { readonly labels: readonly LabelPaper[]; readonly links: readonly Paper[] } {
  const rules = rulesFor({}, content.producer.record.labels)
  const labels = labelDocuments(content, lot, issued, rules).labels.map(document => ({
    document,
    url: `${lotUrl(document.lot)}labels/${document.fileName}`
  }))
  const links = labels.map(({ document, url }) => ({
    title: `${document.title} (PDF)`,
    url,
    mediaType: 'application/pdf'
  }))
  return { labels, links }
}

/** Who supplies it: as issued, or as the records have it. */
const supplier = (content: Content, frozen: FrozenCertificate | undefined): ProducerText =>
  frozen ? frozen.certificate.producer : producerText(content.producer.record)

const refusal = (
  { evaluated }: JudgedLot,
  field: FieldPath,
  message: string,
  hint: string
): Problem => problemAt(evaluated.entry.at(field), 'NOT_LABELLABLE', message, hint)

/** What keeps a lot from any label. */
function refusals(lot: JudgedLot, frozen: FrozenCertificate | undefined): Problem[] {
  const { state, evaluated } = lot
  const said = frozen ? frozen.certificate.hazards : lot.grade.hazards
  return [
    ...(state === 'rejected' || state === 'withdrawn' || state === 'scrapped'
      ? [
          refusal(
            lot,
            ['status'],
            `is ${state}, and is not to be labelled for use`,
            'mark what is left of it by hand, apart from the stock'
          )
        ]
      : []),
    ...unsettled(lot, frozen),
    ...(evaluated.kind === 'batch' && !said
      ? [
          refusal(
            lot,
            ['grade'],
            'its grade declares no hazards, so that nobody knows what belongs on a label',
            "add 'hazards:' to the grade; 'classified: [not classified]' where there is none"
          )
        ]
      : [])
  ]
}

/** Questions nobody has answered: a label would answer them by silence. */
function unsettled(lot: JudgedLot, frozen: FrozenCertificate | undefined): Problem[] {
  const hint = "test it, or record under 'hazards: decisions:' who decided and why"
  if (frozen?.certificate.hazards?.computed?.state === 'incomplete')
    return [refusal(lot, ['lot'], 'its certificate was issued with hazards not settled', hint)]
  return (lot.hazards?.open ?? []).map(({ about, text }) =>
    refusal(lot, ['lot'], `its hazards are not settled (${about}): ${text}`, hint)
  )
}

const containersOf = ({ containers = [] }: Grade, kind: LabelWish['kind']) =>
  containers.filter(one => kind === undefined || one.kind === kind)

const noContainer = (lot: JudgedLot, kind = 'container'): Problem =>
  refusal(
    lot,
    ['grade'],
    `its grade ${lot.grade.id} names no ${kind}`,
    "add it to 'containers:' of the grade, or say all of it: --container pouch --capacity 0.5L --holds 100g"
  )

/** A label of an edition that its certificate does not have would say what nobody issued. */
const notIssued = (lot: JudgedLot, edition: Edition): Problem =>
  refusal(
    lot,
    ['lot'],
    `its certificate has no label of the edition '${editionNames[edition]}'`,
    `add ${edition} to 'editions:' of the grade's hazards and issue a revision of the certificate`
  )

const gradeEntry = (content: Content, { grade }: JudgedLot): Entry<Grade> =>
  content.grades.get(grade.id)!.find(({ record }) => record === grade)!

/** Statements that have no text in a language wanted: never a blank. */
function missingTexts(
  content: Content,
  lot: JudgedLot,
  statements: ReadonlyMap<Language, readonly Worded[]>
): Problem[] {
  const at = gradeEntry(content, lot).at(['hazards'])
  return [...statements].flatMap(([language, worded]) =>
    worded
      .filter(({ text }) => text === undefined)
      .map(({ code, reason }) => {
        const isGap = reason === 'gap not filled'
        const lacks = isGap ? `no words for its gap in '${language}'` : `no text: ${reason}`
        return problemAt(
          at,
          'MISSING_TEXT',
          `${code} on the label of ${lot.evaluated.lot} has ${lacks}`,
          isGap ? fillHint(code, language) : "choose another under 'precautions:'"
        )
      })
  )
}

const fillHint = (code: string, language: Language) =>
  language === 'en'
    ? `add 'fill: { ${code}: … }'`
    : `add 'fill-in-languages: { ${language}: { ${code}: … } }'`

/** Ingredients that no file of words has a name for. */
const missingNames = (
  lot: JudgedLot,
  languages: readonly Language[],
  named: readonly string[]
): Problem[] =>
  languages.flatMap(language =>
    named
      .filter(name => !Object.hasOwn(labelWords[language].substances, name))
      .map(name =>
        problemAt(
          lot.evaluated.entry.at(['hazards']),
          'MISSING_TEXT',
          `the label has to name ${name}, which has no name in '${language}' here`,
          `add it to src/documents/label-words/${language}.ts`
        )
      )
  )

/** Texts of editions other than CLP are there in English alone. */
const untoldIn = (
  { evaluated }: JudgedLot,
  edition: Edition,
  languages: readonly Language[]
): Problem[] =>
  edition === 'clp' || languages.every(language => language === 'en')
    ? []
    : [
        problemAt(
          evaluated.entry.at(['lot']),
          'MISSING_TEXT',
          `a label of the edition '${editionNames[edition]}' has texts in 'en' alone`,
          'take the other languages out'
        )
      ]
