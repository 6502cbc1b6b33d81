/** A coating panel from nothing to its time: begun, its log taken over, explained. */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { lotfolio, smallWorkplace } from '../site/workplace.ts'

const blank = `number: PN-1
made: 2026-02-10
kind: blank
code: BARE
plate: { what: mild steel, length: 100.0 mm, width: 100.0 mm, thickness: 3.0 mm }
tested: 2026-02-11
instruments: { temperature: TL-9 }
how: one burner
until: 500 °C
`

const logger =
  'id: TL-9\ntitle: Logger\nresolution: 0.1 °C\ncalibration: { against: ice and steam, on: 2026-01-05, due: 2028-01-05, tolerance: 2 °C }\n'

const mapping = `id: stand
fills: log
file: { decimal: point }
every: 15 s
columns:
  - { column: Elapsed, to: at, unit: s }
  - { column: Back, to: temperature, unit: °C }
`

/** A line each second, 4 °C a second from 20 °C on. */
const csv = `Elapsed,Back\n${Array.from({ length: 131 }, (_, s) => `${s},${(20 + 4 * s).toFixed(1)}\n`).join('')}`

function place(): string {
  const folder = smallWorkplace()
  for (const [path, text] of [
    ['panels/PN-1.yaml', blank],
    ['instruments/TL-9.yaml', logger],
    ['mappings/stand.yaml', mapping]
  ] as const) {
    mkdirSync(join(folder, 'content', path, '..'), { recursive: true })
    writeFileSync(join(folder, 'content', path), text)
  }
  writeFileSync(join(folder, 'burner.csv'), csv)
  return folder
}

const record = (folder: string, name: string) =>
  readFileSync(join(folder, 'content', 'panels', name), 'utf8')

test('a logger’s file goes into the panel of that number, thinned, with where it came from', async () => {
  const folder = place()
  const args = ['import', 'burner.csv', '--lot', 'PN-1', '--test', 'log', '--write']
  const written = ['--written', '2026-02-11 14:10Z']
  expect(await lotfolio([...args, ...written], folder)).toMatchObject({ status: 0, stderr: '' })
  const text = record(folder, 'PN-1.yaml')
  expect(text).toContain('  - { at: 120 s, temperature: 500.0 °C }\n')
  expect(text).toContain('  - { at: 130 s, temperature: 540.0 °C }\n')
  expect(text).not.toContain('at: 121 s')
  expect(text).toContain('burner.csv')
  const again = await lotfolio([...args, ...written], folder)
  expect([again.status, again.stderr]).toEqual([1, expect.stringContaining('ALREADY_RECORDED')])

  const listed = await lotfolio(['explain', 'PN-1'], folder)
  expect(listed.stdout).toMatch(/backside-time {2}Time to the stated temperature: 2\.0+ min/u)
  const told = await lotfolio(['explain', 'PN-1', 'backside-time'], folder)
  expect(told.stdout).toContain('Line 9 of 10: 500.0 °C at 120 s.')
  expect(told.stdout).toContain('(process figure: private)')
  const other = await lotfolio(['explain', 'PN-1', 'char-ratio'], folder)
  expect(other).toMatchObject({ status: 1 })
  expect(other.stderr).toContain("PN-1 has no figure 'char-ratio'; it has backside-time")
})

test('a flake’s lot number is not that of a panel painted with it', async () => {
  const folder = place()
  const coated = blank
    .replace('PN-1', 'PN-2')
    .replace('blank', 'own')
    .replace('BARE', 'P1\nlot: EB-1')
  writeFileSync(join(folder, 'content', 'panels', 'PN-2.yaml'), coated)
  const run = await lotfolio(
    ['import', 'burner.csv', '--lot', 'EB-1', '--test', 'log', '--mapping', 'stand'],
    folder
  )
  // A batch has logs of its own, step by step.
  expect(run.stdout).toContain('batches/EB-1.yaml')
  expect(run.stdout).not.toContain('panels/')
  expect(record(folder, 'PN-2.yaml')).toBe(coated)
})

test('the next panel keeps code, plate, method and bare panels, and has no reading of the last', async () => {
  const folder = place()
  const coated = `${blank.replace('PN-1', 'PN-2').replace('blank', 'own').replace('BARE', 'P1\nlot: EB-1')}bare: [PN-1]\nsolids: { stated: 55 % }\nmass: { plate: 235.00 g, coated: 242.00 g }\nlog:\n  - { at: 0 s, temperature: 20.0 °C }\n  - { at: 15 s, temperature: 60.0 °C }\n`
  writeFileSync(join(folder, 'content', 'panels', 'PN-2.yaml'), coated)
  const run = await lotfolio(['new', 'panel', '--date', '2026-02-12'], folder)
  expect(run).toMatchObject({ status: 0 })
  expect(run.stdout).toContain('Fill in the blanks, take out what does not apply, and check')
  const text = record(folder, 'PN-3.yaml')
  for (const line of [
    'number: PN-3',
    'made: 2026-02-12',
    'code: P1',
    'bare: [PN-1]',
    'until: 500 °C',
    'solids: { stated: 55 % }',
    'how: one burner'
  ])
    expect(text).toContain(`${line}\n`)
  expect(text).not.toMatch(/log:|235\.00|60\.0/u)
})

test('the first panel of a workshop is blank', async () => {
  const folder = smallWorkplace()
  expect(await lotfolio(['new', 'panel'], folder)).toMatchObject({ status: 0 })
  const text = record(folder, 'PN-1.yaml')
  expect(text).toMatch(/^# yaml-language-server: \$schema=.*panel\.json\n/u)
  expect(text).toContain('number: PN-1\n')
  for (const field of ['kind', 'code', 'loading', 'dry-film', 'until', 'bare', 'char'])
    expect(text).toMatch(new RegExp(`^${field}:`, 'mu'))
})
