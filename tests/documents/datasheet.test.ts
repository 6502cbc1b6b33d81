/** What a datasheet says: the same in every edition, with what differs between revisions worked out. */

import { describe, expect, test } from 'vitest'
import { densityCharts } from '../../src/documents/density-charts.ts'
import { datasheetIn } from '../../src/documents/grade.ts'
import type { WatchedFigure } from '../../src/judge/watched.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { formatProblem } from '../../src/problem.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { publicSite, siteOf, workshopSite } from './demo.ts'

const sheetOf = (id: string, site = publicSite) =>
  datasheetIn(site.grades.find(grade => grade.id === id)!)

/** No lot is needed to know what a revision changed. */
const grades = demoFiles.filter(({ path }) =>
  /content\/(producer\.yaml$|(grades|methods|instruments|titrants)\/)/u.test(path)
)
const day = '2026-10-29'
const changed = (path: string, from: string, to: string) =>
  sheetOf('flake-250', siteOf(withChange(grades, path, from, to), { edition: 'public', asOf: day }))

test('customers and the workshop read the same datasheet', () => {
  for (const page of publicSite.grades)
    expect(sheetOf(page.id, workshopSite)).toEqual(datasheetIn(page))
})

describe('revisions', () => {
  test('tell what each changed, latest first', () => {
    expect(sheetOf('flake-250').revisions.map(({ revision }) => revision)).toEqual(['3', '2', '1'])
    const [third, second, first] = sheetOf('flake-250').revisions
    expect(first!.changes).toEqual(['First revision.'])
    expect(second!.changes).toEqual([
      'Description: the text differs.',
      'Free acidity as H₂SO₄: was ≤ 0.10 % (lot mean), by TM-02, now ≤ 0.030 % (lot mean), by TM-02.',
      'pH of the slurry: was ≥ 2.7 (lot mean), by TM-03, now ≥ 3.0 (lot mean), by TM-03.',
      'Moisture: was ≤ 1.0 % (lot mean), by TM-04, now ≤ 0.8 % (lot mean), by TM-04.'
    ])
    expect(third!.changes).toContain('Onset temperature: added, ≥ 180 °C (lot mean), by TM-19.')
    expect(third!.changes).toContain('Bulk density, loose: added, no limit, by TM-13.')
  })

  test('say nothing of the recipe, nor of what is published', () => {
    const { revisions } = changed(
      'grades/flake-250-r2.yaml',
      'public: [results, working, chain, sampling]',
      'public: [results]'
    )
    expect(revisions).toEqual(sheetOf('flake-250').revisions)
    expect(JSON.stringify(revisions)).not.toMatch(/recipe|Vorpelite|page 12/u)
  })

  test('say nothing of figures that customers do not see', () => {
    const hidden = changed(
      'grades/flake-250-r3.yaml',
      'public: [results, working, chain, sampling, panels, pictures]',
      'public: [chain]'
    )
    expect(hidden.revisions[0]!.changes).toContain(
      'Onset temperature: added, ≥ 180 °C (lot mean), by TM-19.'
    )
    const texts = JSON.stringify([hidden.measured, hidden.revisions])
    expect(texts).not.toMatch(/Bulk density|Free sulfate|Total sulfur as H/u)
  })

  test.for([
    ['title: Expandable flake, foil feed', 'title: Foil feed', 'Title: was Foil feed, now'],
    ['rule: guarded', 'rule: simple', 'Decision rule: was Simple acceptance, now Guarded'],
    ['packing: polyethylene', 'packing: steel', 'Packing: was steel jar'],
    ['below: 40 °C', 'below: 30 °C', 'Keep: was dry, below 30\u00a0°C, now dry, below 40\u00a0°C.'],
    ['retest-after-months: 12', 'retest-after-months: 6', 'Tested again: was after 6 months'],
    ['holds: 150 g', 'holds: 140 g', 'Sold in: was pouch'],
    ['cas-number: 12777-87-6', 'cas-number: 7782-42-5', 'CAS number: was 7782-42-5'],
    ['[Eye Irrit. 2]', '[Eye Dam. 1]', 'Hazards: was Eye Dam. 1, now Eye Irrit. 2.'],
    ['  - Keep away from', '  - Keep well away from', 'Cautions: the text differs.']
  ] as const)('tell %s as it was: %s', ([from, to, told]) => {
    const [third] = changed('grades/flake-250-r2.yaml', from, to).revisions
    expect(third!.changes.join('\n')).toContain(told)
  })

  test('tell what each lot is looked at for', () => {
    const { facts, revisions } = sheetOf('foil-070')
    expect(facts).toContainEqual({
      label: 'Visual inspection',
      text: 'of each lot: level II, AQL 4.0 %'
    })
    expect(revisions[0]!.changes).toEqual(['Visual inspection: added, level II, AQL 4.0 %.'])
  })

  test('that are not yet in force are not told', () => {
    const site = siteOf(grades, { edition: 'public', asOf: '2026-09-30' })
    const { revision, revisions } = sheetOf('flake-250', site)
    expect([revision, revisions.length]).toEqual(['2', 2])
  })
})

