/** The page of a wrong address, as a server sends it from any depth. */

import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'
import { sampleFolder } from './render-pages.ts'
import { publicSite } from './sample-site.ts'
import { addressOf, serve } from './server.ts'

const chromium = requireChromium()
const SITE = publicSite.producer.site!
let folder: string
let browser: Browser

beforeAll(async () => {
  if (!chromium) return
  folder = await sampleFolder('public')
  browser = await sharedChromium()
}, 60_000)

afterAll(leaveChromium)

test.skipIf(!chromium).each(['', '/papers'])(
  'is styled and leads back, below “%s”',
  async under => {
    const server = await serve(folder, under)
    const page = await browser.newPage()
    const wrong: string[] = []
    page.on('requestfailed', request => wrong.push(request.url()))
    page.on('console', message => {
      // The one complaint there must be: the address itself is not there.
      if (!message.text().includes('status of 404')) wrong.push(message.text())
    })
    const asked: string[] = []
    page.on('request', request => asked.push(request.url()))
    const address = `${addressOf(server, under)}lots/EB-99-999/deeper/still/`
    expect((await page.goto(address))!.status()).toBe(404)
    expect(await page.textContent('h1')).toBe('There is no such page')
    const border = `getComputedStyle(document.querySelector('.masthead')).borderBottomWidth`
    expect(await page.evaluate(border)).toBe('3px')
    expect({ wrong, asked }).toEqual({ wrong: [], asked: [address] })
    const links = await page.evaluate<string[]>(
      `[...document.querySelectorAll('a:not(.skip)')].map(({ href }) => href)`
    )
    const own = links.filter(link => !/^(?:mailto|tel):/u.test(link))
    expect(own.length).toBeGreaterThan(3)
    const root = SITE.endsWith('/') ? SITE : `${SITE}/`
    for (const link of own) {
      expect(link.startsWith(root), link).toBe(true)
      const target = `${addressOf(server, under)}${link.slice(root.length)}`
      expect((await page.request.get(target)).status(), link).toBe(200)
    }
    await page.close()
    server.close()
  }
)
