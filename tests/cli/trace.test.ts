/** lotfolio trace, as a workshop uses it. */

import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { demoWorkplace, lotfolio } from '../site/workplace.ts'

const golden = 'tests/golden/trace-GR-26-01.txt'

describe('trace', () => {
  test('of the graphite lot reads as it should', async () => {
    const { status, stdout, stderr } = await lotfolio(['trace', 'GR-26-01'], demoWorkplace())
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    if (process.env.LOTFOLIO_UPDATE === '1') writeFileSync(golden, stdout)
    expect(stdout).toBe(readFileSync(golden, 'utf8').replaceAll('\r\n', '\n'))
  })

  test.each(['SA-26-01', 'EB-26-009', 'XR-26-04', 'FL-26-007'])('%s has one', async lot => {
    const place = demoWorkplace()
    const { stdout } = await lotfolio(['trace', lot, '--format', 'json'], place)
    const data = JSON.parse(stdout) as { lot: string; steps: Record<string, string>[] }
    expect(data.lot).toBe(lot)
    expect(data.steps.length).toBeGreaterThan(1)
    const csv = await lotfolio(['trace', lot, '--format', 'csv'], place)
    expect(parse(csv.stdout, { columns: true, record_delimiter: '\r\n' })).toEqual(data.steps)
    expect(stdout + csv.stdout).not.toMatch(/undefined|NaN|\[object/u)
  })

  test('writes the recall list where told, and never into a public site', async () => {
    const place = demoWorkplace()
    const told = await lotfolio(['trace', 'GR-26-01', '--recall', 'private/r.csv'], place)
    expect(told.stdout).toBe('Wrote private/r.csv: private, names customers\n')
    const rows = parse(readFileSync(join(place, 'private/r.csv'), 'utf8'), { columns: true }) as {
      row: string
      customer: string
    }[]
    expect(rows.filter(({ row }) => row === 'lot')).toHaveLength(21)
    expect(new Set(rows.flatMap(({ customer }) => customer || []))).toEqual(
      new Set(['Velmarrow Seals', 'Brindlecroft Coatings'])
    )
    writeFileSync(join(place, 'lotfolio-site.json'), '{"lotfolio":"0","edition":"public"}')
    for (const file of ['_site/r.csv', 'deeper/r.csv']) {
      const { status, stderr } = await lotfolio(['trace', 'GR-26-01', '--recall', file], place)
      expect(status).toBe(1)
      expect(stderr).toContain('lies in the public site, and a recall list names customers')
      expect(existsSync(join(place, file))).toBe(false)
    }
  })

  test('goes on where another record has a fault, and says so', async () => {
    const place = demoWorkplace()
    writeFileSync(join(place, 'content/batches/EB-26-007.yaml'), 'lot: [')
    const { status, stdout, stderr } = await lotfolio(['trace', 'GR-26-01'], place)
    expect(status).toBe(1)
    expect(stderr).toMatch(/^lotfolio: the records have \d+ errors?; the trace may lack something/u)
    expect(stdout).toContain('shipment SH-26-04')
  })

  test('of a lot that is not there is a failure in one line', async () => {
    const place = demoWorkplace()
    rmSync(join(place, 'content/materials/GR-26-03.yaml'))
    const { status, stderr } = await lotfolio(['trace', 'NO-1'], place)
    expect(status).toBe(1)
    expect(stderr).toContain('no sound record has the lot number NO-1\n')
  })
})
