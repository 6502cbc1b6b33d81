/** Certificates in German: nothing English is left on them, and what is not translated is told. */

import { describe, expect, test } from 'vitest'
import { certificateDocument } from '../../src/documents/certificate.ts'
import { customerCopy } from '../../src/documents/customer-copy.ts'
import { freeze, readFrozen } from '../../src/documents/frozen.ts'
import type { Issued } from '../../src/documents/issued.ts'
import { labelDocuments } from '../../src/documents/labels.ts'
import { catalogues } from '../../src/documents/languages/index.ts'
import { tongueFor } from '../../src/documents/languages/records.ts'
import { source } from '../../src/documents/languages/de/sources.ts'
import { substanceName } from '../../src/documents/languages/de/substances.ts'
import { lotDataSchema } from '../../src/documents/lot-data.ts'
import { viewLot } from '../../src/documents/lot-view.ts'
import type { CertificateDocument } from '../../src/documents/types.ts'
import clp from '../../src/hazards/clp-statements.json' with { type: 'json' }
import { clauses } from '../../src/hazards/clauses.ts'
import { substances } from '../../src/hazards/substances.ts'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { customerCopyPdf } from '../../src/pdf/pack.ts'
import { units } from '../../src/metrology/units.ts'
import { judgeContent } from '../../src/pipeline.ts'
import { isError, type SourceFile } from '../../src/problem.ts'
import type { PaperLanguage } from '../../src/records/schemas/common.ts'
import { plainText, run, withFile as asFile } from '../pdf/inspect.ts'
import { faultsOf } from '../pdf/rules.ts'
import { demoFiles, judged, withChange, withFile } from '../records-on-disk.ts'
import { requireTool } from '../tools.ts'
import { demoRegister } from './demo-register.ts'
import { textsOf, wordsIn } from './language-texts.ts'

const { evaluated, lots } = judged(demoFiles)
const content = evaluated!.content
const producer = content.producer.record
const lotOf = (name: string) => lots.find(({ evaluated: { lot } }) => lot === name)!

/** The latest certificate ordered on each lot of the demo, in a language. */
function certificateIn(language: PaperLanguage, name: string): CertificateDocument {
  const { record } = content.certificates.findLast(({ record: { lot } }) => lot === name)!
  const tongue = tongueFor(content, language, ({ text }) => {
    throw new Error(`no words for: ${text}`)
  })
  const view = viewLot(content, lotOf(name), [], tongue)
  return certificateDocument(view, content.producer.record, record, { paper: 'A4' })
}

const certified = [...new Set(content.certificates.map(({ record: { lot } }) => lot))]
/** Editions beside CLP, which have their texts in English alone. */
const withEditions = (name: string) => (lotOf(name).grade.hazards?.editions ?? []).length > 1
const german = certified.filter(name => !withEditions(name))

const pdfOf = (document: CertificateDocument) =>
  certificatePdf(document, { attachments: [], fingerprint: 'ab'.repeat(32) })

/** What was measured elsewhere: by whom, and under which number. */
const reports = [...content.batches.values(), ...content.foils.values()].flatMap(({ record }) =>
  Object.values(record.reported ?? {}).flatMap(one => one ?? [])
)

/** What German papers may say: the language's own texts, translations, the law's, and names. */
const allowed = new Set(
  [
    ...textsOf('de'),
    ...content.translations.get('de')!.record.texts.map(({ as }) => as),
    ...Object.values(clp.statements).map(({ de }) => de),
    JSON.stringify([producer.name, producer.address, producer.email, producer.site]),
    JSON.stringify(producer.roles.map(({ name }) => name)),
    ...[...content.instruments.values()].flatMap(({ record: { calibration } }) => [
      calibration?.laboratory ?? '',
      calibration?.certificate?.split(' ').length === 1 ? calibration.certificate : ''
    ]),
    // Names and codes, which no language changes.
    ...[content.instruments, content.titrants].flatMap(map => [...map.keys()]),
    ...content.certificates.map(({ record: { number } }) => number),
    ...Object.keys(units),
    ...[content.grades, content.batches, content.foils].flatMap(map => [...map.keys()]),
    ...reports.flatMap(({ laboratory, report }) => [laboratory ?? '', report]),
    'certificates',
    'Eye Irrit',
    'III IV EU CFR OECD'
  ].flatMap(wordsIn)
)

