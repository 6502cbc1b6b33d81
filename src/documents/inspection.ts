/**
 * What a certificate is called and says of itself: a certificate of analysis, or a type of EN 10204.
 *
 * Source: EN 10204:2004, the table of types; from memory, not checked against the print.
 */

import { givesOwnResults } from '../judge/inspection.ts'
import { quantityOf } from '../quantities.ts'
import type { InspectionType } from '../records/schemas/lots.ts'
import type { CertificateOrder } from '../records/types.ts'
import { answerOf, missingOf, resultRows } from './lot.ts'
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

/** The parts of a certificate on a lot; of a certificate of analysis where no type is ordered. */
export function typedPart(
  view: LotView,
  order: Pick<CertificateOrder, 'type' | 'signatory'> | undefined
): TypedPart {
  const { inspection: words, own } = view.tongue
  const type = order?.type
  if (!order || type === undefined)
    return { ...ownPart(view), title: words.analysis, typeFacts: [] }
  const part = givesOwnResults(type) ? ownPart(view) : withoutOwn(view, type)
  return {
    ...part,
    title: words.titles[type],
    typeFacts: [
      { label: words.document, text: words.documentType(type) },
      { label: words.order, text: words.privateOrder }
    ],
    results: part.results.filter(({ basis }) => type !== '3.1' || basis === 'measured'),
    statements: [...words.statements[type](own(order.signatory)), words.typed, ...words.last()]
  }
}

type Part = Omit<TypedPart, 'title' | 'typeFacts'>

function ownPart(view: LotView): Part {
  const { inspection: words } = view.tongue
  return {
    answer: answerOf(view),
    results: resultRows(view),
    notMeasured: missingOf(view),
    traceability: view.traceability,
    statements: [...words.onResults(), words.noType, ...words.last()]
  }
}

/** No figure of the lot itself, nor what its instruments were traced to. */
function withoutOwn(view: LotView, type: InspectionType): Part {
  const { word, grade, tongue } = view
  const name = tongue.lot.gradeName(grade.id, grade.revision)
  return {
    ...ownPart(view),
    answer: { word, sentence: tongue.inspection.complies(name) },
    results: type === '2.2' ? typicalRows(view) : [],
    notMeasured: [],
    traceability: []
  }
}

/** What the grade states as typical, whether or not the lot was tested for it. */
const typicalRows = ({ grade, tongue }: LotView): ResultRow[] =>
  Object.entries(grade.typical ?? {}).flatMap(([key, reading]) => {
    const quantity = quantityOf(key)
    return quantity && reading ? [typicalRow(quantity, reading.decimal, tongue)] : []
  })
