/** The archive in a real browser: from disk and by http, by mouse and by keys alone. */

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { builtDemo } from '../site/built-demo.ts'
import { bringAxe, faultsIn, type Kinds } from './axe.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'
import { addressOf, serve } from './server.ts'

/** Machines that do much else at once take their time. */
const poll: typeof expect.poll = (read, options) =>
  expect.poll(read, { timeout: 15_000, ...options })

describe.skipIf(!requireChromium())('the archive in Chromium', () => {
  let browser: Browser
  let site: string
  let page: Page
  let asked: string[]
  let said: string[]

  beforeAll(async () => {
    site = await builtDemo('public')
    browser = await sharedChromium()
    page = await browser.newPage()
  }, 180_000)
  afterAll(leaveChromium)

  /** The one page, at an address, as if just opened: starting another takes longer than most tests. */
  async function open(address = '', start = `${pathToFileURL(site).href}/`): Promise<void> {
    page.removeAllListeners()
    await page.unrouteAll()
    await page.setViewportSize({ width: 1280, height: 900 })
    await page.goto('about:blank')
    asked = []
    said = []
    page.on('request', request => asked.push(request.url().slice(start.length)))
    page.on('console', message => said.push(message.text()))
    page.on('pageerror', error => said.push(error.message))
    await page.goto(`${start}lots/index.html${address}`)
  }

  const rows = () => page.locator('#found tbody tr')
  const lots = () => page.locator('#found tbody th a').allTextContents()
  const count = () => page.textContent('#find-count')
  const hash = () => page.evaluate<string>(`decodeURIComponent(location.hash)`)

  /** '0.9979 ± 0.0066', as the lot's own page has a figure. */
  function figureOn(lot: string, key: string): string {
    const html = readFileSync(join(site, 'lots', lot, 'index.html'), 'utf8')
    const row = new RegExp(`<th[^>]* id="${key}">.*?number value">(.*?)<.*?"number">(.*?)<`, 'su')
    const [, value, uncertainty] = row.exec(html)!
    return `${value} ± ${uncertainty}`
  }

  /** What each row of a table says, cell by cell. */
  const rowsOf = (table: string) =>
    page.evaluate<string[][]>(`[...document.querySelectorAll('${table} tbody tr')].map(row =>
      [...row.cells].map(cell => cell.textContent.replace(/\\s+/g, ' ').trim())
    )`)

  test('loads its list when somebody turns to it, and figures when they are asked for', async () => {
    await open()
    const files = () => asked.filter(path => path.startsWith('archive/')).sort()
    await page.waitForSelector('#finder:visible')
    expect(files()).toEqual([])
    expect(await page.locator('#plain-lists tbody tr').count()).toBe(20)
    await page.focus('#find-text')
    await page.waitForSelector('#found tbody tr')
    // The list, and the chief figures of the grades there are.
    await poll(() => files().length).toBe(6)
    const first = files()
    expect(first).toContain('archive/lots.js')
    expect(first).not.toContain('archive/ash.js')
    await page.selectOption('#find-more', 'ash')
    await page.fill('#find-ash-to', '0.6')
    await poll(files).toEqual([...first, 'archive/ash.js'].sort())
    await poll(lots).not.toHaveLength(25)
    expect(await page.isVisible('#plain-lists')).toBe(false)
    expect(said).toEqual([])
  })

  test('finds as one types, and keeps the view in the address', async () => {
    await open()
    await page.fill('#find-text', '26-00')
    await poll(lots).toContain('EB-26-009')
    expect((await lots()).every(lot => lot.includes('26-00'))).toBe(true)
    await page.selectOption('#find-grade', 'foil-100')
    await page.fill('#find-foil-density-from', '0,99')
    await page.fill('#find-foil-density-to', '1.01')
    await page.selectOption('#find-order', 'foil-density down')
    await expect
      .poll(hash)
      .toBe('#text=26-00&grade=foil-100&foil-density=0,99..1.01&sort=foil-density+down')
    const cells = await page
      .locator('#found td[data-label="Foil density, g/cm³"]')
      .allTextContents()
    const values = cells.map(text => Number(text.split(' ')[0]))
    expect(values.length).toBeGreaterThan(2)
    expect(values).toEqual([...values].sort((a, b) => b - a))
    expect(values.every(value => value >= 0.99 && value <= 1.01)).toBe(true)
    const [shown, view] = [await lots(), page.url()]
    expect(cells).toEqual(shown.map(lot => figureOn(lot, 'foil-density')))

    await open(view.slice(view.indexOf('#')))
    await poll(lots).toEqual(shown)
    expect(await page.inputValue('#find-foil-density-from')).toBe('0,99')
    expect(await page.inputValue('#find-order')).toBe('foil-density down')
    await page.click('text=Clear')
    expect(await count()).toBe('All 25 lots')
    await poll(hash).toBe('')
  })

  test('says of each lot what the plain lists say', async () => {
    await open()
    await page.focus('#find-text')
    await page.waitForSelector('#found tbody b')
    const plain = await rowsOf('#plain-lists')
    expect(plain.filter(cells => cells.at(-1)!.includes(' ± ')).length).toBeGreaterThan(15)
    await poll(async () => (await rowsOf('#found')).slice(0, plain.length)).toEqual(plain)
  })

  test('says how many were found once typing rests', async () => {
    await open()
    await page.type('#find-text', 'EB-26-01')
    await poll(() => page.textContent('#find-said[role=status]')).toBe(
      '8 of 25 lots, first EB-26-015'
    )
    await page.fill('#find-text', 'nowhere')
    await poll(() => page.textContent('#find-said')).toContain('No lot is found')
    expect(await rows().count()).toBe(0)
  })

  test('by keys alone: a fragment, down to a lot, back, and Enter into the first', async () => {
    await open()
    const focused = () =>
      page.evaluate<string>(`document.activeElement.textContent || document.activeElement.id`)
    for (let stops = 0; (await focused()) !== 'find-text' && stops < 20; stops += 1)
      await page.keyboard.press('Tab')
    expect(await focused()).toBe('find-text')
    await page.keyboard.type('fl26010')
    await poll(lots).toEqual(['FL-26-010'])
    await page.keyboard.press('ArrowDown')
    expect(await focused()).toBe('FL-26-010')
    await page.keyboard.press('ArrowUp')
    expect(await focused()).toBe('find-text')
    await page.keyboard.press('Enter')
    await page.waitForURL(/lots\/FL-26-010\/index\.html$/u)
    await page.goBack()
    await poll(lots).toEqual(['FL-26-010'])
  })

  test('shows after any number of changes what a page opened at that address shows', async () => {
    await open()
    await page.focus('#find-text')
    await page.waitForSelector('#found tbody b')
    const changes: readonly (() => Promise<unknown>)[] = [
      () => page.keyboard.type('26-01'),
      () => page.keyboard.press('Backspace'),
      () => page.fill('#find-foil-density-from', '0.9'),
      () => page.check('#found [data-lot="FL-26-002"]'),
      () => page.click('#find-chosen button'),
      () => page.check('#found [data-lot="FL-26-002"]'),
      () => page.fill('#find-thickness-to', '0.5'),
      () => page.click('#found [data-by=thickness]'),
      () => page.fill('#find-text', 'nowhere'),
      () => page.fill('#find-text', ''),
      () => page.fill('#find-foil-density-from', ''),
      () => page.fill('#find-thickness-to', ''),
      () => page.click('#found [data-by=made]')
    ]
    const boxes = `[...document.querySelectorAll('#found :checked')].map(box => box.dataset.lot)`
    const shownOn = async (one: Page) =>
      `${await one.locator('#found').innerHTML()} ${String(await one.evaluate(boxes))}`
    const fresh = await browser.newPage({ viewport: { width: 1280, height: 900 } })
    for (const [at, change] of changes.entries()) {
      await change()
      await fresh.goto('about:blank')
      // Turning to another window has the address say what is shown.
      await page.evaluate(`dispatchEvent(new Event('blur'))`)
      await fresh.goto(page.url())
      await fresh.focus('#find-text')
      await poll(async () => [await shownOn(fresh), await shownOn(page)], {
        message: `change ${at}`
      }).toSatisfy(([anew, changed]) => anew === changed)
    }
    await fresh.close()
  })

  test('the address says what is shown as soon as a lot is opened', async () => {
    await open()
    await page.focus('#find-text')
    await page.waitForSelector('#found tbody tr')
    await page.evaluate(`(() => {
      const field = document.getElementById('find-text')
      field.value = 'fl26010'
      field.dispatchEvent(new InputEvent('input', { bubbles: true }))
      document.querySelector('#found tbody a').click()
    })()`)
    await page.waitForURL(/lots\/FL-26-010\/index\.html$/u)
    await page.goBack()
    await poll(lots).toEqual(['FL-26-010'])
  })

  test('whoever comes back from a lot finds it in sight and focused, filters or none', async () => {
    const isInSight = `(() => {
      const { top, bottom } = document.activeElement.getBoundingClientRect()
      return top >= 0 && bottom <= innerHeight
    })()`
    for (const address of ['', '#sort=lot']) {
      await open(address)
      await page.setViewportSize({ width: 1280, height: 400 })
      await page.focus('#find-text')
      await poll(() => rows().count()).toBe(25)
      await page.click('#found tbody tr:nth-child(19) a')
      const lot = (await page.textContent('h1'))!.replace('Lot ', '')
      await page.goBack()
      await poll(() => page.evaluate<string>(`document.activeElement.textContent`)).toBe(lot)
      expect(await page.evaluate(isInSight)).toBe(true)
    }
  })

  test('sorts by its heads, by key, keeping the place', async () => {
    await open('#sort=lot')
    await page.waitForSelector('#found tbody tr')
    expect((await lots())[0]).toBe('EB-26-001')
    await page.focus('#found [data-by=lot]')
    await page.keyboard.press('Enter')
    expect((await lots())[0]).toBe('FL-26-016')
    expect(await page.getAttribute('#found th:first-child', 'aria-sort')).toBe('descending')
    expect(await page.evaluate(`document.activeElement.dataset.by`)).toBe('lot')
  })

  test('marks what is no number', async () => {
    await open('#foil-density=dense..1.1')
    await page.waitForSelector('#found')
    await page.focus('#find-text')
    await page.keyboard.type('F')
    await poll(() => page.getAttribute('#find-foil-density-from', 'aria-invalid')).toBe('true')
    expect(await page.getAttribute('#find-foil-density-to', 'aria-invalid')).toBe(null)
  })

  test('a list that does not load is told of, and the plain lists stay', async () => {
    const server = await serve(site, '/sub')
    await open('', addressOf(server, '/sub'))
    await page.route('**/archive/lots.js', route => route.abort())
    await page.focus('#find-text')
    await poll(count).toContain('did not load')
    expect(await page.isVisible('#plain-lists')).toBe(true)
    server.close()
  })

  test('from a sub-path of a server, nothing asked for outside it', async () => {
    const server = await serve(site, '/sub')
    const start = addressOf(server, '/sub')
    await open('#text=withdrawn', start)
    await poll(lots).toEqual(['EB-26-008'])
    await page.click('#found tbody a')
    expect(await page.textContent('h1')).toBe('Lot EB-26-008')
    expect(asked.every(path => !path.startsWith('http'))).toBe(true)
    expect(said).toEqual([])
    server.close()
  })

  test('without a script every lot is two steps away', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false })
    const plain = await context.newPage()
    await plain.goto(`${pathToFileURL(site).href}/lots/index.html`)
    expect(await plain.isVisible('#finder')).toBe(false)
    await plain.click('.shelves a >> text=flake-200')
    await plain.click('text=EB-26-002')
    expect(await plain.textContent('h1')).toBe('Lot EB-26-002')
    await context.close()
  })

  test('has no accessibility fault, on a desk, in the dark, at 320 px', async () => {
    const view = await browser.newPage()
    await bringAxe(view)
    const start = `${pathToFileURL(site).href}/lots/index.html`
    const seen: Kinds = new Set()
    for (const address of ['#text=foil', '#thickness=0.4..&sort=ash+down', '#text=nowhere']) {
      await view.goto('about:blank')
      await view.goto(start + address)
      await view.waitForSelector('#find-count:not(:empty)')
      expect(await faultsIn(view, seen), address).toEqual({})
    }
    await view.close()
  })
})