/** Texts of a document, whatever they stand under. */
const valuesOf = (value: unknown): string[] =>
  typeof value === 'string'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(valuesOf)
      : []

/** Words of English papers that no German text has: an English sentence cannot do without them. */
const english = new Set(
  [...textsOf('en'), ...certified.flatMap(name => valuesOf(certificateIn('en', name)))]
    .flatMap(wordsIn)
    .filter(word => !allowed.has(word))
)

const ours = new Set(textsOf('de'))

/** Texts of the English catalogue of more than one word, which no German one is. */
const theirs = textsOf('en')
  .map(text => text.trim())
  .filter(text => /\p{L}{3,}\s+\p{L}{3,}/u.test(text) && !ours.has(text))

const drawn = new Map<string, string>()

/** What stands on a German certificate, as one line. */
async function textOf(name: string): Promise<string> {
  const text = drawn.get(name) ?? plainText(await pdfOf(certificateIn('de', name)))
  drawn.set(name, text)
  return text.replace(/\s+/gu, ' ')
}

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('a certificate in German', () => {
  test('is made of lots of both kinds', () => {
    expect(german.filter(name => name.startsWith('EB')).length).toBeGreaterThan(3)
    expect(german.filter(name => name.startsWith('FL')).length).toBeGreaterThan(5)
  })

  test.for(german)('on %s has no word of the English ones, and none of their texts', async name => {
    const text = await textOf(name)
    expect(wordsIn(text).length).toBeGreaterThan(200)
    expect([...new Set(wordsIn(text).filter(word => english.has(word)))]).toEqual([])
    expect(theirs.filter(one => text.includes(one))).toEqual([])
  })

  test('is held against enough of them', () => {
    expect(english.size).toBeGreaterThan(300)
    for (const word of ['the', 'within', 'certificate', 'measured']) expect(english).toContain(word)
    expect(theirs.length).toBeGreaterThan(100)
  })

  test.for(german)('of %s prints the figures of the English one, with commas', name => {
    const [en, de] = (['en', 'de'] as const).map(language => certificateIn(language, name))
    const pointed = JSON.stringify(de!.results).match(/"printed":"[^"]*\d\.\d[^"]*"/gu)
    expect(pointed).toBeNull()
    const plain = (printed?: string) => printed?.replaceAll('\u202f', '').replace(',', '.')
    de!.results.forEach((row, index) => {
      const other = en!.results[index]!
      expect(row.key).toBe(other.key)
      for (const part of ['value', 'expandedUncertainty', 'coverageFactor'] as const) {
        expect(row[part]?.exact).toBe(other[part]?.exact)
        expect(plain(row[part]?.printed)).toBe(other[part]?.printed)
      }
      expect(row.verdict?.word).toBe(other.verdict?.word)
      expect(row.limit?.min?.exact).toBe(other.limit?.min?.exact)
    })
    expect(de!.answer.word).toBe(en!.answer.word)
  })

  test('says so in its file, and keeps the rules of PDF/A and PDF/UA', async () => {
    const document = certificateIn('de', 'EB-26-001')
    const pdf = await pdfOf(document)
    expect(faultsOf(pdf, 0, 'de')).toEqual([])
    const shown = asFile(pdf, path => run('pdfinfo', ['-meta', path]))
    expect(shown).toContain('<dc:language><rdf:Bag><rdf:li>de</rdf:li></rdf:Bag></dc:language>')
    expect(shown).toContain('Analysenzertifikat, CT-26-001, Revision 1')
    expect(Buffer.from(pdf).toString('latin1')).toMatch(/\/Lang \(de\)/u)
    expect(Buffer.compare(pdf, await pdfOf(document))).toBe(0)
  })

  test('words its title, verdict, method and date as the trade does', async () => {
    const text = await textOf('FL-26-013')
    for (const said of [
      'Abnahmeprüfzeugnis 3.1',
      'Ausgestellt am 28. Oktober 2026',
      'Erfüllt alle 7 Grenzwerte der Sorte foil-100 (Revision 2).',
      '0,47 bis 0,53',
      'Entscheidend: Bogen 13-1, 0,5036 mm ± 0,0047 mm.',
      'jeder Bogen',
      'geprüft am 7. Oktober 2026',
      'Externes Ergebnis: gemessen von einem externen Labor',
      'Streifen längs zur Formgebungsrichtung geschnitten.',
      'Seite 1 von'
    ])
      expect(text).toContain(said)
  })
})

