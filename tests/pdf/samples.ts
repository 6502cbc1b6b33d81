/** Invented certificates that strain the layout. */

import type {
  CertificateDocument,
  Figure,
  ResultRow,
  VerdictWord
} from '../../src/documents/types.ts'
import { certificateDocument } from '../fixtures/documents.ts'

const data = {
  name: 'data.json',
  bytes: new TextEncoder().encode('{"lot":"EB-26-041","note":"≥ 250 & <so on>"}\n')
}

/** What a preview carries. */
export const attachment = { attachments: [data] }

/** What an issued certificate carries, with its fingerprint in print. */
export const sealed = {
  attachments: [data, { ...data, name: 'certificate.json' }, { ...data, name: 'proof.json' }],
  fingerprint: '5f1c'.repeat(16)
}

export const figure = (printed: string): Figure => ({ exact: printed, printed })

const titles = [
  'Expansion volume',
  'Electrical resistivity in the plane of the sheet, four-point method, mean of both directions',
  'Ash',
  'Tensile-strength-along-the-rolling-direction-of-the-foil-as-delivered-on-the-roll',
  'Leachable chloride and fluoride together, given as chloride'
]
const values = ['262.1', '0.0021', '12345', '8.88', '1.5 × 10⁻⁵', '99.95']
const verdicts: readonly VerdictWord[] = [
  'pass',
  'conditional pass',
  'conditional fail',
  'fail',
  'not decidable'
]
const [measured] = certificateDocument.results

/** `count` measured rows, each of another length. */
export const manyRows = (count: number): ResultRow[] =>
  Array.from({ length: count }, (_, index) => ({
    ...measured!,
    key: `property-${index + 1}`,
    title: `${titles[index % titles.length]} no. ${index + 1}`,
    unit: { printed: index % 3 === 0 ? 'µΩ·m' : 'mL/g', ucum: 'mL/g' },
    value: figure(values[index % values.length]!),
    limit:
      index % 2 === 0
        ? { min: figure('250'), printed: '≥ 250', of: 'lot mean' }
        : { min: figure('0.95'), max: figure('1.05'), printed: '0.95 to 1.05', of: 'every sheet' },
    verdict: {
      word: verdicts[index % verdicts.length]!,
      sentence: 'the figure lies where it lies, and this sentence says so at some length'
    },
    ...(index % 4 === 0 && {
      spread: 'Scatter between sheets: standard deviation 0.012 over 12 sheets.'
    })
  }))

/** Forty properties, long names and texts, a word without a break. */
export const longDocument: CertificateDocument = {
  ...certificateDocument,
  producer: {
    ...certificateDocument.producer,
    name: 'The Tarnfell Dale Expandable Graphite, Graphite Foil & General Intercalation Company of the Upper Valley',
    address: ['Unit 14, behind the former railway station', 'Tarnfell-under-the-Long-Moor', '00000']
  },
  facts: [
    ...certificateDocument.facts,
    {
      label: 'Specification',
      text: 'A purchase specification with a long name, number SP-2026-000417-A, revision 12'
    },
    { label: 'A label longer than its column', text: 'X'.repeat(120) }
  ],
  results: [
    ...manyRows(40),
    ...manyRows(6).map(row => ({ ...row, basis: 'typical' as const })),
    ...manyRows(3).map(row => ({ ...row, basis: 'not measured' as const }))
  ],
  cautions: [...certificateDocument.cautions, 'A caution that goes on and on. '.repeat(60).trim()],
  traceability: Array.from(
    { length: 30 },
    (_, index) => `INSTRUMENT-${index + 1}: calibration certificate CAL-26-${1000 + index}.`
  )
}

/** Signs that others are built from: a font that forgot their names would show here. */
export const accentedDocument: CertificateDocument = {
  ...certificateDocument,
  producer: { ...certificateDocument.producer, name: 'Tarnfell ı ȷ ¨ ˙ ´ ½ x × → ≥ ⁵' }
}
