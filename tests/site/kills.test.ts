import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, test } from 'vitest'
import {
  demoWorkplace,
  differences,
  lotfolio,
  namesIn,
  plainEnvironment,
  program,
  tree
} from './workplace.ts'

/** How many builds to kill; a long campaign sets this. */
const KILLS = Number(process.env['LOTFOLIO_KILLS'] ?? 5)

/** Two contents, whose sites differ in every page. */
function twoContents() {
  const place = demoWorkplace()
  const other = join(place, 'other')
  cpSync(join(place, 'content'), other, { recursive: true })
  const producer = join(other, 'producer.yaml')
  const text = readFileSync(producer, 'utf8')
  writeFileSync(producer, text.replace(/^name: .*$/mu, 'name: Other workshop'))
  mkdirSync(join(place, 'broken'))
  writeFileSync(join(place, 'broken', 'producer.yaml'), 'name: [')
  return { place, contents: ['content', 'other'] as const }
}

const startBuild = (place: string, content: string) =>
  spawn(process.execPath, [program, 'build', '--content', content], {
    cwd: place,
    env: plainEnvironment(),
    stdio: 'ignore'
  })

/** Spread over 0 to 1 without a pattern, the same in every run: multiples of the golden ratio. */
const spread = (index: number) => (index * 0.618_033_988_75) % 1

/** When to kill: any time, while the new site is being written, or around the swap. */
const moments = [
  async (_out: string, _child: ChildProcess, part_ms: number) => pause(part_ms),
  async (out: string, child: ChildProcess, part_ms: number) => {
    await untilThere(`${out}.lotfolio-new-${child.pid}`, child)
    await pause(part_ms / 2)
  },
  async (out: string, child: ChildProcess) => untilThere(`${out}.lotfolio-old-${child.pid}`, child)
]

/** Until a build makes a folder, looked for almost without a pause, or has ended. */
async function untilThere(folder: string, child: ChildProcess): Promise<void> {
  while (child.exitCode === null) {
    for (let look = 0; look < 2000; look++) if (existsSync(folder)) return
    await pause(0)
  }
}

test(
  `${KILLS} builds killed: the old or the new site is whole, or the next command makes it so`,
  { timeout: 60_000 + KILLS * 20_000 },
  async () => {
    const { place, contents } = twoContents()
    const out = join(place, '_site')
    const whole: Record<string, string>[] = []
    for (const content of contents) {
      expect((await lotfolio(['build', '--content', content], place)).stderr).toBe('')
      whole.push(tree(out))
    }
    expect(differences(whole[0] ?? {}, whole[1] ?? {}).length).toBeGreaterThan(20)
    const isWhole = (found: Record<string, string>) =>
      whole.some(site => differences(site, found).length === 0)
    const started = performance.now()
    await lotfolio(['build', '--content', 'other'], place)
    const duration_ms = performance.now() - started

    const left = { finished: 0, whole: 0, away: 0 }
    for (let index = 0; index < KILLS; index++) {
      const child = startBuild(place, contents[index % 2] ?? 'content')
      const ended = once(child, 'exit')
      const moment = moments[index % moments.length]
      await moment?.(out, child, spread(index) * duration_ms)
      child.kill('SIGKILL')
      const [code] = (await ended) as [number | null]
      left[code === 0 ? 'finished' : existsSync(out) ? 'whole' : 'away']++
      if (existsSync(out)) expect(isWhole(tree(out))).toBe(true)
      // A command that writes nothing itself, as its records are broken.
      expect((await lotfolio(['build', '--content', 'broken'], place)).status).toBe(1)
      expect(isWhole(tree(out))).toBe(true)
    }
    console.info('kills:', left)
    await lotfolio(['build'], place)
    expect(differences(tree(out), whole[0] ?? {})).toEqual([])
    expect(namesIn(place).filter(name => name.includes('.lotfolio-'))).toEqual([])
  }
)
