/** Decimal points of a column stand in one line, measured where Chromium drew them. */

import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { launchChromium, openPage, openView, requireChromium, show } from './chromium.ts'
import { removePages, type SamplePage, samplePages } from './render-pages.ts'

interface Column {
  readonly name: string
  readonly texts: readonly string[]
  /** Left edge of the point, or right edge of the last digit where there is none, in px. */
  readonly points: readonly number[]
}

const COLUMNS = `(() => {
  const columns = {}
  for (const table of document.querySelectorAll('table')) {
    for (const cell of table.querySelectorAll('td.number')) {
      const text = cell.firstChild
      if (text.nodeType !== Node.TEXT_NODE || !/\\d/.test(text.data)) continue
      const at = text.data.lastIndexOf('.')
      const range = document.createRange()
      range.setStart(text, at < 0 ? text.length - 1 : at)
      range.setEnd(text, at < 0 ? text.length : at + 1)
      const box = range.getBoundingClientRect()
      const name = table.caption.textContent + ' (' + table.caption.id + '), ' + table.tHead.rows[0].cells[cell.cellIndex].textContent
      const column = columns[name] ??= { name, texts: [], points: [] }
      column.texts.push(cell.innerText)
      column.points.push(at < 0 ? box.right : box.left)
    }
  }
  return Object.values(columns)
})()`

const spread = (points: readonly number[]): number => Math.max(...points) - Math.min(...points)

describe.skipIf(!requireChromium())('figures', () => {
  let browser: Browser
  let lots: readonly SamplePage[]

  beforeAll(async () => {
    lots = (await samplePages()).filter(page => /^(?:lots|grades)\/./u.test(page.path))
    browser = await launchChromium()
  }, 60_000)
  afterAll(async () => {
    await browser?.close()
    await removePages(lots)
  })

  test.each([1280, 900])('line up by their point at %i px', { timeout: 60_000 }, async width => {
    const page = await openView(browser, { width, scheme: 'light' })
    for (const lot of lots) {
      await show(page, lot)
      for (const column of await page.evaluate<Column[]>(COLUMNS)) {
        const name = `${lot.path} ${column.name}: ${column.texts.join(', ')}`
        expect(spread(column.points), name).toBeLessThan(0.5)
      }
    }
    await page.close()
  })

  test('were measured in columns of unlike figures', async () => {
    const full = lots.find(lot => lot.path.includes('GF-26-040'))!
    const page = await openPage(browser, full, { width: 1280, scheme: 'light' })
    const columns = await page.evaluate<Column[]>(COLUMNS)
    await page.close()
    const result = columns.find(({ name }) => name.endsWith('(measured), Result'))!
    expect(result.texts.slice(0, 5)).toEqual(['262.1', '0.118', '36\u202f200', '1.022', '< 0.02'])
    const value = columns.find(({ name }) => name.endsWith('-inputs), Value'))!
    expect(value.texts.map(text => text.trim())).toEqual([
      '0.502 g',
      '131 mL',
      '−0.05 mL',
      '1\u202f023.5 °C'
    ])
  })
})
