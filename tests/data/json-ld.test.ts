/** JSON-LD of lot pages, expanded to triples by another library; the context is written out here. */

import jsonld from 'jsonld'
import { describe, expect, test } from 'vitest'
import { jsonLdText } from '../../src/data/json-ld.ts'
import { lotDataOf } from '../../src/documents/lot-data.ts'
import type { LotPage, SiteDocument } from '../../src/documents/types.ts'
import { publicSite, workshopSite } from '../documents/demo.ts'
import { demoRegister } from '../documents/demo-register.ts'
import { issuedSite } from './issued-site.ts'
import { lotPage, siteDocument } from '../fixtures/documents.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'

/** Of the context at https://schema.org/: its vocabulary, and which of our terms are addresses or days. */
const context = {
  '@context': {
    '@vocab': 'http://schema.org/',
    url: { '@type': '@id' },
    contentUrl: { '@type': '@id' },
    productionDate: { '@type': 'http://schema.org/Date' }
  }
}

const schema = 'http://schema.org/'
const TYPE = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#type'

/** Every triple of a page, as its subject's values by property. */
async function triplesOf(page: LotPage, site: SiteDocument) {
  const block = JSON.parse(jsonLdText(page, site)) as object
  const quads = await jsonld.toRDF(block, {
    base: `https://pages.example.org/${page.document.url}`,
    documentLoader: (url: string) =>
      url === 'https://schema.org/'
        ? Promise.resolve({ contextUrl: null, documentUrl: url, document: context })
        : Promise.reject(new Error(`no network: ${url}`))
  })
  const nodes = new Map<string, Map<string, string[]>>()
  for (const { subject, predicate, object } of quads) {
    const node = nodes.get(subject.value) ?? new Map<string, string[]>()
    nodes.set(subject.value, node)
    node.set(predicate.value, [...(node.get(predicate.value) ?? []), object.value])
  }
  const get = (node: Map<string, string[]>, name: string) => node.get(schema + name) ?? []
  return { nodes, get, all: [...nodes.values()] }
}

const number = (texts: readonly string[]) => (texts.length > 0 ? Number(texts[0]) : null)

describe('JSON-LD of every lot page of the demo', () => {
  test('gives the figures of data.json', { timeout: 60_000 }, async () => {
    let compared = 0
    for (const site of [publicSite, workshopSite])
      for (const page of site.lots) {
        const { nodes, get, all } = await triplesOf(page, site)
        for (const [key, figure] of Object.entries(lotDataOf(page, site).quantities)) {
          const found = all.find(node => get(node, 'propertyID')[0] === key)
          const value = figure.value ?? figure.below
          expect(found === undefined, key).toBe(value === null)
          if (!found) continue
          compared++
          expect(number(get(found, 'value'))).toBe(figure.value)
          expect(number(get(found, 'maxValue'))).toBe(figure.below)
          expect(get(found, 'unitText')).toEqual([figure.unit])
          const beside = get(found, 'valueReference').map(id => nodes.get(id)!)
          const named = (start: string) =>
            beside.find(node => get(node, 'name')[0]!.startsWith(start))
          const U = named('expanded uncertainty')
          expect(U ? number(get(U, 'value')) : null).toBe(figure.expandedUncertainty)
          const limit = named('limit for')
          expect(limit ? number(get(limit, 'minValue')) : null).toBe(figure.limit?.min ?? null)
          expect(limit ? number(get(limit, 'maxValue')) : null).toBe(figure.limit?.max ?? null)
        }
      }
    expect(compared).toBeGreaterThan(150)
  })

  test('says what is what, names its files, and calls nothing a Certification', async () => {
    const page = issuedSite.lots.find(({ certificates }) => certificates[0]?.issued)!
    const { get, all } = await triplesOf(page, issuedSite)
    const types = all.flatMap(node => node.get(TYPE) ?? [])
    expect(new Set(types)).toEqual(
      new Set(
        [
          'DigitalDocument',
          'MediaObject',
          'Organization',
          'ProductModel',
          'PropertyValue',
          'SomeProducts'
        ].map(type => schema + type)
      )
    )
    const { issued } = page.certificates[0]!
    const media = all.filter(node => node.get(TYPE)?.includes(`${schema}MediaObject`))
    const hashes = media.flatMap(node => get(node, 'sha256'))
    expect(hashes).toEqual(expect.arrayContaining([issued!.sha256]))
    if (issued!.pdfSha256) expect(hashes).toContain(issued!.pdfSha256)
    const files = media.map(node => get(node, 'contentUrl')[0])
    expect(files).toContain(`https://ossenfold.example.org/${page.dataUrl}`)
    expect(jsonLdText(page, issuedSite)).not.toContain('Certification')
  })

  test('addresses of the workshop edition hold from the page', async () => {
    const page = workshopSite.lots[0]!
    const { get, all } = await triplesOf(page, workshopSite)
    expect(all.flatMap(node => get(node, 'contentUrl'))).toContain(
      `https://pages.example.org/${page.dataUrl}`
    )
  })
})

