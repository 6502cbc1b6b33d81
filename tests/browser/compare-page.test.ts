/** Lots beside each other in a real browser, from disk: chosen in the archive, by keys, on paper. */

import { readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { builtDemo } from '../site/built-demo.ts'
import { faultsIn } from './axe.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'

/** Machines that do much else at once take their time. */
const poll: typeof expect.poll = (read, options) =>
  expect.poll(read, { timeout: 15_000, ...options })

describe.skipIf(!requireChromium())('comparing in Chromium', () => {
  let browser: Browser
  let start: string
  const said: string[] = []

  beforeAll(async () => {
    start = `${pathToFileURL(await builtDemo('public')).href}/`
    browser = await sharedChromium()
  }, 180_000)
  afterAll(leaveChromium)

  async function open(address: string): Promise<Page> {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
    page.on('console', message => said.push(message.text()))
    page.on('pageerror', error => said.push(error.message))
    await page.goto(start + address)
    return page
  }

  const heads = (page: Page) => page.locator('.compared thead a').allTextContents()

  test('lots put aside in the archive stand beside each other', async () => {
    const page = await open('lots/index.html#text=FL-26-01')
    await page.check('[data-lot=FL-26-010]')
    expect(await page.textContent('#find-chosen')).toContain('Choose another lot')
    await page.check('[data-lot=FL-26-012]')
    await page.click('text=Compare 2 lots')
    await poll(() => heads(page)).toEqual(['FL-26-010', 'FL-26-012'])
    expect(page.url()).toMatch(/compare\/index\.html#with=FL-26-010\+FL-26-012$/u)
    expect(await page.textContent('[role=status]')).toMatch(
      /^2 lots beside each other; \d figures differ/u
    )
    expect(await page.textContent('.difference.larger >> nth=0')).toMatch(
      /^[+−][\d.]+ ± [\d.]+ \S+: more than they are uncertain$/u
    )
    await page.close()
  })

  test('by keys alone: six are added, none a second time, and one is taken away', async () => {
    const page = await open('compare/index.html')
    await page.waitForSelector('#compare-add:visible')
    await page.focus('#compare-lot')
    for (const lot of ['fl26001', 'FL-26-002', '26-003', 'FL-26-002', 'nowhere', 'fl-26-004']) {
      await page.keyboard.type(lot)
      await page.keyboard.press('Enter')
      await page.waitForTimeout(150)
      await page.fill('#compare-lot', '')
    }
    await poll(() => heads(page)).toEqual(['FL-26-001', 'FL-26-002', 'FL-26-003', 'FL-26-004'])
    await page.keyboard.press('Tab')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await poll(() => heads(page)).toEqual(['FL-26-002', 'FL-26-003', 'FL-26-004'])
    expect(await page.evaluate(`document.activeElement.id`)).toBe('compare-lot')
    await page.selectOption('#compare-against', 'FL-26-003')
    expect(
      await page.locator('.compared tbody tr:nth-child(6) td >> nth=1').textContent()
    ).toContain('compared with')
    await page.close()
  })

  test('the table is downloaded, and said to hold every pair', async () => {
    const page = await open('compare/index.html#with=FL-26-010+FL-26-012+FL-26-013')
    await page.waitForSelector('.compared')
    const [file] = await Promise.all([page.waitForEvent('download'), page.click('#compare-csv')])
    expect(file.suggestedFilename()).toBe('FL-26-010 FL-26-012 FL-26-013.csv')
    const text = readFileSync(await file.path(), 'utf8')
    expect(text).toMatch(/^\uFEFFquantity,unit,lot,/u)
    expect(text).toContain('Foil density,g/cm³,FL-26-013')
    await page.close()
  })

  test('an address that names no lot, or too many, does no harm', async () => {
    const page = await open('compare/index.html#with=nothing+FL-26-010')
    await poll(() => page.textContent('[role=status]')).toBe('Add another lot.')
    expect(await page.locator('.compared').count()).toBe(0)
    await page.close()
  })

  test('has no accessibility fault, on a desk, in the dark, at 320 px', async () => {
    const page = await browser.newPage({ bypassCSP: true })
    await page.goto(`${start}compare/index.html#with=EB-26-007+FL-26-012+FL-26-013+EB-26-001`)
    await page.waitForSelector('.compared')
    expect(await faultsIn(page)).toEqual({})
    await page.close()
  })

  test('nothing was blocked or logged', () => {
    expect(said).toEqual([])
  })
})
