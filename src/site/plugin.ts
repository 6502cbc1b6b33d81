/**
 * The Eleventy plugin: documents in, pages and papers out.
 *
 * Eleventy writes the pages from templates/, the plugin the files beside them into the same folder.
 * `lotfolio build` and plain Eleventy both go through it, so they write the same site.
 */

import { cp, readdir } from 'node:fs/promises'
import { join, relative } from 'node:path'
import type { UserConfig } from '@11ty/eleventy'
import type { SiteDocument } from '../documents/types.ts'
import { codePrint } from './code-print.ts'
import { feedPaths, listWriter, tableWriter, writeFeeds } from './feeds.ts'
import {
  cachedPageWriter,
  LOTS_AT_A_TIME,
  lotPageWriter,
  type LotPageWriter,
  lotTemplate
} from './lot-pages.ts'
import { markerName, writeMarker } from './marker.ts'
import { pathRegister } from './output-paths.ts'
import {
  commonPaths,
  type PaperTools,
  paperPaths,
  statementWriter,
  paperWriter,
  writeCommon,
  writeDatasheets,
  writePanelData
} from './papers.ts'
import { projectFolder, templatesFolder, version } from './project.ts'
import { quietEleventy } from './quiet-eleventy.ts'
import { useTemplates } from './templates.ts'

export interface PluginOptions extends PaperTools {
  /** The site's documents, asked for before each build; `output` is the folder Eleventy writes to. */
  readonly documents: (output: string) => Promise<SiteDocument>
  /** Templates other than the project's own. */
  readonly templates?: string
}

/** Folders for Eleventy's configuration file, from the current folder. No output: that is the caller's. */
export const directories = { input: fromHere(templatesFolder), includes: '_includes' }

/** A site in the languages of its pages, the first at the root. */
const formsOf = (site: SiteDocument): readonly SiteDocument[] => site.forms ?? [site]

/** Set Eleventy up for a site. */
export function lotfolio(config: UserConfig, options: PluginOptions): void {
  const templates = options.templates ?? templatesFolder
  let site: SiteDocument
  const first = () => formsOf(site)[0]!
  setUp(config, first)
  useTemplates(
    config,
    () => options.steps.templateTools(first()),
    page => page
  )
  config.ignores.add(`${fromHere(templates)}/${lotTemplate}`)
  config.on('eleventy.before', async event => {
    site = await options.documents(event.directories.output)
  })
  config.on('eleventy.after', async ({ results, directories: { output } }) => {
    const take = pathRegister()
    const ready = { ...options, templates }
    const own = results.flatMap(({ outputPath }) => outputPath || [])
    const pages = pathsIn(output, [...own, ...(await writeOtherForms(site, output, ready))])
    take([...pages, ...commonPaths, ...(await assetPaths(templates)), markerName])
    take(feedPaths(site))
    await copyAssets(templates, output)
    await writeCommon(output, options)
    for (const form of formsOf(site)) take(await writeDatasheets(form, output, options))
    take(await writePanelData(site, output))
    const lotPages = await writeLots(site, output, ready, take)
    take(await writeFeeds(first(), output, options.steps, [...pages, ...lotPages]))
    await writeMarker(output, site.edition)
  })
}

/** What every page may use. */
function setUp(config: UserConfig, site: () => SiteDocument): void {
  config.setQuietMode(true)
  config.setUseGitIgnore(false)
  // Templates are kept compiled here; Eleventy would look each page's up by paths worked out anew.
  config.setUseTemplateCache(false)
  config.setTemplateFormats(['njk'])
  config.addGlobalData('version', version)
  config.addGlobalData('site', () => byReference(site()))
}

type Ready = PluginOptions & { readonly templates: string }

/** Pages but those of lots of each language beside the first, in folders of their own; the files written. */
async function writeOtherForms(
  site: SiteDocument,
  output: string,
  { templates, steps }: Ready
): Promise<string[]> {
  const written: string[] = []
  for (const form of formsOf(site).slice(1)) {
    const eleventy = await quietEleventy(templates, join(output, form.folder), config => {
      setUp(config, () => form)
      useTemplates(
        config,
        () => steps.templateTools(form),
        page => page
      )
      // A server sends one page for every wrong address: the root's.
      for (const name of [lotTemplate, '404.njk'])
        config.ignores.add(`${fromHere(templates)}/${name}`)
    })
    const [, pages] = await eleventy.write()
    written.push(...pages.flatMap(({ outputPath }) => outputPath || []))
  }
  return written
}

/** Pages and papers of all lots, of some at a time, to let go of them; the pages' paths. */
async function writeLots(
  site: SiteDocument,
  output: string,
  options: Ready,
  take: (paths: readonly string[]) => void
): Promise<string[]> {
  const total = site.lots.length
  const forms = await Promise.all(
    formsOf(site).map(async form => ({
      form,
      writePages: await pageWriter(form, join(output, form.folder), options),
      list: listWriter(form, output, options.steps)
    }))
  )
  const writePapers = await paperWriter(site, output, options)
  const writeStatements = await statementWriter(output, options)
  const addToTable = await tableWriter(site, output, options.steps)
  const written: string[] = []
  for (let from = 0; from < total; from += LOTS_AT_A_TIME) {
    const lots = site.lots.slice(from, from + LOTS_AT_A_TIME)
    take(lots.flatMap(paperPaths))
    for (const { form, writePages, list } of forms) {
      const shown = form.lots === site.lots ? lots : form.lots.slice(from, from + LOTS_AT_A_TIME)
      const pages = pathsIn(output, await writePages(shown))
      take(pages)
      take(await writeStatements(shown))
      written.push(...pages)
      await list.add(lots, shown)
    }
    await addToTable(lots)
    for (const [index, lot] of lots.entries()) {
      await writePapers(lot)
      options.progress?.(from + index + 1, total)
    }
  }
  for (const { list } of forms) take(await list.finish())
  await options.cache?.prune()
  return written
}

/** A writer of the lots' pages, which takes those of an earlier build where it may. */
async function pageWriter(
  site: SiteDocument,
  output: string,
  { templates, steps, cache }: Ready
): Promise<LotPageWriter> {
  const write = await lotPageWriter(templates, output, site, (config, shown) => {
    setUp(config, () => shown)
    // Twenty pages wait to be written: as bytes they are one piece each, not thousands of strings.
    useTemplates(
      config,
      () => steps.templateTools(shown),
      page => Buffer.from(page, 'utf8')
    )
  })
  if (!cache) return write
  const { producer, edition, asOf, language, folder, others } = site
  const said = JSON.stringify({ producer, edition, asOf, language, folder, others, version })
  return cachedPageWriter(write, output, `${await pagePrint(templates)} ${said}`, cache)
}

/** Fingerprint of the code and templates behind a page. */
const pagePrint = (templates: string): Promise<string> =>
  codePrint([
    templates,
    ...['archive', 'data', 'documents', 'figures', 'html', 'site'].map(folder =>
      join(projectFolder, 'src', folder)
    )
  ])

/** Eleventy copies plain objects it is given as data, once a page; it leaves others as they are. */
const byReference = (site: SiteDocument): SiteDocument => Object.create(site) as SiteDocument

/** Files of a site, as paths in it. */
const pathsIn = (output: string, files: readonly string[]): string[] =>
  files.map(file => relative(output, file).replaceAll('\\', '/'))

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
  return relative(process.cwd(), path).replaceAll('\\', '/') || '.'
}
