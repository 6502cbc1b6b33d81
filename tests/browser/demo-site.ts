/** The demo's pages with all that their scripts load, in a folder; its papers are left blank. */

import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Eleventy from '@11ty/eleventy'
import type { SiteDocument } from '../../src/documents/types.ts'
import { lotfolio } from '../../src/site/plugin.ts'
import { steps } from '../../src/site/steps.ts'
import { demoRegister } from '../documents/demo.ts'

/** Write a site; the caller removes the folder. */
export async function writeDemoSite(site: SiteDocument): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'lotfolio-demo-'))
  const blank = { ...steps, certificatePdf: () => Promise.resolve(new Uint8Array()) }
  const eleventy = new Eleventy('templates', folder, {
    quietMode: true,
    configPath: false,
    config: config =>
      config.addPlugin(lotfolio, {
        documents: () => Promise.resolve(site),
        register: () => demoRegister,
        steps: blank
      })
  })
  eleventy.disableLogger()
  await eleventy.write()
  return folder
}
