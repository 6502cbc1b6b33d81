/** From a content folder to a finished site in the place of the old one, or to what is wrong with it. */

import { basename, dirname, join } from 'node:path'
import { type IssuedRegister, openRegister } from '../documents/issued.ts'
import type { SiteDocument } from '../documents/types.ts'
import type { SiteOptions } from '../pipeline.ts'
import type { Problem } from '../problem.ts'
import { plainFault } from './failure.ts'
import { carryOver } from './kept.ts'
import { archiveFor, type Otherwise, otherwiseProblems } from './originals.ts'
import { realFolder, refuseUnfit } from './output-folder.ts'
import { paperCache } from './paper-cache.ts'
import type { Progress } from './papers.ts'
import { lotfolio } from './plugin.ts'
import { templatesFolder } from './project.ts'
import { quietEleventy } from './quiet-eleventy.ts'
import { comparePublished } from './published.ts'
import { readContent } from './read-content.ts'
import { readPictures } from './read-pictures.ts'
import { readRegister } from './read-register.ts'
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
  /** Folder of the papers as first drawn; 'archive' beside the content folder by default. */
  readonly archive?: string
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
    const register = await openRegister(await readRegister(options.content, options.base))
    const pictures = await readPictures(options.content)
    const ready = { ...options, templates, register, pictures }
    const { site, problems } = steps.buildDocuments(files, ready)
    const later = site ? await comparePublished(register, out) : []
    if (!site || later.length > 0) return { problems: [...problems, ...later], files: files.length }
    const papers = await replaceSite(site, out, ready, steps)
    return { problems: [...problems, ...papers], files: files.length, site }
  } catch (error) {
    throw plainFault(error)
  }
}

interface Ready extends BuildOptions {
  readonly templates: string
  readonly register: IssuedRegister
}

async function replaceSite(site: SiteDocument, out: string, options: Ready, steps: Steps) {
  const fresh = await makeTemporary(out)
  try {
    const notes = await writeSite(site, fresh, { ...options, out }, steps)
    if (site.edition === 'workshop') await carryOver(out, fresh)
    await swapIn(fresh, out)
    return notes
  } catch (error) {
    await removeFolder(fresh)
    throw error
  }
}

async function writeSite(site: SiteDocument, folder: string, options: Ready, steps: Steps) {
  const { templates, progress, out, register, archive, content } = options
  const notes: Otherwise[] = []
  const cache = paperCache(
    join(dirname(out), '.cache', 'lotfolio', `${basename(out)}-${site.edition}`)
  )
  const eleventy = await quietEleventy(templates, folder, config =>
    config.addPlugin(lotfolio, {
      documents: () => Promise.resolve(site),
      register: () => register,
      archive: archive ?? archiveFor(content),
      content,
      otherwise: one => notes.push(one),
      steps,
      templates,
      cache,
      ...(progress && { progress })
    })
  )
  await eleventy.write()
  return otherwiseProblems(register.file, notes)
}
