/** Whether a process still stands where it stood: a grade's figures lot by lot. */

import { type Problem, problemAt } from '../problem.ts'
import {
  type EwmaPoint,
  ewmaChart,
  type IndividualsChart,
  individualsChart
} from '../quality/individuals.ts'
import { type RuleName, signalsIn } from '../quality/run-rules.ts'
import { titleInSentence } from '../quantities.ts'
import type { Series, WatchedFigure } from './watched.ts'

/** Fewest lots from which limits are drawn. Common practice asks for 20 and more; with a few lots a
 * month that is years, so the count is stated beside the limits instead. */
export const FEWEST_FOR_LIMITS = 8

/** A pattern, from the lot it begins with to the one that completed it. */
export interface Seen {
  readonly says: string
  readonly from: WatchedFigure
  readonly at: WatchedFigure
  /** Whether it is warned of, or only shown. */
  readonly warns: boolean
}

export interface WatchedProcess {
  /** Figures that count: measured here, above the reporting limit. */
  readonly figures: readonly WatchedFigure[]
  readonly external: number
  readonly below: number
  /** Absent with too few lots, where some lie below the reporting limit, or where nothing scatters. */
  readonly chart?: IndividualsChart
  readonly average?: readonly EwmaPoint[]
  readonly seen: readonly Seen[]
}

/** Patterns warned of. The others bring more false alarms than news where lots are few: ISO
 * 7870-2:2023, 8.2.7, asks for the first alone (from memory, not checked against the print). */
const warned: ReadonlySet<RuleName> = new Set<RuleName>([
  'beyond limits',
  'run on one side',
  'steady trend'
])

/** The chart of a series and the patterns in it. */
export function watchProcess({ figures: all }: Pick<Series, 'figures'>): WatchedProcess {
  const own = all.filter(({ isExternal }) => !isExternal)
  const figures = own.filter(({ below }) => below === undefined)
  const counts = { external: all.length - own.length, below: own.length - figures.length }
  if (counts.below > 0 || figures.length < FEWEST_FOR_LIMITS)
    return { figures, ...counts, seen: [] }
  const values = figures.map(({ value }) => value)
  const chart = individualsChart(values)
  if (chart.sigma === 0) return { figures, ...counts, seen: [] }
  const average = ewmaChart(values, chart)
  const runs = signalsIn(values, chart).map(({ rule, from, at }) => ({
    says: rule.says,
    from: figures[from]!,
    at: figures[at]!,
    warns: warned.has(rule.name)
  }))
  return { figures, ...counts, chart, average, seen: [...runs, ...drifts(figures, average)] }
}

/** Where the moving average leaves its limits; one excursion is told once. */
function drifts(figures: readonly WatchedFigure[], average: readonly EwmaPoint[]): Seen[] {
  const isOut = (point: EwmaPoint | undefined) =>
    point !== undefined && (point.value < point.lower || point.value > point.upper)
  return average.flatMap((point, index) =>
    isOut(point) && !isOut(average[index - 1])
      ? [
          {
            says: 'the moving average beyond its limits',
            from: figures[index]!,
            at: figures[index]!,
            warns: true
          }
        ]
      : []
  )
}

/** Lots a signal is warned of for: later the process has long moved on. */
const RECENT = 20

/** A warning for each recent signal, at the figure of the lot that completed it. */
export function checkProcesses(series: readonly Series[]): Problem[] {
  return series.flatMap(one => {
    const recent = new Set(one.figures.slice(-RECENT))
    return watchProcess(one)
      .seen.filter(({ warns, at }) => warns && recent.has(at))
      .map(seen => signalProblem(one, seen))
  })
}

const signalProblem = ({ grade, quantity, figures }: Series, { says, from, at }: Seen): Problem =>
  problemAt(
    at.place(),
    'PROCESS_SIGNAL',
    `${titleInSentence(quantity)} of grade ${grade}: ${says}${from === at ? '' : `, from ${from.lot} to ${at.lot}`}, among ${figures.length} lots`,
    `look for what changed with this lot: material, people, furnace, instrument; the chart is on the workshop edition's page of ${grade}, under 'Lots over time'`
  )