const data = lotDataSchema.parse(demoRegister.issued[0]!.frozen.data)

/** A certificate on a lot as if it had been issued in German. */
function issuedInGerman(name: string): Issued {
  const sample = demoRegister.issued.findLast(({ revision }) => revision.lot === name)!
  const text = freeze(certificateIn('de', name), data)
  return { ...sample, state: 'current', frozen: readFrozen(text)!, text }
}

describe('what follows a certificate in German', () => {
  test('it freezes with its language, its verdicts and the name of its wording in no language', () => {
    const { certificate } = issuedInGerman('EB-26-001').frozen
    expect(certificate).toMatchObject({ language: 'de', answer: { word: 'pass' } })
    expect(certificate.results[0]!.verdict!.word).toBe('pass')
    expect(certificate.hazards!.edition).toContain('Regulation (EC) No 1272/2008')
  })

  test('its customer’s copy is in German, limits of the customer and all', async () => {
    const shipment = content.shipments.get('SH-26-07')!.record
    const [first] = shipment.contents
    const part = { ...first!, limits: { thickness: { max: first!.mass_g } } as never }
    const limits = { 'foil-density': lotOf('FL-26-013').grade.limits['foil-density']! }
    const copy = customerCopy({
      shipment,
      part: { ...part, limits },
      lot: lotOf('FL-26-013'),
      issued: issuedInGerman('FL-26-013'),
      producer: content.producer.record,
      tongue: tongueFor(content, 'de')
    })
    const text = plainText(await customerCopyPdf(copy, [])).replace(/\s+/gu, ' ')
    for (const said of [
      'Kundenausfertigung zur Lieferung SH-26-07',
      'Dagmara Quensthorp, Qualitätsleitung',
      'Grenzwerte des Kunden',
      'Erfüllt den Grenzwert des Kunden.',
      'Gebinde'
    ])
      expect(text).toContain(said)
    const names = new Set(wordsIn(JSON.stringify(shipment)))
    const left = wordsIn(text).filter(word => english.has(word) && !names.has(word))
    expect([...new Set(left)]).toEqual([])
  })

  test('labels in English and German carry its statements', () => {
    const wish = { profile: 'eu-2028', languages: ['en', 'de'] } as const
    const { labels, problems } = labelDocuments(
      content,
      lotOf('EB-26-001'),
      [issuedInGerman('EB-26-001')],
      wish
    )
    expect(problems).toEqual([])
    const [en, de] = labels[0]!.contents[0]!.blocks
    expect([en!.signal, de!.signal]).toEqual(['Warning', 'Achtung'])
    expect(en!.hazards).toEqual(['Causes serious eye irritation.'])
    expect(de!.hazards).toEqual(['Verursacht schwere Augenreizung.'])
  })
})

describe('numbers, dates and lists in German', () => {
  const { number, date, list } = catalogues.de.numbers

  test.for([
    ['1.25', '1,25'],
    ['−0.004', '−0,004'],
    ['1234', '1234'],
    ['12345', '12\u202f345'],
    ['1234567.891', '1\u202f234\u202f567,891'],
    ['> 99.9', '> 99,9'],
    ['0.5 h', '0,5 h']
  ] as const)('%s is %s', ([from, to]) => {
    expect(number(from)).toBe(to)
  })

  test('a date has its month, and is not parted from its day', () => {
    expect(date('2026-03-04')).toBe('4.\u00a0März 2026')
  })

  test('a list', () => {
    expect([list(['a']), list(['a', 'b']), list(['a', 'b', 'c']), list([])]).toEqual([
      'a',
      'a und b',
      'a, b und c',
      ''
    ])
  })
})

