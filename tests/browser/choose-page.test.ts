/** A grade chosen by what is needed, in a real browser, from disk: by keys, by address, without scripts. */

import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { builtDemo } from '../site/built-demo.ts'
import { faultsIn } from './axe.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'

const poll: typeof expect.poll = (read, options) =>
  expect.poll(read, { timeout: 15_000, ...options })

describe.skipIf(!requireChromium())('choosing in Chromium', () => {
  let browser: Browser
  let address: string
  const said: string[] = []

  beforeAll(async () => {
    address = pathToFileURL(`${await builtDemo('public')}/choose/index.html`).href
    browser = await sharedChromium()
  }, 180_000)
  afterAll(leaveChromium)

  const answerOf = (page: Page, grade: string) =>
    page.locator(`[data-grade=${grade}] .standing b`).textContent({ timeout: 1000 })

  test('by keys alone: a need is typed, answered, kept in the address and cleared', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
    page.on('console', message => said.push(message.text()))
    page.on('pageerror', error => said.push(error.message))
    await page.goto(address)
    const label = `document.activeElement.getAttribute('aria-label')`
    for (let stop = 0; stop < 60; stop += 1) {
      await page.keyboard.press('Tab')
      if ((await page.evaluate(label)) === 'Ash, dry basis, at most, in %') break
    }
    await page.keyboard.type('0,9')
    await poll(() => answerOf(page, 'flake-250')).toBe('met by certified limit')
    await page.keyboard.press('Backspace')
    await page.keyboard.type('7')
    await poll(() => answerOf(page, 'flake-250')).toBe('met by typical figures')
    expect(await answerOf(page, 'flake-200')).toMatch(/^(?:met by some|not)/u)
    expect(await page.locator('[data-grade=foil-100] .standing').textContent()).toBe(
      'nothing is asked yet'
    )
    expect(decodeURIComponent(page.url())).toMatch(/#ash[^=]*=\.\.0,7$/u)
    await page.keyboard.type('x')
    expect(await page.locator('[aria-invalid=true]').count()).toBe(0)
    await page.keyboard.type('1')
    expect(await page.locator('[aria-invalid=true]').count()).toBe(1)
    for (let stop = 0; stop < 10; stop += 1) {
      await page.keyboard.press('Tab')
      if ((await page.evaluate(`document.activeElement.type`)) === 'reset') break
    }
    await page.keyboard.press('Enter')
    await poll(() => page.url()).toBe(address)
    expect(await page.locator('.standing b').count()).toBe(0)
    await page.close()
  })

  test('nothing was blocked or logged', () => {
    expect(said).toEqual([])
  })

  test('an address names the lots that answer, with links', async () => {
    const page = await browser.newPage()
    await page.goto(`${address}#thickness=0.4..0.502`)
    await poll(() => answerOf(page, 'foil-100')).toMatch(/^(?:met by some|not met)/u)
    for (const link of await page.locator('[data-grade=foil-100] .standing a').all())
      expect(await link.getAttribute('href')).toMatch(/^\.\.\/lots\/FL-26-\d{3}\/index\.html$/u)
    await page.close()
  })

  test('lots that do not load are told of, for all to see', async () => {
    const page = await browser.newPage()
    await page.route('**/archive/*.js', route => route.abort())
    await page.goto(`${address}#thickness=0.4..0.502`)
    const told = page.getByText('The lots did not load')
    await poll(() => told.isVisible()).toBe(true)
    expect((await told.boundingBox())!.height).toBeGreaterThan(10)
    await page.close()
  })

  test('fields are not shown without scripts', async () => {
    const page = await browser.newPage({ javaScriptEnabled: false })
    await page.goto(address)
    expect(await page.locator('form.needs:visible').count()).toBe(0)
    expect(await page.locator('table:visible').count()).toBe(2)
    await page.close()
  })

  test('has no accessibility fault, on a desk, in the dark, at 320 px', async () => {
    const page = await browser.newPage({ bypassCSP: true })
    await page.goto(`${address}#thickness=0.4..0.502`)
    await poll(() => page.locator('.standing b').count()).toBeGreaterThan(0)
    expect(await faultsIn(page)).toEqual({})
    await page.close()
  })
})
