/** The scripts of the pages: each one classic file, so that a page opened from disk may load it. */

import { join } from 'node:path'
import { build } from 'esbuild'
import { projectFolder } from './project.ts'

/** Address of the script that checks certificates. */
export const verifyScript = 'assets/verify.js'

/** The text of that script, with all it needs. */
export async function verifyScriptText(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [join(projectFolder, 'src', 'browser', 'verify-page.ts')],
    absWorkingDir: projectFolder,
    bundle: true,
    format: 'iife',
    target: 'es2022',
    minify: true,
    charset: 'utf8',
    legalComments: 'none',
    write: false,
    logLevel: 'silent'
  })
  return outputFiles[0]!.text
}
