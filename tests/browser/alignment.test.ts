/** Decimal points of a column stand in one line, measured where Chromium drew them. */

import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { leaveChromium, openView, requireChromium, sharedChromium, show } from './chromium.ts'
import { samplePages } from './render-pages.ts'

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

const WIDTHS_px = [1280, 900]

/** The columns of each lot and grade, by width and path; each page is loaded once. */
async function measured(): Promise<Map<number, Map<string, readonly Column[]>>> {
  const lots = (await samplePages()).filter(page => /^(?:lots|grades)\/./u.test(page.path))
  const page = await openView(await sharedChromium(), { width: WIDTHS_px[0]!, scheme: 'light' })
  const found = new Map(WIDTHS_px.map(width => [width, new Map<string, readonly Column[]>()]))
  for (const lot of lots) {
    await show(page, lot)
    for (const [width, columns] of found) {
      await page.setViewportSize({ width, height: 844 })
      columns.set(`${lot.site} ${lot.path}`, await page.evaluate<Column[]>(COLUMNS))
    }
  }
  return found
}

describe.skipIf(!requireChromium())('figures', () => {
  let found: Map<number, Map<string, readonly Column[]>>

  beforeAll(async () => void (found = await measured()), 60_000)
  afterAll(leaveChromium)

  test.each(WIDTHS_px)('line up by their point at %i px', width => {
    const columns = [...found.get(width)!].flatMap(([path, ofPage]) =>
      ofPage.map(({ name, texts, points }) => ({ name: `${path} ${name}`, texts, points }))
    )
    expect(columns.length).toBeGreaterThan(100)
    expect(columns.filter(({ points }) => spread(points) >= 0.5)).toEqual([])
  })

  test('were measured in columns of unlike figures', () => {
    const columns = found.get(1280)!.get('public lots/GF-26-040/index.html')!
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
