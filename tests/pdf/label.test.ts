import { describe, expect, test } from 'vitest'
import { labelLanguages } from '../../src/documents/label-words/index.ts'
import { labelPdf, labelTwin } from '../../src/pdf/label.ts'
import { readStock } from '../../src/pdf/label-stock.ts'
import { requireTool } from '../tools.ts'
import { bundleSamples, madeElsewhere } from './elsewhere.ts'
import { Objects, preflightAll, preflightJars, run, withFile } from './inspect.ts'
import { labelOf, sampleLabel, worst } from './label-samples.ts'
import { faultsOf } from './rules.ts'

/**
 * Text in the order it is drawn in, which is that of reading. The face draws the apostrophe and the
 * letter U+02BC alike, so that either may come back.
 */
const textInOrder = (bytes: Uint8Array): string =>
  withFile(bytes, path => run('pdftotext', ['-raw', path, '-'])).replaceAll('ʼ', '’')

const stock = readStock('Letter 1x2 of 200 x 130 at 5 x 5 every 200 x 132')
const onSheet = typeof stock === 'string' ? {} : { stock }

const labels = labelLanguages.map(language =>
  labelOf({ classes: worst, languages: [language], profile: 'eu-2028', capacity_L: 10 })
)

describe.skipIf(!requireTool('qpdf', 'qpdf'))('a label', () => {
  test.each(labels.map(label => [label.languages[0]!, label] as const))(
    'in %s keeps the rules of PDF/A-3a and PDF/UA-1',
    (language, label) => {
      expect(faultsOf(labelPdf(label), 0, language)).toEqual([])
    }
  )

  test('in two languages, and on a sheet, keeps them', () => {
    expect(faultsOf(labelPdf(sampleLabel), 0, 'de')).toEqual([])
    expect(faultsOf(labelPdf(sampleLabel, onSheet), 0, 'de')).toEqual([])
  })

  test('is a sound file', () => {
    const said = withFile(labelPdf(sampleLabel, onSheet), path => run('qpdf', ['--check', path]))
    expect(said).toContain('No syntax or stream encoding errors found')
  })

  test('says of each text in which language it is', () => {
    const pdf = new Objects(labelPdf(sampleLabel))
    const spoken = pdf.all.filter(one => one['/S'] === '/P').map(one => pdf.text(one['/Lang']))
    expect(spoken.filter(language => language === 'de').length).toBeGreaterThan(4)
    expect(spoken.filter(language => language === 'fr').length).toBeGreaterThan(4)
  })

  test('reads a sheet of labels once', () => {
    const pdf = new Objects(labelPdf(sampleLabel, onSheet))
    expect(pdf.all.filter(one => one['/S'] === '/H1')).toHaveLength(1)
  })
})

describe.skipIf(
  !requireTool('java', 'default-jre-headless') ||
    !preflightJars.every(([path, name]) => requireTool(path, name))
)('the archival twin of a label', () => {
  test('is valid to a validator', { timeout: 120_000 }, () => {
    const twins = [...labels.map(label => labelTwin(label)), labelTwin(sampleLabel, onSheet)]
    expect(new Set(preflightAll(twins))).toEqual(new Set(['is a valid PDF/A-1b file']))
  })
})

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('its text', () => {
  test.each(labels.map(label => [label.languages[0]!, label] as const))(
    'in %s is the law’s, every word of it',
    (_, label) => {
      const printed = textInOrder(labelPdf(label)).replace(/\s/gu, '')
      const { hazards, precautions, signal } = label.contents[0]!.blocks[0]!
      const wanted = [signal!, ...hazards, ...precautions]
      expect(hazards.length).toBeGreaterThan(3)
      expect(wanted.filter(text => !printed.includes(text.replace(/\s/gu, '')))).toEqual([])
    }
  )
})

bundleSamples()

test('the same label gives the same bytes, wherever and whatever was made before', () => {
  const first = Buffer.from(labelPdf(sampleLabel))
  expect(Buffer.from(labelPdf(sampleLabel)).equals(first)).toBe(true)
  const elsewhere = madeElsewhere('label', 'Pacific/Kiritimati', 'tr_TR.UTF-8')
  expect(elsewhere.equals(first)).toBe(true)
})
