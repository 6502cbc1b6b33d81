/** Pages that `lotfolio start` keeps up to date, in a real browser. */

import { once } from 'node:events'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest'
import { livePart } from '../../src/cli/live.ts'
import { siteServer } from '../../src/cli/server.ts'
import { lotfolio, smallWorkplace } from '../site/workplace.ts'
import { launchChromium } from './chromium.ts'

let browser: Browser
beforeAll(async () => void (browser = await launchChromium()))
afterAll(() => browser.close())

async function until(holds: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 1000; tries++) {
    if (await holds()) return
    await pause(20)
  }
  throw new Error('waited in vain')
}

const html = `<!doctype html><html lang="en"><head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'"><title>T</title></head><body><main><h1>EB-1</h1><details><summary>s</summary>x</details><div style="">${'<p>line</p>'.repeat(200)}</div></main></body></html>`

/** A site of one page, served with what is told of the records, and the page open at 390 px. */
async function opened() {
  const place = smallWorkplace()
  mkdirSync(join(place, 'private'))
  writeFileSync(join(place, 'private', 'index.html'), html)
  const live = await livePart(join(place, 'content'), undefined)
  const server = siteServer(join(place, 'private'), live).listen(0, '127.0.0.1')
  await once(server, 'listening')
  const page = await browser.newPage({ viewport: { width: 390, height: 600 } })
  onTestFinished(async () => {
    await page.close()
    server.closeAllConnections()
    server.close()
  })
  await page.goto(`http://localhost:${(server.address() as AddressInfo).port}/`)
  await page.evaluate('window.old = true')
  return { place, page, live }
}

const shown = (page: Page) =>
  page.evaluate<string>("document.querySelector('#live:not([hidden]) pre')?.textContent ?? ''")

test('a problem shows within the page as in the terminal, and goes when it is mended', async () => {
  const { place, page, live } = await opened()
  const record = join(place, 'content', 'batches', 'EB-1.yaml')
  const sound = readFileSync(record, 'utf8')
  writeFileSync(record, sound.replace('mass: 0.501 g', 'mass: 0,501 g'))
  live.check()
  await until(async () => (await shown(page)) !== '')
  const told = await shown(page)
  expect(told).toMatch(/EB-1\.yaml:16:\d+ COMMA_DECIMAL\n[\s\S]*\^\n {2}hint: /u)
  // Paths are from where the program was started.
  const { stdout } = await lotfolio(['check'], place)
  expect(stdout).toContain(told.slice(told.indexOf('content/batches')))
  expect(await page.evaluate('[window.old, document.documentElement.scrollWidth]')).toEqual([
    true,
    390
  ])
  writeFileSync(record, sound)
  live.check()
  await until(async () => (await shown(page)) === '')
})

test('a page built anew is loaded where its reader was; a failed build leaves it alone', async () => {
  const { page, live } = await opened()
  await page.evaluate("scrollTo(0, 400); document.querySelector('details').open = true")
  live.built(false)
  await pause(300)
  expect(await page.evaluate('window.old')).toBe(true)
  live.built(true)
  await until(async () => (await page.evaluate('window.old').catch(() => true)) === undefined)
  await until(async () => (await page.evaluate('scrollY')) === 400)
  expect(await page.evaluate("document.querySelector('details').open")).toBe(true)
})
