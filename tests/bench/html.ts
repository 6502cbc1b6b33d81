/** The pages of a site against the same templates rendered by Nunjucks alone and written. */

import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Eleventy from '@11ty/eleventy'
import type { SiteDocument } from '../../src/documents/types.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { lotfolio } from '../../src/site/plugin.ts'
import { steps, type Steps } from '../../src/site/steps.ts'
import { generateWorkshop } from './generate.ts'
import { reportRatio, timeSides } from './measure.ts'
import { bareNunjucks } from './nunjucks.ts'

const nothing = new Uint8Array()

/** Papers cost what they cost: this is about pages. */
const pagesOnly: Steps = {
  ...steps,
  certificatePdf: () => Promise.resolve(nothing),
  statementPdf: () => nothing,
  labelPdf: () => nothing,
  datasheetPdf: () => nothing
}

export async function benchHtml(lots: number): Promise<string> {
  const { site } = buildDocuments(generateWorkshop(lots), { edition: 'public' })
  const folder = mkdtempSync(join(tmpdir(), 'lotfolio-bench-'))
  try {
    const timings = await timeSides(
      [
        {
          name: 'pages through Eleventy, data files too',
          run: () => throughEleventy(site!, folder)
        },
        { name: 'the same pages, Nunjucks alone, written', run: () => bareNunjucks(site!, folder) }
      ],
      5
    )
    refuseDifference(folder)
    return reportRatio(`Pages, ${lots} lots`, timings, 1.6)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/**
 * Write the pages of a site on both sides of the bench, once.
 *
 * @throws Error naming a page that one side has otherwise, or not at all
 */
export async function requireSamePages(site: SiteDocument, folder: string): Promise<void> {
  await throughEleventy(site, folder)
  bareNunjucks(site, folder)
  refuseDifference(folder)
}

async function throughEleventy(site: SiteDocument, folder: string): Promise<void> {
  const eleventy = new Eleventy('templates', join(folder, 'eleventy'), {
    quietMode: true,
    configPath: false,
    config: config =>
      config.addPlugin(lotfolio, { documents: () => Promise.resolve(site), steps: pagesOnly })
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
