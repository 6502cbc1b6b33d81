/** Lots over time as pages tell it, and what is typical of a grade. */

import { describe, expect, test } from 'vitest'
import { openSeries } from '../../src/documents/open-series.ts'
import { typicalOf } from '../../src/documents/typical.ts'
import type { WatchDocument } from '../../src/documents/watch-types.ts'
import type { WatchedFigure } from '../../src/judge/watched.ts'
import { publicSite, workshopSite } from './demo.ts'

const figures = (values: readonly number[], more: Partial<WatchedFigure> = {}): WatchedFigure[] =>
  values.map((value, index) => ({
    lot: `EB-${index}`,
    made: `2026-03-${String(index + 1).padStart(2, '0')}`,
    grade: 'flake-50',
    soldAs: 'flake-50',
    quantity: 'ash_percent',
    value,
    u: 0.1,
    U: 0.2,
    isExternal: false,
    readings: [],
    place: () => ({ file: { path: '', text: '' }, field: [], range: [0, 0] }),
    ...more
  }))

const ten = [0.52, 0.55, 0.49, 0.51, 0.54, 0.47, 0.5, 0.53, 0.5, 0.48]

const ash = (values: readonly number[], isScreened = false, more: Partial<WatchedFigure> = {}) =>
  typicalOf({ quantity: 'ash_percent', figures: figures(values, more), isScreened })

describe('typical', () => {
  test('of all lots tested, normal: mean ± k · s, rounded outward, with n, period, coverage', () => {
    // Mean 0.509, s = 0.026013, k = 3.3934 (n = 10, 95/95): 0.4207 to 0.5973, worked by hand.
    expect(ash(ten)).toMatchObject({
      printed: '0.420 to 0.598',
      kind: 'normal',
      n: 10,
      period: '1 March 2026 to 10 March 2026',
      sentence:
        'At least 95 % of lots lie from 0.420 to 0.598 %, with 95 % confidence: from 10 lots made 1 March 2026 to 10 March 2026, the figures taken as normal.'
    })
  })

  test('of lots that the limit chose: least and greatest, and how few of all these surely hold', () => {
    // 1 − 10·p⁹ + 9·p¹⁰ = 0.95 at p = 0.6058: tables of min-max intervals.
    expect(ash(ten, true)).toMatchObject({
      printed: '0.470 to 0.550',
      kind: 'distribution-free',
      coverage: { printed: '60' }
    })
  })

  test('figures that are not normal, or too few to tell, are not taken as normal', () => {
    expect(ash([...ten, 0.9, 0.51])!.kind).toBe('distribution-free')
    expect(ash(ten.slice(0, 7))!.kind).toBe('distribution-free')
    expect(ash(ten.slice(0, 8))!.kind).toBe('normal')
  })

  test('an interval never leaves zero behind where nothing can be less', () => {
    expect(ash(ten.map(value => value - 0.45))!.lower).toEqual({ exact: '0', printed: '0' })
  })

  test('too few, or below a reporting limit: nothing is typical', () => {
    expect(ash(ten.slice(0, 4))).toBeUndefined()
    expect(ash(ten, false, { below: 0.6 })).toBeUndefined()
    expect(ash(ten, false, { isExternal: true })).toBeUndefined()
  })

  test('every figure lies inside what is printed', () => {
    const found = ash(
      ten.map(value => value * 1.0037),
      true
    )!
    expect(Number(found.lower.printed)).toBeLessThanOrEqual(0.47 * 1.0037)
    expect(Number(found.upper.printed)).toBeGreaterThanOrEqual(0.55 * 1.0037)
  })
})

const textOf = (documents: readonly WatchDocument[]) => JSON.stringify(documents)

