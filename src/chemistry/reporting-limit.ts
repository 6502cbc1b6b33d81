/**
 * Smallest free acidity that a titration can report.
 *
 *     VL = 2 · t(0.95, ν) · s · √(1/q + 1/n)
 *
 * The detection limit of a blank-corrected net signal, with s the standard deviation of n blanks, ν =
 * n − 1, t one-sided, and q titrations averaged; both errors, a false alarm and a miss, are held to 5 %.
 *
 * The burette sets a floor: a titre is a difference of two readings, each known to one step d, so its
 * standard deviation is not below d/√6, with t that of the normal distribution. The larger limit
 * counts, so that equal blanks do not promise a limit of nothing.
 *
 * Source: IUPAC Recommendations 1995 on detection and quantification capabilities, Pure Appl. Chem. 67,
 * 1699, with 2t in place of the noncentral t (from memory, not checked against the print). The burette's
 * floor is this project's own.
 */

import { coverageFactor } from '../metrology/coverage.ts'
import { DomainError } from '../metrology/domain.ts'
import { exact } from '../metrology/estimate.ts'
import { standardDeviation } from '../metrology/readings.ts'
import {
  type AliquotInputs,
  type WholeExtractInputs,
  freeAcid,
  freeAcidAmount
} from './free-acidity.ts'

export const reportingLimitBasis = {
  formula: 'VL = 2 · t · s · √(1/q + 1/n), VL ≥ 2 · 1.645 · (d / √6) · √(1/q + 1/n)',
  source:
    'IUPAC Recommendations 1995, detection limit of a blank-corrected signal (from memory, not checked against the print)'
} as const

/** Blanks and what they are read on. */
export interface Blanks {
  /** Titres of the blanks, mL. */
  readonly titres_mL: readonly number[]
  /** One step of the burette, mL. */
  readonly resolution_mL: number
  /** Titrations of the sample that the reported mean averages. */
  readonly titrations: number
}

/** A titration without its titres. */
export type LimitInputs = Omit<WholeExtractInputs, Titres> | Omit<AliquotInputs, Titres>
type Titres = 'titre_mL' | 'blank_mL'

/** The smallest reportable result, in each way it is expressed. */
export interface ReportingLimit {
  /** Net titre, mL. */
  readonly titre_mL: number
  readonly freeAcid_percent: number
  readonly freeAcid_mmol_per_g: number
}

/** One-sided 95 % is a coverage of 90 %. */
const COVERAGE = 0.9

/**
 * Reporting limit of the free acidity.
 *
 * @returns the limit as net titre (mL), as sulfuric acid (%) and as hydrogen ion (mmol/g)
 * @throws DomainError when the burette's step is not above 0 or no titration is averaged, and as
 *   freeAcid does
 */
export function reportingLimit(blanks: Blanks, inputs: LimitInputs): ReportingLimit {
  const titre_mL = limitOfTitre(blanks)
  const titration = { ...inputs, titre_mL: exact(titre_mL), blank_mL: exact(0) }
  return {
    titre_mL,
    freeAcid_percent: freeAcid(titration).value,
    freeAcid_mmol_per_g: freeAcidAmount(titration).value
  }
}

function limitOfTitre({ titres_mL, resolution_mL, titrations }: Blanks): number {
  if (!(resolution_mL > 0))
    throw new DomainError('resolution_mL', 'greater than 0', resolution_mL, 'state one step')
  if (!(titrations >= 1))
    throw new DomainError('titrations', 'at least 1', titrations, 'count the titrations averaged')
  const n = Math.max(1, titres_mL.length)
  const scatter = standardDeviation(titres_mL)
  const seen = scatter === undefined ? 0 : coverageFactor(n - 1, COVERAGE) * scatter
  const readable = (coverageFactor(Infinity, COVERAGE) * resolution_mL) / Math.sqrt(6)
  return 2 * Math.max(seen, readable) * Math.sqrt(1 / titrations + 1 / n)
}