describe('what is declared', () => {
  test('has its basis, its day and a function, never a name', () => {
    const [origin, substances] = sheetOf('flake-250').declared
    expect(origin).toEqual({
      about: 'Origin',
      says: expect.stringMatching(/^Made in Marlshire .*\.$/u) as string,
      basis:
        'Basis: batch records, and the suppliers’ delivery notes. Declared on 1 October 2026 by the quality manager.'
    })
    expect(substances!.says).toContain('Article 59')
    expect(JSON.stringify(sheetOf('flake-250'))).not.toContain('Quensthorp')
  })

  test('is told to be nothing where nothing is, or not by that day', () => {
    const silent = { says: 'Nothing is declared.' }
    expect(sheetOf('foil-070').declared).toEqual([
      { about: 'Origin', ...silent },
      { about: 'Substances of concern', ...silent }
    ])
    const early = siteOf(grades, { edition: 'public', asOf: '2026-10-03' })
    expect(sheetOf('flake-250', early).declared[1]).toEqual({
      about: 'Substances of concern',
      ...silent
    })
  })

  test('by a role that nobody has is refused where it stands', () => {
    const files = withChange(
      grades,
      'grades/flake-250-r3.yaml',
      'by: quality manager\n  substances',
      'by: quality mangler\n  substances'
    )
    const { problems } = buildDocuments(files, { edition: 'public' })
    const [problem] = problems.filter(({ code }) => code === 'UNKNOWN_REFERENCE')
    expect(problem).toMatchObject({
      message: expect.stringContaining(
        "there is no role of the producer 'quality mangler'"
      ) as string,
      hint: expect.stringContaining('quality manager') as string
    })
    expect(problem && formatProblem(problem)).toContain('declared › origin › by')
  })
})

describe('properties', () => {
  test('with a limit come first, each once, and those of the process not at all', () => {
    for (const { measured } of publicSite.grades) {
      const limited = measured.map(({ limit }) => limit !== undefined)
      expect([...limited].sort((a, b) => Number(b) - Number(a))).toEqual(limited)
      expect(new Set(measured.map(({ key }) => key)).size).toBe(measured.length)
    }
    const withProcess = changed(
      'grades/flake-250-r3.yaml',
      'measured:\n',
      'measured:\n  mass-yield: { places: 1 }\n'
    )
    expect(withProcess.measured.map(({ key }) => key)).not.toContain('mass-yield')
  })

  test('that are typical stand against their limit, from lots that were let go', () => {
    const { observed, population } = sheetOf('flake-250')
    const volume = observed.find(({ key }) => key === 'expansion-volume')!
    expect(volume.limit!.printed).toBe('≥ 250')
    expect([volume.lower.printed, volume.upper.printed, volume.n]).toEqual(['265.7', '284.8', 8])
    expect(population.at(-1)).toContain('made before revision 3')
    const early = siteOf(grades, { edition: 'public', asOf: '2026-10-29' })
    expect(sheetOf('foil-070', early).population.join()).not.toContain('made before')
  })

  test('of a grade that keeps its results to itself are its limits alone', () => {
    const sheet = changed(
      'grades/flake-250-r3.yaml',
      'public: [results, working, chain, sampling, panels, pictures]',
      'public: [chain]'
    )
    expect(sheet.measured.every(({ limit }) => limit)).toBe(true)
  })
})

describe('properties against density', () => {
  const figure = (
    lot: string,
    grade: string,
    quantity: QuantityName,
    value: number
  ): WatchedFigure => ({
    lot,
    made: '2026-01-01',
    grade,
    soldAs: grade,
    quantity,
    value,
    u: 0.01,
    U: 0.02,
    isExternal: false,
    readings: [],
    place: () => ({ file: { path: '', text: '' }, range: [0, 0], path: [] }) as never
  })
  const lots = [
    ['F-1', 'foil-100', 1.0, 5.1],
    ['F-2', 'foil-100', 0.98, 4.9],
    ['F-3', 'foil-070', 0.71, 3.2]
  ] as const
  const seriesOf = (list: readonly (typeof lots)[number][]) =>
    (['foilDensity_g_per_cm3', 'tensileAlong_MPa'] as const).flatMap((quantity, column) =>
      ['foil-100', 'foil-070'].map(grade => ({
        grade,
        quantity,
        older: 0,
        figures: list
          .filter(([, of]) => of === grade)
          .map(([lot, of, density, strength]) =>
            figure(lot, of, quantity, column === 0 ? density : strength)
          )
      }))
    )

  test('draw this grade’s lots as dots and others as rings, their figures beside them', () => {
    const [chart, ...others] = densityCharts(seriesOf(lots), 'foil-100')
    expect(others).toEqual([])
    const marks = chart!.drawing.shapes.flatMap(shape =>
      shape.is === 'dot' ? [`${shape.of} ${shape.role}`] : []
    )
    expect(marks).toEqual(['F-3 other', 'F-1 plain', 'F-2 plain'])
    const at = (lot: string) =>
      chart!.drawing.shapes.find(shape => shape.is === 'dot' && shape.of === lot) as { x: number }
    expect(at('F-3').x).toBeLessThan(at('F-2').x)
    expect(chart!.summary).toMatch(/^2 lots of this grade as dots and, as rings, 1 lot of other/u)
    expect(chart!.table.rows[2]).toEqual(['F-3', 'foil-070', '0.710 ± 0.020', '3.200 ± 0.020'])
  })

  test('need three lots, one of them of the grade', () => {
    expect(densityCharts(seriesOf(lots.slice(0, 2)), 'foil-100')).toEqual([])
    expect(densityCharts(seriesOf(lots), 'foil-050')).toEqual([])
  })
})
