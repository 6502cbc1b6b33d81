/**
 * Builds killed at any moment: what stands then is a whole site, or the next command makes it so.
 *
 * A real process is killed each time, half of them while they write or swap. The workshop is small,
 * and two are killed at a time, as starting the program is what a kill costs.
 */

import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { markerName } from '../../src/site/marker.ts'
import { builtSmallWorkplace } from './built-small.ts'
import {
  differences,
  lotfolio,
  lotfolioProcess,
  namesIn,
  plainEnvironment,
  program,
  tree,
  workplace
} from './workplace.ts'

/** How many builds to kill: at each kind of moment one; a long campaign sets this. */
const KILLS = Number(process.env['LOTFOLIO_KILLS'] ?? 4)

/** How many are killed at a time, each in a place of its own. */
const LANES = 2

/** Of so many commands after a kill, one is a process of its own. */
const ALONE = 20

const contents = ['content', 'other'] as const

/** A place with two contents, whose sites differ in every page, and one that writes nothing. */
async function placeOf(): Promise<string> {
  const place = await builtSmallWorkplace()
  const other = join(place, 'other')
  cpSync(join(place, 'content'), other, { recursive: true })
  const producer = join(other, 'producer.yaml')
  const text = readFileSync(producer, 'utf8')
  writeFileSync(producer, text.replace(/^name: .*$/mu, 'name: Other workshop'))
  mkdirSync(join(place, 'broken'))
  writeFileSync(join(place, 'broken', 'producer.yaml'), 'name: [')
  return place
}

type Files = Record<string, string>

const papersOf = (place: string) => join(place, '.cache', 'lotfolio', '_site-public')
const keptOf = (place: string, content: string) => join(place, `papers of ${content}`)

/** Keep a content's papers, as the next build of the other removes them. */
const keepPapers = (place: string, content: string) =>
  cpSync(papersOf(place), keptOf(place, content), { recursive: true })

/** Have the next build find its content's papers, or have it draw them all. */
function layPapers(place: string, content: string, areKept: boolean): void {
  rmSync(papersOf(place), { recursive: true, force: true })
  if (areKept) cpSync(keptOf(place, content), papersOf(place), { recursive: true })
}

/** The same place once more. */
function copyOf(place: string): string {
  const copy = workplace()
  cpSync(place, copy, { recursive: true })
  return copy
}

function startBuild(place: string, content: string): Victim {
  const child = spawn(process.execPath, [program, 'build', '--content', content], {
    cwd: place,
    env: plainEnvironment(),
    stdio: 'ignore'
  })
  const beside = (part: string) => join(place, `_site.lotfolio-${part}-${child.pid}`)
  return { child, ended: once(child, 'exit'), fresh: beside('new'), old: beside('old') }
}

/** A build under way, and the folders it makes beside the site. */
interface Victim {
  readonly child: ChildProcess
  readonly ended: Promise<unknown[]>
  readonly fresh: string
  readonly old: string
}

const isRunning = ({ exitCode, signalCode }: ChildProcess) => exitCode === null && !signalCode

/** Until a build has made a file or folder, looked for a thousand times a second, or has ended. */
async function untilThere(path: string, { child }: Victim): Promise<void> {
  while (isRunning(child) && !existsSync(path)) await pause(1)
}

/** Until the site is finished and its move begins, looked for without a pause: that lasts an instant. */
async function untilMoved(victim: Victim): Promise<void> {
  await untilThere(join(victim.fresh, markerName), victim)
  while (isRunning(victim.child)) {
    for (let look = 0; look < 500; look++) if (existsSync(victim.old)) return
    await pause(0)
  }
}

/** How long a build takes, and how long it writes, in milliseconds. */
interface Pace {
  readonly whole_ms: number
  readonly writing_ms: number
}

/** The pace of a build that draws its papers, which leaves the other site there. */
async function paceOf(place: string): Promise<Pace> {
  layPapers(place, 'other', false)
  const started = performance.now()
  const victim = startBuild(place, 'other')
  await untilThere(victim.fresh, victim)
  const writing = performance.now()
  expect(await victim.ended).toEqual([0, null])
  const now = performance.now()
  return { whole_ms: now - started, writing_ms: now - writing }
}

