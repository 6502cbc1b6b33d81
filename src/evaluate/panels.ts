/** Coating panels to their figures, each after the lots of flake they rest on. */

import type { Problem } from '../problem.ts'
import type { QuantityName } from '../quantities.ts'
import type { Entry, Panel, Records } from '../records/types.ts'
import { type Bench, openBench, type Readers } from './bench.ts'
import * as char from './panel-char.ts'
import { doubtPanel } from './panel-doubts.ts'
import * as film from './panel-film.ts'
import * as time from './panel-time.ts'
import { checkPlausible } from './result.ts'
import type { EvaluatedLot, EvaluatedPanel, Result, Results } from './types.ts'

type Lots = ReadonlyMap<string, EvaluatedLot>

/** The table quantity → model of panels; rows run in order, so a figure may use those above it. */
export const panelModels: Partial<
  Record<
    QuantityName,
    (bench: Bench, panel: Panel, sofar: Results, lots: Lots) => Result | undefined
  >
> = {
  paintSolids_percent: film.solidsResult,
  wetLoading_percent: film.wetLoadingResult,
  dryLoading_percent: film.dryLoadingResult,
  wetFilm_mm: (bench, panel) =>
    film.spreadResult(bench, panel, 'wetFilm', 'wetFilm_mm', 'thickness'),
  dryFilm_mm: (bench, panel) =>
    film.spreadResult(bench, panel, 'dryFilm', 'dryFilm_mm', 'thickness'),
  filmMass_g_per_m2: film.filmMassResult,
  filmDensity_g_per_cm3: film.filmDensityResult,
  activeMass_g_per_m2: film.activeMassResult,
  charHeight_mm: (bench, panel) =>
    film.spreadResult(bench, panel, 'char', 'charHeight_mm', 'length'),
  charRatio: char.charRatioResult,
  charCeiling_mm: char.ceilingResult,
  charEfficiency_percent: char.efficiencyResult,
  backsideTime_min: time.backsideTimeResult,
  timeGained_min: time.timeGainedResult,
  gainPerFilm_min_per_mm: time.gainPerFilmResult,
  gainPerFilmMass_sm2_per_g: (bench, panel, sofar) =>
    time.gainPerMassResult(bench, panel, sofar, 'filmMass_g_per_m2'),
  gainPerActiveMass_sm2_per_g: (bench, panel, sofar) =>
    time.gainPerMassResult(bench, panel, sofar, 'activeMass_g_per_m2')
}

/** Panels by number, and what is wrong with their figures. */
export interface PanelEvaluation {
  readonly panels: ReadonlyMap<string, EvaluatedPanel>
  readonly problems: readonly Problem[]
}

/** @param lots with their figures, for the expansion volume of the flake in a coating */
export function evaluatePanels(content: Records, lots: Lots, readers: Readers): PanelEvaluation {
  const panels = new Map<string, EvaluatedPanel>()
  const problems: Problem[] = []
  for (const [number, entry] of content.panels) {
    const bench = openBench(content, number, entry, readers)
    const panel = evaluatePanel(bench, entry, lots)
    panels.set(number, panel)
    problems.push(...bench.problems, ...doubtPanel(content, panel))
  }
  return { panels, problems }
}

function evaluatePanel(bench: Bench, entry: Entry<Panel>, lots: Lots): EvaluatedPanel {
  const results: Results = {}
  for (const [name, model] of Object.entries(panelModels)) {
    const result = model(bench, entry.record, results, lots)
    if (!result) continue
    results[name as QuantityName] = result
    checkPlausible(bench, result)
  }
  const { overdue, used } = bench
  return { number: bench.lot, entry, results, instruments: [...used].sort(), overdue }
}
