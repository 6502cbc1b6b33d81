/**
 * Times in alternation, so that what the machine does meanwhile meets each side alike.
 *
 * What counts is the processor's time, which a machine that does other things as well lengthens far
 * less than the clock's; both are told.
 */

import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

/** A way of doing the work, to be timed against others. */
export interface Side {
  readonly name: string
  readonly run: () => unknown
}

/** What a side took, one figure a round. */
export interface Timing {
  readonly name: string
  /** Of all threads. */
  readonly processor_ms: readonly number[]
  readonly clock_ms: readonly number[]
}

type Watch = 'processor_ms' | 'clock_ms'

/** Each side over `rounds` rounds, after one to warm up. */
export async function timeSides(sides: readonly Side[], rounds = 5): Promise<Timing[]> {
  const timings = sides.map(({ name }) => ({
    name,
    processor_ms: [] as number[],
    clock_ms: [] as number[]
  }))
  for (let round = 0; round <= rounds; round++)
    for (const [index, { run }] of sides.entries()) {
      const took = await timed(run)
      if (round === 0) continue
      timings[index]!.processor_ms.push(took.processor_ms)
      timings[index]!.clock_ms.push(took.clock_ms)
    }
  return timings
}

setFlagsFromString('--expose-gc')
const collectGarbage = runInNewContext('gc') as () => void

async function timed(run: () => unknown): Promise<Record<Watch, number>> {
  // What the side before has left is not this one's to clear away.
  collectGarbage()
  const [processor, clock] = [process.cpuUsage(), performance.now()]
  await run()
  const clock_ms = performance.now() - clock
  const { user, system } = process.cpuUsage(processor)
  return { processor_ms: (user + system) / 1000, clock_ms }
}

/** Median over the rounds of what a side took over what another took in the same round. */
export const ratioOf = (side: Timing, base: Timing, watch: Watch = 'processor_ms'): number =>
  median(side[watch].map((time, round) => time / base[watch][round]!))

/** The middle figure; of an even number of them the higher of the middle two. */
export const median = (figures: readonly number[]): number =>
  [...figures].sort((a, b) => a - b)[Math.floor(figures.length / 2)]!

/** '(target ≤ 1.8: met)' */
export const verdictOn = (ratio: number, target: number): string =>
  `(target ≤ ${target}: ${ratio <= target ? 'met' : 'missed'})`

/** Every side beside the last; what the first took over it is held against the target. */
export function reportRatio(title: string, timings: readonly Timing[], target: number): string {
  const base = timings.at(-1)!
  const watched = (side: Timing, watch: Watch) =>
    `${median(side[watch]).toFixed(0).padStart(7)} ms ${ratioOf(side, base, watch).toFixed(2).padStart(5)} ×`
  return [
    `${title} ${verdictOn(ratioOf(timings[0]!, base), target)}`,
    `  ${' '.repeat(44)}   processor           clock`,
    ...timings.map(
      side =>
        `  ${side.name.padEnd(44)} ${watched(side, 'processor_ms')} ${watched(side, 'clock_ms')}`
    )
  ].join('\n')
}
