/**
 * How large a label and what stands on it must be, by the capacity of the package.
 *
 * Source: CLP Annex I, 1.2.1.4 and Table 1.3, as amended by Regulation (EU) 2024/2865, whose rules of
 * type apply from 1 January 2028 after Regulation (EU) 2025/2439. Before them the law gave type no
 * size; the United States' rules give none to labels at all (29 CFR 1910.1200 (f)). The figures for
 * those two are the project's own.
 */

export const labelProfiles = ['eu-2028', 'eu-2015', 'us'] as const

export type LabelProfile = (typeof labelProfiles)[number]

export interface LabelMinima {
  /** Shorter and longer side of the label. */
  readonly label_mm: readonly [number, number]
  /** Side of a pictogram's red frame, not its width from tip to tip. */
  readonly pictogram_mm: number
  /** Height of a lower-case x. */
  readonly xHeight_mm: number
  /** Distance of lines in sizes of type. */
  readonly leading: number
}

interface Row {
  readonly upTo_L: number
  readonly label_mm: readonly [number, number]
  readonly pictogram_mm: number
  readonly xHeight_mm: Readonly<Record<LabelProfile, number>>
}

const row = (
  upTo_L: number,
  label_mm: readonly [number, number],
  pictogram_mm: number,
  in2028: number,
  before: number
): Row => ({
  upTo_L,
  label_mm,
  pictogram_mm,
  xHeight_mm: { 'eu-2028': in2028, 'eu-2015': before, us: before }
})

/**
 * The law's rows, up to 3 L with the sizes it wants where they are possible. Sides of pictograms are
 * the law's own: in two rows their square is a little less than the fifteenth part it also names.
 */
const rows: readonly Row[] = [
  row(0.5, [52, 74], 16, 1.2, 1),
  row(3, [52, 74], 16, 1.4, 1),
  row(50, [74, 105], 23, 1.8, 1.2),
  row(500, [105, 148], 32, 2, 1.4),
  row(Infinity, [148, 210], 46, 2, 1.4)
]

/** Sizes of the United States' small containers: the project's own. */
const small: readonly Row[] = [row(0.003, [15, 40], 10, 1, 1), row(0.1, [30, 50], 10, 1, 1)]

const leadings: Readonly<Record<LabelProfile, number>> = {
  'eu-2028': 1.2,
  'eu-2015': 1.15,
  us: 1.15
}

/** The least sizes for a package of some capacity, in litres. */
export function labelMinima(capacity_L: number, profile: LabelProfile): LabelMinima {
  const table = profile === 'us' ? [...small, ...rows] : rows
  const { label_mm, pictogram_mm, xHeight_mm } = table.find(({ upTo_L }) => capacity_L <= upTo_L)!
  return { label_mm, pictogram_mm, xHeight_mm: xHeight_mm[profile], leading: leadings[profile] }
}

const larger: readonly (readonly [number, number])[] = [
  [52, 74],
  [74, 105],
  [105, 148],
  [148, 210],
  [210, 297],
  [297, 420]
]

/** Sizes of label to try for a package, the least allowed first: texts that do not fit go on. */
export function labelSizes(minima: LabelMinima): (readonly [number, number])[] {
  const [short] = minima.label_mm
  return [minima.label_mm, ...larger.filter(([side]) => side > short)]
}

/** Up to here a label in the United States may leave the rest to the outer package. */
export const SMALL_US_L = 0.1

/** Up to here it may carry the product's name alone (from memory). */
export const TINY_US_L = 0.003
