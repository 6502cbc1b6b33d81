/** Pages as text: valid, linked, complete, escaped, and of bounded size. */

import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import { FileSystemConfigLoader, HtmlValidate } from 'html-validate'
import { beforeAll, describe, expect, test } from 'vitest'
import { mathml } from '../../src/html/mathml.ts'
import { type SamplePage, samplePages } from '../browser/render-pages.ts'
import { fullLot } from '../browser/sample-site.ts'
import { lotDocument } from '../fixtures/documents.ts'

interface ReadPage extends SamplePage {
  readonly file: string
  readonly html: string
}

let pages: readonly ReadPage[]

beforeAll(async () => {
  const samples = await samplePages()
  pages = samples.map(sample => {
    const file = join(sample.folder, sample.path)
    return { ...sample, file, html: readFileSync(file, 'utf8') }
  })
}, 60_000)

const pageOf = (site: string, path: string): ReadPage => {
  const found = pages.find(page => page.site === site && page.path === path)
  if (!found) throw new Error(`${path} is not among the pages of ${site}`)
  return found
}

/** What a reader without styles reads. */
const textOf = (html: string): string =>
  html
    .replace(/<head>.*<\/head>/su, '')
    .replace(/<span[^>]*aria-hidden[^>]*>.*?<\/span>/gu, '')
    .replace(/<span class="unbroken">(.*?)<\/span>/gu, '$1')
    .replace(/<[^>]*>/gu, ' ')
    .replace(/&lt;/gu, '<')
    .replace(/&gt;/gu, '>')
    .replace(/&#39;/gu, "'")
    .replace(/&amp;/gu, '&')
    .replace(/\s+/gu, ' ')

/** Scripts of the pages that have any. */
const scriptsOf: Readonly<Record<string, readonly string[]>> = {
  'verify/index.html': ['register/published.js', 'register/copies.js', 'assets/verify.js'],
  'lots/index.html': ['assets/archive.js'],
  'choose/index.html': ['assets/choose.js'],
  'compare/index.html': ['assets/compare.js']
}

describe('every page', () => {
  test('is valid HTML', { timeout: 60_000 }, async () => {
    const validator = new HtmlValidate(new FileSystemConfigLoader())
    for (const { html, site, path } of pages) {
      const report = await validator.validateString(html, resolve('page.html'))
      const messages = report.results.flatMap(result => result.messages)
      expect(
        messages.map(({ ruleId, message, line }) => `${site} ${path}:${line} ${ruleId} ${message}`)
      ).toEqual([])
    }
  })

  test('shows no slip of a template', () => {
    for (const { html } of pages) {
      expect(html).not.toMatch(/undefined|\[object|NaN|Infinity|\{\{|\{%|&amp;(?:lt|gt|amp|#39);/u)
    }
  })

  test('runs no script but the site’s own where it says so, and sets no style of its own', () => {
    for (const { html, path, site } of pages) {
      const hasNothing = site === 'empty' && ['lots/index.html', 'choose/index.html'].includes(path)
      const own = hasNothing ? [] : (scriptsOf[path] ?? [])
      const scripts = [
        ...html.matchAll(/<script(?! type="application\/ld\+json">)[^>]*>[^<]*(?:<\/script>)?/giu)
      ].map(([tag]) => tag)
      expect(scripts).toEqual(own.map(file => `<script defer src="../${file}"></script>`))
      // The page of a wrong address carries one style, which its policy names by its text.
      const styles = [...html.matchAll(/<style>([^<]*)<\/style>/gu)].map(([, text]) => text!)
      expect(styles).toHaveLength(path === '404.html' ? 1 : 0)
      const rest = html.replace(/<style>[^<]*<\/style>/gu, '')
      expect(rest).not.toMatch(/<style|\sstyle=|\son\w+=|javascript:/iu)
      expect(html).toContain(
        styles[0] !== undefined
          ? `default-src 'none'; style-src 'sha256-${createHash('sha256').update(styles[0]).digest('base64')}'; img-src data:; base-uri 'none'; form-action 'none'`
          : `default-src 'none'; style-src 'self'; ${own.length > 0 ? "script-src 'self'; " : ''}img-src 'self' data:; base-uri 'none'; form-action 'none'`
      )
    }
  })

  test('has one main heading, a language, and a title with its producer', () => {
    for (const { html } of pages) {
      expect(html.match(/<h1[ >]/gu)).toHaveLength(1)
      expect(html).toContain('<html lang="en"')
      expect(html).toMatch(/<title>[^<]{3,} – [^<]{3,}<\/title>/u)
    }
  })

  test('tells whoever shares it what it is and where it stands, unless it is private or lost', () => {
    for (const { html, site, path } of pages) {
      const said = Object.fromEntries(
        [...html.matchAll(/<meta property="og:([a-z_]+)" content="([^"]*)">/gu)].map(
          ([, name, content]) => [name!, content!]
        )
      )
      if (site === 'workshop' || path === '404.html') expect(said, path).toEqual({})
      else {
        const title = /<title>(.*) – /u.exec(html)![1]!
        expect(said, path).toMatchObject({ type: 'website', title })
        expect(said.description!.length, path).toBeGreaterThan(20)
        expect(html).toContain(`<meta name="description" content="${said.description!}">`)
        const address = encodeURI(path.replace(/(?<=^|\/)index\.html$/u, ''))
        if (site === 'public') expect(said.url).toBe(`https://tarnfell.example.org/${address}`)
      }
    }
    const lot = pageOf('public', 'lots/EB-26-041/index.html').html
    expect(lot).toContain(`og:description" content="${lotDocument.status.sentence} `)
    expect(lot).toContain('<link rel="icon" type="image/svg+xml" href="../../assets/icon.svg">')
  })

  test('says so where it is private, and only there', () => {
    for (const { html, site } of pages) {
      expect(html.includes('Workshop edition: private')).toBe(site === 'workshop')
      expect(html.includes('noindex')).toBe(site === 'workshop')
    }
  })

  test('links only to what is there', () => {
    for (const { html, file, path, folder, site } of pages) {
      const links = [...html.matchAll(/\shref="([^"]*)"/gu)].map(([, href]) => href!)
      for (const link of links.filter(href => !/^(?:https:|mailto:|tel:|data:)/u.test(href))) {
        const [target = '', id] = link.split('#')
        // From its server's root: the private edition's page of a wrong address alone.
        const isRooted = site === 'workshop' && path === '404.html' && target.startsWith('/')
        const from = isRooted ? join(folder, target) : resolve(dirname(file), target)
        const found = target ? from : file
        expect(found.startsWith(folder), `${path}: ${link}`).toBe(true)
        if (/\.(?:pdf|json|csv|xml)$/u.test(target)) continue
        const text = readFileSync(found, 'utf8')
        // What a script reads of an address is no place in its page.
        if (id && !id.includes('=')) expect(text, `${path}: ${link}`).toContain(` id="${id}"`)
      }
    }
  })
})

describe('a lot page', () => {
  test('says everything its document says', () => {
    const text = textOf(pageOf('public', 'lots/EB-26-041/index.html').html)
    const texts = [
      lotDocument.status.sentence,
      lotDocument.answer.sentence,
      lotDocument.decisionRule
    ]
      .concat(lotDocument.facts.flatMap(fact => [fact.label, fact.text]))
      .concat(lotDocument.cautions, lotDocument.traceability)
      .concat(lotDocument.papers.map(paper => paper.title))
      .concat(lotDocument.chain.flatMap(link => [link.lot, link.kind, link.made]))
      .concat(lotDocument.hazards!.statements.flatMap(({ code, text }) => [code, text]))
      .concat(lotDocument.results.flatMap(row => [row.title, row.meaning, row.unit.printed]))
      .concat(lotDocument.results.flatMap(row => row.value?.printed ?? []))
      .concat(lotDocument.results.flatMap(row => row.limit?.printed ?? []))
      .concat(lotDocument.results.flatMap(row => row.verdict?.sentence ?? []))
      .concat(lotDocument.results.flatMap(row => row.decidedBy?.printed ?? []))
      .concat(lotDocument.results.flatMap(row => Object.values(row.method ?? {})))
      .concat(lotDocument.workings.flatMap(({ source, notes }) => [source, ...notes]))
      .concat(lotDocument.workings.flatMap(({ budget }) => budget.rows.map(row => row[0]!)))
    for (const part of texts) expect(text).toContain(part)
  })

  test('sets its formulas as mathematics', () => {
    const { html } = pageOf('public', 'lots/EB-26-041/index.html')
    for (const { statements } of lotDocument.workings)
      for (const statement of statements) expect(html).toContain(mathml(statement))
    expect(html).toContain('<mfrac><mi>V</mi><mi>m</mi></mfrac>')
  })

  test('keeps its order: answer, facts, results, rule, papers, workings, panels, chain', () => {
    const { html } = pageOf('public', 'lots/EB-26-041/index.html')
    const ids = [...html.matchAll(/<h2 id="([\w-]+)"/gu)].map(([, id]) => id)
    expect(ids).toEqual(
      ['answer', 'facts', 'results', 'rule', 'papers', 'workings', 'screening', 'chain'].concat([
        'traceability',
        'hazards',
        'cautions'
      ])
    )
  })

  test('reads each row as a sentence would', () => {
    const text = textOf(pageOf('public', 'lots/EB-26-041/index.html').html)
    expect(text).toMatch(/262\.1 4\.3 mL\/g 2\.04 ≥ 250 lot mean pass > 99\.9 3 TM-01, edition 3/u)
    expect(text).toMatch(
      /≥ 0\.95 every sheet pass decided by sheet 7b, 0\.961 g\/cm³ ± 0\.013 g\/cm³/u
    )
    expect(text).toMatch(/< 2\.0 not stated none none ≥ 3 lot mean fail not stated 2/u)
  })

  test('keeps typical and unmeasured properties out of the measured table', () => {
    const { html } = pageOf('public', 'lots/EB-26-041/index.html')
    const tables = [...html.matchAll(/<caption[^>]*>([^<]*)<\/caption>(.*?)<\/table>/gsu)]
    const captionOf = (title: string): (string | undefined)[] =>
      tables.filter(([, , body]) => body!.includes(`">${title}<`)).map(([, caption]) => caption)
    expect(captionOf('Expansion volume')).toEqual(['Measured on this lot'])
    expect(captionOf('Ash, dry basis')).toEqual(['Typical of the grade: not measured on this lot'])
    expect(captionOf('Moisture')).toEqual(['Not measured: no figure for this lot'])
  })

  test('puts a warning before the answer', () => {
    const { html } = pageOf('public', 'lots/EB-26-013-withdrawn-with-a-long-number/index.html')
    expect(html.indexOf('Do not use; return')).toBeGreaterThan(0)
    expect(html.indexOf('Do not use; return')).toBeLessThan(html.indexOf('class="answer'))
  })

  test('omits the parts its document lacks', () => {
    const { html } = pageOf('public', 'lots/EB-25-007/index.html')
    expect(html).not.toMatch(/id="(?:papers|workings|chain|traceability|cautions|process)"/u)
  })

  test('of a furnace run names no grade and claims no certificate', () => {
    const { html } = pageOf('workshop', 'lots/XR-26-01/index.html')
    expect(html).not.toMatch(/id="(?:results|rule)"|, grade |The certificate is/u)
    expect(html).toContain('class="status in-process"')
  })

  test('shows no table without rows', () => {
    for (const { html } of pages) expect(html).not.toMatch(/<tbody>\s*<\/tbody>/u)
  })

  test('without limits has no column for them', () => {
    const { html } = pageOf('workshop', 'lots/XR-26-01/index.html')
    expect(html).toContain('Measured in the process')
    expect(html).not.toMatch(/>Limit<|>Verdict<|Why each verdict/u)
  })

  test('shows the process in the workshop edition only', () => {
    const path = 'lots/EB-26-041/index.html'
    expect(pageOf('workshop', path).html).toMatch(/Private<\/span> Process.*104\.2 % ± 1\.1 %/su)
    expect(pageOf('public', path).html).not.toMatch(/Process|104\.2/u)
  })

  test('of 40 quantities stays small', () => {
    const { html } = pageOf('public', `${fullLot.document.url}index.html`)
    expect(html.match(/class="outcome"/gu)).toHaveLength(40)
    expect(Buffer.byteLength(html)).toBeLessThan(250_000)
    expect(gzipSync(html).length).toBeLessThan(60_000)
  })
})

describe('a producer’s name', () => {
  test('is text, whatever signs it holds', () => {
    const { html } = pageOf('public', 'index.html')
    expect(html).toContain('<h1>Tarnfell Flake &amp; Foil &lt;Workshop&gt;</h1>')
  })
})

describe('lists', () => {
  const lotsOn = (path: string) =>
    [...pageOf('public', path).html.matchAll(/<th scope="row"><a[^>]*>([^<]*)</gu)].map(
      ([, lot]) => lot
    )

  test('of a year and of a grade hold their lots, newest first', () => {
    const of2026 = ['GF-26-040', 'EB-26-041', 'EB-26-013-withdrawn-with-a-long-number']
    expect(lotsOn('years/2026/index.html')).toEqual(of2026)
    expect(lotsOn('years/2025/index.html')).toEqual(['EB-25-007'])
    expect(lotsOn('grades/flake-50/lots/index.html')).toEqual([...of2026, 'EB-25-007'])
  })

  test('stand on the page of all lots, with the latest lots below', () => {
    const { html } = pageOf('public', 'lots/index.html')
    expect(textOf(html)).toMatch(/2026 3 lots 2025 1 lot /u)
    expect(lotsOn('lots/index.html')).toHaveLength(4)
  })

  test('drafts stand on the workshop’s home page only', () => {
    expect(pageOf('workshop', 'index.html').html).toContain('EB-26-050')
    expect(pageOf('public', 'index.html').html).not.toContain('Drafts')
  })

  test('say so where nothing is published', () => {
    expect(pageOf('empty', 'index.html').html).toContain('No lot is published yet.')
    expect(pageOf('empty', 'lots/index.html').html).toContain('No lot is published yet.')
    expect(pageOf('empty', 'grades/index.html').html).toContain('No grade is published yet.')
  })
})
