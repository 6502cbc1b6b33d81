/** How much memory a command that reads many records takes. */

import { setFlagsFromString } from 'node:v8'

/**
 * Take less: clean up sooner, as on a machine with much memory Node lets rubbish pile up to twice and
 * more of what is in use; and have Eleventy start no second thread, of use only where templates are
 * scripts that change while it runs. To be called before Eleventy is loaded.
 */
export function spareMemory(): void {
  setFlagsFromString('--heap-growing-percent=20')
  process.env.ELEVENTY_SKIP_ESM_RESOLVER = '1'
}
