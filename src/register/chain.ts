/** Whether each line follows on the one before; where not, what must have happened. */

import { fingerprint } from './fingerprint.ts'
import { type Fault, faultAt, type Flaw } from './fault.ts'
import type { ReadLine } from './lines.ts'

/** What the first line follows on. */
export const NO_LINE = '0'.repeat(64)

/** Faults of the chain, and the place from which on nothing is known of it. */
export interface ChainReading {
  readonly faults: readonly Fault[]
  /** Index of the line at which the chain first breaks; the number of lines where it does not. */
  readonly soundUntil: number
  /** Fingerprint of each line. */
  readonly hashes: readonly string[]
}

/**
 * Follow the chain to its first break: what comes after one says nothing more.
 *
 * @param lines in the order of the text, blank ones left out
 */
export async function readChain(lines: readonly ReadLine<unknown>[]): Promise<ChainReading> {
  const hashes = await Promise.all(lines.map(({ text }) => fingerprint(text)))
  const at = lines.findIndex(
    ({ previous }, index) => previous !== undefined && previous !== (hashes[index - 1] ?? NO_LINE)
  )
  const soundUntil = at < 0 ? lines.length : at
  const broken = lines[at]
  const faults = broken
    ? [faultAt(broken.line, ['REGISTER_CHAIN', whyBroken(lines, hashes, at)])]
    : []
  return { faults: [...countFaults(lines.slice(0, soundUntil)), ...faults], soundUntil, hashes }
}

/** What must have happened for line `at` to follow on something else than the line before it. */
function whyBroken(
  lines: readonly ReadLine<unknown>[],
  hashes: readonly string[],
  at: number
): string {
  const { text, line, n, previous } = lines[at]!
  const same = lines.findIndex(other => other.text === text)
  if (same < at) return `this is line ${lines[same]!.line} once more: it was doubled`
  const follows = hashes.indexOf(previous!)
  if (follows > at)
    return `it follows on line ${lines[follows]!.line}, which stands further down: lines were moved`
  if (follows >= 0 || (previous === NO_LINE && at > 0)) {
    const before = follows >= 0 ? `line ${lines[follows]!.line}` : 'nothing'
    return `it follows on ${before}, not on line ${line - 1}: lines were put in or moved between`
  }
  return whyUnknown(lines, at, n)
}

/** The line it follows on is not in the text. */
function whyUnknown(
  lines: readonly ReadLine<unknown>[],
  at: number,
  n: number | undefined
): string {
  const before = lines[at - 1]
  const expected = (before?.n ?? at) + 1
  const missing = n !== undefined && Number.isInteger(n) ? n - expected : 0
  if (missing > 0)
    return `${missing === 1 ? '1 line is' : `${missing} lines are`} missing before it: its number is ${n}, not ${expected}`
  if (!before) return "the first line says that another came before it: its 'previous' was changed"
  return `line ${before.line} is not what it was when this line was written, or this line's 'previous' was changed`
}

/** Numbers that do not count on though the chain holds: the first of them. */
function countFaults(lines: readonly ReadLine<unknown>[]): Fault[] {
  const wrong = lines.findIndex(({ n }, index) => n !== undefined && n !== index + 1)
  if (wrong < 0) return []
  const flaw: Flaw = [
    'REGISTER_COUNT',
    `the line is number ${wrong + 1} of the log, and says ${lines[wrong]!.n}`
  ]
  return [faultAt(lines[wrong]!.line, flaw)]
}