describe('the public edition', () => {
  const open = new Set(publicSite.summaries.map(({ lot }) => lot))
  const pages = [...publicSite.watches]

  test('names lots with a page, and no other: neither as words nor as points', () => {
    const named = textOf(pages).match(/\b(?:EB|FL|XR)-\d\d-\d+/gu) ?? []
    expect(named.length).toBeGreaterThan(50)
    expect(named.filter(lot => !open.has(lot))).toEqual([])
    for (const { quantities } of pages)
      for (const { charts, lots } of quantities)
        for (const { drawing } of charts)
          expect(drawing.shapes.filter(({ is }) => is === 'dot')).toHaveLength(lots.length)
  })

  test('has no limits of the process, no indices, no process figures', () => {
    for (const { quantities } of pages)
      for (const { findings, signals, charts, key } of quantities) {
        expect([...findings, ...signals]).toEqual([])
        const roles = charts.flatMap(({ drawing }) => drawing.shapes.map(({ role }) => role))
        expect(
          roles.filter(role => ['control', 'centre', 'average', 'signal'].includes(role))
        ).toEqual([])
        expect(['mass-yield', 'uptake']).not.toContain(key)
      }
  })

  test('takes no figure as normal where the grade has limits', () => {
    const typical = publicSite.grades.flatMap(({ measured, observed }) =>
      measured.some(({ limit }) => limit) ? observed : []
    )
    expect(typical.length).toBeGreaterThan(5)
    expect(typical.filter(({ kind }) => kind === 'normal')).toEqual([])
  })

  test('a lot that is not open leaves its series', () => {
    const [series] = openSeries(
      [
        {
          grade: 'flake-50',
          quantity: 'ash_percent',
          figures: figures(ten, { readings: [1, 2] }),
          older: 0
        }
      ],
      lot => lot !== 'EB-3'
    )
    expect(series!.figures.map(({ lot }) => lot)).not.toContain('EB-3')
    expect(series!.figures).toHaveLength(9)
    expect(series!.figures.every(({ readings }) => readings.length === 0)).toBe(true)
  })

  test('process figures are not open, and a regraded lot stands under its new grade', () => {
    const all = { older: 0, grade: 'flake-50' }
    expect(
      openSeries(
        [
          { ...all, quantity: 'ash_percent', figures: figures([1], { soldAs: 'flake-20' }) },
          {
            ...all,
            quantity: 'massYield_percent',
            figures: figures([1], { quantity: 'massYield_percent' })
          }
        ],
        () => true
      ).map(({ grade, quantity }) => [grade, quantity])
    ).toEqual([['flake-20', 'ash_percent']])
  })
})

describe('the workshop edition', () => {
  const page = workshopSite.watches.find(({ grade }) => grade.id === 'flake-250')!
  const volume = page.quantities.find(({ key }) => key === 'expansion-volume')!
  const finding = (label: string) => volume.findings.find(one => one.label === label)?.text

  test('has a page a grade, linked from the grade’s own', () => {
    expect(workshopSite.grades.map(({ watchUrl }) => watchUrl)).toEqual(
      workshopSite.watches.map(({ url }) => url)
    )
  })

  test('names every lot made to the grade, the rejected ones too, and links to it', () => {
    expect(volume.lots).toHaveLength(10)
    expect(volume.lots.every(({ url, lot }) => url === `lots/${lot}/`)).toBe(true)
    expect(volume.lots.map(({ lot }) => lot)).toContain('EB-26-004')
  })

  test('says in words what the chart shows', () => {
    expect(volume.charts.map(({ summary }) => summary)).toEqual([
      expect.stringMatching(/^10 lots in order of date.*minimum 250, lower limit \d+, centre \d+/u),
      expect.stringMatching(/^Mean range \d+, upper limit \d+\. Above it: EB-26-004\.$/u)
    ])
  })

  test('finds what a reader asks of a process, few lots said to be few', () => {
    expect(finding('Capability')).toMatch(/^Cpk .*Fewer than 50 lots/u)
    expect(finding('Limits of the chart')).toMatch(/Provisional: from 10 lots/u)
    expect(finding('Outliers')).toBe(
      'EB-26-004 flagged (Grubbs test, 5 %): look into it. It stays in every figure here.'
    )
    expect(finding('Between and within lots')).toMatch(/between lots, .* within|between readings/u)
    expect(volume.findings.map(({ label }) => label)).toEqual([
      'Mean and scatter',
      'Limits of the chart',
      'Neighbours',
      'Capability',
      'Performance',
      'Tolerance interval, normal',
      'The same, any shape',
      'Outliers',
      'Shape',
      'Between and within lots',
      'Measurement'
    ])
  })

  test('prints no number that is none', () => {
    expect(textOf([...workshopSite.watches, ...publicSite.watches])).not.toMatch(
      /NaN|undefined|Infinity|null/u
    )
  })
})
