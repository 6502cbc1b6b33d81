/** Pages that `lotfolio start` keeps up to date, in a real browser. */

import { once } from 'node:events'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished, test as anyTest } from 'vitest'
import { livePart } from '../../src/cli/live.ts'
import { siteServer } from '../../src/cli/server.ts'
import { lotfolio, smallWorkplace } from '../site/workplace.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'

const test = anyTest.skipIf(!requireChromium())

let browser: Browser
beforeAll(async () => void (browser = await sharedChromium()))
afterAll(leaveChromium)

async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
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
  const { port } = server.address() as AddressInfo
  const page = await browser.newPage({ viewport: { width: 390, height: 600 } })
  onTestFinished(async () => {
    await page.close()
    server.closeAllConnections()
    server.close()
  })
  await page.goto(`http://localhost:${port}/`)
  await page.evaluate('window.old = true')
  return { place, page, live, server, port }
}

/** The first problem a reader sees without unfolding anything. */
const shown = (page: Page) =>
  page.evaluate<string>(
    "document.querySelector('#live[open]:not([hidden]) pre')?.textContent ?? ''"
  )

/** Whether the page has been loaded since; in between there is nothing to ask. */
const isNew = (page: Page) => page.evaluate<boolean>('window.old === undefined').catch(() => false)

const standing = (page: Page) =>
  page.evaluate<string>("document.querySelector('#live:not([hidden]) summary')?.textContent ?? ''")

function commaIn(place: string) {
  const record = join(place, 'content', 'batches', 'EB-1.yaml')
  const sound = readFileSync(record, 'utf8')
  writeFileSync(record, sound.replace('mass: 0.501 g', 'mass: 0,501 g'))
  return { mend: () => writeFileSync(record, sound) }
}

test('a problem shows within the page as in the terminal, and goes when it is mended', async () => {
  const { place, page, live } = await opened()
  const { mend } = commaIn(place)
  live.check()
  await until(async () => (await shown(page)) !== '')
  const told = await shown(page)
  expect(told).toMatch(/EB-1\.yaml:16:\d+ COMMA_DECIMAL\n[\s\S]*\^\n {2}hint: /u)
  expect(await standing(page)).toBe('1 error in the records: pages stay as they last were good')
  // Paths are from where the program was started.
  const { stdout } = await lotfolio(['check'], place)
  expect(stdout).toContain(told.slice(told.indexOf('content/batches')))
  expect(await page.evaluate('[window.old, document.documentElement.scrollWidth]')).toEqual([
    true,
    390
  ])
  mend()
  live.check()
  await until(async () => (await standing(page)) === '')
})

test('what a reader folds stays folded, on the next page as well', async () => {
  const { place, page, live } = await opened()
  commaIn(place)
  live.check()
  await until(async () => (await shown(page)) !== '')
  await page.click('#live summary')
  await page.reload()
  await until(async () => (await standing(page)) !== '')
  expect(await shown(page)).toBe('')
  await page.click('#live summary')
  expect(await shown(page)).toContain('COMMA_DECIMAL')
})

test('a page built anew is loaded where its reader was; a failed build leaves it alone', async () => {
  const { page, live } = await opened()
  await page.evaluate("document.querySelector('details').open = true; scrollTo(0, 400)")
  live.built(false)
  await until(async () => (await standing(page)).startsWith('The last build failed'))
  expect(await page.evaluate('[window.old, scrollY]')).toEqual([true, 400])
  live.built(true)
  await until(() => isNew(page))
  await until(async () => (await page.evaluate('scrollY')) === 400)
  expect(await page.evaluate("document.querySelector('details').open")).toBe(true)
  expect(await standing(page)).toBe('')
})

test('a page follows a server started again', async () => {
  const { place, page, server, port } = await opened()
  server.closeAllConnections()
  server.close()
  const next = await livePart(join(place, 'content'), undefined)
  const again = siteServer(join(place, 'private'), next).listen(port, '127.0.0.1')
  onTestFinished(() => void again.close().closeAllConnections())
  await until(() => isNew(page))
})

test('a page that nobody sees holds no connection, and follows when it is seen again', async () => {
  const { page, live, server } = await opened()
  const hide = (state: string) =>
    page.evaluate(
      `Object.defineProperty(document, 'visibilityState', { value: '${state}', configurable: true });
       document.dispatchEvent(new Event('visibilitychange'))`
    )
  const held = () =>
    new Promise<number>(resolve => server.getConnections((_, open) => resolve(open)))
  await hide('hidden')
  // What is left is kept alive by the browser, and idle: the server may close it.
  await until(async () => (server.closeIdleConnections(), (await held()) === 0))
  live.built(true)
  await pause(100)
  expect(await isNew(page)).toBe(false)
  await hide('visible')
  await until(() => isNew(page))
})

test('other sites, and names that are not of this machine, are told nothing', async () => {
  const { port } = await opened()
  const status = (headers: Readonly<Record<string, string>>) =>
    new Promise(resolve => {
      const asked = request({ port, host: '127.0.0.1', path: '/-/events', headers }, answer => {
        resolve(answer.statusCode)
        asked.destroy()
      })
      asked.end()
    })
  expect(await status({})).toBe(200)
  expect(await status({ origin: `http://127.0.0.1:${port}` })).toBe(200)
  expect(await status({ origin: 'http://elsewhere.example' })).toBe(404)
  expect(await status({ origin: `http://localhost:${port + 1}` })).toBe(404)
  expect(await status({ host: 'elsewhere.example' })).toBe(403)
})
