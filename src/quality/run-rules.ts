/**
 * Patterns that figures of a process in one state seldom make.
 *
 * The eight are Nelson's, which ISO 7870-2 takes up as supplementary tests: its edition of 2023 asks
 * for the first alone (8.2.7) and lists the others in annex B. Each brings false alarms of its own;
 * their chance a window is stated beside it.
 *
 * Sources: L. S. Nelson, Journal of Quality Technology 16 (1984) 237–239; ISO 7870-2:2023 (clauses
 * from memory, not checked against the print). The chances are computed for normal figures.
 */

import type { Limits } from './individuals.ts'

export type RuleName =
  | 'beyond limits'
  | 'run on one side'
  | 'steady trend'
  | 'alternating'
  | 'two of three far out'
  | 'four of five out'
  | 'hugging the centre'
  | 'shunning the centre'

export interface RunRule {
  readonly name: RuleName
  /** The pattern in words, as a chart's text gives it. */
  readonly says: string
  /** Figures looked at. */
  readonly window: number
  /** Figures the pattern needs among them, the window itself unless stated. */
  readonly least?: number
  /** Chance that one window of a process in one state shows it. */
  readonly falseAlarm: number
  /** Whether these figures, as distances from the centre in σ, show it. */
  readonly holds: (z: readonly number[]) => boolean
}

/** At least `count` of the figures further than `distance` out, on one side. */
const countBeyond = (z: readonly number[], distance: number, count: number) =>
  z.filter(one => one > distance).length >= count ||
  z.filter(one => one < -distance).length >= count

const steps = (z: readonly number[]) => z.slice(1).map((one, index) => one - z[index]!)

const isOneWay = (parts: readonly number[]) =>
  parts.every(part => part > 0) || parts.every(part => part < 0)

export const runRules: readonly RunRule[] = [
  {
    name: 'beyond limits',
    says: '1 figure beyond 3 σ',
    window: 1,
    falseAlarm: 0.0026998,
    holds: z => countBeyond(z, 3, 1)
  },
  {
    name: 'run on one side',
    says: '9 figures in a row on one side of the centre',
    window: 9,
    falseAlarm: 0.0039063,
    holds: isOneWay
  },
  {
    name: 'steady trend',
    says: '6 figures in a row each above, or each below, the one before',
    window: 6,
    falseAlarm: 0.0027778,
    holds: z => isOneWay(steps(z))
  },
  {
    name: 'alternating',
    says: '14 figures in a row up and down by turns',
    window: 14,
    falseAlarm: 0.0045736,
    holds: z => isOneWay(steps(z).map((step, index) => (index % 2 === 0 ? step : -step)))
  },
  {
    name: 'two of three far out',
    says: '2 of 3 figures beyond 2 σ on one side',
    window: 3,
    least: 2,
    falseAlarm: 0.0030583,
    holds: z => countBeyond(z, 2, 2)
  },
  {
    name: 'four of five out',
    says: '4 of 5 figures beyond 1 σ on one side',
    window: 5,
    least: 4,
    falseAlarm: 0.0055318,
    holds: z => countBeyond(z, 1, 4)
  },
  {
    name: 'hugging the centre',
    says: '15 figures in a row within 1 σ',
    window: 15,
    falseAlarm: 0.003261,
    holds: z => z.every(one => Math.abs(one) < 1)
  },
  {
    name: 'shunning the centre',
    says: '8 figures in a row beyond 1 σ, on both sides',
    window: 8,
    falseAlarm: 0.00010197,
    holds: z => z.every(one => Math.abs(one) > 1) && !isOneWay(z)
  }
]

/** A pattern, from its first figure to the one that completed it; positions count from 0. */
export interface Signal {
  readonly rule: RunRule
  readonly from: number
  readonly at: number
}

/**
 * Every pattern, in the order they were completed. One that goes on is told once, where it was first
 * complete; each figure beyond the limits is told.
 *
 * @param values in the order they were made
 * @param limits three σ either side; where they leave no room, nothing is a pattern
 */
export function signalsIn(values: readonly number[], { centre, upper }: Limits): Signal[] {
  const sigma = (upper - centre) / 3
  if (!(sigma > 0)) return []
  const z = values.map(value => (value - centre) / sigma)
  return z.flatMap((_, at) =>
    runRules.flatMap(rule => (isNews(rule, z, at) ? [{ rule, from: firstOf(rule, at), at }] : []))
  )
}

const firstOf = ({ window }: RunRule, at: number) => Math.max(0, at + 1 - window)

const isNews = (rule: RunRule, z: readonly number[], at: number) =>
  holdsAt(rule, z, at) && (rule.window === 1 || !holdsAt(rule, z, at - 1))

function holdsAt(rule: RunRule, z: readonly number[], at: number): boolean {
  const { window, least = window, holds } = rule
  return at + 1 >= least && holds(z.slice(firstOf(rule, at), at + 1))
}