describe('names of the law in German', () => {
  test('every substance has one', () => {
    expect(substances.filter(({ names }) => substanceName(names[0]!) === undefined)).toEqual([])
  })

  test('every source is worded', () => {
    const lines = substances.flatMap(one => [
      one.identity,
      ...[one.classes, one.limits, one.ates, one.mFactors, one.traits, one.statements].flat()
    ])
    const left = [...lines, ...Object.values(clauses)]
      .map(one => source(one.source))
      .filter(text => /\b(?:and|of|the|test|Annex|Table|value|no|entry|sheet|with)\b/u.test(text))
    expect(left).toEqual([])
  })
})

describe('what a language lacks', () => {
  const ordered: SourceFile = {
    path: 'content/certificates/CT-27-001-r1.yaml',
    text: 'number: CT-27-001\nrevision: 1\nlot: EB-26-001\nissued: 2026-11-01\nsignatory: quality manager\nlanguage: de\n'
  }
  const told = (files: readonly SourceFile[]) => judgeContent(files).problems.filter(isError)

  test('is nothing in the demo', () => {
    expect(told([...demoFiles, ordered])).toEqual([])
  })

  test('a text that nobody translated is told at the language of the certificate', () => {
    const files = withChange(
      [...demoFiles, ordered],
      'translations/de.yaml',
      'quality manager',
      'nobody'
    )
    expect(told(files)).toMatchObject([
      {
        code: 'MISSING_TEXT',
        field: ['language'],
        message: "certificate CT-27-001 is in German, and nobody has translated 'quality manager'"
      }
    ])
  })

  test('without translations every text is told once, whatever the number of certificates', () => {
    const without = demoFiles.filter(({ path }) => !path.includes('translations'))
    const again = { ...ordered, path: ordered.path.replace('001', '002') }
    const second = { ...again, text: again.text.replace('CT-27-001', 'CT-27-002') }
    const problems = told([...without, ordered, second])
    expect(problems.length).toBeGreaterThan(20)
    expect(new Set(problems.map(({ message }) => message)).size).toBe(problems.length)
    expect(problems.every(({ code }) => code === 'MISSING_TEXT')).toBe(true)
  })

  test('records written in German need no translation', () => {
    const without = demoFiles.filter(({ path }) => !path.includes('translations'))
    const files = withChange(
      [...without, ordered],
      'producer.yaml',
      'paper: A4',
      'paper: A4\nwritten-in: de'
    )
    const texts = told(files).filter(({ message }) => message.includes('CT-27-001'))
    expect(texts).toEqual([])
  })

  test('editions of the statements that are in English alone are refused', () => {
    const other = { ...ordered, text: ordered.text.replace('EB-26-001', 'EB-26-002') }
    expect(told([...demoFiles, other]).map(({ message }) => message)).toEqual([
      "certificate CT-27-001 is in German, and statements of the edition 'GHS der Vereinten Nationen, Revision 10' have texts in English alone",
      "certificate CT-27-001 is in German, and statements of the edition 'Hazard Communication Standard der OSHA (Vereinigte Staaten)' have texts in English alone"
    ])
  })

  test('a certificate keeps its language from revision to revision', () => {
    const files = withChange(
      demoFiles,
      'certificates/CT-26-007-r2.yaml',
      'reason:',
      'language: de\nreason:'
    )
    expect(told(files)).toMatchObject([{ code: 'NOT_CERTIFIABLE', field: ['language'] }])
  })

  test('a translation given twice is refused', () => {
    const twice = withFile(
      demoFiles.filter(({ path }) => !path.includes('translations')),
      'translations/de.yaml',
      'language: de\ntexts:\n  - { text: a, as: b }\n  - { text: a, as: c }\n'
    )
    expect(told(twice)).toMatchObject([{ code: 'INVALID_VALUE', field: ['texts', 1, 'text'] }])
  })
})

test('silica is told apart by what reaches the lungs, which is not all that is breathed in', () => {
  const { meaning } = catalogues.de.quantities.crystallineSilica_percent
  expect(meaning).toContain('alveolengängige Anteil')
  expect(catalogues.en.quantities.crystallineSilica_percent.meaning).toContain('respirable part')
})
