/** Workings in German: whole, of the same figures as in English, and nothing of them left in English. */

import { describe, expect, test } from 'vitest'
import type { Maths } from '../../src/documents/formula-types.ts'
import { readFormula } from '../../src/documents/formula.ts'
import { de } from '../../src/documents/languages/de/index.ts'
import { en } from '../../src/documents/languages/en/index.ts'
import { tongueFor } from '../../src/documents/languages/records.ts'
import { english as englishTongue, type Lack } from '../../src/documents/languages/tongue.ts'
import { lotDocument } from '../../src/documents/lot.ts'
import { viewLot } from '../../src/documents/lot-view.ts'
import type { Table, Working } from '../../src/documents/types.ts'
import { fieldText } from '../../src/documents/thickness-field.ts'
import { workingOf } from '../../src/documents/working.ts'
import { openBases } from '../../src/evaluate/bases.ts'
import { budgetOf } from '../../src/metrology/estimate.ts'
import { buildDocuments, judgeContent } from '../../src/pipeline.ts'
import { publicSections } from '../../src/records/schemas/grade.ts'
import { type ProductName, quantities, quantityNames, quantityOf } from '../../src/quantities.ts'
import type { SourceFile } from '../../src/problem.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { wordsIn } from './language-texts.ts'

const { evaluated, lots } = judgeContent(demoFiles)
const content = evaluated!.content
const sections = new Set(publicSections)

/** Every lot of the demo, published or not, as a language tells it; and what that lacked on the way. */
function told(language: 'en' | 'de') {
  const lacking: Lack[] = []
  // Unpublished lots are told as well, whose records nobody has translated: what these say is left out.
  const tongue = {
    ...tongueFor(content, language, lack => lacking.push(lack)),
    own: () => 'Text'
  }
  const documents = lots.map(lot => lotDocument(viewLot(content, lot, [], tongue), sections, []))
  return { documents, workings: documents.flatMap(({ workings }) => workings), lacking }
}
const english = told('en')
const german = told('de')

/** Results with a working of their own. */
const own = lots.flatMap(({ rows }) =>
  rows.flatMap(({ result }) => (result && !result.report ? [result] : []))
)

const tablesOf = ({ readings, inputs, budget, field }: Working): Table[] =>
  [readings, inputs, budget, field?.places].filter(table => table !== undefined)

const textsOf = (working: Working): string[] => [
  working.title,
  working.formula,
  ...working.statements.map(({ text }) => text),
  working.source,
  working.method ?? '',
  working.outcome,
  ...working.notes,
  ...(working.field ? working.field.maps.flatMap(({ title, summary }) => [title, summary]) : []),
  ...tablesOf(working).flatMap(({ caption, columns, rows }) => [
    caption,
    ...columns.map(({ title }) => title),
    ...rows.flat()
  ])
]

/** Numbers of a text with their signs, a decimal comma as a point, digits no longer in groups. */
const numbersIn = (text: string): string[] =>
  text
    .replace(/(?<=\d)\u202f(?=\d)/gu, '')
    .replace(/(?<=\d),(?=\d)/gu, '.')
    .match(/[+−]?\d+(?:\.\d+)?/gu) ?? []

/** Nested brackets, fractions and signs; what stands in them may have another name. */
const shapeOf = (maths: Maths): unknown => {
  switch (maths.is) {
    case 'row':
      return maths.parts.map(shapeOf)
    case 'name':
      return ['name', maths.parts.filter(({ at }) => at !== 'line').map(({ text }) => text)]
    case 'subscript':
      return ['subscript', shapeOf(maths.base)]
    case 'power':
      return ['power', shapeOf(maths.base), maths.power]
    case 'fraction':
      return ['fraction', shapeOf(maths.above), shapeOf(maths.below)]
    case 'root':
    case 'bracket':
      return [maths.is, shapeOf(maths.of)]
    default:
      return [maths.is, maths.text.replace(',', '.')]
  }
}

