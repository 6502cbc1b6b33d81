/** Coating panels in the fire: their logs to times, and these against bare plates. */

import { estimate, exact, rectangular } from '../metrology/estimate.ts'
import { momentOf, secondsOf } from '../metrology/moments.ts'
import { meanOfReadings } from '../metrology/readings.ts'
import {
  backsideTime,
  backsideTimeBasis,
  gainPerActiveMassBasis,
  gainPerFilm,
  gainPerFilmBasis,
  gainPerFilmMassBasis,
  gainPerMass,
  type LogLine,
  reachedAt,
  timeGained,
  timeGainedBasis
} from '../physics/backside.ts'
import type { Entry, Panel } from '../records/types.ts'
import { type Bench, openBench, read, report, type Session } from './bench.ts'
import { instrumentsFor } from './flake.ts'
import { derived, openPart } from './panel-film.ts'
import { singleResult } from './result.ts'
import type { Result, Results } from './types.ts'

/** Lines of a panel's log from the start of heating on, for charts. */
export function linesOf({ log = [], start }: Panel): LogLine[] {
  const seconds = secondsOf(log.map(({ at }) => at)) ?? []
  const from = start ? (momentOf(start.at)?.seconds ?? 0) : (seconds[0] ?? 0)
  return log.map(({ temperature_C }, index) => ({
    at_s: seconds[index]! - from,
    temperature_C: temperature_C.value
  }))
}

/** Two lines around a temperature as estimates, and when heating began. */
function inputsAt(session: Session, panel: Panel, index: number, limit_C: number) {
  const { log = [], start } = panel
  const { bench } = session
  const seconds = secondsOf(log.map(({ at }) => at))!
  const when = (line: number) => {
    const u = rectangular((momentOf(log[line]!.at)?.step ?? 0) / 2)
    const pool = 'moments as written'
    const cause = { name: `${pool}: ${bench.lot} line ${line + 1}`, pool, kind: 'B', df: Infinity }
    return estimate(seconds[line]!, [{ cause: { ...cause, kind: 'B' }, u }])
  }
  const heat = (line: number) =>
    read(session, log[line]!.temperature_C, '°C', 'temperature', `line ${line + 1}`)
  const name = `${bench.lot} start of heating`
  const begun = start
    ? estimate(momentOf(start.at)?.seconds ?? 0, [
        {
          cause: { name, pool: name, kind: 'B', df: Infinity },
          u: rectangular(start.within_s?.value ?? 0)
        }
      ])
    : exact(seconds[0]!)
  return {
    earlier_s: when(index - 1),
    later_s: when(index),
    earlier_C: heat(index - 1),
    later_C: heat(index),
    start_s: begun,
    limit_C: exact(limit_C)
  }
}

/** Time of a panel to a temperature; undefined where its log does not come so far. */
function timeTo(bench: Bench, panel: Panel, limit_C: number): Result | undefined {
  const index = reachedAt(linesOf(panel), limit_C)
  if (index === undefined) return undefined
  const session = openPart(bench, panel, ['log', index])
  if (index === 0) {
    report(bench, ['log', 0, 'temperature_C'], 'OUT_OF_DOMAIN', [
      `must be below the stated ${limit_C} °C, got ${panel.log![0]!.temperature_C.written}`,
      'the log must begin before the plate is so hot'
    ])
    return undefined
  }
  const instrumentOf = instrumentsFor(session, { below_K: 'temperature', rise_K: 'temperature' })
  return singleResult(
    session,
    {
      quantity: 'backsideTime_min',
      basis: backsideTimeBasis,
      instrumentOf,
      notes: [
        ...[index - 1, index].map(line => {
          const { at, temperature_C } = panel.log![line]!
          return `Line ${line + 1} of ${panel.log!.length}: ${temperature_C.written} at ${at}.`
        }),
        'Between the two lines the plate is taken to heat evenly.',
        ...(panel.start ? [] : ['Heating is taken to begin with the first line of the log.'])
      ]
    },
    () => backsideTime(inputsAt(session, panel, index, limit_C))
  )
}

export function backsideTimeResult(bench: Bench, panel: Panel): Result | undefined {
  const { until_C } = panel
  const result = until_C && timeTo(bench, panel, until_C.value)
  const remark = until_C && `To ${until_C.written} at the back of the plate.`
  return result && remark ? { ...result, remark: { is: 'process', text: remark } } : undefined
}

/** Times of the bare panels to the same temperature; undefined where one never came so far. */
function bareTimes(bench: Bench, panel: Panel): Result[] | undefined {
  const times = (panel.bare ?? []).flatMap((number, index) => {
    const entry = bench.content.panels.get(number)
    if (!entry) return []
    const time = timeTo(silent(bench, entry), entry.record, panel.until_C!.value)
    if (!time)
      report(bench, ['bare', index], 'OUT_OF_DOMAIN', [
        `${number} has no time to ${panel.until_C!.written}: its log does not rise through it`,
        'name a bare panel whose log does, or state a lower temperature'
      ])
    return time ?? []
  })
  return times.length > 0 && times.length === panel.bare?.length ? times : undefined
}

/** What is wrong with a bare panel's readings is told of the bare panel. */
const silent = ({ content, readers }: Bench, entry: Entry<Panel>): Bench =>
  openBench(content, entry.record.number, entry, readers)

export function timeGainedResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const time = sofar.backsideTime_min
  const bare = time && bareTimes(bench, panel)
  if (!bare) return undefined
  const names = panel.bare!.join(', ')
  const bareTime = meanOfReadings(
    bare.map(one => one.estimate),
    `bare panels ${names}`
  )
  const notes =
    bare.length > 1
      ? [`Bare panels: ${names}. Their scatter is part of the uncertainty.`]
      : [`Bare panel: ${names}, alone: how bare panels scatter is not in the uncertainty.`]
  const account = { quantity: 'timeGained_min', basis: timeGainedBasis, notes } as const
  return derived(bench, panel, ['bare'], account, () =>
    timeGained({ backsideTime_min: time.estimate, bareTime_min: bareTime })
  )
}

export function gainPerFilmResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const { timeGained_min: gained, dryFilm_mm: film } = sofar
  if (!gained || !film) return undefined
  const account = { quantity: 'gainPerFilm_min_per_mm', basis: gainPerFilmBasis } as const
  return derived(bench, panel, ['dryFilm'], account, () =>
    gainPerFilm({ timeGained_min: gained.estimate, dryFilm_mm: film.estimate })
  )
}

/** Time gained over film mass, or over the flake in it. */
export function gainPerMassResult(
  bench: Bench,
  panel: Panel,
  sofar: Results,
  mass: 'filmMass_g_per_m2' | 'activeMass_g_per_m2'
): Result | undefined {
  const { timeGained_min: gained, [mass]: film } = sofar
  if (!gained || !film) return undefined
  const [timeGained_min, mass_g_per_m2] = [gained.estimate, film.estimate]
  return mass === 'filmMass_g_per_m2'
    ? derived(
        bench,
        panel,
        ['mass'],
        { quantity: 'gainPerFilmMass_sm2_per_g', basis: gainPerFilmMassBasis },
        () => gainPerMass({ timeGained_min, [mass]: mass_g_per_m2 }, mass)
      )
    : derived(
        bench,
        panel,
        ['mass'],
        { quantity: 'gainPerActiveMass_sm2_per_g', basis: gainPerActiveMassBasis },
        () => gainPerMass({ timeGained_min, [mass]: mass_g_per_m2 }, mass)
      )
}
