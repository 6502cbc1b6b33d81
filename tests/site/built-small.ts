/** The small workshop built once for all tests of a run; each takes a copy, to change as it likes. */

import { cpSync, existsSync } from 'node:fs'
import { mkdir, rename } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { inject } from 'vitest'
import { withLock } from '../../src/cli/lock.ts'
import { buildSite } from '../../src/site/build.ts'
import { steps } from '../../src/site/steps.ts'
import { fillSmall, smallWorkplace } from './workplace.ts'

/** Whoever asks second waits until the first has built it. */
const PATIENCE_ms = 60_000

const place = join(inject('runFolder'), 'small workshop')

const papersIn = (folder: string, out: string) => join(folder, '.cache', 'lotfolio', out)

/** Files of the public site of `smallWorkplace()` as it is, others read them too: never to be written to. */
export async function smallSite(): Promise<string> {
  await mkdir(place, { recursive: true })
  await withLock(join(place, 'lock'), build, PATIENCE_ms)
  return join(place, '_site')
}

async function build(): Promise<void> {
  if (existsSync(join(place, '_site'))) return
  const fresh = join(place, 'fresh')
  fillSmall(fresh)
  const options = { content: join(fresh, 'content'), out: join(fresh, '_site') }
  const { problems } = await buildSite({ ...options, edition: 'public' }, steps)
  if (problems.length > 0) throw new Error(JSON.stringify(problems))
  for (const part of ['.cache', '_site']) await rename(join(fresh, part), join(place, part))
}

/**
 * A small workplace that has built its public site before, so that only what a test changes is drawn:
 * drawing takes longer than all the rest of a small site. Papers are the same in both editions.
 */
export async function builtSmallWorkplace(): Promise<string> {
  const site = await smallSite()
  const folder = smallWorkplace()
  cpSync(site, join(folder, basename(site)), { recursive: true })
  for (const out of ['_site-public', 'private-workshop'])
    cpSync(papersIn(place, '_site-public'), papersIn(folder, out), { recursive: true })
  return folder
}
