/**
 * The Eleventy plugin: documents in, pages and papers out.
 *
 * Eleventy writes the pages from templates/, the plugin the files beside them into the same folder.
 * `lotfolio build` and plain Eleventy both go through it, so they write the same site.
 */

import { cp, readdir } from 'node:fs/promises'
import { join, relative } from 'node:path'
import type { BuildEvent, UserConfig } from '@11ty/eleventy'
import type { SiteDocument } from '../documents/types.ts'
import { markerName, writeMarker } from './marker.ts'
import { refuseDuplicates } from './output-paths.ts'
import { type PaperTools, paperPaths, writePapers } from './papers.ts'
import { templatesFolder, version } from './project.ts'

export interface PluginOptions extends PaperTools {
  /** The site's documents, asked for before each build; `output` is the folder Eleventy writes to. */
  readonly documents: (output: string) => Promise<SiteDocument>
  /** Templates other than the project's own. */
  readonly templates?: string
}

/** Folders for Eleventy's configuration file, from the current folder. No output: that is the caller's. */
export const directories = { input: fromHere(templatesFolder), includes: '_includes' }

/** Set Eleventy up for a site. */
export function lotfolio(config: UserConfig, options: PluginOptions): void {
  const templates = options.templates ?? templatesFolder
  let site: SiteDocument
  config.setQuietMode(true)
  config.setUseGitIgnore(false)
  config.setTemplateFormats(['njk'])
  // Straight into Nunjucks: a filter added to Eleventy copies page data at every call.
  config.amendLibrary('njk', nunjucks => {
    for (const [name, filter] of Object.entries(options.steps.filters))
      nunjucks.addFilter(name, filter)
  })
  config.addGlobalData('version', version)
  config.addGlobalData('site', () => site)
  config.on('eleventy.before', async event => {
    site = byReference(await options.documents(event.directories.output))
  })
  config.on('eleventy.after', async event => {
    const output = event.directories.output
    refuseDuplicates([
      ...pagePaths(event),
      ...paperPaths(site),
      ...(await assetPaths(templates)),
      markerName
    ])
    await copyAssets(templates, output)
    await writePapers(site, output, options)
    await writeMarker(output, site.edition)
  })
}

/** Eleventy copies plain objects it is given as data, once a page; it leaves others as they are. */
const byReference = (site: SiteDocument): SiteDocument =>
  Object.assign(Object.create(documentPrototype) as object, site)

const documentPrototype = Object.freeze({})

function pagePaths({ results, directories: { output } }: BuildEvent): string[] {
  return results.flatMap(({ outputPath }) =>
    outputPath ? [relative(output, outputPath).replaceAll('\\', '/')] : []
  )
}

async function assetPaths(templates: string): Promise<string[]> {
  const folder = join(templates, 'assets')
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  return entries
    .filter(entry => entry.isFile())
    .map(entry => `assets/${relative(folder, join(entry.parentPath, entry.name))}`)
    .map(path => path.replaceAll('\\', '/'))
}

/** Not left to Eleventy, which lets a full disk here end the process before anyone can clear up. */
async function copyAssets(templates: string, output: string): Promise<void> {
  await cp(join(templates, 'assets'), join(output, 'assets'), { recursive: true })
}

/** A path as Eleventy takes it: from the current folder. */
function fromHere(path: string): string {
  return relative(process.cwd(), path) || '.'
}
