/**
 * Stage that a batch's uptake would stand for, if all of it were the sulfuric acid compound.
 *
 *     n = M guest / (24 · M(C) · u)        M guest = M(HSO4) + x · M(H2SO4)
 *
 * An index only. Washed flake is a residue compound that holds water and oxide layers as well, and galleries
 * that are filled in part: no stage can be told from a mass.
 *
 * Source: composition C24n·HSO4·xH2SO4, x from 2 to 2.5 (from memory, not checked against the print).
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { acidPerAnion, stageUptake_percent } from './intercalation.ts'

export const stageIndexBasis = {
  formula: 'n = (M(HSO4) + x · M(H2SO4)) / (24 · M(C) · u), x from 2 to 2.5',
  source:
    'composition C24n·HSO4·xH2SO4 (from memory, not checked against the print), all of the uptake taken for it'
}

/** Bounds of x. */
export const [LEAST_ACID, MOST_ACID] = acidPerAnion

export interface StageIndexInputs {
  /** Uptake on the dry basis, %. */
  uptake_percent: Estimate
  /** mol of neutral acid per mol of anion. */
  acidPerAnion: Estimate
}

/**
 * Equivalent stage index.
 *
 * @returns graphite layers between two filled galleries, if all were filled; a number, no stage
 * @throws DomainError when the uptake is not above 0 or x is below 0
 */
export function stageIndex(inputs: StageIndexInputs): Computed<keyof StageIndexInputs> {
  requirePositive(inputs, 'uptake_percent', 'check the masses of graphite and product')
  const x = inputs.acidPerAnion.value
  if (!(x >= 0)) throw new DomainError('acidPerAnion', 'at least 0', x, 'x is about 2 to 2.5')
  return propagate(y => stageUptake_percent(1, y.acidPerAnion) / y.uptake_percent, inputs)
}
