/** Panels of one coating: their mean, and how they scatter. */

import { meanOf, standardDeviation } from '../metrology/readings.ts'
import type { Estimate } from '../metrology/estimate.ts'
import { compareText } from '../problem.ts'
import type { QuantityName } from '../quantities.ts'
import type { EvaluatedPanel } from './types.ts'

/** A figure over the panels of a coating that have it. */
export interface GroupFigure {
  /** Its uncertainty is that of measuring these panels. */
  readonly mean: Estimate
  /** Between panels; absent for one. */
  readonly s?: number
  readonly n: number
}

export interface PanelGroup {
  readonly code: string
  readonly panels: readonly EvaluatedPanel[]
  figure(quantity: QuantityName): GroupFigure | undefined
}

/** Panels by what they bear and how hot their back was to become: no others are alike. */
export function panelGroups(panels: readonly EvaluatedPanel[]): PanelGroup[] {
  const groups = new Map<string, EvaluatedPanel[]>()
  for (const panel of panels) {
    const { code, kind, until_C } = panel.entry.record
    const key = JSON.stringify([code, kind, until_C?.value])
    groups.set(key, [...(groups.get(key) ?? []), panel])
  }
  return [...groups.values()]
    .map(own => ({
      code: own[0]!.entry.record.code,
      panels: own,
      figure: (quantity: QuantityName) => figureOf(own, quantity)
    }))
    .sort((a, b) => compareText(a.code, b.code))
}

function figureOf(
  panels: readonly EvaluatedPanel[],
  quantity: QuantityName
): GroupFigure | undefined {
  const estimates = panels.flatMap(({ results }) => results[quantity]?.estimate ?? [])
  if (estimates.length === 0) return undefined
  const s = standardDeviation(estimates.map(({ value }) => value))
  return { mean: meanOf(estimates), n: estimates.length, ...(s === undefined ? {} : { s }) }
}
