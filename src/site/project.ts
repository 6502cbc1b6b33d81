/** Where the program itself lives: its templates and its version. */

import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Folder that holds package.json, templates/ and src/. */
export const projectFolder = join(import.meta.dirname, '..', '..')

export const templatesFolder = join(projectFolder, 'templates')

const packageText = readFileSync(join(projectFolder, 'package.json'), 'utf8')

/** Version of the program: '0.1.0'. */
export const version = (JSON.parse(packageText) as { version: string }).version
