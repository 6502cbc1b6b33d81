/**
 * Issuing killed at any moment, and several at once: the register is whole, no number is lost or
 * used twice, and the next command leaves nothing lying about.
 */

import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { withLock } from '../../src/cli/lock.ts'
import { done, eventsOf, putInRegister, registerOf, workshopOf } from './issuing.ts'
import { lotfolioProcess, namesIn, plainEnvironment, program, workplace } from './workplace.ts'

/** How many runs of `issue` to kill; a long campaign sets this. */
const KILLS = Number(process.env['LOTFOLIO_ISSUE_KILLS'] ?? 4)

/** A place starts anew after so many lots, as every run reads all of them and the whole register. */
const LOTS = Math.min(KILLS, 12)

const day = ['--date', '2026-03-01']
const lotOf = (index: number) => `EB-${100 + index}`
const issuedIn = (place: string) => eventsOf(place).filter(({ is }) => is === 'issued')

/** When to kill, each from a part between 0 and 1. */
const moments: readonly ((place: string, part: number, isOver: () => boolean) => Promise<void>)[] =
  [
    (_, part) => pause(part * 900),
    // From the taking of the lock, which spans reading, drawing and writing.
    (place, part, isOver) => whenThere(place, 'register/lock', part * 260, isOver),
    // While paper, document and log are written and renamed.
    (place, _, isOver) => whenThere(place, '../archive/.lotfolio-next', 0, isOver),
    (place, part, isOver) => whenThere(place, '../archive/.lotfolio-next', part * 12, isOver)
  ]

async function whenThere(place: string, name: string, more_ms: number, isOver: () => boolean) {
  const path = join(place, 'content', name)
  while (!existsSync(path) && !isOver()) await pause(0)
  await pause(more_ms)
}

/** What the kills found. */
const tally = { finished: 0, 'before the line': 0, 'after the line': 0, 'left to clear up': 0 }

async function killOne(place: string, index: number): Promise<void> {
  const args = [program, 'issue', lotOf(index % LOTS), ...day]
  const before = issuedIn(place).length
  const child = spawn(process.execPath, args, {
    cwd: place,
    env: plainEnvironment(),
    stdio: 'ignore'
  })
  const ended = once(child, 'exit')
  const isOver = () => child.exitCode !== null
  await moments[index % moments.length]!(place, (index * 0.618_033_988_75) % 1, isOver)
  child.kill('SIGKILL')
  const [code] = await ended
  const entered = issuedIn(place).length - before
  tally[code === 0 ? 'finished' : entered > 0 ? 'after the line' : 'before the line']++
  const left = Object.keys(registerOf(place)).filter(name => !/\.json$|^log\.jsonl$/u.test(name))
  if (left.length > 0) tally['left to clear up']++
  expect(await done(place, 'check'), `kill ${index}`).toMatch(/no errors/u)
  if (entered === 0) await done(place, 'issue', lotOf(index % LOTS), ...day)
  if ((index + 1) % 25 === 0) console.info(`kills of issue: ${JSON.stringify(tally)}`)
}

/** The register has every lot once, numbers in a row, and nothing else lies about. */
async function expectWhole(place: string, count: number): Promise<void> {
  const numbers = issuedIn(place).map(({ number }) => number)
  const row = Array.from({ length: count }, (_, index) => `CT-${index + 2}`)
  expect(numbers).toEqual(row)
  expect(new Set(issuedIn(place).map(({ lot }) => lot)).size).toBe(count)
  const documents = numbers.map(number => `${number}-r1.json`)
  expect(namesIn(join(place, 'content', 'register'))).toEqual([...documents, 'log.jsonl'].sort())
  expect(namesIn(join(place, 'archive'))).toEqual(numbers.map(number => `${number}-r1.pdf`).sort())
  const records = numbers.map(number => `${number}-r1.yaml`)
  expect(namesIn(join(place, 'content', 'certificates'))).toEqual(['CT-1.yaml', ...records].sort())
  expect(await done(place, 'check')).toMatch(/no errors/u)
}

test(
  `${KILLS} runs of issue killed: nothing lost, nothing twice, nothing left`,
  { timeout: 60_000 + KILLS * 10_000 },
  async () => {
    let place = ''
    for (let index = 0; index < KILLS; index++) {
      if (index % LOTS === 0)
        place = workshopOf(...Array.from({ length: LOTS }, (_, i) => lotOf(i)))
      await killOne(place, index)
      const count = (index % LOTS) + 1
      if (count === LOTS || index === KILLS - 1) {
        // A run killed after its line leaves the clearing up to the next that writes.
        await done(place, 'withdraw', 'CT-2', '--reason', 'x', ...day)
        await expectWhole(place, count)
      }
    }
    console.info(`kills of issue: ${JSON.stringify(tally)}`)
    expect(tally.finished + tally['before the line'] + tally['after the line']).toBe(KILLS)
  }
)

test('several at once: on different lots all get numbers, on one lot one does', async () => {
  const lots = [0, 1].map(lotOf)
  const place = workshopOf(...lots)
  const runs = await Promise.all(
    [...lots, lots[0]!].map(lot => lotfolioProcess(['issue', lot, ...day], place))
  )
  const losers = runs.filter(({ status }) => status !== 0)
  expect(losers).toHaveLength(1)
  expect(losers[0]!.stderr).toMatch(
    /^lotfolio: EB-100 has certificate CT-\d, .* needs --reason "\.\.\."\n$/u
  )
  await expectWhole(place, 2)
})

test('the lock of a run that died is taken over, that of another computer is not', async () => {
  const path = join(workplace(), 'lock')
  writeFileSync(path, `${hostname()} 4194303`)
  expect(await withLock(path, () => Promise.resolve('done'), 2000)).toBe('done')
  expect(existsSync(path)).toBe(false)
  writeFileSync(path, 'elsewhere 4194303')
  await expect(withLock(path, () => Promise.resolve('done'), 100)).rejects.toThrow(
    /held by elsewhere; wait for it, or remove this file/u
  )
  expect(existsSync(path)).toBe(true)
})

test('a lock left by a kill is in nobody’s way', async () => {
  const place = workshopOf(lotOf(0))
  putInRegister(place, 'lock', `${hostname()} 4194303`)
  await done(place, 'issue', lotOf(0), ...day)
  await expectWhole(place, 1)
})
