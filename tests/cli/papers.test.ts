import { execFileSync } from 'node:child_process'
import { appendFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { requireTool } from '../tools.ts'
import { builtDemo } from '../site/built-demo.ts'
import { demoWorkplace, lotfolio, namesIn, smallWorkplace, tree } from '../site/workplace.ts'

const tools = requireTool('pdftotext', 'poppler-utils')

const privateWords = (
  JSON.parse(readFileSync('tests/fixtures/private-words.json', 'utf8')) as { word: string }[]
).map(({ word }) => word)

describe('papers', () => {
  test('writes certificates and data of one lot, and tells where', async () => {
    const place = demoWorkplace()
    const { status, stdout, stderr } = await lotfolio(['papers', 'EB-26-006'], place)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(
      /^\d+ files read: no errors, no warnings\nWrote 3 files on EB-26-006 to papers\n$/u
    )
    expect(namesIn(join(place, 'papers'))).toEqual([
      'CT-26-007-r1.pdf',
      'CT-26-007-r2.pdf',
      'EB-26-006.json'
    ])
  })

  test('leaves the workshop edition its own folder', async () => {
    const place = smallWorkplace()
    await lotfolio(['papers', 'EB-1'], place)
    expect(namesIn(place)).toContain('papers')
    const { status, stderr } = await lotfolio(['build', '--edition', 'workshop'], place)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  })

  test('are those of the public site, byte for byte', async () => {
    const place = demoWorkplace()
    // The day of the site: the latest in all records, of which a lot's own may know nothing.
    const asOf = ['--as-of', '2026-10-29']
    await lotfolio(['papers', 'FL-26-003', '--out', 'some papers', ...asOf], place)
    const papers = tree(join(place, 'some papers'))
    const site = tree(await builtDemo('public'))
    expect(papers).toEqual({
      'CT-26-005-r1.pdf': site['certificates/CT-26-005/CT-26-005-r1.pdf'],
      'FL-26-003.json': site['lots/FL-26-003/data.json']
    })
  })

  test.skipIf(!tools)('hold no private word, even of a lot that is not let go', async () => {
    const place = demoWorkplace()
    for (const lot of ['EB-26-006', 'EB-26-013', 'FL-26-006', 'FL-26-012'])
      expect((await lotfolio(['papers', lot], place)).status).toBe(0)
    const folder = join(place, 'papers')
    const texts = readdirSync(folder).map(name => {
      const path = join(folder, name)
      return name.endsWith('.pdf')
        ? execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
        : readFileSync(path, 'utf8')
    })
    expect(texts.length).toBeGreaterThan(7)
    const whole = texts.join('\n')
    expect(whole).toContain('EB-26-013')
    expect(privateWords.filter(word => whole.includes(word))).toEqual([])
    expect(whole).not.toMatch(/"(?:charge|supplier|customer|yield)"/u)
  })

  test('need no more than the records the lot rests on', async () => {
    const place = demoWorkplace()
    writeFileSync(join(place, 'content', 'batches', 'EB-26-005.yaml'), 'nothing: [\n')
    expect((await lotfolio(['papers', 'EB-26-006'], place)).status).toBe(0)
    appendFileSync(join(place, 'content', 'batches', 'EB-26-006.yaml'), 'wrong: 1\n')
    const before = tree(place)
    const { status, stdout, stderr } = await lotfolio(['papers', 'EB-26-006'], place)
    expect(status).toBe(1)
    expect(stderr).toMatch(/^content\/batches\/EB-26-006\.yaml:\d+:1 UNKNOWN_FIELD$/mu)
    expect(stdout).toMatch(/: 1 error, .*\nNothing written\n$/u)
    expect(tree(place)).toEqual(before)
  })

  test.for([
    ['EB-26-099', 1, 'no record has the lot number EB-26-099; did you mean EB-26-009?'],
    ['EB-26-014', 1, 'EB-26-014 has no papers: it is a draft, or a lot that is not sold'],
    ['XR-26-01', 1, 'XR-26-01 has no papers: it is a draft, or a lot that is not sold']
  ] as const)('of %s are refused', async ([lot, code, line]) => {
    const place = demoWorkplace()
    const before = tree(place)
    const { status, stderr } = await lotfolio(['papers', lot], place)
    expect({ status, stderr }).toEqual({ status: code, stderr: `lotfolio: ${line}\n` })
    expect(tree(place)).toEqual(before)
  })

  test('say plainly that a file stands where the folder should be', async () => {
    const place = demoWorkplace()
    writeFileSync(join(place, 'taken'), '')
    for (const out of ['taken', 'taken/inside']) {
      const { status, stderr } = await lotfolio(['papers', 'EB-26-001', '--out', out], place)
      expect(status).toBe(1)
      expect(stderr).toMatch(/^lotfolio: .*: is not a folder\n$/u)
    }
  })

  test.for([
    [[], /missing required argument 'lot'/u],
    [['EB-26-001', 'EB-26-002'], /unexpected argument 'EB-26-002'/u],
    [['EB-26-001', '--paper', 'A5'], /Allowed choices are A4, Letter/u]
  ] as const)('refuse %j with exit code 2', async ([args, expected]) => {
    const { status, stderr } = await lotfolio(['papers', ...args], demoWorkplace())
    expect(status).toBe(2)
    expect(stderr).toMatch(expected)
  })
})
