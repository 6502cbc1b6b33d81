/** Every figure of the demo's lots, recomputed by a script in another language. */

import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import { afterAll, expect, test } from 'vitest'
import { lotDataOf, lotDataText, type LotData } from '../../src/documents/lot-data.ts'
import { panelDataOf, type PanelData } from '../../src/documents/panel-data.ts'
import { workshopSite } from '../documents/demo.ts'
import { sized } from '../thorough.ts'
import { requirePython } from '../tools.ts'

const python = requirePython(
  ['numpy', 'scipy', 'yaml'],
  'python3 python3-numpy python3-scipy python3-yaml'
)
const script = join(import.meta.dirname, 'recompute.py')
const content = join(import.meta.dirname, '../../content')

const lots = workshopSite.lots.map(page => lotDataOf(page, workshopSite))
const panels = [...workshopSite.panelPages].map(panelDataOf)
const folders: string[] = []
/** Python loads its libraries from disk, and draws. */
const PATIENCE_MS = 300_000
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

async function recompute(
  data: readonly LotData[],
  draws: number,
  panelData: readonly PanelData[] = []
) {
  const site = mkdtempSync(join(tmpdir(), 'recompute-'))
  folders.push(site)
  for (const one of data) {
    mkdirSync(join(site, one.lot))
    writeFileSync(join(site, one.lot, 'data.json'), lotDataText(one))
  }
  for (const one of panelData) {
    mkdirSync(join(site, one.panel))
    writeFileSync(join(site, one.panel, 'data.json'), JSON.stringify(one))
  }
  const run = spawn(python!, ['-B', script, content, site, `${draws}`], {
    env: { ...process.env, PYTHONIOENCODING: 'utf-8' }
  })
  const [counts, faults, [status]] = await Promise.all([
    text(run.stdout),
    text(run.stderr),
    once(run, 'close')
  ])
  return { status, counts, faults: faults.trim().split('\n') }
}

/** One lot's data with one figure written anew. */
function altered(lot: string, key: string, change: (of: Quantity) => Partial<Quantity>): LotData {
  const data = lots.find(one => one.lot === lot)!
  const part = data.process?.[key] ? 'process' : 'quantities'
  const figure = data[part]![key]!
  return { ...data, [part]: { ...data[part], [key]: { ...figure, ...change(figure) } } }
}

/** One lot's data with the odds of its sampling plan times something. */
function alteredPlan(lot: string, times: number): LotData {
  const data = lots.find(one => one.lot === lot)!
  const { plan, ...visual } = data.visual!
  const odds = { ...plan!, acceptedAtAql: plan!.acceptedAtAql * times }
  return { ...data, visual: { ...visual, plan: odds } }
}

/** One panel's data with one number of a figure times something. */
function alteredPanel(
  panel: string,
  key: string,
  what: 'value' | 'standardUncertainty' | 'expandedUncertainty',
  times: number
): PanelData {
  const data = panels.find(one => one.panel === panel)!
  const figure = data.quantities[key]!
  const quantities = { ...data.quantities, [key]: { ...figure, [what]: figure[what]! * times } }
  return { ...data, quantities }
}

type Quantity = LotData['quantities'][string]

test.skipIf(!python)(
  'it comes to the same, and to nothing it does not know',
  async () => {
    const { status, counts, faults } = await recompute(lots, sized(5000, 20_000), panels)
    console.log(counts)
    expect(faults).toEqual([''])
    expect(status).toBe(0)
    const [, figures, kinds] = /(\d+) figures of (\d+) kinds/u.exec(counts)!
    expect(Number(figures)).toBeGreaterThanOrEqual(590)
    expect(Number(kinds)).toBeGreaterThanOrEqual(90)
  },
  PATIENCE_MS
)

test.skipIf(!python)(
  'it tells of every figure that is off, missing or new',
  async () => {
    const batch = lots.find(({ lot }) => lot === 'EB-26-015')!
    const { sulfur, ...rest } = batch.quantities
    const { status, faults } = await recompute(
      [
        { ...batch, quantities: { ...rest, 'another-figure': sulfur! } },
        altered('EB-26-001', 'free-acid', ({ value }) => ({ value: value! * (1 + 3e-9) })),
        altered('EB-26-002', 'volatile', of => ({
          standardUncertainty: of.standardUncertainty! * 1.0001
        })),
        altered('EB-26-003', 'ash', ({ effectiveDegreesOfFreedom: df }) => ({
          effectiveDegreesOfFreedom: df! + 1
        })),
        altered('EB-26-004', 'mass-yield', of => ({
          expandedUncertainty: of.expandedUncertainty! * 0.999
        })),
        altered('FL-26-001', 'foil-density', of => ({
          conformityProbability: of.conformityProbability! - 0.001
        })),
        alteredPlan('FL-26-016', 1 + 1e-8)
      ],
      500,
      [
        alteredPanel('PN-26-03', 'active-mass', 'value', 1 + 3e-9),
        alteredPanel('PN-26-04', 'gain-per-film', 'standardUncertainty', 1.0001),
        alteredPanel('PN-26-05', 'char-efficiency', 'expandedUncertainty', 0.999)
      ]
    )
    expect(status).toBe(1)
    const told = faults.filter(fault => !fault.endsWith('no data.json of it in the site'))
    expect(told.map(fault => fault.replace(/ is .*/u, ''))).toEqual([
      'EB-26-001 free-acid: value',
      'EB-26-002 volatile: standard uncertainty',
      'EB-26-003 ash: degrees of freedom',
      'EB-26-004 mass-yield: expanded uncertainty',
      'EB-26-015 sulfur: recomputed, but not in the data',
      'EB-26-015 another-figure: this script does not know how to recompute it',
      'FL-26-001 foil-density: probability of conformity',
      'FL-26-016 visual: accepted at the AQL',
      'PN-26-03 active-mass: value',
      'PN-26-04 gain-per-film: standard uncertainty',
      'PN-26-05 char-efficiency: expanded uncertainty'
    ])
    expect(faults.length - told.length).toBe(lots.length + panels.length - 10)
  },
  PATIENCE_MS
)
