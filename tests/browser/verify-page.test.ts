/** The page that checks certificates, in a real browser: by http and from disk, chosen and dropped. */

import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { done, putShipment, registerOf, workshopOf } from '../site/issuing.ts'
import { faultsIn } from './axe.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'
import { addressOf, serve } from './server.ts'

const OUTCOME = `document.querySelector('#outcome .verdict-word strong')?.textContent`

const expected = [
  ['archive/CT-1-r2.pdf', 'Genuine'],
  ['content/register/CT-1-r2.json', 'Genuine'],
  ['archive/CT-1-r1.pdf', 'Superseded'],
  ['archive/CT-2-r1.pdf', 'Withdrawn'],
  ['archive/CT-1-r2-SH-1.pdf', 'Genuine'],
  ['content/register/copies/CT-1-r2-SH-1.json', 'Genuine'],
  ['copy.json', 'Altered'],
  ['flipped.pdf', 'Altered'],
  ['flipped.json', 'Altered'],
  ['foreign.json', 'Unknown'],
  ['content/producer.yaml', 'Unknown']
] as const

describe.skipIf(!requireChromium())('in Chromium', () => {
  // Made in the first test, as a place belongs to the test that makes it.
  let browser: Browser
  beforeAll(async () => void (browser = await sharedChromium()), 60_000)
  afterAll(leaveChromium)

  async function makePlace(): Promise<string> {
    const day = ['--date', '2026-03-01']
    const place = workshopOf('EB-2')
    await done(place, 'issue', 'EB-1', ...day)
    await done(place, 'issue', 'EB-1', '--reason', 'date corrected', ...day)
    await done(place, 'issue', 'EB-2', ...day)
    await done(place, 'withdraw', 'CT-2', '--reason', 'acid rises', ...day)
    putShipment(place)
    await done(place, 'ship', 'SH-1', '--date', '2026-03-02')
    await done(place, 'build')
    const pdf = readFileSync(join(place, 'archive', 'CT-1-r2.pdf'))
    pdf[pdf.length >> 1]! ^= 1
    writeFileSync(join(place, 'flipped.pdf'), pdf)
    const text = registerOf(place)['CT-1-r2.json']!
    writeFileSync(join(place, 'flipped.json'), text.replace('EB-1', 'EB-3'))
    const copy = readFileSync(join(place, 'content/register/copies/CT-1-r2-SH-1.json'), 'utf8')
    writeFileSync(join(place, 'copy.json'), copy.replace('PO 1', 'PO 2'))
    writeFileSync(join(place, 'foreign.json'), text.replaceAll('CT-1', 'CT-9'))
    return place
  }

  async function told(page: Page, give: () => Promise<unknown>): Promise<unknown> {
    await page.evaluate(`document.querySelector('#outcome').replaceChildren()`)
    await give()
    await page.waitForSelector('#outcome .verdict-word')
    return page.evaluate(OUTCOME)
  }

  /** Let a file go over the page, as from a file manager. */
  const drop = (page: Page, path: string) => {
    const bytes = readFileSync(path).toString('base64')
    return page.evaluate(`(() => {
      const carried = new DataTransfer()
      const bytes = Uint8Array.from(atob('${bytes}'), sign => sign.charCodeAt(0))
      carried.items.add(new File([bytes], 'copy'))
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }))
    })()`)
  }

  test(
    'every answer, chosen and dropped, and no request once a file is there',
    { timeout: 120_000 },
    async () => {
      const place = await makePlace()
      const site = join(place, '_site')
      const server = await serve(site)
      const own = addressOf(server)
      for (const start of [own, `${pathToFileURL(site).href}/`]) {
        const page = await browser.newPage()
        const [asked, said]: [string[], string[]] = [[], []]
        page.on('request', request => asked.push(request.url()))
        page.on('console', message => said.push(message.text()))
        await page.goto(`${start}verify/${start === own ? '' : 'index.html'}`)
        await page.waitForSelector('#copy')
        expect(asked.filter(url => !url.startsWith(start))).toEqual([])
        const before = asked.length
        for (const [name, word] of expected) {
          const path = join(place, name)
          expect(await told(page, () => page.setInputFiles('#copy', path)), `${name} chosen`).toBe(
            word
          )
          expect(await told(page, () => drop(page, path)), `${name} dropped`).toBe(word)
        }
        expect(asked.slice(before)).toEqual([])
        expect(said).toEqual([])
        await page.evaluate(`fetch('${own}register.json').catch(() => 0)`)
        expect(said.join('\n')).toContain('Content Security Policy')
        await page.close()
      }
      const page = await browser.newPage({ bypassCSP: true })
      await page.goto(`${own}verify/`)
      await told(page, () => page.setInputFiles('#copy', join(place, 'flipped.pdf')))
      expect(await faultsIn(page)).toEqual({})
      await page.close()
      server.close()
    }
  )
})
