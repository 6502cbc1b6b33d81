/** Labels measured on paper: the PDF drawn as an image, and its ink counted. */

import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { LabelDocument } from '../../src/documents/label-types.ts'
import { type LabelProfile, labelMinima } from '../../src/hazards/label-size.ts'
import { labelPdf } from '../../src/pdf/label.ts'
import { readStock } from '../../src/pdf/label-stock.ts'
import { requireTool } from '../tools.ts'
import { run, withFile, wordBoxes } from './inspect.ts'
import { labelOf } from './label-samples.ts'

const DPI = 600
const MM_PER_PIXEL = 25.4 / DPI
const POINTS_PER_PIXEL = 72 / DPI

interface Image {
  readonly width: number
  readonly height: number
  /** Whether a pixel is red, or dark. */
  readonly red: (x: number, y: number) => boolean
  readonly dark: (x: number, y: number) => boolean
}

/** The first page as pixels. */
function imageOf(bytes: Uint8Array): Image {
  return withFile(bytes, path => {
    const folder = mkdtempSync(join(tmpdir(), 'label-'))
    try {
      execFileSync('pdftoppm', ['-r', String(DPI), '-singlefile', path, join(folder, 'page')])
      return readImage(readFileSync(join(folder, 'page.ppm')))
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
}

function readImage(file: Buffer): Image {
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/u.exec(file.subarray(0, 40).toString('latin1'))!
  const [width, height] = [Number(head[1]), Number(head[2])]
  const at = (x: number, y: number) => {
    const start = head[0].length + 3 * (y * width + x)
    return [file[start]!, file[start + 1]!, file[start + 2]!] as const
  }
  return {
    width,
    height,
    red: (x, y) => {
      const [r, g, b] = at(x, y)
      return r > 150 && g < 110 && b < 110
    },
    dark: (x, y) => at(x, y)[0] < 128
  }
}

/** Pixels of a kind in a part of an image, and the box they fill. */
function extent(
  is: (x: number, y: number) => boolean,
  [left, top, right, bottom]: readonly [number, number, number, number]
) {
  const xs: number[] = []
  const ys: number[] = []
  for (let y = Math.floor(top); y < bottom; y += 1)
    for (let x = Math.floor(left); x < right; x += 1)
      if (is(x, y)) {
        xs.push(x)
        ys.push(y)
      }
  const span = (all: readonly number[]) =>
    all.reduce((most, one) => Math.max(most, one), -1) -
    all.reduce((least, one) => Math.min(least, one), Infinity) +
    1
  return { width: span(xs) * MM_PER_PIXEL, height: span(ys) * MM_PER_PIXEL, count: xs.length }
}

/** A label whose address is a row of the letter that type is measured by. */
const withRuler = (document: LabelDocument): LabelDocument => ({
  ...document,
  contents: document.contents.map(content => ({
    ...content,
    blocks: content.blocks.map(block => ({ ...block, precautions: [] })),
    supplier: ['xxxx', 'xxxxxx '.repeat(6).trim(), 'Tel. 1']
  }))
})

const rows: readonly (readonly [
  LabelProfile,
  number,
  readonly [number, number],
  number,
  number
])[] = [
  ['eu-2028', 0.5, [52, 74], 16, 1.2],
  ['eu-2028', 2, [52, 74], 16, 1.4],
  ['eu-2028', 20, [74, 105], 23, 1.8],
  ['eu-2028', 60, [105, 148], 32, 2],
  ['eu-2015', 0.5, [52, 74], 16, 1]
]

describe.skipIf(!requireTool('pdftoppm', 'poppler-utils'))('on paper', () => {
  test.each(rows)(
    'after %s, %d L: label, pictogram and type are of the sizes wanted',
    { timeout: 60_000 },
    (profile, capacity_L, [short, long], pictogram, xHeight) => {
      const document = labelOf({
        classes: ['Eye Irrit. 2'],
        languages: ['de'],
        profile,
        capacity_L
      })
      const bytes = labelPdf(withRuler(document))
      const image = imageOf(bytes)
      const sides = [image.width, image.height].sort((a, b) => a - b)
      expect(sides[0]! * MM_PER_PIXEL).toBeCloseTo(short, 0)
      expect(sides[1]! * MM_PER_PIXEL).toBeCloseTo(long, 0)
      const red = extent(image.red, [0, 0, image.width, image.height])
      // Tip to tip is √2 times the side; a tip is less than a pixel wide.
      expect(red.width / Math.SQRT2).toBeGreaterThan(pictogram - 2 * MM_PER_PIXEL)
      expect(red.width / Math.SQRT2).toBeLessThan(pictogram + 2 * MM_PER_PIXEL)
      expect(Math.abs(red.width - red.height)).toBeLessThan(3 * MM_PER_PIXEL)

      const ruler = wordBoxes(bytes).filter(({ text }) => text === 'xxxxxx')
      const lines = [...new Set(ruler.map(({ top }) => top))].sort((a, b) => a - b)
      const [first] = ruler
      const box = [first!.left, first!.top, first!.right, first!.bottom] as const
      const [left, top, right, bottom] = box.map(one => one / POINTS_PER_PIXEL)
      const ink = extent(image.dark, [left!, top!, right!, bottom!])
      expect(ink.height).toBeGreaterThanOrEqual(xHeight - MM_PER_PIXEL)
      expect(ink.height).toBeLessThan(1.55 * xHeight)
      // Inter's x is 1118 of 2048 units high: what is measured tells the size of type.
      const size = ink.height / (1118 / 2048)
      expect(lines.length).toBeGreaterThan(1)
      const distance = ((lines[1]! - lines[0]!) * 25.4) / 72
      expect(distance).toBeGreaterThan(labelMinima(capacity_L, profile).leading * (size - 0.08))
    }
  )

  test('on a sheet stand as many labels as it has places, where they belong', () => {
    const stock = readStock('A4 2x3 of 99 x 93 at 6 x 9 every 99 x 93')
    if (typeof stock === 'string') throw new Error(stock)
    const document = labelOf({
      classes: ['Eye Irrit. 2'],
      languages: ['fr'],
      profile: 'eu-2028',
      capacity_L: 0.5
    })
    const bytes = labelPdf(document, { stock, skip: 1 })
    const boxes = wordBoxes(bytes).filter(({ text }) => text === 'F-1')
    const corners = boxes.map(({ left, top }) => [left, top].map(one => (one * 25.4) / 72))
    expect(corners).toHaveLength(5)
    const [x, y] = [corners[1]![0]!, corners[1]![1]! - 93]
    const wanted = [
      [1, 0],
      [0, 1],
      [1, 1],
      [0, 2],
      [1, 2]
    ].map(([across, down]) => [x + 99 * across!, y + 93 * down!])
    const sorted = corners.sort((a, b) => a[1]! - b[1]! || a[0]! - b[0]!)
    for (const [index, [left, top]] of sorted.entries()) {
      expect(left).toBeCloseTo(wanted[index]![0]!, 1)
      expect(top).toBeCloseTo(wanted[index]![1]!, 1)
    }
    expect(boxes.every(({ page }) => page === 1)).toBe(true)
    expect(wordBoxes(labelPdf(document, { stock, copies: 7 })).at(-1)?.page).toBe(2)
  })
})

describe.skipIf(!requireTool('zbarimg', 'zbar-tools') || !requireTool('pdftoppm', 'poppler-utils'))(
  'the code',
  () => {
    test.each([0.5, 20, 60, 600])('of a label for %d L is read at 300 dpi', capacity_L => {
      const document = labelOf({
        classes: ['Eye Irrit. 2'],
        languages: ['it'],
        profile: 'eu-2028',
        capacity_L,
        names: 'long'
      })
      const found = withFile(labelPdf(document), path => {
        run('pdftoppm', ['-r', '300', '-png', '-singlefile', path, path])
        return run('zbarimg', ['--quiet', '--raw', `${path}.png`])
      })
      expect(found.trim()).toBe(document.contents[0]!.code!.url)
    })
  }
)
