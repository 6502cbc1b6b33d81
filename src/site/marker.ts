/** The file that tells our own folders from anyone else's: a site is written over only where it is. */

import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { SiteDocument } from '../documents/types.ts'
import { version } from './project.ts'

export type Edition = SiteDocument['edition']

export const markerName = 'lotfolio-site.json'

/** Mark a folder as a site. Written last: a folder that holds it is whole. */
export async function writeMarker(folder: string, edition: Edition): Promise<void> {
  await writeFile(join(folder, markerName), `${JSON.stringify({ lotfolio: version, edition })}\n`)
}

/** The edition a folder holds, or undefined where it is no site of ours. */
export async function readMarker(folder: string): Promise<Edition | undefined> {
  try {
    const mark: unknown = JSON.parse(await readFile(join(folder, markerName), 'utf8'))
    return isMark(mark) ? mark.edition : undefined
  } catch {
    return undefined
  }
}

const isMark = (mark: unknown): mark is { edition: Edition } =>
  typeof mark === 'object' &&
  mark !== null &&
  'lotfolio' in mark &&
  'edition' in mark &&
  (mark.edition === 'public' || mark.edition === 'workshop')
