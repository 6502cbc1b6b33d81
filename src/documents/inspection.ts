/**
 * What a certificate is called and says of itself: a certificate of analysis, or a type of EN 10204.
 *
 * Source: EN 10204:2004, the table of types; from memory, not checked against the print.
 */

import { quantityOf } from '../quantities.ts'
import type { InspectionType } from '../records/schemas/lots.ts'
import type { CertificateOrder } from '../records/types.ts'
import { answerOf, resultRows } from './lot.ts'
import type { LotView } from './lot-view.ts'
import { typicalRow } from './result-row.ts'
import type { CertificateDocument, Fact, ResultRow } from './types.ts'

/** The parts of a certificate that differ by its type. */
type TypedPart = Pick<
  CertificateDocument,
  'title' | 'answer' | 'results' | 'notMeasured' | 'traceability' | 'statements'
> & {
  /** Which document it is, and of which order, at the head of its facts. */
  readonly typeFacts: readonly Fact[]
}

const titles: Record<InspectionType, string> = {
  '2.1': 'Declaration of compliance 2.1 (EN\u00a010204)',
  '2.2': 'Test report 2.2 (EN\u00a010204)',
  '3.1': 'Inspection certificate 3.1 (EN\u00a010204)'
}

const LAST = [
  'Heating and bench results are no fire-resistance rating.',
  'Not to be reproduced except in full.'
]

const ON_RESULTS = [
  'The results relate only to the lot named here, as sampled and tested.',
  'U is the expanded uncertainty for a coverage probability of about 95 %; k is its coverage factor.'
]

const NO_TYPE =
  'This certificate is issued by the producer. It is no report of an accredited laboratory and no inspection document to EN 10204.'

const TYPED =
  'EN 10204 is written for metallic products and is applied to others by agreement. This is no report of an accredited laboratory.'

const COMPLIES = 'the producer declares that what is supplied complies with the order'

const PRIVATE_ORDER = 'named on the customer’s copy'

/** The statements of a type of EN 10204, before those that all papers end in. */
const typeStatements: Record<InspectionType, (signatory: string) => readonly string[]> = {
  '2.1': () => [`Type 2.1 of EN 10204:2004: ${COMPLIES}. It gives no results of tests.`],
  '2.2': () => [
    `Type 2.2 of EN 10204:2004: ${COMPLIES}, and gives results of non-specific inspection. They are typical of the grade and are not of tests on this lot.`
  ],
  '3.1': signatory => [
    `Type 3.1 of EN 10204:2004: ${COMPLIES}, and gives results of tests on this lot itself. It is validated by the ${signatory}, an inspection representative independent of the manufacturing department.`,
    ...ON_RESULTS
  ]
}

/** Whether a type shows results of tests on the lot itself. */
export const givesOwnResults = (type: InspectionType | undefined): boolean =>
  type === undefined || type === '3.1'

/** The parts of a certificate on a lot; of a certificate of analysis where no type is ordered. */
export function typedPart(
  view: LotView,
  order: Pick<CertificateOrder, 'type' | 'signatory'> | undefined
): TypedPart {
  const type = order?.type
  if (!order || type === undefined)
    return { ...ownPart(view), title: 'Certificate of analysis', typeFacts: [] }
  const said = [...typeStatements[type](order.signatory), TYPED, ...LAST]
  const typeFacts = [
    { label: 'Document', text: `EN 10204:2004, type ${type}` },
    { label: 'Order', text: PRIVATE_ORDER }
  ]
  const part = givesOwnResults(type) ? ownPart(view) : withoutOwn(view, type)
  return {
    ...part,
    title: titles[type],
    typeFacts,
    results: part.results.filter(({ basis }) => type !== '3.1' || basis === 'measured'),
    statements: said
  }
}

type Part = Omit<TypedPart, 'title' | 'typeFacts'>

const ownPart = (view: LotView): Part => ({
  answer: answerOf(view),
  results: resultRows(view),
  notMeasured: view.grade.notMeasured ?? [],
  traceability: view.traceability,
  statements: [...ON_RESULTS, NO_TYPE, ...LAST]
})

/** No figure of the lot itself, nor what its instruments were traced to. */
const withoutOwn = (view: LotView, type: InspectionType): Part => ({
  ...ownPart(view),
  answer: {
    word: view.word,
    sentence: `Declared to comply with the order: grade ${view.grade.id}, revision ${view.grade.revision}.`
  },
  results: type === '2.2' ? typicalRows(view) : [],
  notMeasured: [],
  traceability: []
})

/** What the grade states as typical, whether or not the lot was tested for it. */
const typicalRows = ({ grade }: LotView): ResultRow[] =>
  Object.entries(grade.typical ?? {}).flatMap(([key, reading]) => {
    const quantity = quantityOf(key)
    return quantity && reading ? [typicalRow(quantity, reading.decimal)] : []
  })
