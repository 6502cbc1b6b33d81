import { beforeAll, describe, expect, it } from 'vitest'
import type { CertificateDocument } from '../../src/documents/types.ts'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { MissingGlyph } from '../../src/pdf/fonts.ts'
import { certificateDocument, previewDocument } from '../fixtures/documents.ts'
import { requireTool } from '../tools.ts'
import { pageTexts, plainText } from './inspect.ts'
import { attachment, longDocument } from './samples.ts'
import { wordsIn } from '../../src/pdf/words.ts'

/** Every text of a document that a certificate must show. */
function textsOf(document: CertificateDocument): string[] {
  const { producer, hazards } = document
  return [
    document.title,
    producer.name,
    ...producer.address,
    producer.email,
    producer.telephone,
    ...document.facts.flatMap(fact => [fact.label, fact.text]),
    document.answer.word,
    document.answer.sentence,
    ...document.results.flatMap(row => [
      row.title,
      row.unit.printed,
      ...(row.basis === 'not measured' ? ['not measured'] : [row.value?.printed ?? 'not stated']),
      ...(row.basis === 'measured' && row.expandedUncertainty && row.coverageFactor
        ? [`± ${row.expandedUncertainty.printed}`, `k = ${row.coverageFactor.printed}`]
        : []),
      ...(row.limit ? [row.limit.printed, row.limit.of] : ['no limit']),
      ...(row.basis === 'measured' && row.verdict ? [row.verdict.word] : []),
      ...(row.method ? [row.method.id, row.method.edition, row.method.conditions] : []),
      ...(row.method?.deviation ? [row.method.deviation] : []),
      ...(row.spread ? [row.spread] : []),
      ...(row.decidedBy ? [row.decidedBy.place, row.decidedBy.value.printed] : [])
    ]),
    ...document.notMeasured,
    document.decisionRule,
    document.release.sentence,
    ...(document.signatory ? [document.signatory] : []),
    ...(hazards?.statements.flatMap(({ code, text }) => [code, text]) ?? []),
    ...(hazards
      ? [
          hazards.signal ?? 'No signal word',
          hazards.basis,
          wordsIn('en').wording(hazards.edition),
          hazards.transport
        ]
      : []),
    ...(hazards?.computed
      ? [
          hazards.computed.sentence,
          hazards.computed.agreement,
          ...hazards.computed.classes.flatMap(one => [one.name, one.statement, ...one.why]),
          ...hazards.computed.from,
          ...hazards.computed.notes,
          hazards.computed.dust ?? ''
        ]
      : []),
    ...document.cautions,
    ...document.traceability,
    ...document.statements,
    document.url ?? ''
  ]
}