describe('formulas and sources', () => {
  test.each(openBases.map(basis => [basis.formula, basis.source] as const))(
    '%s is the same mathematics in German, and cites the same',
    (formula, source) => {
      const [ours, theirs] = [readFormula(formula), readFormula(de.working.formula(formula))]
      expect(theirs).toHaveLength(ours.length)
      ours.forEach(({ maths }, index) => {
        const other = theirs[index]!.maths
        expect(other && shapeOf(other)).toEqual(maths && shapeOf(maths))
      })
      expect(numbersIn(de.working.source(source))).toEqual(numbersIn(source))
      expect(en.working.formula(formula)).toBe(formula)
      expect(en.working.source(source)).toBe(source)
    }
  )
})

const titled = (key: string) => quantities[quantityOf(key)!].title

describe('budget lines', () => {
  test('of the demo have parts, which English words as the line is named', () => {
    const lines = own.flatMap(({ estimate }) => budgetOf(estimate))
    expect(lines.length).toBeGreaterThan(1000)
    for (const { pool, line } of lines)
      expect(line && en.working.budgetLine(line, titled, text => text)).toBe(pool)
  })

  test('of what the demo has none of have them too: days of calibration, per cent, written digits', () => {
    const changes = [
      ['methods/TM-01-e1.yaml', '  s: 4.6 mL/g', '  s: 1.7 %'],
      ['methods/TM-01-e1.yaml', 'repeatability:', 'relative-repeatability:'],
      ['methods/TM-03-e1.yaml', 'instruments: { ph: PH-1 }\n', ''],
      [
        'instruments/BAL-1.yaml',
        '  coverage-factor: 2\n',
        `  coverage-factor: 2
earlier-calibrations:
  - certificate: old
    laboratory: Veskmoor Calibration Laboratory
    on: 2025-01-08
    due: 2026-01-08
    expanded-uncertainty: 0.3 mg
    coverage-factor: 2
`
      ]
    ] as const
    const files = changes.reduce(
      (all, [path, from, to]) => withChange(all, path, from, to),
      demoFiles as readonly SourceFile[]
    )
    const results = judgeContent(files).lots.flatMap(({ rows }) =>
      rows.flatMap(({ result }) => (result && !result.report ? [result] : []))
    )
    const lines = results.flatMap(({ estimate }) => budgetOf(estimate))
    for (const { pool, line } of lines)
      expect(line && en.working.budgetLine(line, titled, text => text)).toBe(pool)
    const german = new Set(
      lines.map(({ line }) => line && de.working.budgetLine(line, titled, () => 'Text'))
    )
    for (const said of [
      'Kalibrierung BAL-1 vom 8.\u00a0Januar 2026',
      'Wiederholpräzision TM-01, 1,7 % des Ergebnisses (Text)',
      'geschriebene Stellen'
    ])
      expect(german).toContain(said)
  })
})

