/** What plain Eleventy needs beyond the plugin: the public site's documents, and a look at the folder. */

import { noRegister, openRegister } from '../documents/issued.ts'
import type { SiteDocument } from '../documents/types.ts'
import { formatProblem, isError } from '../problem.ts'
import { archiveFor, otherwiseProblems } from './originals.ts'
import { realFolder, refuseUnfit } from './output-folder.ts'
import type { PluginOptions } from './plugin.ts'
import { templatesFolder } from './project.ts'
import { comparePublished } from './published.ts'
import { readContent } from './read-content.ts'
import { readPictures } from './read-pictures.ts'
import { readRegister } from './read-register.ts'
import type { Steps } from './steps.ts'
import { emptyFolder } from './swap.ts'

/**
 * Options of the plugin for `npx eleventy`: the public edition of a content folder. Problems go to
 * standard error, and errors among them end the build before anything is written.
 */
export function publicSite(content: string, steps: Steps): PluginOptions {
  let register = noRegister
  const documents = async (output: string): Promise<SiteDocument> => {
    const out = realFolder(output)
    await refuseUnfit(out, [realFolder(content), realFolder(templatesFolder)], 'public')
    register = await openRegister(await readRegister(content))
    const pictures = await readPictures(content)
    const made = steps.buildDocuments(await readContent(content), {
      edition: 'public',
      register,
      pictures
    })
    const { site } = made
    const problems = [...made.problems, ...(site ? await comparePublished(register, out) : [])]
    for (const problem of problems) process.stderr.write(`${formatProblem(problem)}\n\n`)
    if (!site || problems.some(isError)) throw refusal(problems.filter(isError).length)
    await emptyFolder(out)
    return site
  }
  return {
    documents,
    steps,
    register: () => register,
    archive: archiveFor(content),
    content,
    otherwise: one => {
      for (const problem of otherwiseProblems(register.file, [one]))
        process.stderr.write(`${formatProblem(problem)}\n\n`)
    }
  }
}

/** Eleventy shows this error without its stack. */
const refusal = (errors: number): Error =>
  Object.assign(new Error(`the records have ${errors} error(s); nothing was written`), {
    skipOriginalStack: true
  })
