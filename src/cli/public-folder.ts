/** Private papers stay out of a public site, one that is there or one that is to be built. */

import { basename, dirname } from 'node:path'
import { readMarker } from '../site/marker.ts'

/** Whether a path lies in, or is, a public site. */
export async function isPublic(path: string): Promise<boolean> {
  if (basename(path) === '_site' || (await readMarker(path)) === 'public') return true
  const above = dirname(path)
  return above !== path && isPublic(above)
}
