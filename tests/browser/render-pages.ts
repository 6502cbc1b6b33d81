/** Every page of a site written to a folder: the one place that knows how, for tests of pages. */

import { existsSync, readdirSync } from 'node:fs'
import { cp, mkdir, mkdtemp, rename, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, sep } from 'node:path'
import Eleventy, { type UserConfig } from '@11ty/eleventy'
import { inject } from 'vitest'
import { withLock } from '../../src/cli/lock.ts'
import type { SiteDocument } from '../../src/documents/types.ts'
import { listWriter } from '../../src/site/feeds.ts'
import { writeCommon } from '../../src/site/papers.ts'
import { steps } from '../../src/site/steps.ts'
import { emptySite, publicSite, workshopSite } from './sample-site.ts'

/** How the folders of rendered pages begin. */
const TEMPORARY = join(tmpdir(), 'lotfolio-pages-')

/** A setting that the site itself leaves alone. */
interface StrictTemplates {
  addNunjucksGlobal(name: string, value: unknown): void
  setNunjucksEnvironmentOptions(options: { readonly throwOnUndefined: boolean }): void
}

/**
 * Render `templates/` for one site.
 *
 * A misspelt name in a template fails here instead of printing nothing.
 *
 * @param base the same lots in English, where figures have the point that lists need
 * @returns the folder the pages were written to
 */
export async function renderPages(site: SiteDocument, base = site): Promise<string> {
  const folder = await mkdtemp(TEMPORARY)
  const eleventy = new Eleventy('templates', folder, {
    quietMode: true,
    configPath: false,
    config: (config: UserConfig) => {
      config.addGlobalData('site', site)
      config.addGlobalData('version', '0.1.0')
      const { filters, words } = steps.templateTools(site)
      for (const [name, filter] of Object.entries(filters)) config.addFilter(name, filter)
      const strict = config as UserConfig & StrictTemplates
      strict.addNunjucksGlobal('words', words)
      strict.setNunjucksEnvironmentOptions({ throwOnUndefined: true })
    }
  })
  await eleventy.write()
  await cp('templates/assets', join(folder, 'assets'), { recursive: true })
  // The register of a workshop that has issued nothing, and what the pages that check, find and compare load.
  await writeCommon(folder, { steps })
  const list = listWriter(site, folder, steps)
  await list.add(base.lots, site.lots)
  await list.finish()
  return folder
}

/** The HTML pages below a folder, in alphabetical order, with forward slashes. */
export const pagesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(path => path.endsWith('.html'))
    .map(path => path.split(sep).join('/'))
    .sort()

/** One page to test. */
export interface SamplePage {
  readonly site: string
  readonly folder: string
  /** From the folder: 'lots/X/index.html'. */
  readonly path: string
}

/** Whoever asks second waits until the first has rendered them. */
const PATIENCE_MS = 60_000

const samples = { public: publicSite, workshop: workshopSite, empty: emptySite }
export type SampleName = keyof typeof samples

/** Folder of a sample site, rendered once for all tests of a run: never to be written to. */
export async function sampleFolder(name: SampleName): Promise<string> {
  const place = join(inject('runFolder'), 'sample pages')
  const folder = join(place, name)
  await mkdir(place, { recursive: true })
  const render = async () => {
    if (!existsSync(folder)) await rename(await renderPages(samples[name]), folder)
  }
  await withLock(join(place, 'lock'), render, PATIENCE_MS)
  return folder
}

/** Every page of the sample sites asked for. */
export async function samplesOf(names: readonly SampleName[]): Promise<readonly SamplePage[]> {
  const found: SamplePage[] = []
  for (const site of names) {
    const folder = await sampleFolder(site)
    found.push(...pagesIn(folder).map(path => ({ site, folder, path })))
  }
  return found
}

/** Every page of every sample site, and of a built site named by LOTFOLIO_SITE. */
export async function samplePages(): Promise<readonly SamplePage[]> {
  const built = process.env['LOTFOLIO_SITE']
  const others = built ? pagesIn(built).map(path => ({ site: 'built', folder: built, path })) : []
  return [...(await samplesOf(['public', 'workshop', 'empty'])), ...others]
}

/** Remove the folder of rendered pages that are no samples. */
export async function removeFolder(folder: string): Promise<void> {
  if (folder.startsWith(TEMPORARY)) await rm(folder, { recursive: true })
}
