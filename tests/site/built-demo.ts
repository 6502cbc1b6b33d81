/** The demo built once for all tests of a run: a place with content, both sites and kept papers. */

import { cpSync, existsSync } from 'node:fs'
import { mkdir, rename } from 'node:fs/promises'
import { join } from 'node:path'
import { inject } from 'vitest'
import { withLock } from '../../src/cli/lock.ts'
import type { SiteDocument } from '../../src/documents/types.ts'
import { buildSite } from '../../src/site/build.ts'
import { projectFolder } from '../../src/site/project.ts'
import { steps } from '../../src/site/steps.ts'

type Edition = SiteDocument['edition']

/** Whoever asks second waits until the first has built it. */
const PATIENCE_MS = 180_000

const place = join(inject('runFolder'), 'demo workshop')

/** Where its papers are kept; to be copied from, once an edition is built. */
export const builtPapers = join(place, '.cache')

const outs: Readonly<Record<Edition, string>> = { public: '_site', workshop: 'private' }

/** Folder of an edition's site, which others read at the same time: never to be written to. */
export async function builtDemo(edition: Edition): Promise<string> {
  const out = join(place, outs[edition])
  await mkdir(place, { recursive: true })
  await withLock(join(place, 'lock'), () => build(edition, out), PATIENCE_MS)
  return out
}

async function build(edition: Edition, out: string): Promise<void> {
  if (existsSync(out)) return
  const content = join(place, 'content')
  if (!existsSync(content)) {
    cpSync(join(projectFolder, 'content'), `${content}, new`, { recursive: true })
    await rename(`${content}, new`, content)
  }
  // Papers are the same in both editions: those of the other need not be drawn again.
  const kept = (of: Edition) => join(builtPapers, 'lotfolio', `${outs[of]}-${of}`)
  const other = kept(edition === 'public' ? 'workshop' : 'public')
  if (existsSync(other)) cpSync(other, kept(edition), { recursive: true })
  const { problems } = await buildSite({ content, out, edition }, steps)
  if (!existsSync(out)) throw new Error(JSON.stringify(problems))
}
