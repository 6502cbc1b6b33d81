/**
 * The public site with plain Eleventy: `npx eleventy --config=eleventy.config.ts`.
 *
 * `npm run build` writes the same site, and the old one stays until the new one is whole. What is to
 * hold for both belongs in src/site/plugin.ts.
 */

import type { UserConfig } from '@11ty/eleventy'
import { publicSite } from './src/site/plain-eleventy.ts'
import { directories, lotfolio } from './src/site/plugin.ts'
import { steps } from './src/site/steps.ts'

export default function configure(config: UserConfig) {
  config.addPlugin(lotfolio, publicSite('content', steps))
  return { dir: directories }
}
