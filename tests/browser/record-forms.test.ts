/** Forms of records, as `lotfolio start` serves them, in a real browser and against one that lies. */

import { once } from 'node:events'
import { mkdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished, test as anyTest } from 'vitest'
import { livePart } from '../../src/cli/live.ts'
import { siteServer } from '../../src/cli/server.ts'
import { lotfolio, smallWorkplace } from '../site/workplace.ts'
import { thorough } from '../thorough.ts'
import { faultsIn } from './axe.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'

const test = anyTest.skipIf(!requireChromium())

let browser: Browser
beforeAll(async () => void (browser = await sharedChromium()))
afterAll(leaveChromium)

const lotPage = `<!doctype html><html lang="en"><head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; form-action 'none'"><title>T</title></head><body><main id="content"><h1>EB-1</h1></main></body></html>`
const address = '/-/records/batches/EB-1.yaml'

/** The page of most tests, without any script: starting another takes longer than they do. */
let plain: Page | undefined
const plainPage = async (): Promise<Page> =>
  (plain ??= await browser.newPage({ javaScriptEnabled: false }))

/** A served workshop, and the form of its batch open. */
async function opened(path = address, on: () => Promise<Page> = plainPage) {
  const place = smallWorkplace()
  mkdirSync(join(place, 'private', 'lots', 'EB-1'), { recursive: true })
  writeFileSync(join(place, 'private', 'lots', 'EB-1', 'index.html'), lotPage)
  const live = await livePart(join(place, 'content'), undefined)
  const server = siteServer(join(place, 'private'), live).listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  const page = await on()
  onTestFinished(async () => {
    await page.goto('about:blank')
    server.closeAllConnections()
    server.close()
  })
  await page.goto(`http://localhost:${port}${path}`)
  const record = join(place, 'content', 'batches', 'EB-1.yaml')
  const text = () => readFileSync(record, 'utf8')
  return { place, page, port, record, text }
}

const save = (page: Page) => page.click('button.save')

test('the page of a lot leads to its form, and the form to all records; sent as it is, it changes no byte', async () => {
  const { page, text } = await opened('/lots/EB-1/')
  const before = text()
  await page.click('text=Fill in this record')
  expect(new URL(page.url()).pathname).toBe(address)
  await save(page)
  expect(await page.textContent('[role=status]')).toBe('Saved.')
  expect(text()).toBe(before)
  await page.click('nav >> text=Records')
  for (const name of ['Producer', 'EB-1'])
    expect(await page.locator(`main a:text-is("${name}")`).count()).toBe(1)
})

/** Of every form of the demo the same is held without a browser, in tests/forms/round-trip.test.ts. */
test('of a record of every kind: its form sent as it is changes no byte', async () => {
  const { page, place, port } = await opened('/-/records/')
  const addresses = await page
    .locator('main li a')
    .evaluateAll(links => links.map(link => link.getAttribute('href') ?? ''))
  expect(addresses.length).toBeGreaterThan(5)
  const ofEachKind = new Map(addresses.map(one => [one.replace(/[^/]*$/u, ''), one]))
  for (const one of thorough ? addresses : ofEachKind.values()) {
    const file = join(place, 'content', decodeURIComponent(one.replace('/-/records/', '')))
    const before = readFileSync(file)
    await page.goto(`http://localhost:${port}${one}`)
    await save(page)
    expect(page.url()).toContain('saved=yes')
    expect(readFileSync(file).equals(before)).toBe(true)
  }
})

