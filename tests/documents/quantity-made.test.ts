/** How much was made of a lot: on page and certificate where its grade opens it, and nowhere else. */

import { expect, test } from 'vitest'
import { catalogues } from '../../src/documents/languages/index.ts'
import { type QuantityMade, quantityText } from '../../src/documents/quantity-made.ts'
import type { SourceFile } from '../../src/problem.ts'
import { smallFiles, withChange } from '../records-on-disk.ts'
import { pageOf, siteOf } from './demo.ts'

const opened = (sections: string, files = smallFiles): SourceFile[] =>
  ['FK-1', 'FF-1'].reduce<SourceFile[]>(
    (before, grade) =>
      withChange(before, `grades/${grade}.yaml`, 'limits:', `public: [${sections}]\nlimits:`),
    [...files]
  )

/** What a public page and its certificate say was made of a lot. */
function madeOf(files: readonly SourceFile[], lot: string): (string | undefined)[] {
  const page = pageOf(siteOf(files, { edition: 'public' }), lot)
  return [page.document, ...page.certificates.map(({ document }) => document)].map(
    ({ facts }) => facts.find(({ label }) => label === 'Quantity made')?.text
  )
}

const saleable = (mass: string) =>
  withChange(smallFiles, 'foils/FL-1.yaml', 'measured:', `saleable: ${mass}\nmeasured:`)

test('is told on page and certificate where the grade opens it', () => {
  const files = opened('results, quantity')
  expect(madeOf(files, 'EB-1')).toEqual(['120.00\u00a0g', '120.00\u00a0g'])
  expect(madeOf(files, 'FL-1')).toEqual(['2 sheets, 9.995\u00a0g', '2 sheets, 9.995\u00a0g'])
})

test('is told to nobody where it does not, and always in the workshop', () => {
  const files = opened('results, working, chain, sampling')
  expect(madeOf(files, 'EB-1')).toEqual([undefined, undefined])
  const site = siteOf(files, { edition: 'public' })
  expect(JSON.stringify(site)).not.toMatch(/120\.00\s?g|9\.995\s?g/u)
  const own = pageOf(siteOf(files, { edition: 'workshop' }), 'EB-1')
  expect(own.document.facts).toContainEqual({ label: 'Quantity made', text: '120.00\u00a0g' })
  expect(own.certificates[0]!.document.facts.map(({ label }) => label)).not.toContain(
    'Quantity made'
  )
})

test.for([
  ['what was weighed together', '9.99 g', '2 sheets, 9.99\u00a0g'],
  ['less than the sheets, one of them not for sale', '5.01 g', '5.01\u00a0g'],
  ['more than the sheets, of which two were measured', '15.0 g', '15.0\u00a0g']
] as const)('of foil is %s', ([, mass, told]) => {
  expect(madeOf(opened('results, quantity', saleable(mass)), 'FL-1')[0]).toBe(told)
})

test('is worded in German too', () => {
  const inGerman = (made: QuantityMade) => quantityText(made, catalogues.de)
  expect(inGerman({ mass: '9.99 g', sheets: 2 })).toBe('2 Bögen, 9,99\u00a0g')
  expect(inGerman({ mass: '5.01 g', sheets: 1 })).toBe('1 Bogen, 5,01\u00a0g')
})
