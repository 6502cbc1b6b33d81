/** Times in alternation, so that what the machine does meanwhile meets each side alike. */

/** A way of doing the work, to be timed against others. */
export interface Side {
  readonly name: string
  readonly run: () => unknown
}

export interface Timing {
  readonly name: string
  readonly median_ms: number
  readonly lowest_ms: number
}

/** Median time of each side over `rounds` rounds, after one to warm up. */
export async function timeSides(sides: readonly Side[], rounds = 5): Promise<Timing[]> {
  const times = new Map(sides.map(({ name }) => [name, [] as number[]]))
  for (let round = 0; round <= rounds; round++)
    for (const { name, run } of sides) {
      const start = performance.now()
      await run()
      if (round > 0) times.get(name)!.push(performance.now() - start)
    }
  return sides.map(({ name }) => {
    const sorted = times.get(name)!.sort((a, b) => a - b)
    return { name, median_ms: sorted[Math.floor(sorted.length / 2)]!, lowest_ms: sorted[0]! }
  })
}

/** '… 1.42 ×' against the last side, with the target. */
export function reportRatio(title: string, timings: readonly Timing[], target?: number): string {
  const base = timings.at(-1)!
  const lines = timings.map(
    ({ name, median_ms }) =>
      `  ${name.padEnd(44)} ${median_ms.toFixed(0).padStart(7)} ms  ${(median_ms / base.median_ms).toFixed(2)} ×`
  )
  const ratio = timings[0]!.median_ms / base.median_ms
  const verdict =
    target === undefined ? '' : ` (target ≤ ${target}: ${ratio <= target ? 'met' : 'missed'})`
  return [`${title}${verdict}`, ...lines].join('\n')
}
