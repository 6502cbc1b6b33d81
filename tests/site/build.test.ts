import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test, vi } from 'vitest'
import type { StatementDocument } from '../../src/documents/statement-types.ts'
import type { SiteDocument } from '../../src/documents/types.ts'
import { problemAt } from '../../src/problem.ts'
import { buildSite } from '../../src/site/build.ts'
import { certificateDocument, lotPage, siteDocument } from '../fixtures/documents.ts'
import { inventedSteps, namesIn, tree, workplace } from './workplace.ts'

const statement: StatementDocument = {
  title: 'Statement of working',
  lot: 'EB-26-041',
  dated: '2026-03-14',
  language: 'en',
  paper: 'A4',
  producer: siteDocument.producer,
  facts: [],
  workings: [],
  process: [],
  statements: []
}

function placeOf() {
  const place = workplace()
  mkdirSync(join(place, 'content'))
  writeFileSync(join(place, 'content', 'a.yaml'), 'a: 1\n')
  return {
    place,
    out: join(place, 'pages'),
    options: {
      content: join(place, 'content'),
      out: join(place, 'pages'),
      edition: 'public'
    } as const
  }
}

test('a site is pages, papers, data, assets and the marker', async () => {
  const { place, out, options } = placeOf()
  const { files, site } = await buildSite(options, inventedSteps())
  expect({ files, site }).toEqual({ files: 1, site: siteDocument })
  expect(Object.keys(tree(out))).toEqual(
    expect.arrayContaining([
      '404.html',
      'grades/flake-50/index.html',
      'grades/index.html',
      'index.html',
      'lotfolio-site.json',
      'lots/EB-26-041/C-26-014.pdf',
      'lots/EB-26-041/data.json',
      'lots/EB-26-041/index.html',
      'lots/index.html'
    ])
  )
  expect(readFileSync(join(out, 'lots/EB-26-041/C-26-014.pdf'), 'utf8')).toBe('%PDF-2.0 C-26-014')
  expect(namesIn(place)).toEqual(['.cache', 'content', 'pages'])
})

test('a site of two languages has a statement of working in each, beside one of all else', async () => {
  const { out, options } = placeOf()
  const formIn = (language: 'de' | 'en', url: string): SiteDocument => {
    const document = { ...statement, language, title: language }
    return {
      ...siteDocument,
      language,
      folder: language === 'de' ? '' : 'en/',
      grades: [],
      lots: [{ ...lotPage, statement: { document, url } }]
    }
  }
  const [de, en] = ['lots/EB-26-041/w-de.pdf', 'lots/EB-26-041/w.pdf'] as const
  const site = { ...siteDocument, forms: [formIn('de', de), formIn('en', en)] }
  await buildSite(options, inventedSteps({ buildDocuments: () => ({ site, problems: [] }) }))
  expect(readFileSync(join(out, de), 'utf8')).toBe('%PDF-2.0 de of EB-26-041')
  expect(readFileSync(join(out, en), 'utf8')).toBe('%PDF-2.0 en of EB-26-041')
  expect(Object.keys(tree(out)).filter(path => path.endsWith('C-26-014.pdf'))).toHaveLength(1)
})

describe('the old site stays as it is, and nothing beside it, when', () => {
  test('a record is broken', async () => {
    const { place, out, options } = placeOf()
    await buildSite(options, inventedSteps())
    const before = tree(out)
    const file = { path: 'content/a.yaml', text: 'a: 1\n' }
    const problem = problemAt({ file, field: [], range: [0, 1] }, 'UNKNOWN_FIELD', 'is', 'do')
    const steps = inventedSteps({ buildDocuments: () => ({ problems: [problem] }) })
    expect(await buildSite(options, steps)).toEqual({ files: 1, problems: [problem] })
    expect(tree(out)).toEqual(before)
    expect(namesIn(place)).toEqual(['.cache', 'content', 'pages'])
  })

  test('a paper cannot be rendered', async () => {
    const { place, out, options } = placeOf()
    await buildSite(options, inventedSteps())
    const before = tree(out)
    const steps = inventedSteps({
      renderer: () => Promise.resolve('2'),
      certificatePdf: () => Promise.reject(new Error('no ink'))
    })
    await expect(buildSite(options, steps)).rejects.toThrow('no ink')
    expect(tree(out)).toEqual(before)
    expect(namesIn(place)).toEqual(['.cache', 'content', 'pages'])
  })
})

test('pages of lots that are gone go too', async () => {
  const { out, options } = placeOf()
  await buildSite(options, inventedSteps())
  const fewer = { ...siteDocument, lots: [], grades: [] }
  const steps = inventedSteps({ buildDocuments: () => ({ site: fewer, problems: [] }) })
  await buildSite(options, steps)
  expect(existsSync(join(out, 'lots/EB-26-041'))).toBe(false)
})

