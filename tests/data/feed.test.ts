/** The feed and the sitemap, read by other libraries. */

import { parseFeed } from '@rowanmanning/feed-parser'
import { XMLParser, XMLValidator } from 'fast-xml-parser'
import { describe, expect, test } from 'vitest'
import { atomFeed } from '../../src/data/atom-feed.ts'
import { sitemapFiles } from '../../src/data/sitemap.ts'
import { tagUri } from '../../src/documents/news.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { siteOf, workshopSite } from '../documents/demo.ts'
import { issuedSite } from './issued-site.ts'

const wellFormed = (text: string) => expect(XMLValidator.validate(text)).toBe(true)

const day = (date: Date | null) => date?.toISOString().slice(0, 10)

describe('the feed', () => {
  const text = atomFeed(issuedSite)!
  const { news } = issuedSite

  test('is Atom, and says what the site says', () => {
    wellFormed(text)
    const feed = parseFeed(text)
    expect(feed.meta).toMatchObject({ type: 'atom', version: '1.0' })
    expect(feed.self).toBe('https://ossenfold.example.org/feed.xml')
    expect(feed.items.length).toBeGreaterThan(10)
    expect(
      feed.items.map(({ id, title, url, description, published, updated }) => ({
        id,
        title,
        url: url?.replace(news!.site, ''),
        summary: description,
        published: day(published),
        updated: day(updated)
      }))
    ).toEqual(news!.entries)
    expect(day(feed.updated)).toBe(news!.entries[0]!.updated)
  })

  test('tells of lots shown, and of no others, on the days they were decided on', () => {
    const pages = new Map(issuedSite.lots.map(({ document }) => [document.url, document]))
    const lots = news!.entries.filter(({ url }) => url.startsWith('lots/'))
    expect(lots.map(({ url }) => url).sort()).toEqual([...pages.keys()].sort())
    for (const { url, summary, published, updated } of lots) {
      expect(summary).toBe(pages.get(url)!.status.sentence)
      expect(published <= updated).toBe(true)
    }
  })

  test('has one entry a certificate', () => {
    const urls = news!.entries.map(({ url }) => url).filter(url => url.startsWith('certificates/'))
    expect(urls.length).toBeGreaterThan(15)
    expect(urls.sort()).toEqual(issuedSite.certificates.map(({ url }) => url).sort())
  })

  test('dates a revised certificate by its first revision and by its last', () => {
    const entry = news!.entries.find(({ url }) => url === 'certificates/CT-26-007/')
    expect(entry).toMatchObject({ published: '2026-04-23', updated: '2026-05-04' })
  })

  test('has ids that are tag URIs, each once, and that a later decision leaves alone', () => {
    const ids = news!.entries.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    // RFC 4151, section 2.1, for domain names and whole dates.
    for (const id of ids)
      expect(id).toMatch(/^tag:[a-z\d.-]+,\d{4}-\d\d-\d\d:[\w\-.~!$&'()*+,;=:@/%]*$/u)
    const earlier = siteOf(demoFiles, { edition: 'public', asOf: '2026-04-30' }).news!
    const kept = earlier.entries.filter(({ id }) => ids.includes(id))
    expect(kept).toHaveLength(earlier.entries.length)
  })

  test('is only there with an address to lead to, and in public', () => {
    expect(workshopSite.news).toBeUndefined()
    expect(atomFeed(workshopSite)).toBeUndefined()
    const homeless = withChange(
      demoFiles,
      'producer.yaml',
      'site: https://ossenfold.example.org\n',
      ''
    )
    expect(siteOf(homeless, { edition: 'public' }).news).toBeUndefined()
  })

  test('holds any sign of a record', () => {
    const entry = { ...news!.entries[0]!, title: `a < b & "c" ]]> 'd' \u0001` }
    const spoilt = atomFeed({ ...issuedSite, news: { ...news!, entries: [entry] } })!
    wellFormed(spoilt)
    expect(parseFeed(spoilt).items[0]!.title).toBe(`a < b & "c" ]]> 'd' \ufffd`)
  })
})

test('a tag URI names domain, day and address', () => {
  expect(tagUri('https://Example.org/shop/', '2026-03-14', 'lots/É 1/')).toBe(
    'tag:example.org,2026-03-14:/shop/lots/%C3%89%201/'
  )
})

describe('the sitemap', () => {
  const site = 'https://example.org/a&b/'
  const parser = new XMLParser({ isArray: name => name === 'url' || name === 'sitemap' })

  test('lists pages by their addresses, and not the page of what is missing', () => {
    const [file, ...rest] = sitemapFiles(site, ['lots/B/index.html', '404.html', 'index.html'])
    wellFormed(file!.text)
    expect(rest).toEqual([])
    expect(parser.parse(file!.text) as object).toMatchObject({
      urlset: { url: [{ loc: site }, { loc: `${site}lots/B/` }] }
    })
  })

  test('is cut where the protocol ends a file', () => {
    const pages = Array.from({ length: 50_001 }, (_, n) => `lots/${n}/index.html`)
    const [index, ...parts] = sitemapFiles(site, pages)
    expect(parser.parse(index!.text)).toMatchObject({
      sitemapindex: { sitemap: parts.map(({ path }) => ({ loc: site + path })) }
    })
    expect(parts.map(({ text }) => text.split('<loc>').length - 1)).toEqual([50_000, 1])
  })
})
