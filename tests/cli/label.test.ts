import { execFileSync } from 'node:child_process'
import { appendFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { requireTool } from '../tools.ts'
import { demoWorkplace, lotfolio, namesIn, smallWorkplace, tree } from '../site/workplace.ts'

const privateWords = (
  JSON.parse(readFileSync('tests/fixtures/private-words.json', 'utf8')) as { word: string }[]
).map(({ word }) => word)

describe('label', () => {
  test("writes labels for the grade's containers, and tells where", async () => {
    const place = demoWorkplace()
    const { status, stdout, stderr } = await lotfolio(
      ['label', 'EB-26-012', '--language', 'de,fr'],
      place
    )
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(
      /: no errors, no warnings\nWrote 2 labels to labels:\n {2}EB-26-012-pouch-0\.5L-de-fr\.pdf\n {2}EB-26-012-pail-5L-de-fr\.pdf\n$/u
    )
    expect(namesIn(join(place, 'labels'))).toEqual([
      'EB-26-012-pail-5L-de-fr.pdf',
      'EB-26-012-pouch-0.5L-de-fr.pdf'
    ])
  })

  test('writes what the workshop edition links to, and the public one does not', async () => {
    const place = smallWorkplace()
    appendFileSync(
      join(place, 'content', 'grades', 'FF-1.yaml'),
      'containers:\n  - { kind: carton, capacity: 2 L, holds: 30 g }\n'
    )
    await lotfolio(['label', 'FL-1'], place)
    await lotfolio(['build'], place)
    await lotfolio(['build', '--edition', 'workshop'], place)
    const [label] = Object.values(tree(join(place, 'labels')))
    const path = 'lots/FL-1/labels/FL-1-carton-2L-en.pdf'
    expect(label).toBeDefined()
    expect(tree(join(place, 'private'))[path]).toBe(label)
    const page = readFileSync(join(place, 'private', 'lots', 'FL-1', 'index.html'), 'utf8')
    expect(page).toContain('href="labels/FL-1-carton-2L-en.pdf"')
    expect(Object.keys(tree(join(place, '_site'))).filter(name => /label/u.test(name))).toEqual([])
    expect(readFileSync(join(place, '_site', 'lots', 'FL-1', 'index.html'), 'utf8')).not.toContain(
      'FL-1-carton'
    )
  })

  test('writes one for a container named, on a sheet of stock', async () => {
    const place = demoWorkplace()
    const container = ['--container', 'drum', '--capacity', '60L', '--holds', '2.5kg']
    const sheet = ['--sheet', 'A4 1x2 of 200 x 148 at 5 x 0', '--skip', '1', '--copies', '2']
    const { status } = await lotfolio(
      ['label', 'EB-26-012', ...container, ...sheet, '--out', 'to print'],
      place
    )
    expect(status).toBe(0)
    expect(namesIn(join(place, 'to print'))).toEqual(['EB-26-012-drum-60L-en.pdf'])
  })

  test('writes nothing while questions are open', async () => {
    const place = demoWorkplace()
    const before = tree(place)
    const { status, stdout, stderr } = await lotfolio(['label', 'EB-26-013'], place)
    expect(status).toBe(1)
    expect(stdout).toMatch(/: 3 errors, no warnings\nNothing written\n$/u)
    expect(stderr).toMatch(/^content\/batches\/EB-26-013\.yaml:2:6 NOT_LABELLABLE$/mu)
    expect(tree(place)).toEqual(before)
  })

  test.for([
    [['EB-26-099'], 1, /no record has the lot number EB-26-099/u],
    [['EB-26-014'], 1, /EB-26-014 has no labels: it is a draft/u],
    [
      ['EB-26-012', '--sheet', 'A4 2x4 of 99 x 68 at 6 x 12.5'],
      1,
      /pail of 5.L: needs at least 74 × 105 mm, and a label of the stock has 99 × 68 mm/u
    ],
    [
      [
        'EB-26-012',
        '--container',
        'pouch',
        '--language',
        'en,de,fr,es,it',
        '--sheet',
        'A4 2x3 of 80 x 55 at 6 x 9'
      ],
      1,
      /does not fit on 80 × 55 mm.*: take larger stock, or fewer languages/u
    ],
    [['EB-26-012', '--capacity', '60L'], 2, /go with each other, and with --container/u],
    [
      ['EB-26-012', '--container', 'drum', '--capacity', '60', '--holds', '1kg'],
      2,
      /write the capacity with its unit/u
    ],
    [['EB-26-012', '--container', 'sack'], 2, /Allowed choices are drum, pail, pouch, carton/u],
    [['EB-26-012', '--language', 'nl'], 2, /no label texts in 'nl'/u],
    [['EB-26-012', '--sheet', 'A4'], 2, /write stock as/u],
    [['EB-26-012', '--skip', '1'], 2, /--skip goes with --sheet/u],
    [
      ['EB-26-012', '--sheet', 'A4 1x1 of 210 x 297 at 0 x 0', '--skip', '1'],
      2,
      /leaves no place on a sheet of 1/u
    ],
    [['EB-26-012', '--copies', '0'], 2, /write a whole number from 1/u],
    [[], 2, /missing required argument 'lot'/u],
    [['EB-26-012', 'EB-26-011'], 2, /unexpected argument/u]
  ] as const)('refuses %j with exit code %i', async ([args, code, line]) => {
    const place = demoWorkplace()
    const before = tree(place)
    const { status, stderr } = await lotfolio(['label', ...args], place)
    expect(stderr).toMatch(line)
    expect(stderr).toMatch(/^lotfolio: [^\n]*\n$/u)
    expect(status).toBe(code)
    expect(tree(place)).toEqual(before)
  })

  test('says plainly that a file stands where the folder should be', async () => {
    const place = demoWorkplace()
    writeFileSync(join(place, 'taken'), '')
    const { status, stderr } = await lotfolio(['label', 'FL-26-012', '--out', 'taken'], place)
    expect({ status, stderr: stderr.replace(place, '') }).toEqual({
      status: 1,
      stderr: 'lotfolio: /taken: is not a folder\n'
    })
  })

  test.skipIf(!requireTool('qpdf', 'qpdf') || !requireTool('pdftotext', 'poppler-utils'))(
    'holds no private word',
    async () => {
      const place = demoWorkplace()
      for (const lot of ['EB-26-006', 'EB-26-012', 'FL-26-012'])
        expect((await lotfolio(['label', lot, '--language', 'en,de'], place)).status).toBe(0)
      const folder = join(place, 'labels')
      const texts = namesIn(folder).flatMap(name => [
        execFileSync('pdftotext', [join(folder, name), '-'], { encoding: 'utf8' }),
        execFileSync('qpdf', ['--qdf', '--object-streams=disable', join(folder, name), '-'], {
          maxBuffer: 1 << 28
        }).toString('latin1')
      ])
      expect(texts.length).toBeGreaterThan(9)
      const whole = texts.join('\n')
      expect(whole).toContain('EB-26-012')
      expect(privateWords.filter(word => whole.includes(word))).toEqual([])
    }
  )
})
