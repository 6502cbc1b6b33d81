/** Languages of the public pages: which there are, what they lack, what bad translations come to. */

import { describe, expect, test } from 'vitest'
import { certificateDocument } from '../../src/documents/certificate.ts'
import { tongueFor } from '../../src/documents/languages/records.ts'
import { de } from '../../src/documents/languages/de/index.ts'
import { viewLot } from '../../src/documents/lot-view.ts'
import { cautionsOfProduct } from '../../src/hazards/product-cautions.ts'
import { filtersOf } from '../../src/html/filters.ts'
import { figureFilters } from '../../src/html/shapes.ts'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { buildDocuments, judgeContent, withSignals } from '../../src/pipeline.ts'
import { isError, type SourceFile } from '../../src/problem.ts'
import { checkWords } from '../../src/register/words.ts'
import { plainText } from '../pdf/inspect.ts'
import { faultsOf } from '../pdf/rules.ts'
import { demoFiles, judged, withChange } from '../records-on-disk.ts'
import { requireTool } from '../tools.ts'
import { pageOf } from './demo.ts'

const saying = (text: string) =>
  withChange(demoFiles, 'producer.yaml', 'paper: A4', `paper: A4\n${text}`)

const both = saying('site-languages: [en, de]')
const built = (files: readonly SourceFile[]) => buildDocuments(files, { edition: 'public' }).site!
const told = (files: readonly SourceFile[]) => withSignals(judgeContent(files)).filter(isError)

describe('languages of the pages', () => {
  test('are English alone where nothing is said, and in the workshop’s edition', () => {
    expect(built(demoFiles).forms).toBeUndefined()
    expect(buildDocuments(both, { edition: 'workshop' }).site!.forms).toBeUndefined()
  })

  test('have the first at the root, the others in folders, each leading to the others', () => {
    const forms = built(both).forms!
    expect(forms.map(({ language, folder }) => [language, folder])).toEqual([
      ['en', ''],
      ['de', 'de/']
    ])
    expect(forms[1]!.others).toEqual([{ language: 'en', name: 'English', folder: '' }])
    expect(forms[0]!.summaries.map(({ url }) => url)).toEqual(
      forms[1]!.summaries.map(({ url }) => url)
    )
  })

  test('are those of the records where nothing else is said, without a text to translate', () => {
    // Certificates are in English, and would need their texts in it.
    const files = saying('written-in: de').filter(
      ({ path }) => !/\/(?:certificates|shipments|complaints|translations)\//u.test(path)
    )
    expect(told(files).map(({ message }) => message)).toEqual([])
    expect(built(files).forms!.map(({ language, folder }) => [language, folder])).toEqual([
      ['de', '']
    ])
  })

  test('preview a certificate with every statement, quoted where an edition is in English alone', () => {
    const preview = (language: string) => {
      const files = saying(`site-languages: [${language}]`).filter(
        ({ path }) => !/\/(?:certificates|shipments|complaints)\//u.test(path)
      )
      const { hazards } = pageOf(built(files), 'EB-26-007').certificates[0]!.document
      return [hazards!, ...hazards!.editions!].map(({ statements, language: quoted }) => ({
        codes: statements.map(({ code }) => code),
        quoted
      }))
    }
    const english = preview('en')
    expect(english.map(({ codes }) => codes.length)).not.toContain(0)
    const german = preview('de')
    expect(german.map(({ codes }) => codes)).toEqual(english.map(({ codes }) => codes))
    expect(german.map(({ quoted }) => quoted)).toEqual([undefined, 'en', 'en'])
  })

  test('say the same figures, exactly and, but for the comma, in print', () => {
    const [en, de] = built(both).forms!
    const index = en!.summaries.findIndex(({ lot }) => lot === 'FL-26-013')
    const [ours, theirs] = [en!.lots[index]!.document, de!.lots[index]!.document]
    expect(theirs.results.length).toBe(ours.results.length)
    theirs.results.forEach((row, at) => {
      const other = ours.results[at]!
      expect([row.key, row.value?.exact, row.verdict?.word]).toEqual([
        other.key,
        other.value?.exact,
        other.verdict?.word
      ])
      expect(row.value?.printed.replaceAll('\u202f', '').replace(',', '.')).toBe(
        other.value?.printed
      )
    })
    // Of all papers the statement of working alone has a file a language.
    expect(theirs.papers.map(({ url }) => url)).toEqual(
      ours.papers.map(({ url }) => url.replace('-working.pdf', '-working-de.pdf'))
    )
  })

  test('stand once each', () => {
    expect(told(saying('site-languages: [de, en, de]'))).toMatchObject([
      { code: 'INVALID_VALUE', field: ['site-languages', 2] }
    ])
  })
})

