/** From a content folder to a finished site in the place of the old one, or to what is wrong with it. */

import { basename, dirname, join } from 'node:path'
import Eleventy from '@11ty/eleventy'
import type { SiteDocument } from '../documents/types.ts'
import type { SiteOptions } from '../pipeline.ts'
import type { Problem } from '../problem.ts'
import { plainFault } from './failure.ts'
import { realFolder, refuseUnfit } from './output-folder.ts'
import { paperCache } from './paper-cache.ts'
import type { Progress } from './papers.ts'
import { lotfolio } from './plugin.ts'
import { templatesFolder } from './project.ts'
import { readContent } from './read-content.ts'
import type { Steps } from './steps.ts'
import { makeTemporary, recover, removeFolder, swapIn } from './swap.ts'

export interface BuildOptions extends SiteOptions {
  readonly content: string
  readonly out: string
  /** Folder the paths in problems are written from; the current one by default. */
  readonly base?: string
  /** Templates other than the project's own. */
  readonly templates?: string
  readonly progress?: Progress
}

export interface BuildResult {
  readonly problems: readonly Problem[]
  /** Record files read. */
  readonly files: number
  /** Absent when an error among the problems stopped the build: then nothing was written. */
  readonly site?: SiteDocument
}

/**
 * Build a site.
 *
 * @throws Failure where a folder is unfit, unreadable or unwritable; the old site is then untouched
 */
export async function buildSite(options: BuildOptions, steps: Steps): Promise<BuildResult> {
  const out = realFolder(options.out)
  const templates = options.templates ?? templatesFolder
  try {
    await refuseUnfit(out, [realFolder(options.content), realFolder(templates)], options.edition)
    await recover(out)
    const files = await readContent(options.content, options.base)
    const { site, problems } = steps.buildDocuments(files, options)
    if (site) await replaceSite(site, out, { ...options, templates }, steps)
    return { problems, files: files.length, ...(site && { site }) }
  } catch (error) {
    throw plainFault(error)
  }
}

type Ready = BuildOptions & { readonly templates: string }

async function replaceSite(site: SiteDocument, out: string, options: Ready, steps: Steps) {
  const fresh = await makeTemporary(out)
  try {
    await writeSite(site, fresh, { ...options, out }, steps)
    await swapIn(fresh, out)
  } catch (error) {
    await removeFolder(fresh)
    throw error
  }
}

async function writeSite(site: SiteDocument, folder: string, options: Ready, steps: Steps) {
  const { templates, progress, out } = options
  const cache = paperCache(
    join(dirname(out), '.cache', 'lotfolio', `${basename(out)}-${site.edition}`)
  )
  const eleventy = new Eleventy(templates, folder, {
    quietMode: true,
    configPath: false,
    config: config =>
      config.addPlugin(lotfolio, {
        documents: () => Promise.resolve(site),
        steps,
        templates,
        cache,
        ...(progress && { progress })
      })
  })
  eleventy.disableLogger()
  await eleventy.write()
}