/** Without white space and hyphens: reading tools add the one and drop the other at line ends. */
const tight = (text: string): string => text.replace(/[\s-]+/g, '')

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('the text of a certificate', () => {
  let pages: string[]

  beforeAll(async () => {
    pages = pageTexts(await certificatePdf(certificateDocument, attachment))
  })

  it.each([
    ['certificate', certificateDocument],
    ['preview', previewDocument],
    ['certificate of forty properties', longDocument]
  ])('a %s shows every text of its document', async (_, document) => {
    const shown = plainText(await certificatePdf(document, attachment))
    const missing = textsOf(document).filter(text => !tight(shown).includes(tight(text)))
    expect(missing).toEqual([])
  })

  it.each([
    [/Expansion volume +mL\/g +3 +262\.1 +± 4\.3 +≥ 250 +pass\n/],
    [/Free acidity as H₂SO₄ +% +2 +0\.118 +± 0\.0083 +≤ 0\.12 +conditional pass\n/],
    [
      /Foil density +g\/cm³ +3 +0\.998 +± 0\.012 +≥ ?0\.95 +pass\n[^\n]+\nDecided by sheet 7b, 0\.961 g\/cm³ ± 0\.013 g\/cm³\./
    ],
    [/pH of the slurry +– +2 +< 2\.0 +not stated +≥ ?3 +fail\n/],
    [/Ash, dry basis +% +0\.7 +no limit +typical\n/],
    [/Moisture +% +≤ 1\.0 +not measured\n/]
  ])('a row reads as one line: %s', row => {
    expect(pages.join('')).toMatch(row)
  })

  it('keeps measured, typical and not measured rows under headings of their own', () => {
    const text = pages.join('')
    const order = [
      'Measured on this lot',
      'pH of the slurry',
      'Typical of the grade, not measured on this lot',
      'Ash, dry basis',
      'Not measured on this lot',
      'Moisture'
    ].map(part => text.indexOf(part))
    expect(order).not.toContain(-1)
    expect(order).toEqual([...order].sort((a, b) => a - b))
  })

  it('names method, edition, conditions, deviation and day of a figure', () => {
    const text = pages.join('').replace(/\s+/g, ' ')
    expect(text).toContain('TM-04, edition 2, Free acidity by titration: 10 g in 100 mL water')
    expect(text).toContain('tested 17 March 2026.')
    expect(text).toContain('Deviation from the method: leached for 45 min.')
  })

  it('says why a figure does not pass outright', () => {
    expect(pages.join('').replace(/\s+/g, ' ')).toContain(
      'conditional pass: 0.118 % is within 0.12 %, but by less than its uncertainty of 0.008 %.'
    )
  })

  it('ends with its end mark', () => {
    expect(pages.at(-1)).toMatch(
      /End of certificate\n+Certificate C-26-014[^\n]*Page (\d) of \1\n*$/
    )
  })

  it('draws the signs of the record, not look-alikes', async () => {
    const title = 'Foil 3x9 -> 10:30, 3×9, (a-b), != <= =>, 2026-03-16, fi ffi'
    const [first] = certificateDocument.results
    const odd = { ...certificateDocument, results: [{ ...first!, title }] }
    expect(plainText(await certificatePdf(odd, attachment))).toContain(title)
  })
})

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('every page', () => {
  it('of a certificate names number, lot and place among the pages', async () => {
    const pages = pageTexts(await certificatePdf(longDocument, attachment))
    expect(pages.length).toBeGreaterThan(3)
    pages.forEach((page, index) => {
      const place = `Page ${index + 1} of ${pages.length}`
      expect(page).toMatch(
        new RegExp(`Certificate C-26-014, revision 1 +· +Lot EB-26-041 +${place}\n*$`)
      )
    })
  })

  it('of a preview says so at its head and its foot, and bears no number', async () => {
    const pages = pageTexts(await certificatePdf(longPreview, attachment))
    for (const page of pages) {
      expect(page).toMatch(/^\s*Preview, not issued\n/)
      expect(page).toMatch(/\n *Preview, not issued +· +Lot EB-26-041 +Page \d+ of \d+\n*$/)
      expect(page).not.toContain('C-26-014')
    }
    expect(pages.at(-1)).toContain('End of preview')
    expect(pages.join('')).not.toContain('End of certificate')
  })
})

const longPreview: CertificateDocument = (({ number, revision, issued, ...rest }) => {
  void [number, revision, issued]
  return { ...rest, preview: true, mark: 'Preview, not issued' }
})(longDocument)

describe('a sign the font lacks', () => {
  it('is refused, naming sign and text', async () => {
    const facts = [...certificateDocument.facts, { label: 'Customer', text: 'Works 漢 Ltd' }]
    const making = certificatePdf({ ...certificateDocument, facts }, attachment)
    await expect(making).rejects.toThrow(MissingGlyph)
    await expect(making).rejects.toThrow("'漢' (U+6F22), found in 'Works 漢 Ltd'")
  })

  it('is refused in the weight that lacks it, in every part of the paper', async () => {
    const cautions = ['Keep dry ☐']
    await expect(certificatePdf({ ...certificateDocument, cautions }, attachment)).rejects.toThrow(
      'U+2610'
    )
  })
})
