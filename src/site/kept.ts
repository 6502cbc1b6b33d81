/** What lies in the workshop edition's folder that no build makes: papers that other commands wrote there. */

import { cp } from 'node:fs/promises'
import { join } from 'node:path'
import { isMissing } from './failure.ts'

/** Their folders there: papers of shipments, bench sheets, recall lists. */
export const keptFolders = { shipments: 'shipments', sheets: 'sheets', recalls: 'recalls' } as const

export const isKept = (name: string): boolean => Object.values<string>(keptFolders).includes(name)

/** Copy them into the site that takes the place of the one in `out`, so that a kill loses nothing. */
export async function carryOver(out: string, fresh: string): Promise<void> {
  for (const name of Object.values(keptFolders))
    await cp(join(out, name), join(fresh, name), { recursive: true }).catch((error: unknown) => {
      if (!isMissing(error)) throw error
    })
}
