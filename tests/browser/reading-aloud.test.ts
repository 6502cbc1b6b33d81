/** What Chromium tells a screen reader of a table: whole figures, words for marks, rows on any screen. */

import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { leaveChromium, openPage, requireChromium, sharedChromium } from './chromium.ts'
import { type SamplePage, samplesOf } from './render-pages.ts'

interface SpokenNode {
  readonly role: string
  readonly name: string
}

/** The accessibility tree in reading order. */
async function spoken(page: Page): Promise<readonly SpokenNode[]> {
  const session = await page.context().newCDPSession(page)
  const { nodes } = await session.send('Accessibility.getFullAXTree')
  return nodes
    .filter(node => !node.ignored)
    .map(node => ({ role: String(node.role?.value), name: String(node.name?.value ?? '').trim() }))
}

describe.skipIf(!requireChromium())('read aloud', () => {
  let browser: Browser
  let samples: readonly SamplePage[]

  beforeAll(async () => {
    samples = await samplesOf(['public'])
    browser = await sharedChromium()
  }, 60_000)
  afterAll(leaveChromium)

  async function namesOf(width: number, roles: readonly string[]): Promise<readonly string[]> {
    const lot = samples.find(page => page.path === 'lots/EB-26-041/index.html')!
    const page = await openPage(browser, lot, { width, scheme: 'light' })
    const nodes = await spoken(page)
    await page.close()
    return nodes.filter(({ role }) => roles.includes(role)).map(({ name }) => name)
  }

  const cells = ['cell', 'gridcell']

  test('figures are whole, marks are not read twice, dashes have words', async () => {
    const names = await namesOf(1280, cells)
    expect(names.slice(0, 8)).toEqual(
      ['262.1', '4.3', 'mL/g', '2.04'].concat(['≥ 250 lot mean', 'pass', '> 99.9', '3'])
    )
    expect(names.slice(18, 26)).toEqual(
      ['< 2.0', 'not stated', 'none', 'none'].concat(['≥ 3 lot mean', 'fail', 'not stated', '2'])
    )
  })

  test('column heads are announced on a desk', async () => {
    const names = await namesOf(1280, ['columnheader'])
    expect(names.slice(0, 5)).toEqual(['Property', 'Result', '± U', 'Unit', 'k'])
  })

  test('rows stay rows of labelled cells on a phone', async () => {
    const names = await namesOf(390, cells)
    expect(names.slice(0, 3)).toEqual(['Result 262.1', '± U 4.3', 'Unit mL/g'])
    expect(names).toContain('Verdict conditional pass')
  })
})