describe('workings in German', () => {
  test('lack no word', () => {
    expect(german.lacking).toEqual([])
  })

  test('are those of every quantity with a model, as in English', () => {
    const keys = (workings: readonly Working[]) => workings.map(({ key }) => key)
    expect(keys(german.workings)).toEqual(keys(english.workings))
    const seen = new Set(keys(german.workings))
    const products = quantityNames.filter(
      (name): name is ProductName => quantities[name].side === 'product'
    )
    expect(products.filter(name => !seen.has(quantities[name].key))).toEqual([])
  })

  test('have the same figures in the same tables', () => {
    german.workings.forEach((theirs, at) => {
      const ours = english.workings[at]!
      expect(tablesOf(theirs).map(({ columns }) => columns.map(({ numeric }) => numeric))).toEqual(
        tablesOf(ours).map(({ columns }) => columns.map(({ numeric }) => numeric))
      )
      const cells = (working: Working) =>
        tablesOf(working).map(({ columns, rows }) =>
          rows.map(row => row.map((cell, i) => (columns[i]!.numeric ? numbersIn(cell) : '')))
        )
      expect(cells(theirs)).toEqual(cells(ours))
      expect(numbersIn(theirs.outcome)).toEqual(numbersIn(ours.outcome))
      expect(theirs.notes).toHaveLength(ours.notes.length)
    })
  })

  test('hold no English word', () => {
    const stop = new Set(
      'the of and with is are by from per its each which no not than as for at to on it'.split(' ')
    )
    // 'an' and 'in' are words of both; citations keep their titles.
    const cited = /Journal|Reports|Recommendations/u
    const found = (workings: readonly Working[]) =>
      workings
        .flatMap(textsOf)
        .filter(text => !cited.test(text) && wordsIn(text).some(word => stop.has(word)))
    expect(found(english.workings).length).toBeGreaterThan(2000)
    expect([...new Set(found(german.workings))]).toEqual([])
  })

  test('write decimals with a comma', () => {
    // Clauses of standards are cited as they are numbered.
    const points = german.workings
      .flatMap(textsOf)
      .map(text => text.replace(/(?<=, | und )\d+(?:\.\d+)+(?=[,;]| und |$)/gu, ''))
      .filter(text => /\d\.\d/u.test(text))
    expect([...new Set(points)]).toEqual([])
    const figures = german.workings.flatMap(working => [
      working.outcome,
      ...tablesOf(working).flatMap(({ columns, rows }) =>
        rows.flatMap(row => row.filter((_, at) => columns[at]!.numeric))
      )
    ])
    expect(figures.filter(text => /\d\.\d/u.test(text))).toEqual([])
    expect(figures.filter(text => /\d,\d/u.test(text)).length).toBeGreaterThan(2000)
  })

  test('put a sign before what lies above the plane, none before nothing', () => {
    const reading = (above_mm: number) => ({
      x_mm: 10,
      y_mm: 10,
      thickness_mm: 0.5 + above_mm,
      decimal: '0.500',
      above_mm
    })
    const size = { length_mm: 100, width_mm: 100, length: '100 mm', width: '100 mm' }
    const readings = [0, 0.001, -0.001].map(reading)
    const heights = (tongue = englishTongue) =>
      fieldText([{ label: 'sheet 1', ...size, readings }], tongue).places.rows.map(row =>
        row.at(-1)
      )
    expect(heights()).toEqual(['0.000', '+0.001', '−0.001'])
    expect(heights(tongueFor(content, 'de'))).toEqual(['0,000', '+0,001', '−0,001'])
  })

  test('tell what has no words instead of saying it in English', () => {
    const lacking: string[] = []
    const tongue = tongueFor(content, 'de', ({ text }) => lacking.push(text))
    const result = own.find(({ quantity }) => quantity === 'expansionVolume_mL_per_g')!
    const trace = result.trace()
    const line = { input: 'unheardOf_g', value: 1, u: 0, sensitivity: 1 }
    const changed = {
      ...trace,
      formula: 'x = y',
      source: 'a new source',
      notes: ['a new note'],
      inputs: [line]
    }
    const cause = { name: 'new', pool: 'a new cause', kind: 'B', df: Infinity } as const
    const estimate = { value: 1, terms: new Map([['new', { cause, u: 1 }]]) }
    workingOf({ ...result, estimate, trace: () => changed }, 0, tongue)
    expect(lacking.toSorted()).toEqual([
      'a new cause',
      'a new note',
      'a new source',
      'unheardOf',
      'x = y'
    ])
  })
})

describe('a statement of working', () => {
  const site = (languages: string) =>
    buildDocuments(
      withChange(
        demoFiles,
        'producer.yaml',
        'paper: A4',
        `paper: A4\nsite-languages: [${languages}]`
      ),
      { edition: 'public' }
    ).site!

  test('is made in each language of the pages, and each page leads to its own', () => {
    const [first, second] = site('de, en').forms!
    const [ours, theirs] = [[...second!.lots], [...first!.lots]]
    expect(theirs.filter(({ statement }) => statement).length).toBeGreaterThan(15)
    theirs.forEach(({ statement, document }, at) => {
      if (!statement) return
      const other = ours[at]!.statement!
      expect(statement.url).toBe(other.url.replace('.pdf', '-de.pdf'))
      expect([statement.document.language, other.document.language]).toEqual(['de', 'en'])
      expect(document.papers.map(({ url }) => url)).toContain(statement.url)
      expect(document.papers.map(({ url }) => url)).not.toContain(other.url)
      expect(statement.document.process).toEqual([])
      expect(statement.document.workings).toEqual(document.workings)
    })
  })
})
