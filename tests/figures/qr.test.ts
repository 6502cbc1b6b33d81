/** QR codes: read back by another program, and sized as ISO/IEC 18004 has it. */

import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { QUIET_MODULES, type QrFigure, qrFigure } from '../../src/figures/qr.ts'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { certificateDocument } from '../fixtures/documents.ts'
import { requireTool } from '../tools.ts'

const canRead = requireTool('zbarimg', 'zbar-tools')
const canDraw = requireTool('pdftoppm', 'poppler-utils')

/** Modules of a figure, dark as true, drawn from its runs. */
function modulesOf({ size, runs }: QrFigure): boolean[][] {
  const rows = Array.from({ length: size }, () => Array.from({ length: size }, () => false))
  for (const { x, y, length } of runs)
    for (let at = x; at < x + length; at++) {
      // No run over another, and none outside.
      expect(rows[y]?.[at]).toBe(false)
      rows[y]![at] = true
    }
  return rows
}

/** A grey picture of modules, each so many pixels wide: PGM, which needs no packing. */
function pictureOf(figure: QrFigure, scale: number): Buffer {
  const rows = modulesOf(figure)
  const side = figure.size * scale
  const pixels = Buffer.alloc(side * side, 255)
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      if (rows[Math.floor(y / scale)]![Math.floor(x / scale)]) pixels[y * side + x] = 0
  return Buffer.concat([Buffer.from(`P5\n${side} ${side}\n255\n`), pixels])
}

/** Use a folder with one file of these bytes; it is gone afterwards. */
function withFile<T>(name: string, bytes: Uint8Array, use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'qr-'))
  try {
    writeFileSync(join(folder, name), bytes)
    return use(folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** What the codes in a folder's pictures say. */
const readCodes = (folder: string): string => {
  const pictures = readdirSync(folder).filter(name => name.endsWith('.pgm'))
  const args = ['--quiet', '--raw', '-Sdisable', '-Sqrcode.enable', ...pictures]
  // Its exit code also tells of a page without a code: what was read is all that counts.
  return spawnSync('zbarimg', args, { cwd: folder, encoding: 'utf8' }).stdout.replace(/\n$/u, '')
}

const address = 'https://www.example.org/papers/certificates/CT-26-005/'
const readBack = (figure: QrFigure) => withFile('code.pgm', pictureOf(figure, 4), readCodes)

describe.skipIf(!canRead)('another program reads', () => {
  test.for(['a', address, `${address}?${'x'.repeat(300)}`, '0123456789'])('%s', text => {
    expect(readBack(qrFigure(text))).toBe(text)
  })

  test('the code though a thirtieth of it is scratched', () => {
    const figure = qrFigure(address)
    const middle = figure.size / 2
    const half = (figure.size * Math.sqrt(1 / 30)) / 2
    const isScratched = (at: { x: number; y: number }) =>
      Math.abs(at.x - middle) <= half && Math.abs(at.y - middle) <= half
    const dots = figure.runs.flatMap(({ x, y, length }) =>
      Array.from({ length }, (_, index) => ({ x: x + index, y, length: 1 }))
    )
    const runs = dots.filter(dot => !isScratched(dot))
    expect(runs.length).toBeLessThan(dots.length)
    expect(readBack({ ...figure, runs })).toBe(address)
  })
})

test.skipIf(!canRead || !canDraw)(
  'the code on an issued certificate, at 150 dots an inch',
  async () => {
    const seal = {
      attachments: [{ name: 'data.json', bytes: Buffer.from('{}') }],
      fingerprint: 'a'.repeat(64)
    }
    const pdf = await certificatePdf({ ...certificateDocument, url: address }, seal)
    const read = withFile('paper.pdf', pdf, folder => {
      execFileSync('pdftoppm', ['-r', '150', '-gray', 'paper.pdf', 'page'], { cwd: folder })
      return readCodes(folder)
    })
    expect(read).toBe(address)
  }
)

describe('the size', () => {
  // ISO/IEC 18004: side = 17 + 4 × version; bytes a version holds with error correction M, its
  // table of capacities (from memory, not checked against the print).
  test.for([
    [1, 14],
    [2, 26],
    [3, 42],
    [4, 62],
    [5, 84],
    [6, 106],
    [7, 122],
    [8, 152],
    [9, 180],
    [10, 213],
    [40, 2331]
  ] as const)('version %i holds %i bytes', ([version, bytes]) => {
    const side = 17 + 4 * version + 2 * 4
    expect(qrFigure('a'.repeat(bytes)).size).toBe(side)
    if (version < 40) expect(qrFigure('a'.repeat(bytes + 1)).size).toBe(side + 4)
    else expect(() => qrFigure('a'.repeat(bytes + 1))).toThrow(/too long/iu)
  })

  test('leaves four light modules on every side, and none more', () => {
    expect(QUIET_MODULES).toBe(4)
    const { size, runs } = qrFigure(address)
    const lefts = runs.map(({ x }) => x)
    const rights = runs.map(({ x, length }) => x + length)
    const tops = runs.map(({ y }) => y)
    expect([Math.min(...lefts), Math.max(...rights)]).toEqual([4, size - 4])
    expect([Math.min(...tops), Math.max(...tops)]).toEqual([4, size - 5])
  })

  test('has the three finder patterns: 1:1:3:1:1 through their middle', () => {
    const rows = modulesOf(qrFigure(address))
    const far = rows.length - 4 - 7
    const finder = [true, false, true, true, true, false, true]
    for (const [x, y] of [
      [4, 4],
      [far, 4],
      [4, far]
    ] as const) {
      expect(rows[y + 3]!.slice(x, x + 7)).toEqual(finder)
      expect(rows.slice(y, y + 7).map(row => row[x + 3])).toEqual(finder)
    }
  })
})

test('runs are as long as can be: none begins where another ends', () => {
  const { runs } = qrFigure(address)
  const ends = new Set(runs.map(({ x, y, length }) => `${x + length} ${y}`))
  expect(runs.filter(({ x, y }) => ends.has(`${x} ${y}`))).toEqual([])
})
