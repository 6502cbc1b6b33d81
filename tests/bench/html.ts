/** The pages of a site against the same templates rendered by Nunjucks alone and written. */

import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Eleventy from '@11ty/eleventy'
import type { SiteDocument } from '../../src/documents/types.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { lotfolio } from '../../src/site/plugin.ts'
import { steps } from '../../src/site/steps.ts'
import { generateWorkshop } from './generate.ts'
import { reportRatio, timeSides } from './measure.ts'
import { bareNunjucks } from './nunjucks.ts'

/** Papers cost what they cost: this is about pages. */
const pagesOnly = (site: SiteDocument): SiteDocument => ({
  ...site,
  lots: site.lots.map(page => ({ ...page, certificates: [] }))
})

export async function benchHtml(lots: number): Promise<string> {
  const { site } = buildDocuments(generateWorkshop(lots), { edition: 'public' })
  const pages = pagesOnly(site!)
  const folder = mkdtempSync(join(tmpdir(), 'lotfolio-bench-'))
  try {
    const timings = await timeSides(
      [
        {
          name: 'pages through Eleventy, data files too',
          run: () => throughEleventy(pages, folder)
        },
        { name: 'the same pages, Nunjucks alone, written', run: () => bareNunjucks(pages, folder) }
      ],
      5
    )
    refuseDifference(folder)
    return reportRatio(`Pages, ${lots} lots`, timings, 1.6)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function throughEleventy(site: SiteDocument, folder: string): Promise<void> {
  const eleventy = new Eleventy('templates', join(folder, 'eleventy'), {
    quietMode: true,
    configPath: false,
    config: config => config.addPlugin(lotfolio, { documents: () => Promise.resolve(site), steps })
  })
  eleventy.disableLogger()
  await eleventy.write()
}

/** Times of two things compare only where the two are the same: every page of either side. */
function refuseDifference(folder: string): void {
  const [eleventy, bare] = ['eleventy', 'bare'].map(side => pagesIn(join(folder, side)))
  const paths = new Set([...eleventy!.keys(), ...bare!.keys()])
  for (const path of paths)
    if (eleventy!.get(path) !== bare!.get(path))
      throw new Error(`the two sides wrote different pages at ${path}`)
}

/** Every page below a folder, by its path. */
const pagesIn = (folder: string): Map<string, string> =>
  new Map(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter(path => path.endsWith('.html'))
      .map(path => [path, readFileSync(join(folder, path), 'utf8')])
  )