test('a value of the wrong shape is kept, and told with the text, place and hint of the terminal', async () => {
  const { page, text, place } = await opened()
  await page.fill('[name="/product/mass"]', '12,5 g')
  await page.fill('[name="/notes"]', 'stood <b>open</b> & "warm": #1')
  await save(page)
  expect(text()).toContain("mass: '12,5 g'")
  expect(await page.inputValue('[name="/product/mass"]')).toBe('12,5 g')
  expect(await page.inputValue('[name="/notes"]')).toBe('stood <b>open</b> & "warm": #1')
  const told = (await page.textContent('#problems pre'))!
  expect(told).toContain('COMMA_DECIMAL')
  const { stdout } = await lotfolio(['check'], place)
  expect(stdout).toContain(told.slice(told.indexOf('content/batches')))
  const described = await page.getAttribute('[name="/product/mass"]', 'aria-describedby')
  expect(described).toContain('told')
  await page.click('#problems a')
  expect(page.url()).toMatch(/#f\/product\/mass$/u)
})

test('a text of several lines comes back with its first line break, and is written whole', async () => {
  const { page, port, record, text } = await opened()
  writeFileSync(record, text().replace('product:', 'notes: "\\n\\nhead\\n tail"\nproduct:'))
  const before = text()
  await page.goto(`http://localhost:${port}${address}`)
  await save(page)
  expect(text()).toBe(before)
  await page.fill('[name="/notes"]', 'one\ntwo: 2')
  await save(page)
  expect(text()).toContain('notes: "one\\ntwo: 2"')
  expect(await page.inputValue('[name="/notes"]')).toBe('one\ntwo: 2')
})

test('by keyboard alone: a part is put in, a row filled in, and saved', async () => {
  const { page, text } = await opened()
  await page.locator('select[name="add:"]').focus()
  await page.keyboard.type('Samp')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await page.waitForURL(/saved=yes/u)
  await page.locator('[name="/sampling/on"]').focus()
  await page.keyboard.type('2026-01-22')
  await page.keyboard.press('Enter')
  await page.waitForURL(/saved=yes/u)
  await page.waitForFunction('true').catch(() => undefined)
  expect(text()).toMatch(/^sampling: \{ on: 2026-01-22 \}$/mu)
})

test('a record changed meanwhile is not overwritten: both are shown, and entries are kept', async () => {
  const { page, text, record } = await opened()
  const sound = text()
  await page.fill('[name="/notes"]', 'mine')
  await page.fill('[name="/made"]', '2026-01-19')
  writeFileSync(record, sound.replace(/^made: .*$/mu, 'made: 2026-01-18 # by hand'))
  await save(page)
  expect(text()).toContain('made: 2026-01-18 # by hand')
  expect(text()).not.toContain('mine')
  const alert = await page.innerText('[role=alert]')
  expect(alert).toMatch(/changed since the form was read/u)
  expect(alert).toMatch(/made\s+2026-01-19\s+2026-01-18/u)
  expect(await page.inputValue('[name="/notes"]')).toBe('mine')
  expect(await page.inputValue('[name="/made"]')).toBe('2026-01-18')
  await save(page)
  expect(text()).toMatch(/^notes: mine$/mu)
  expect(text()).toContain('made: 2026-01-18 # by hand')
})

test('a file that holds no fields is shown with why, and stays as it is', async () => {
  const { page, port, record, text } = await opened()
  writeFileSync(record, 'lot: [\n')
  await page.goto(`http://localhost:${port}${address}`)
  expect(await page.textContent('#problems pre')).toContain('YAML')
  expect(await page.locator('form').count()).toBe(0)
  expect(text()).toBe('lot: [\n')
})

test('nothing overflows, and nothing is in the way of anybody', async () => {
  const { page } = await opened(`${address}?with=/tests/ash&with=/steps`, () =>
    browser.newPage({ bypassCSP: true })
  )
  await page.fill('[name="/made"]', 'soon')
  await save(page)
  await page.waitForURL(/saved=yes/u)
  expect(await faultsIn(page)).toEqual({})
})

interface Sent {
  readonly path?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, string>>
  readonly body?: string
}

/** Send a form as a browser would, but for what is said otherwise. */
async function sender(port: number, page: Page) {
  const hidden = async (name: string) => (await page.getAttribute(`[name=${name}]`, 'value'))!
  const own = { token: await hidden('token'), read: await hidden('read'), '/notes': 'sent' }
  return ({ path = address, headers, fields, body }: Sent) =>
    new Promise<number | undefined>((resolve, reject) => {
      const asked = request(
        {
          ...{ port, host: '127.0.0.1', path, method: 'POST' },
          headers: {
            Host: `localhost:${port}`,
            Origin: `http://localhost:${port}`,
            'Content-Type': 'application/x-www-form-urlencoded',
            ...headers
          }
        },
        answer => resolve(answer.resume().statusCode)
      )
      asked.on('error', reject)
      asked.end(body ?? new URLSearchParams({ ...own, ...fields }).toString())
    })
}

test('only forms of this page, run and server are taken, and only for records', async () => {
  const { page, port, place, text } = await opened()
  const before = text()
  const outside = join(place, 'outside.yaml')
  writeFileSync(outside, before)
  symlinkSync(outside, join(place, 'content', 'batches', 'EB-9.yaml'))
  // Records behind a link to a folder are read, and are no form's to write.
  mkdirSync(join(place, 'elsewhere', 'batches'), { recursive: true })
  const linked = join(place, 'elsewhere', 'batches', 'EB-6.yaml')
  writeFileSync(linked, before)
  symlinkSync(join(place, 'elsewhere'), join(place, 'content', 'linked'))
  mkdirSync(join(place, 'content', 'register', 'batches'), { recursive: true })
  writeFileSync(join(place, 'content', 'register', 'batches', 'EB-8.yaml'), before)
  const send = await sender(port, page)
  const rows: readonly (readonly [number, Sent])[] = [
    [403, { headers: { Host: 'workshop.example.org' } }],
    [403, { headers: { Origin: 'http://example.org' } }],
    [403, { headers: { Origin: 'null' } }],
    [403, { headers: { Origin: '' } }],
    [403, { headers: { 'Sec-Fetch-Site': 'cross-site' } }],
    [403, { fields: { token: 'x' } }],
    [403, { fields: { token: '' } }],
    [409, { fields: { read: 'x' } }],
    [413, { body: `token=x&a=${'x'.repeat(1_000_001)}` }],
    [413, { headers: { 'Transfer-Encoding': 'chunked' }, body: 'x'.repeat(1_000_001) }],
    [415, { headers: { 'Content-Type': 'text/plain' } }],
    [404, { path: '/-/records/batches/EB-9.yaml' }],
    [404, { path: '/-/records/linked/batches/EB-6.yaml' }],
    [404, { path: '/-/records/register/batches/EB-8.yaml' }],
    [405, { path: '/-/records/../outside.yaml' }],
    [404, { path: '/-/records/batches/..%2f..%2f..%2foutside.yaml' }],
    [404, { path: '/-/records/batches/EB-7.yaml' }],
    [405, { path: '/lots/EB-1/' }]
  ]
  for (const [status, sent] of rows) expect([await send(sent), sent]).toEqual([status, sent])
  expect(text()).toBe(before)
  for (const path of [outside, linked]) expect(readFileSync(path, 'utf8')).toBe(before)
  expect(await send({})).toBe(303)
  expect(text()).toContain('notes: sent')
})

test('of two forms read from one text only the first is written', async () => {
  const { page, port, text } = await opened()
  const send = await sender(port, page)
  const answers = await Promise.all(
    ['one', 'two', 'three'].map(notes => send({ fields: { '/notes': notes } }))
  )
  expect(answers.sort()).toEqual([303, 409, 409])
  expect(text().match(/^notes: /gmu)).toHaveLength(1)
})

test('a folder of records that is itself a link is written through', async () => {
  const { place, port, page, record } = await opened()
  const send = await sender(port, page)
  renameSync(join(place, 'content'), join(place, 'elsewhere'))
  symlinkSync(join(place, 'elsewhere'), join(place, 'content'))
  expect(await send({})).toBe(303)
  expect(readFileSync(record, 'utf8')).toContain('notes: sent')
})
