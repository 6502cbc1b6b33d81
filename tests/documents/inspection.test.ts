/** What a certificate of each type of EN 10204 says, and what it must not. */

import { describe, expect, test } from 'vitest'
import type { CertificateDocument } from '../../src/documents/types.ts'
import { readyCertificate } from '../../src/pipeline.ts'
import { formatProblem, type SourceFile } from '../../src/problem.ts'
import { base, edited } from '../records/workshop.ts'
import { day, frozenOf, none } from './issuing.ts'

const replaced: readonly SourceFile[] = [
  {
    path: 'producer.yaml',
    text: edited('producer.yaml', [
      'name: Odile Varnholt }',
      'name: Odile Varnholt, independent-of-manufacturing: yes }'
    ])
  },
  {
    path: 'grades/FK-1.yaml',
    text: `${edited('grades/FK-1.yaml').trimEnd()}\ntypical: { ash: 0.7 %, expansion-volume: 271 mL/g }\npublic: [results]\n`
  },
  {
    path: 'shipments/SH-1.yaml',
    text: 'number: SH-1\nsent: 2026-02-08\ncustomer: Brask Seals\norder: PO 1\ncontents:\n  - { lot: EB-1, mass: 5.00 g }\n'
  }
]

/** What is frozen of EB-1's certificate of a type. */
function frozen(type?: string) {
  const lines = type === undefined ? '' : `type: ${type}\nshipment: SH-1\n`
  const order = {
    path: 'certificates/CT-1.yaml',
    text: `${edited('certificates/CT-1.yaml').trimEnd()}\n${lines}`
  }
  const own = [...replaced, order]
  const paths = new Set(own.map(({ path }) => path))
  const files = [...base.filter(({ path }) => !paths.has(path)), ...own]
  const { text, problems } = readyCertificate(files, 'EB-1', day, none)
  if (text === undefined) throw new Error(problems.map(formatProblem).join('\n'))
  const { certificate, data } = frozenOf(text)
  const document: CertificateDocument = certificate
  return { document, data, text }
}

const bases = ({ results }: CertificateDocument) => results.map(({ key, basis }) => [key, basis])
const factOf = ({ facts }: CertificateDocument, label: string) =>
  facts.find(fact => fact.label === label)?.text

test('a certificate of analysis has no EN 10204 in its title and says that it is none', () => {
  const { document } = frozen()
  expect(document.title).toBe('Certificate of analysis')
  expect(factOf(document, 'Document')).toBeUndefined()
  expect(document.statements.join(' ')).toContain('no inspection document to EN 10204')
})

describe('each type', () => {
  test.for([
    ['2.1', 'Declaration of compliance 2.1 (EN\u00a010204)'],
    ['2.2', 'Test report 2.2 (EN\u00a010204)'],
    ['3.1', 'Inspection certificate 3.1 (EN\u00a010204)']
  ] as const)(
    '%s is named in title, facts and statements, the order to nobody',
    ([type, title]) => {
      const { document, text } = frozen(type)
      expect(document.title).toBe(title)
      expect(factOf(document, 'Document')).toBe(`EN 10204:2004, type ${type}`)
      expect(factOf(document, 'Order')).toBe('named on the customer’s copy')
      expect(document.statements[0]).toContain(`Type ${type} of EN 10204:2004`)
      expect(document.statements.join(' ')).not.toContain('no inspection document')
      expect(document.statements[0]).toContain('complies with the order')
      expect(document.answer.sentence).toMatch(
        type === '3.1' ? /^Meets both limits/u : /^Declared to comply with the order/u
      )
      for (const word of ['Brask', 'PO 1', 'SH-1', 'Varnholt']) expect(text).not.toContain(word)
    }
  )
})

test('3.1 gives results of tests on the lot and no typical figure', () => {
  const { document, data } = frozen('3.1')
  expect(bases(document)).toEqual([
    ['expansion-volume', 'measured'],
    ['free-acid', 'measured'],
    ...bases(document).slice(2)
  ])
  expect(new Set(bases(document).map(([, basis]) => basis))).toEqual(new Set(['measured']))
  expect(document.statements[0]).toContain('validated by the quality manager')
  expect(data['quantities']).toHaveProperty('free-acid')
})

test('2.2 gives the typical figures of the grade and nothing measured on the lot', () => {
  const { document, data } = frozen('2.2')
  expect(bases(document)).toEqual([
    ['expansion-volume', 'typical'],
    ['ash', 'typical']
  ])
  expect(document.results[0]!.value!.printed).toBe('271')
  expect(document.traceability).toEqual([])
  expect(document.statements[0]).toContain('not of tests on this lot')
  expect(data['quantities']).toEqual({})
})

test('2.1 gives no result at all', () => {
  const { document, data } = frozen('2.1')
  expect(document).toMatchObject({ results: [], notMeasured: [], traceability: [] })
  expect(data['quantities']).toEqual({})
})
