/** Ten thousand invented lots as a page that finds them has them, for the benchmark of finding. */

import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Eleventy from '@11ty/eleventy'
import { lotListWriter } from '../../src/data/lot-list.ts'
import { lotLists } from '../../src/documents/lot-lists.ts'
import type { LotPage, ResultRow, SiteDocument } from '../../src/documents/types.ts'
import { lotfolio } from '../../src/site/plugin.ts'
import { steps } from '../../src/site/steps.ts'
import { lotPage, siteDocument } from '../fixtures/documents.ts'

/** Quantities of each product: title, unit, middle, spread, digits behind the point. */
const measured: Readonly<
  Record<'flake' | 'foil', readonly [string, string, number, number, number][]>
> = {
  flake: [
    ['expansion-volume', 'mL/g', 265, 12, 1],
    ['free-acid', '%', 0.05, 0.02, 4],
    ['slurry-ph', '', 4.2, 0.3, 2],
    ['moisture', '%', 0.4, 0.1, 3],
    ['volatile', '%', 14, 1, 2],
    ['ash', '%', 0.6, 0.1, 3],
    ['fixed-carbon', '%', 85, 1, 2],
    ['onset', '°C', 190, 12, 1]
  ],
  foil: [
    ['thickness', 'mm', 0.5, 0.01, 4],
    ['foil-density', 'g/cm³', 1, 0.03, 4],
    ['areal-mass', 'g/m²', 500, 15, 2],
    ['porosity', '%', 55, 1, 2],
    ['tensile-along', 'MPa', 5, 0.4, 2],
    ['leachable-chloride', 'mg/kg', 20, 6, 1]
  ]
}

/** Numbers from 0 to 1 that look like chance, the same in every run. */
function chance(): () => number {
  let state = 1
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647
}

/** Invented lots with figures as varied as real ones: nothing about them can be written short. */
function inventedLots(count: number): LotPage[] {
  const next = chance()
  const [pattern] = lotPage.document.results
  return Array.from({ length: count }, (_, index) => {
    const product = index % 2 === 0 ? 'flake' : 'foil'
    const day = new Date(Date.UTC(2031, 11, 31) - Math.floor(index / 5) * 86_400_000)
    const made = day.toISOString().slice(0, 10)
    const number = String(count - index).padStart(5, '0')
    const lot = `${product === 'flake' ? 'EB' : 'FL'}-${made.slice(2, 4)}-${number}`
    const results = measured[product].map(([key, unit, middle, spread, places]): ResultRow => ({
      ...pattern!,
      key,
      title: key,
      unit: { printed: unit, ucum: unit },
      value: { exact: '', printed: (middle + spread * (next() - 0.5) * 4).toFixed(places) },
      expandedUncertainty: {
        exact: '',
        printed: ((10 + 89 * next()) / 10 ** (places + 1)).toFixed(places)
      }
    }))
    return lotOf(lot, made, `${product}-${100 + 50 * Math.floor(next() * 3)}`, results)
  })
}

function lotOf(lot: string, made: string, grade: string, results: readonly ResultRow[]): LotPage {
  const document = {
    ...lotPage.document,
    lot,
    made,
    results,
    url: `lots/${lot}/`,
    grade: { ...lotPage.document.grade!, id: grade },
    chain: []
  }
  const key = results.slice(0, 2).map(({ key, title, value, unit }) => ({
    key,
    label: title,
    text: `${value!.printed} ${unit.printed}`
  }))
  const certificate = lotPage.certificates[0]!
  return {
    ...lotPage,
    document,
    summary: { ...lotPage.summary, lot, made, grade, url: document.url, key },
    certificates: [
      { ...certificate, document: { ...certificate.document, number: `CT-${lot.slice(3)}` } }
    ]
  }
}

/** The pages of all lots, without those of each. */
export async function writeArchive(count: number, folder: string): Promise<void> {
  const lots = inventedLots(count)
  const summaries = lots.map(({ summary }) => summary)
  const site: SiteDocument = { ...siteDocument, summaries, ...lotLists(summaries), lots: [] }
  const eleventy = new Eleventy('templates', folder, {
    quietMode: true,
    configPath: false,
    config: config => config.addPlugin(lotfolio, { documents: () => Promise.resolve(site), steps })
  })
  eleventy.disableLogger()
  await eleventy.write()
  const list = lotListWriter(site)
  list.add(lots)
  for (const { path, text } of list.files()) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
}