describe('a text that a page needs and nobody has translated', () => {
  test('fails the build, at the language that lacks it', () => {
    const files = withChange(both, 'translations/de.yaml', 'Coated panel over a burner', 'nothing')
    expect(told(files)).toMatchObject([
      {
        code: 'MISSING_TEXT',
        field: ['site-languages', 1],
        message: "the pages are in German, and nobody has translated 'Coated panel over a burner'"
      }
    ])
    expect(buildDocuments(files, { edition: 'public' }).site).toBeUndefined()
  })

  test('is told beside another that begins with the same sixty letters', () => {
    const long = 'Coated panel over a burner, as drawn, described and dated in the drawer'
    const titled = (files: readonly SourceFile[], method: string, title: string, end: string) =>
      withChange(files, `methods/${method}.yaml`, `title: ${title}`, `title: ${long} ${end}`)
    const burnt = titled(both, 'TM-40-e1', 'Coated panel over a burner', 'left')
    const hints = told(titled(burnt, 'TM-05-e1', 'Volatile matter at 950 °C', 'right'))
      .filter(({ code }) => code === 'MISSING_TEXT')
      .map(({ hint }) => hint)
    expect(hints.filter(hint => hint.includes(`${long} left`))).toHaveLength(1)
    expect(hints.filter(hint => hint.includes(`${long} right`))).toHaveLength(1)
  })

  test('is none where the pages are in English', () => {
    const files = withChange(
      demoFiles,
      'translations/de.yaml',
      'Coated panel over a burner',
      'nothing'
    )
    expect(told(files)).toEqual([])
  })

  test('of our own files on hazards, every one is worded in German', () => {
    const texts = (['flake', 'foil'] as const).flatMap(product => {
      const { exposure, ...lines } = cautionsOfProduct(product)
      return [
        ...Object.values(lines).flatMap(all => all.flatMap(one => [one.text, one.source])),
        ...exposure.flatMap(({ name, limits }) => [
          name,
          ...limits.flatMap(({ issuer, of, source }) => [issuer, source, ...(of ? [of] : [])])
        ])
      ]
    })
    expect(texts.length).toBeGreaterThan(50)
    expect(texts.filter(text => de.safety.ofData(text) === undefined)).toEqual([])
  })

  test('of the page that checks, each has the gaps of the English one, or fewer', () => {
    const gaps = (text: string) => new Set(text.match(/\{\w+\}/gu) ?? [])
    for (const [key, text] of Object.entries(checkWords)) {
      const own = gaps(text)
      // A count without a noun takes the place of one with it.
      const known = new Set([...own, '{n}'])
      const german = gaps(de.checks[key as keyof typeof checkWords])
      expect(
        [...german].filter(gap => !known.has(gap)),
        key
      ).toEqual([])
    }
  })
})

describe('links between forms of the site', () => {
  const { relative, otherPage } = filtersOf({ language: 'de', folder: 'de/' })

  test.for([
    ['lots/', '/', 'lots/index.html'],
    ['', '/lots/X/', '../../index.html'],
    ['#reading', '/lots/', '../index.html#reading'],
    ['compare/#with=X', '/lots/X/', '../../compare/index.html#with=X'],
    ['lots/X/data.json', '/lots/X/', '../../../lots/X/data.json'],
    ['assets/lotfolio.css', '/', '../assets/lotfolio.css'],
    ['https://example.org/', '/', 'https://example.org/']
  ] as const)('to %s from %s in German is %s', ([target, from, link]) => {
    expect(relative(target, from)).toBe(link)
  })

  test('lead to the same page in another folder', () => {
    expect(otherPage('/lots/X/', '')).toBe('../../../lots/X/index.html')
    expect(filtersOf({ language: 'en', folder: '' }).otherPage('/', 'de/')).toBe('de/index.html')
  })
})

test('figures with a comma stand in line by it', () => {
  const { cutFigure, tableShapes } = figureFilters(',')
  const table = {
    caption: '',
    columns: [{ title: '', numeric: true }],
    rows: [['1,25'], ['0,5 bis 0,75'], ['12']]
  }
  const [shape] = tableShapes(table)
  expect(shape).toEqual({ places: 2, rest: 0 })
  expect(cutFigure('12', shape!)).toEqual({ figure: '12', pad: ',00', rest: '' })
  expect(cutFigure('1,2', shape!)).toEqual({ figure: '1,2', pad: '0', rest: '' })
})

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('a bad translation', () => {
  const { evaluated, lots } = judged(demoFiles)
  const lot = lots.find(({ evaluated: { lot: name } }) => name === 'EB-26-001')!
  const { record } = evaluated!.content.certificates.find(
    ({ record: one }) => one.lot === 'EB-26-001'
  )!

  const worded = (as: string) => {
    const content = { ...evaluated!.content, translations: new Map() }
    const tongue = { ...tongueFor(content, 'de'), own: () => as }
    const view = viewLot(content, lot, [], tongue)
    return certificateDocument(view, content.producer.record, record, { paper: 'A4' })
  }
  const pdfOf = (as: string) =>
    certificatePdf(worded(as), { attachments: [], fingerprint: 'ab'.repeat(32) })

  test('with markup prints as it is written', async () => {
    const pdf = await pdfOf('<b>fett</b> & "so" <script>')
    expect(plainText(pdf)).toContain('<b>fett</b> & "so" <script>')
    expect(faultsOf(pdf, 0, 'de')).toEqual([])
  })

  test('of two hundred letters without a space keeps every rule of the paper', async () => {
    const pdf = await pdfOf('W'.repeat(200))
    expect(faultsOf(pdf, 0, 'de')).toEqual([])
    expect(plainText(pdf).match(/W/gu)!.length).toBeGreaterThan(2000)
  })

  test.for([
    ['nothing', "''"],
    ['blanks', "'   '"],
    ['a control character', '"a\\u0007b"'],
    ['a turn of the reading direction', '"a\\u202eb"'],
    ['half a pair', '"a\\ud800"']
  ])('of %s is refused where it stands', ([, as]) => {
    const files = withChange(
      demoFiles,
      'translations/de.yaml',
      'language: de\ntexts:\n',
      `language: de\ntexts:\n  - text: x\n    as: ${as}\n`
    )
    const problems = told(files)
    expect(problems.length).toBeGreaterThan(0)
    expect(problems[0]!.file.path).toContain('translations/de.yaml')
  })
})
