/** What only a real browser can tell of the pages. */

import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { requireTool } from '../tools.ts'
import { bringAxe, faultsIn, type Kinds, overflowIn, structureFaultsIn } from './axe.ts'
import {
  leaveChromium,
  openPage,
  openView,
  requireChromium,
  sharedChromium,
  show,
  type View
} from './chromium.ts'
import { type SamplePage, samplePages } from './render-pages.ts'
import { fullLot } from './sample-site.ts'

/** One shows forty times what others show once: nothing new to axe, and most of its time. */
const isNew = ({ path }: SamplePage): boolean => !path.includes(fullLot.document.url)

/**
 * Pages with an element that none before them has, by its kind and classes: what colours and widths are
 * given to. Those with most come first, so that few are needed.
 */
function newInKind(pages: readonly SamplePage[]): ReadonlySet<SamplePage> {
  const kindsOf = ({ folder, path }: SamplePage) => {
    const tags = readFileSync(join(folder, path), 'utf8').match(/<\w[^>]*>/gu) ?? []
    return new Set(tags.map(tag => tag.replaceAll(/ (?!class|role|type)[\w-]+="[^"]*"/gu, '')))
  }
  const seen = new Set<string>()
  const withKinds = pages.map(page => ({ page, kinds: kindsOf(page) }))
  withKinds.sort((a, b) => b.kinds.size - a.kinds.size)
  return new Set(
    withKinds.flatMap(({ page, kinds }) => {
      const before = seen.size
      for (const kind of kinds) seen.add(kind)
      return seen.size > before ? [page] : []
    })
  )
}

const desk: View = { width: 1280, scheme: 'light' }

const tools = requireChromium() && requireTool('pdftotext', 'poppler-utils')

describe.skipIf(!tools)('in Chromium', () => {
  let browser: Browser
  let samples: readonly SamplePage[]

  const sample = (site: string, path: string): SamplePage => {
    const found = samples.find(page => page.site === site && page.path === path)
    if (!found) throw new Error(`${path} is not among the pages of ${site}`)
    return found
  }

  /** What is wrong with every page, by page and look, and what it said meanwhile. Each is loaded once. */
  async function lookAtAll() {
    const found: Record<string, readonly unknown[]> = {}
    const messages: string[] = []
    const page = await openView(browser, desk)
    page.on('console', message => messages.push(`${page.url()}: ${message.text()}`))
    page.on('requestfailed', request => messages.push(`${page.url()}: ${request.url()}`))
    await bringAxe(page)
    const closely = newInKind(samples.filter(isNew))
    const seen: Kinds = new Set()
    for (const one of samples) {
      await show(page, one)
      const faults = closely.has(one)
        ? await faultsIn(page, seen)
        : {
            ...(isNew(one) && (await structureFaultsIn(page))),
            wide: await overflowIn(page, [320, 390])
          }
      for (const [look, results] of Object.entries(faults))
        if (results.length > 0) found[`${one.site} ${one.path}, ${look}`] = results
      // What it loads after its load event; the next page would cut it off, with its complaints.
      if (one.path === 'compare/index.html')
        await page.waitForSelector('#compare-said:not(:empty)', { state: 'attached' })
    }
    await page.close()
    return { found, messages, closely }
  }

  let looked: Awaited<ReturnType<typeof lookAtAll>>

  beforeAll(async () => {
    samples = await samplePages()
    browser = await sharedChromium()
    looked = await lookAtAll()
  }, 180_000)
  afterAll(leaveChromium)

  test('pages have no accessibility fault, on a desk, in the dark, at 320 px; none is wider', () => {
    expect(looked.closely.size).toBeGreaterThan(10)
    expect(looked.found).toEqual({})
  })

  test('nothing is blocked, missing or logged', () => {
    expect(looked.messages).toEqual([])
  })

  test('the content security policy holds', async () => {
    const { folder, path } = sample('public', 'index.html')
    const page = await browser.newPage()
    const messages: string[] = []
    page.on('console', message => messages.push(message.text()))
    await page.goto(`file://${folder}/${path}`)
    await page.evaluate(`document.body.setAttribute('style', 'color: red')`)
    await page.evaluate(`document.head.append(document.createElement('script'))`)
    await page.evaluate(`document.querySelector('head script').src = 'x.js'`)
    expect(messages).toHaveLength(2)
    expect(messages.every(message => message.includes('Content Security Policy'))).toBe(true)
    await page.close()
  })

  test('opened as a file, pages are styled and lead to each other', async () => {
    const page = await openPage(browser, sample('public', 'lots/EB-26-041/index.html'), desk)
    const rule = `getComputedStyle(document.querySelector('.masthead')).borderBottomWidth`
    expect(await page.evaluate(rule)).toBe('3px')
    await page.click('.masthead >> text=Lots')
    expect(await page.textContent('h1')).toBe('All lots')
    await page.click('text=EB-25-007')
    expect(await page.textContent('h1')).toBe('Lot EB-25-007')
    await page.click('main >> text=Flake 50')
    expect(await page.textContent('h1')).toBe('Grade Flake 50')
    await page.click('text=How to read a figure')
    expect(page.url()).toMatch(/\/index\.html#reading$/u)
    await page.close()
  })

  test('the answer stands in the first screenful of a phone', async () => {
    for (const lot of ['EB-26-041', 'EB-26-013-withdrawn-with-a-long-number']) {
      const page = await openPage(browser, sample('public', `lots/${lot}/index.html`), {
        width: 390,
        scheme: 'light'
      })
      const box = await page.locator('.answer').boundingBox()
      expect(box!.y + box!.height).toBeLessThan(844)
      await page.close()
    }
  })

  test('a link to a working unfolds it', async () => {
    const { folder, path } = sample('public', 'lots/EB-26-041/index.html')
    const page = await browser.newPage()
    await page.goto(`file://${folder}/${path}`)
    expect(await page.isVisible('#working-expansion-volume')).toBe(false)
    await page.click('text=Working of Expansion volume')
    expect(await page.isVisible('#working-expansion-volume')).toBe(true)
    await page.close()
  })

  test('the first Tab shows a way past the head of the page, which Enter takes', async () => {
    const { folder, path } = sample('public', 'index.html')
    const page = await browser.newPage()
    await page.goto(`file://${folder}/${path}`)
    await page.keyboard.press('Tab')
    const box = await page.locator('.skip:focus').boundingBox()
    expect(box!.y).toBeGreaterThanOrEqual(0)
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    expect(await page.evaluate(`document.activeElement.closest('main') !== null`)).toBe(true)
    await page.close()
  })

  test('every stop of the Tab key is outlined', async () => {
    const page = await openPage(browser, sample('public', 'lots/EB-26-041/index.html'), desk)
    const stops = await page.locator('a, summary, [tabindex]').count()
    const widths = new Set<unknown>()
    for (let stop = 0; stop < stops; stop += 1) {
      await page.keyboard.press('Tab')
      widths.add(await page.evaluate(`getComputedStyle(document.activeElement).outlineWidth`))
    }
    expect([...widths]).toEqual(['2px'])
    await page.close()
  })

  test('on paper, the head of a table is repeated and folded workings are left out', async () => {
    const { folder, path } = sample('public', 'lots/GF-26-040/index.html')
    const page = await browser.newPage()
    await page.goto(`file://${folder}/${path}`)
    const input = await page.pdf({ preferCSSPageSize: true })
    await page.close()
    const text = execFileSync('pdftotext', ['-layout', '-', '-'], { input, encoding: 'utf8' })
    const sheets = text.split('\f').filter(sheet => sheet.includes('TM-0'))
    expect(sheets.length).toBeGreaterThan(2)
    for (const sheet of sheets) expect(sheet).toMatch(/Property\s.*Method/u)
    expect(text).toContain('Web copy of lot GF-26-040. The certificate is the PDF.')
    expect(text).not.toMatch(/Inputs of reading 1|Why each verdict|How to read/u)
  })

  test('print no number of a lot, sheet or grade on two lines', async () => {
    const page = await openPage(browser, sample('public', 'lots/EB-26-041/index.html'), desk)
    await page.emulateMedia({ media: 'print' })
    const parted = await page.evaluate<string[]>(`Array.from({ length: 60 }, (_, step) => {
      document.body.style.width = 300 + 5 * step + 'px'
      return [...document.querySelectorAll('.unbroken')]
        .filter(number => number.getClientRects().length > 1)
        .map(number => number.textContent)
    }).flat()`)
    expect(parted).toEqual([])
    expect(await page.locator('.unbroken').count()).toBeGreaterThan(0)
    await page.context().close()
  })
})
