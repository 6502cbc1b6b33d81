/** An Eleventy that says nothing and reads no configuration but ours. */

import type Eleventy from '@11ty/eleventy'
import type { UserConfig } from '@11ty/eleventy'

/**
 * One for a folder of templates, or a single one.
 *
 * The package is ES modules alone: what the bundle in CommonJS would take in its place makes no site, so
 * it is imported here, when a site is written, and nowhere else.
 */
export async function quietEleventy(
  input: string,
  output: string,
  config: (config: UserConfig) => void
): Promise<Eleventy> {
  const { default: Ours } = await import('@11ty/eleventy')
  const eleventy = new Ours(input, output, { quietMode: true, configPath: false, config })
  eleventy.disableLogger()
  return eleventy
}
