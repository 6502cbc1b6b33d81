/** What a certificate is called and says of itself, in English. */

import type { InspectionType } from '../../../records/schemas/lots.ts'

const COMPLIES = 'the producer declares that what is supplied complies with the order'

const onResults = [
  'The results relate only to the lot named here, as sampled and tested.',
  'U is the expanded uncertainty for a coverage probability of about 95 %; k is its coverage factor.'
]

export const inspection = {
  analysis: 'Certificate of analysis',
  titles: {
    '2.1': 'Declaration of compliance 2.1 (EN\u00a010204)',
    '2.2': 'Test report 2.2 (EN\u00a010204)',
    '3.1': 'Inspection certificate 3.1 (EN\u00a010204)'
  } satisfies Record<InspectionType, string>,
  document: 'Document',
  documentType: (type: InspectionType) => `EN 10204:2004, type ${type}`,
  order: 'Order',
  privateOrder: 'named on the customer’s copy',
  onResults: (): readonly string[] => onResults,
  noType:
    'This certificate is issued by the producer. It is no report of an accredited laboratory and no inspection document to EN 10204.',
  typed:
    'EN 10204 is written for metallic products and is applied to others by agreement. This is no report of an accredited laboratory.',
  last: (): readonly string[] => [
    'Heating and bench results are no fire-resistance rating.',
    'Not to be reproduced except in full.'
  ],
  /** Of a type of EN 10204, before those that all papers end in. */
  statements: {
    '2.1': () => [`Type 2.1 of EN 10204:2004: ${COMPLIES}. It gives no results of tests.`],
    '2.2': () => [
      `Type 2.2 of EN 10204:2004: ${COMPLIES}, and gives results of non-specific inspection. They are typical of the grade and are not of tests on this lot.`
    ],
    '3.1': signatory => [
      `Type 3.1 of EN 10204:2004: ${COMPLIES}, and gives results of tests on this lot itself. It is validated by the ${signatory}, an inspection representative independent of the manufacturing department.`,
      ...onResults
    ]
  } satisfies Record<InspectionType, (signatory: string) => readonly string[]>,
  complies: (grade: string) => `Declared to comply with the order: ${grade}.`,
  previewStatement:
    'This is a preview: no certificate has been issued on this lot, and nobody answers for these figures yet.',
  amends: (before: number, reason: string) => `Replaces revision ${before}. Reason: ${reason}.`
}
