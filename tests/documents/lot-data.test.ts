/** data.json: its schema, and its figures against those of the documents. */

import { describe, expect, test } from 'vitest'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { z } from 'zod'
import { lotData } from '../../src/data/lot-data.ts'
import { type LotData, lotDataJsonSchema, lotDataSchema } from '../../src/documents/lot-data.ts'
import type { Figure, SiteDocument } from '../../src/documents/types.ts'
import type { SourceFile } from '../../src/problem.ts'
import { smallFiles, withChange } from '../records-on-disk.ts'
import { pageOf, publicSite, siteOf, workshopSite } from './demo.ts'

const dataOf = (site: SiteDocument, lot: string): LotData =>
  lotDataSchema.parse(JSON.parse(lotData(pageOf(site, lot), site)))

const both = [publicSite, workshopSite]

describe('every data.json of the demo', () => {
  /** By a validator that has nothing to do with where the schema comes from. */
  const validate = new Ajv2020().compile(lotDataJsonSchema())
  const published = z.fromJSONSchema(
    JSON.parse(JSON.stringify(lotDataJsonSchema())) as Parameters<typeof z.fromJSONSchema>[0]
  )

  test('keeps to its schema, and to the JSON Schema that is given away', () => {
    for (const site of both)
      for (const page of site.lots) {
        const data: unknown = JSON.parse(lotData(page, site))
        expect(lotDataSchema.safeParse(data).error).toBeUndefined()
        expect(published.safeParse(data).error).toBeUndefined()
        expect(validate(data), JSON.stringify(validate.errors)).toBe(true)
      }
  })

  test.for([
    ['a field nobody knows', (data: LotData) => ({ ...data, extra: 1 })],
    ['a figure as text', (data: LotData) => withValue(data, '262')],
    ['a missing figure', (data: LotData) => withValue(data, undefined)],
    ['another version', (data: LotData) => ({ ...data, formatVersion: 1 })]
  ] as const)('would be refused with %s', ([, spoil]) => {
    const spoilt: unknown = JSON.parse(JSON.stringify(spoil(dataOf(publicSite, 'EB-26-001'))))
    expect(lotDataSchema.safeParse(spoilt).success).toBe(false)
    expect(published.safeParse(spoilt).success).toBe(false)
    expect(validate(spoilt)).toBe(false)
  })

  test('ends in a line end and holds no process figures in public', () => {
    for (const page of publicSite.lots) {
      const text = lotData(page, publicSite)
      expect(text.endsWith('}\n')).toBe(true)
      expect((JSON.parse(text) as LotData).process).toBeNull()
    }
    expect(Object.keys(dataOf(workshopSite, 'EB-26-001').process ?? {})).toContain('mass-yield')
  })

  test('gives every figure exactly as the document holds it', () => {
    for (const site of both)
      for (const page of site.lots) {
        const { quantities } = dataOf(site, page.document.lot)
        expect(Object.keys(quantities)).toEqual(page.document.results.map(({ key }) => key))
        for (const row of page.document.results) {
          const given = quantities[row.key]!
          expect(given.value ?? given.below).toBe(exactOf(row.value))
          expect(given.below === null).toBe(!row.below)
          expect(given.expandedUncertainty).toBe(exactOf(row.expandedUncertainty))
          expect(given.standardUncertainty).toBe(exactOf(row.standardUncertainty))
          expect(given.coverageFactor).toBe(exactOf(row.coverageFactor))
          expect(given.limit?.min ?? null).toBe(exactOf(row.limit?.min))
          expect(given.limit?.max ?? null).toBe(exactOf(row.limit?.max))
          expect(given.verdict).toBe(row.verdict?.word ?? null)
          expect(given.basis).toBe(row.basis)
          expect(given.decidedBy?.place).toBe(row.decidedBy?.place)
          expect(given.decidedBy?.value ?? null).toBe(exactOf(row.decidedBy?.value))
          expect(given.decidedBy?.expandedUncertainty ?? null).toBe(
            exactOf(row.decidedBy?.expandedUncertainty)
          )
        }
      }
  })

  test('says of hazards what the page says', () => {
    for (const site of both)
      for (const { document } of site.lots) {
        const { hazards } = dataOf(site, document.lot)
        const block = document.hazards
        expect(hazards?.label.signal).toBe(block?.signal)
        expect(hazards?.label.classes).toEqual(block?.classified)
        expect(hazards?.label.pictograms).toEqual(block?.pictograms.map(({ code }) => code))
        expect(hazards?.label.statements.map(({ code }) => code)).toEqual(
          block?.statements.map(({ code }) => code)
        )
        expect(hazards?.edition).toBe(block?.edition)
        expect(hazards?.computed?.state).toBe(block?.computed?.state)
      }
    expect(dataOf(publicSite, 'EB-26-001').hazards?.label.signal).toBe('Warning')
    expect(dataOf(publicSite, 'FL-26-001').hazards).toBeNull()
  })

  test('is consistent: U is k times u, and the probability lies between 0 and 1', () => {
    for (const { document } of workshopSite.lots)
      for (const given of Object.values(dataOf(workshopSite, document.lot).quantities)) {
        const { standardUncertainty: u, coverageFactor: k, expandedUncertainty: U } = given
        if (u !== null) expect(U).toBeCloseTo(k! * u, 9)
        const p = given.conformityProbability
        if (p !== null) expect(p >= 0 && p <= 1).toBe(true)
      }
  })
})

