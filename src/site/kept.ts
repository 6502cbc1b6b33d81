/** What lies in the workshop edition's folder that no build makes: the papers of shipments. */

import { cp } from 'node:fs/promises'
import { join } from 'node:path'
import { isMissing } from './failure.ts'

/** Its name there. */
export const keptFolder = 'shipments'

/** Copy it into the site that takes the place of the one in `out`, so that a kill loses nothing. */
export async function carryOver(out: string, fresh: string): Promise<void> {
  await cp(join(out, keptFolder), join(fresh, keptFolder), { recursive: true }).catch(
    (error: unknown) => {
      if (!isMissing(error)) throw error
    }
  )
}
