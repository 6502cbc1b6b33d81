/** Logs of panels as a chart, with the standard curve of furnace tests for reference. */

import { linesOf } from '../evaluate/panel-time.ts'
import type { EvaluatedPanel } from '../evaluate/types.ts'
import { type CurveRole, drawLogChart, type LogCurve } from '../figures/log-chart.ts'
import { fireCurve_C } from '../physics/fire-curve.ts'
import type { Panel } from '../records/types.ts'
import { significant } from './figure.ts'
import type { ChartText } from './watch-types.ts'
import { listText } from './words.ts'

const S_PER_MIN = 60

const roleOf: Record<Panel['kind'], CurveRole> = {
  own: 'log-own',
  'bought-in': 'log-other',
  blank: 'log-bare'
}

const STANDARD = 'ISO 834, furnace'

/** Points of the standard curve to a time, close together where it bends. */
const standardCurve = (minutes: number): LogCurve => ({
  name: STANDARD,
  role: 'log-standard',
  points: Array.from({ length: 61 }, (_, step): [number, number] => {
    const at = minutes * (step / 60) ** 2
    return [at, fireCurve_C(at)]
  })
})

const curveOf = ({ number, entry }: EvaluatedPanel): LogCurve => ({
  name: number,
  role: roleOf[entry.record.kind],
  points: linesOf(entry.record)
    .filter(({ at_s }) => at_s >= 0)
    .map(({ at_s, temperature_C }) => [at_s / S_PER_MIN, temperature_C])
})

/** Longest name for the stated temperature: none where panels differ. */
const levelOf = (panels: readonly EvaluatedPanel[]) => {
  const stated = panels.flatMap(({ entry }) => entry.record.until_C ?? [])
  const [first] = stated
  return first && stated.every(({ value }) => value === first.value)
    ? { value: first.value, name: `stated ${first.written}` }
    : undefined
}

/** The chart of some panels' logs; none where there is no log of two lines. */
export function logCharts(panels: readonly EvaluatedPanel[], id: string): ChartText[] {
  const curves = panels.map(curveOf).filter(({ points }) => points.length > 1)
  if (curves.length === 0) return []
  const longest = Math.max(...curves.flatMap(({ points }) => points.map(([at]) => at)))
  const level = levelOf(panels)
  return [
    {
      id,
      title: 'Temperature at the back of the plate',
      summary: [
        `${listText(curves.map(endText))}.`,
        'Solid: own coatings; dashed: bought-in ones; dotted: bare plates.',
        `The pale curve is the gas in a furnace after ISO 834, ${significant(fireCurve_C(longest), 3).printed} °C at the end: for reference, as no burner here follows it.`
      ].join(' '),
      drawing: drawLogChart({
        curves: [...curves, standardCurve(longest)],
        ...(level ? { level } : {}),
        names: { x: 'minutes since heating began', y: '°C' }
      })
    }
  ]
}

function endText({ name, points }: LogCurve): string {
  const [at, temperature] = points.at(-1)!
  return `${name} to ${significant(temperature, 3).printed} °C in ${significant(at, 3).printed} min`
}