test('a figure below its reporting limit gives the limit, and no value that was not found', () => {
  const path = 'batches/EB-1.yaml'
  const clean = withChange(
    withChange(smallFiles, path, 'titre: 1.34 mL', 'titre: 0.06 mL'),
    path,
    'titre: 1.31 mL',
    'titre: 0.05 mL'
  )
  const site = siteOf(clean, { edition: 'workshop' })
  const given = dataOf(site, 'EB-1').quantities['free-acid']!
  const row = pageOf(site, 'EB-1').document.results.find(({ key }) => key === 'free-acid')!
  expect(given).toMatchObject({
    value: null,
    below: exactOf(row.value),
    standardUncertainty: null,
    coverageFactor: null,
    expandedUncertainty: null,
    conformityProbability: null,
    verdict: 'pass'
  })
  expect(row.value?.printed).toMatch(/^< 0\.00\d+$/u)
  expect(given.below).toBeLessThanOrEqual(Number(row.value?.printed.slice(2)))
})

const exactOf = (figure: Figure | undefined) => (figure ? Number(figure.exact) : null)

const withValue = (data: LotData, value: unknown) => ({
  ...data,
  quantities: {
    ...data.quantities,
    'expansion-volume': { ...data.quantities['expansion-volume'], value }
  }
})

test('a certificate carries the same data before and after something is made of its lot', () => {
  const opened = ['FK-1', 'FF-1'].reduce(
    (files, grade) =>
      withChange(files, `grades/${grade}.yaml`, 'limits:', 'public: [results, chain]\nlimits:'),
    smallFiles
  )
  const earlier = opened.filter(({ path }) => !/content\/(expansions|foils)\//u.test(path))
  const pageIn = (files: readonly SourceFile[]) =>
    pageOf(siteOf(files, { edition: 'public' }), 'EB-1')
  expect(pageIn(opened).document.chain).not.toEqual(pageIn(earlier).document.chain)
  expect(pageIn(opened).attachment).toBe(pageIn(earlier).attachment)
  expect(pageIn(opened).attachment).toContain('"EB-1"')
})

describe('a lot with one per cent of lye in it', () => {
  /** Sodium hydroxide: Skin Irrit. 2 and Eye Irrit. 2 from 0.5 % to below 2 % (CLP Annex VI, 011-002-00-6). */
  const lye = (sections: string) =>
    withChange(
      withChange(
        smallFiles,
        'grades/FK-1.yaml',
        'limits:',
        `public: [${sections}]\nhazards: { classified: [Skin Irrit. 2, Eye Irrit. 2], classified-by: quality manager, precautions: [P280], basis: our own }\nlimits:`
      ),
      'batches/EB-1.yaml',
      'status:',
      `hazards:
  residues: [{ substance: sodium hydroxide, fraction: 1.0 % }]
  decisions:
    - { about: missing data, by: quality manager, on: 2026-02-06, because: seen before }
    - { about: metals, by: quality manager, on: 2026-02-06, because: seen before }
status:`
    )
  const computedOf = (sections: string) => {
    const site = siteOf(lye(sections), { edition: 'public' })
    return { page: pageOf(site, 'EB-1').document, data: dataOf(site, 'EB-1').hazards!.computed! }
  }

  test('has each class with its reasons, and the clauses the page cites', () => {
    const { page, data } = computedOf('results')
    expect(data.classes.map(one => [one.class, one.statement])).toEqual([
      ['Skin Irrit. 2', 'H315'],
      ['Eye Irrit. 2', 'H319']
    ])
    for (const [index, { reasons }] of data.classes.entries()) {
      const why = page.hazards!.computed!.classes[index]!.why.join(' ')
      expect(reasons!.length).toBeGreaterThan(0)
      for (const { text, clauses } of reasons!) {
        expect(text).toContain('1 %')
        expect(clauses[0]).toMatch(/^CLP Annex I, 3\.[23]\./u)
        for (const part of [text.slice(1), ...clauses]) expect(why).toContain(part)
      }
    }
  })

  test('gives no reasons where its results are not public', () => {
    const { data } = computedOf('chain')
    expect(data.classes.map(one => [one.class, one.reasons])).toEqual([
      ['Skin Irrit. 2', null],
      ['Eye Irrit. 2', null]
    ])
    expect(data.from).toEqual([])
  })
})