/** When to kill, from a part between 0 and 1 of the time there is. */
interface Moment {
  readonly wait: (victim: Victim, part: number, pace: Pace) => Promise<void>
  /** Whether what happens until then is of no account, so that papers need not be drawn. */
  readonly papersAreKept: boolean
}

const moments: readonly Moment[] = [
  // At any time.
  { wait: (_, part, { whole_ms }) => pause(part * whole_ms), papersAreKept: false },
  // Between the two renames, or just after.
  { wait: untilMoved, papersAreKept: true },
  // While the new site is being written.
  {
    wait: async (victim, part, { writing_ms }) => {
      await untilThere(victim.fresh, victim)
      await pause(part * writing_ms)
    },
    papersAreKept: false
  },
  // While the old site is being removed.
  {
    wait: async (victim, part) => {
      await untilMoved(victim)
      await pause(part * 4)
    },
    papersAreKept: true
  }
]

/** Spread over 0 to 1 without a pattern, the same in every run: multiples of the golden ratio. */
const spread = (index: number) => (index * 0.618_033_988_75) % 1

/** What the kills found: a build that had ended, a whole site, or none until the next command. */
const tally = { finished: 0, whole: 0, 'between renames': 0 }

async function killOne(
  place: string,
  index: number,
  pace: Pace,
  isWhole: (found: Files) => boolean
) {
  const out = join(place, '_site')
  const lap = Math.floor(index / moments.length)
  const content = contents[lap % 2]!
  const { wait, papersAreKept } = moments[index % moments.length]!
  layPapers(place, content, papersAreKept)
  const victim = startBuild(place, content)
  await wait(victim, spread(index), pace)
  victim.child.kill('SIGKILL')
  const [code] = await victim.ended
  const there = existsSync(out)
  tally[code === 0 ? 'finished' : there ? 'whole' : 'between renames']++
  if (there) expect(isWhole(tree(out)), `kill ${index}`).toBe(true)
  // A command that writes nothing itself, as its records are broken.
  const next = index % ALONE === 0 ? lotfolioProcess : lotfolio
  expect((await next(['build', '--content', 'broken'], place)).status).toBe(1)
  expect(isWhole(tree(out)), `kill ${index}, after the next command`).toBe(true)
  if ((index + 1) % 25 === 0) report()
}

/** What has come of it so far; a long campaign is heard of on its way. */
function report(): void {
  const parts = Object.entries(tally).map(([what, count]) => `${count} ${what}`)
  console.info(`kills: ${parts.join(', ')}`)
}

test(
  `${KILLS} builds killed: the old or the new site is whole, or the next command makes it so`,
  { timeout: 60_000 + KILLS * 20_000 },
  async () => {
    const places = [await placeOf()]
    const [first = ''] = places
    const whole = [tree(join(first, '_site'))]
    keepPapers(first, 'content')
    const pace = await paceOf(first)
    whole.push(tree(join(first, '_site')))
    keepPapers(first, 'other')
    while (places.length < LANES) places.push(copyOf(first))
    const pages = Object.keys(whole[0]!).filter(path => path.endsWith('.html'))
    expect(pages.length).toBeGreaterThan(5)
    expect(differences(whole[0]!, whole[1]!)).toEqual(expect.arrayContaining(pages))
    const isWhole = (found: Files) => whole.some(site => differences(site, found).length === 0)

    const lanes = places.map(async (place, lane) => {
      for (let index = lane; index < KILLS; index += LANES)
        await killOne(place, index, pace, isWhole)
      expect((await lotfolio(['build'], place)).stderr).toBe('')
      expect(differences(tree(join(place, '_site')), whole[0]!)).toEqual([])
      expect(namesIn(place).filter(name => name.includes('.lotfolio-'))).toEqual([])
    })
    await Promise.all(lanes)
    report()
    expect(Object.values(tally).reduce((sum, n) => sum + n, 0)).toBe(KILLS)
  }
)
