/**
 * Single sampling by attributes: how many units of a lot to look at, and how many may be nonconforming.
 *
 * The size of the lot and the inspection level give a letter, the letter a sample size; with the AQL the
 * letter gives the acceptance number Ac, and Re = Ac + 1. In the table each AQL has one letter that
 * accepts on 0; the next one is taken back to it, the one after that forward, and from the third on Ac
 * goes 1, 2, 3, 5, 7, 10, 14, 21. Letters before the first, and beyond the last, are sent to it. Who is
 * sent to another letter takes its sample size as well; a sample as large as the lot is the whole lot.
 *
 * Source: MIL-STD-105E, tables I and II-A, which ISO 2859-1, tables 1 and 2-A, took over (its own print was
 * not seen); for AQLs from 0.65 % on as a public body prints them, for smaller ones along the same
 * diagonals, from memory. The tests also hold the probabilities of acceptance that plans of one AQL share.
 */

import { DomainError } from '../metrology/domain.ts'
import {
  type Aql,
  aqls,
  type InspectionLevel,
  inspectionLevels
} from '../metrology/sampling-scheme.ts'

/** Sample size by letter; I and O are not used. */
const sizes = [
  ['A', 2],
  ['B', 3],
  ['C', 5],
  ['D', 8],
  ['E', 13],
  ['F', 20],
  ['G', 32],
  ['H', 50],
  ['J', 80],
  ['K', 125],
  ['L', 200],
  ['M', 315],
  ['N', 500],
  ['P', 800],
  ['Q', 1250]
] as const

/** Largest lot of a row, and its letters at levels I, II and III. */
const letters = [
  [8, 'AAB'],
  [15, 'ABC'],
  [25, 'BCD'],
  [50, 'CDE'],
  [90, 'CEF'],
  [150, 'DFG'],
  [280, 'EGH'],
  [500, 'FHJ'],
  [1200, 'GJK'],
  [3200, 'HKL'],
  [10_000, 'JLM'],
  [35_000, 'KMN'],
  [150_000, 'LNP'],
  [500_000, 'MPQ']
] as const

/** Acceptance numbers from the letter that accepts on 0 on; back and forth where the table has arrows. */
const steps = [0, 'back', 'forth', 1, 2, 3, 5, 7, 10, 14, 21] as const

/** The letter that accepts on 0 at the largest AQL of the table, 6.5 %; each smaller AQL is one further. */
const firstLetter = (aql: Aql): number => aqls.length - 1 - aqls.indexOf(aql)

/** Whether the numbers of an AQL are held to a print; those of smaller ones are from memory. */
export const isPrinted = (aql: Aql): boolean => aqls.indexOf(aql) >= aqls.indexOf('0.65')

export interface SamplingPlan {
  /** Of the size of the lot. */
  readonly letter: string
  /** Of the sample, where the table sends to another letter. */
  readonly takenFrom: string
  /** Units to look at; the whole lot where the plan asks for as many or more. */
  readonly sampleSize: number
  readonly acceptance: number
  readonly rejection: number
  /** True where the sample is the whole lot. */
  readonly isWhole: boolean
}

/**
 * Letter of a lot.
 *
 * @param lotSize units, 2 to 500 000
 * @throws DomainError for a size outside the table
 */
export function codeLetter(lotSize: number, level: InspectionLevel): string {
  const row = letters.find(([most]) => lotSize <= most)
  if (!row || !(Number.isInteger(lotSize) && lotSize >= 2))
    throw new DomainError(
      'lotSize',
      'a whole number from 2 to 500000',
      lotSize,
      'count the units the lot has; one unit alone is looked at whole'
    )
  return row[1].charAt(inspectionLevels.indexOf(level))
}

/**
 * The plan of a lot at an AQL: normal inspection, single sampling.
 *
 * @throws DomainError as codeLetter does
 */
export function samplingPlan(lotSize: number, level: InspectionLevel, aql: Aql): SamplingPlan {
  const letter = codeLetter(lotSize, level)
  const at = sizes.findIndex(([name]) => name === letter)
  const { index, acceptance } = rowOf(at, firstLetter(aql))
  const [takenFrom, size] = sizes[index]!
  return {
    letter,
    takenFrom,
    sampleSize: Math.min(size, lotSize),
    acceptance,
    rejection: acceptance + 1,
    isWhole: size >= lotSize
  }
}

/** Follow the arrows from a letter to the one whose sample size and acceptance number hold. */
function rowOf(at: number, first: number): { index: number; acceptance: number } {
  const index = Math.min(Math.max(at, first), first + steps.length - 1)
  const step = steps[index - first]!
  if (step === 'back') return { index: index - 1, acceptance: 0 }
  if (step === 'forth') return { index: index + 1, acceptance: 1 }
  return { index, acceptance: step }
}
