/** Nothing a reader could stumble over, in any text of any document. */

import { describe, expect, test } from 'vitest'
import { lotData } from '../../src/data/lot-data.ts'
import { publicSite, workshopSite } from './demo.ts'

/** Every text in a value, with the path to it. */
function textsIn(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]]
  if (typeof value !== 'object' || value === null) return [[path, String(value)]]
  return Object.entries(value).flatMap(([key, inner]) => textsIn(inner, `${path}/${key}`))
}

const slips = [/NaN/u, /Infinity/u, /undefined/u, /\bnull\b/u, /\[object/u]
/** '..', ' .', ',,', doubled blanks, a minus that is a hyphen, an exponent. */
const badType = [/(?<!\.)\.\.(?!\.)/u, / [.,;:](?!\d)/u, /,,/u, / {2}/u, /(^| )-\d/u, /\de[+-]\d/u]
const withoutPaths = (texts: [string, string][]) =>
  texts.filter(([path]) => !/\/(exact|url|dataUrl|ucum|email)$/u.test(path))

describe.each([
  ['public', publicSite],
  ['workshop', workshopSite]
] as const)('the %s edition', (_, site) => {
  // Files for programs are looked at below.
  const texts = textsIn(site).filter(([path]) => !/\/(attachment|issued\/(data|text))$/u.test(path))

  test('has texts to look at', () => {
    expect(texts.length).toBeGreaterThan(4000)
  })

  test('shows no slip of the program', () => {
    const all: [string, string][] = [
      ...texts,
      ...site.lots.flatMap(page =>
        [
          lotData(page, site),
          page.attachment ?? '',
          ...page.certificates.flatMap(({ issued }) => (issued ? [issued.data, issued.text] : []))
        ].map((text): [string, string] => [page.dataUrl, text.replace(/: ?null\b/gu, ': none')])
      )
    ]
    expect(all.filter(([, text]) => slips.some(slip => slip.test(text)))).toEqual([])
  })

  test('sets its texts as a printer would', () => {
    const bad = withoutPaths(texts).filter(([, text]) => badType.some(slip => slip.test(text)))
    expect(bad).toEqual([])
  })

  test('has no empty text but where a document says it may', () => {
    const empty = texts.filter(([, text]) => text === '').map(([path]) => path)
    // The site's first language stands in no folder of its own.
    const allowed =
      /^\/folder$|\/(unit\/printed|decisionRule|grade|parts\/\d+\/rows\/\d+\/cells\/\d+|(?:workings|statement\/document\/process)\/\d+\/.*rows\/\d+\/\d+|process\/(steps|charge)\/rows\/\d+\/\d+)$/u
    expect(empty.filter(path => !allowed.test(path))).toEqual([])
  })

  test('gives every lot one page, one address and a date of its own', () => {
    const urls = site.lots.flatMap(page => [
      page.document.url,
      page.dataUrl,
      ...page.certificates.map(({ url }) => url)
    ])
    expect(new Set(urls).size).toBe(urls.length)
  })

  test('never mixes measured, typical and not measured', () => {
    for (const { document } of site.lots)
      for (const row of document.results) {
        if (row.basis === 'measured') expect(row.value).toBeDefined()
        else
          expect(Object.keys(row)).not.toEqual(
            expect.arrayContaining(['verdict', 'expandedUncertainty', 'testedOn', 'n'])
          )
        if (row.basis === 'not measured') expect(row.value).toBeUndefined()
      }
  })
})
