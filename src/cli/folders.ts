/** Where the paths a user types start from. */

import { dirname, resolve } from 'node:path'

/** Whether npm runs this as a script of the project in the current folder. */
export const isRunByNpm = (environment: NodeJS.ProcessEnv): boolean =>
  environment['npm_command'] !== 'exec' &&
  environment['npm_package_json'] !== undefined &&
  dirname(environment['npm_package_json']) === process.cwd()

/** The folder the user stands in: npm moves to the project's and leaves the user's in INIT_CWD. */
export const userFolder = (environment: NodeJS.ProcessEnv): string =>
  (isRunByNpm(environment) ? environment['INIT_CWD'] : undefined) ?? process.cwd()

/** A folder as typed, from where the user stands; or the default one, in the current folder. */
export const folderFrom = (typed: string | undefined, fallback: string): string =>
  typed === undefined ? resolve(fallback) : resolve(userFolder(process.env), typed)
