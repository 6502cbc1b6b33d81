/** The demo's pages with all that their scripts load, in a folder; its papers are left blank. */

import { existsSync } from 'node:fs'
import { rename } from 'node:fs/promises'
import { join } from 'node:path'
import Eleventy from '@11ty/eleventy'
import { inject } from 'vitest'
import { withLock } from '../../src/cli/lock.ts'
import type { SiteDocument } from '../../src/documents/types.ts'
import { lotfolio } from '../../src/site/plugin.ts'
import { steps } from '../../src/site/steps.ts'
import { demoRegister, publicSite, workshopSite } from '../documents/demo.ts'

const sites = { public: publicSite, workshop: workshopSite }

/** Whoever asks second waits until the first has written it. */
const PATIENCE_MS = 120_000

/** The folder of an edition, written once for all tests of a run: to be read, never written to. */
export async function demoSite(edition: keyof typeof sites): Promise<string> {
  const folder = join(inject('runFolder'), `demo, ${edition}`)
  const write = async () => {
    if (existsSync(folder)) return
    await writeSite(sites[edition], `${folder}, new`)
    await rename(`${folder}, new`, folder)
  }
  await withLock(`${folder}, lock`, write, PATIENCE_MS)
  return folder
}

async function writeSite(site: SiteDocument, folder: string): Promise<void> {
  const blank = {
    ...steps,
    certificatePdf: () => Promise.resolve(new Uint8Array()),
    statementPdf: () => new Uint8Array()
  }
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
}