describe('JSON-LD of the same page in German', () => {
  const files = withChange(
    demoFiles,
    'producer.yaml',
    'paper: A4',
    'paper: A4\nsite-languages: [en, de]'
  )
  const { site } = buildDocuments(files, { edition: 'public', register: demoRegister })
  const [english, german] = site!.forms!
  const blocks = (form: SiteDocument) =>
    [...form.lots].map(page => JSON.parse(jsonLdText(page, form)) as unknown)
  const [ours, theirs] = [blocks(english!), blocks(german!)]

  /** Every text of a block by where it stands; a name is one a reader reads. */
  function* leavesOf(node: unknown, at = ''): Generator<readonly [string, unknown]> {
    if (typeof node !== 'object' || node === null) yield [at, node]
    else for (const [key, value] of Object.entries(node)) yield* leavesOf(value, `${at}/${key}`)
  }
  const isWords = (at: string) =>
    /\/(?:name|category|description|measurementTechnique|inLanguage)$/u.test(at)
  const dataOf = (block: unknown) => [...leavesOf(block)].filter(([at]) => !isWords(at))
  const wordsIn = (block: unknown) =>
    [...leavesOf(block)].flatMap(([at, text]) => (isWords(at) ? [String(text)] : []))

  test('says that it is German, and gives the same keys, days and figures', () => {
    expect(ours).toMatchObject(ours.map(() => ({ inLanguage: 'en' })))
    expect(theirs).toMatchObject(ours.map(() => ({ inLanguage: 'de' })))
    expect(theirs.map(dataOf)).toEqual(ours.map(dataOf))
  })

  test('names things in German, but for a certificate issued in English, which says so', () => {
    type Media = { readonly name: string; readonly inLanguage?: string }
    const papers = (block: unknown) => (block as { encoding: Media[] }).encoding
    const isEnglish = (text: string) =>
      /\b(?:lot|edition|limit for|expanded|typical of|measured|flake|what it says)\b/iu.test(text)
    const marked = theirs.flatMap(papers).filter(({ inLanguage }) => inLanguage === 'en')
    expect(marked.length).toBeGreaterThan(10)
    const allowed = new Set(marked.map(({ name }) => name))
    expect(ours.flatMap(wordsIn).filter(isEnglish).length).toBeGreaterThan(500)
    expect(theirs.flatMap(wordsIn).filter(text => isEnglish(text) && !allowed.has(text))).toEqual(
      []
    )
  })
})

test('no text of a record ends the block it stands in', () => {
  const document = { ...lotPage.document, kind: '</script><!-- <script>' }
  const text = jsonLdText({ ...lotPage, document }, siteDocument)
  expect(text).not.toContain('<')
  expect((JSON.parse(text) as { name: string }).name).toContain('</script><!-- <script>')
})
