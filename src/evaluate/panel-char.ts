/** Coating panels after the fire: how far the film rose. */

import {
  charCeiling,
  charCeilingBasis,
  charEfficiency,
  charEfficiencyBasis,
  charRatio,
  charRatioBasis
} from '../physics/char.ts'
import type { Panel } from '../records/types.ts'
import type { Bench } from './bench.ts'
import { derived } from './panel-film.ts'
import type { EvaluatedLot, Result, Results } from './types.ts'

export function charRatioResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const { charHeight_mm: char, dryFilm_mm: film } = sofar
  if (!char || !film) return undefined
  return derived(bench, panel, ['char'], { quantity: 'charRatio', basis: charRatioBasis }, () =>
    charRatio({ charHeight_mm: char.estimate, dryFilm_mm: film.estimate })
  )
}

/** The flake's volume nearest to what a coating sees, and what is to be said of it. */
function expansionOf(lot: EvaluatedLot | undefined): { result: Result; note: string } | undefined {
  const { expansionAt600_mL_per_g: at600, expansionVolume_mL_per_g: own } = lot?.product ?? {}
  if (at600)
    return { result: at600, note: `Volume of ${lot!.lot} at 600 °C, about what a coating sees.` }
  return (
    own && {
      result: own,
      note: `Volume of ${lot!.lot} by its own test, ${own.method?.title ?? 'no method named'}: not what a coating sees. Where that test is hotter, the ceiling is too high and the efficiency too low.`
    }
  )
}

export function ceilingResult(
  bench: Bench,
  panel: Panel,
  sofar: Results,
  lots: ReadonlyMap<string, EvaluatedLot>
): Result | undefined {
  const active = sofar.activeMass_g_per_m2
  const flake = active && expansionOf(lots.get(panel.lot ?? ''))
  if (!flake) return undefined
  const { result, note } = flake
  const account = { quantity: 'charCeiling_mm', basis: charCeilingBasis, notes: [note] } as const
  const ceiling = derived(bench, panel, ['loading'], account, () =>
    charCeiling({
      expansionVolume_mL_per_g: result.estimate,
      activeMass_g_per_m2: active.estimate
    })
  )
  return ceiling && { ...ceiling, remark: { is: 'process', text: note } }
}

export function efficiencyResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const { charHeight_mm: char, dryFilm_mm: film, charCeiling_mm: ceiling } = sofar
  if (!char || !film || !ceiling) return undefined
  const account = { quantity: 'charEfficiency_percent', basis: charEfficiencyBasis } as const
  const result = derived(bench, panel, ['char'], account, () =>
    charEfficiency({
      charHeight_mm: char.estimate,
      dryFilm_mm: film.estimate,
      charCeiling_mm: ceiling.estimate
    })
  )
  return result && { ...result, ...(ceiling.remark ? { remark: ceiling.remark } : {}) }
}
