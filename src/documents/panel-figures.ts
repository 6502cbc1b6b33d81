/** Figures of panels in tables: values and means with U, scatter beside them. */

import type { GroupFigure } from '../evaluate/panel-groups.ts'
import { expand } from '../metrology/coverage.ts'
import type { Estimate } from '../metrology/estimate.ts'
import { resultFigures, significant } from './figure.ts'

/** The mean of a coating's panels with its U: how surely these panels were measured. */
export const meanText = (figure: GroupFigure | undefined): string =>
  figure ? withU(figure.mean) : ''

/** How the panels of a coating scatter, which is no part of U; nothing for a single one. */
export const scatterText = (figure: GroupFigure | undefined): string =>
  figure?.s === undefined ? '' : significant(figure.s, 2).printed

export function withU(estimate: Estimate): string {
  const { value, expandedUncertainty } = resultFigures(estimate.value, expand(estimate).U)
  return `${value.printed} ± ${expandedUncertainty.printed}`
}