describe('two files at one path are refused:', () => {
  const rows: [what: string, url: string][] = [
    ['the same path', 'lots/EB-26-041/data.json'],
    ['a path in other letters', 'LOTS/eb-26-041/Data.json'],
    ["a page's path", 'lots/EB-26-041/index.html'],
    ["an asset's path", 'assets/lotfolio.css'],
    ["the marker's path", 'Lotfolio-Site.json'],
    ['a path the long way round', 'lots/x/../EB-26-041/data.json']
  ]
  test.each(rows)('%s', async (_, url) => {
    const { out, options } = placeOf()
    const page = { ...lotPage, certificates: [{ document: certificateDocument, url }] }
    const site = { ...siteDocument, lots: [page] }
    const steps = inventedSteps({ buildDocuments: () => ({ site, problems: [] }) })
    await expect(buildSite(options, steps)).rejects.toThrow(/two files of the site have one path/u)
    expect(existsSync(out)).toBe(false)
  })

  test('and so is one outside the site', async () => {
    const { place, options } = placeOf()
    const page = { ...lotPage, dataUrl: '../escaped.json' }
    const site = { ...siteDocument, lots: [page] }
    const steps = inventedSteps({ buildDocuments: () => ({ site, problems: [] }) })
    await expect(buildSite(options, steps)).rejects.toThrow(/would lie outside it/u)
    expect(existsSync(join(place, 'escaped.json'))).toBe(false)
  })
})

/** The sample, its certificates carrying other data. */
const withOtherData = () => ({
  ...siteDocument,
  lots: [{ ...lotPage, attachment: '{"lot":"other"}' }]
})

describe('papers of earlier builds', () => {
  const pdf = 'lots/EB-26-041/C-26-014.pdf'

  function counted() {
    const render = vi.fn((document: { readonly number?: string }) =>
      Promise.resolve(Buffer.from(`%PDF-2.0 ${document.number}`))
    )
    return { render, steps: inventedSteps({ certificatePdf: render }) }
  }

  test('are kept, byte for byte, while nothing that goes into them changes', async () => {
    const { out, options } = placeOf()
    const { render, steps } = counted()
    await buildSite(options, steps)
    const first = tree(out)
    await buildSite(options, steps)
    expect(render).toHaveBeenCalledTimes(1)
    expect(tree(out)).toEqual(first)
  })

  test.each([
    ['the document', { buildDocuments: () => ({ site: renumbered(), problems: [] }) }],
    ['the data inside', { buildDocuments: () => ({ site: withOtherData(), problems: [] }) }],
    ['the renderer', { renderer: () => Promise.resolve('2') }]
  ])('are rendered anew when %s changes', async (_, change) => {
    const { options } = placeOf()
    const { render, steps } = counted()
    await buildSite(options, steps)
    await buildSite(options, { ...steps, ...change })
    expect(render).toHaveBeenCalledTimes(2)
  })

  test.each([
    ['altered', (bytes: Buffer) => Buffer.from(bytes.map((b, at) => (at === 70 ? b ^ 1 : b)))],
    ['cut short', (bytes: Buffer) => bytes.subarray(0, -1)],
    ['empty', () => Buffer.alloc(0)]
  ])('are rendered anew when their entry is %s', async (_, damage) => {
    const { place, out, options } = placeOf()
    const { render, steps } = counted()
    await buildSite(options, steps)
    const first = tree(out)
    const folder = join(place, '.cache', 'lotfolio', 'pages-public')
    for (const name of namesIn(folder))
      writeFileSync(join(folder, name), damage(readFileSync(join(folder, name))))
    await buildSite(options, steps)
    expect(render).toHaveBeenCalledTimes(2)
    expect(tree(out)).toEqual(first)
  })

  test('do not pass for one another', async () => {
    const { place, out, options } = placeOf()
    const { steps } = counted()
    await buildSite(options, steps)
    const folder = join(place, '.cache', 'lotfolio', 'pages-public')
    const [mine = ''] = namesIn(folder)
    const other = { ...steps, buildDocuments: () => ({ site: renumbered(), problems: [] }) }
    await buildSite(options, other)
    const [theirs = ''] = namesIn(folder)
    writeFileSync(join(folder, mine), readFileSync(join(folder, theirs)))
    await buildSite(options, steps)
    expect(readFileSync(join(out, pdf), 'utf8')).toBe('%PDF-2.0 C-26-014')
  })

  test('that no lot asks for any more are removed', async () => {
    const { place, options } = placeOf()
    const { steps } = counted()
    await buildSite(options, steps)
    await buildSite(options, {
      ...steps,
      buildDocuments: () => ({ site: renumbered(), problems: [] })
    })
    // One paper, one page, and the datasheet of its grade.
    expect(namesIn(join(place, '.cache', 'lotfolio', 'pages-public'))).toHaveLength(3)
  })

  test('pages are taken as they are while nothing that goes into them changes', async () => {
    const { place, out, options } = placeOf()
    const { steps } = counted()
    await buildSite(options, steps)
    const folder = join(place, '.cache', 'lotfolio', 'pages-public')
    const page = join(out, lotPage.document.url, 'index.html')
    const written = readFileSync(page)
    for (const name of namesIn(folder)) {
      const entry = readFileSync(join(folder, name))
      if (!entry.includes('<!DOCTYPE')) continue
      const other = Buffer.from('taken')
      const checksum = createHash('sha256').update(name).update(other).digest('hex')
      writeFileSync(join(folder, name), `${checksum}taken`)
    }
    await buildSite(options, steps)
    expect(readFileSync(page, 'utf8')).toBe('taken')
    await buildSite(options, {
      ...steps,
      buildDocuments: () => ({ site: { ...siteDocument, asOf: '2026-11-03' }, problems: [] })
    })
    expect(readFileSync(page, 'utf8')).toBe(
      written
        .toString('utf8')
        .replaceAll('2026-11-02', '2026-11-03')
        .replaceAll('2 November 2026', '3 November 2026')
    )
  })

  function renumbered() {
    const document = { ...certificateDocument, number: 'C-26-015' }
    return {
      ...siteDocument,
      lots: [{ ...lotPage, certificates: [{ document, url: pdf }] }]
    }
  }
})
