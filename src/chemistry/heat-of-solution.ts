/**
 * Integral heat of solution and heat capacity of sulfuric acid in water, 25 °C, as tables.
 *
 * Two evaluations of the heat differ by up to 3.4 kJ a mol. Curves run in r / (r + 1.8), the form of
 * Thomsen's old formula, in which their pieces are nearly straight and infinite dilution is at 1.
 *
 * Sources: NBS Circular 500 (1952) as reprinted by Felder and Rousseau, table B.11 (from memory, not
 * checked against the print); F. J. Zeleznik, J. Phys. Chem. Ref. Data 20 (1991) 1157, computed from its
 * Gibbs function; its value at infinite dilution is that of the NBS Tables of 1982 (from memory).
 */

import { curveThrough } from '../metrology/interpolate.ts'

type Curve = readonly (readonly [ratio: number, kJ_per_mol: number])[]

/** Mol of water a mol of acid, heat released in kJ a mol of acid. */
const circular500: Curve = [
  [0, 0],
  [0.5, 15.73],
  [1, 28.07],
  [1.5, 36.9],
  [2, 41.92],
  [3, 48.99],
  [4, 54.06],
  [5, 58.03],
  [10, 67.03],
  [25, 72.3],
  [50, 73.34],
  [100, 73.97],
  [500, 76.73],
  [1000, 78.57],
  [5000, 84.43],
  [10000, 87.07],
  [50000, 93.64],
  [Infinity, 96.19]
]

const zeleznik1991: Curve = [
  [0, 0],
  [0.25, 8.197],
  [0.5, 15.636],
  [0.75, 22.278],
  [1, 27.951],
  [1.5, 36.781],
  [2, 43.21],
  [3, 51.883],
  [4, 57.456],
  [5, 61.322],
  [6, 64.141],
  [7, 66.27],
  [8, 67.923],
  [10, 70.289],
  [15, 73.409],
  [20, 74.837],
  [25, 75.595],
  [30, 76.039],
  [40, 76.505],
  [50, 76.735],
  [75, 77.016],
  [100, 77.196],
  [150, 77.522],
  [200, 77.836],
  [300, 78.419],
  [500, 79.384],
  [1000, 81.048],
  [5000, 85.906],
  [10000, 88.207],
  [50000, 93.563],
  [Infinity, 95.28]
]

/** Heat capacity at 25 °C by mass fraction of acid, %: J/(g·K). */
const capacity: readonly (readonly [percent: number, J_per_gK: number])[] = [
  [0, 4.184],
  [10, 3.821],
  [20, 3.517],
  [30, 3.208],
  [40, 2.866],
  [50, 2.507],
  [60, 2.188],
  [70, 1.984],
  [80, 1.899],
  [90, 1.674],
  [93, 1.55],
  [96, 1.458],
  [100, 1.414]
]

const THOMSEN = 1.8
const folded = (ratio: number) => (ratio === Infinity ? 1 : ratio / (ratio + THOMSEN))

const heatsBy = [circular500, zeleznik1991].map(curve => {
  const at = curveThrough(
    curve.map(([ratio]) => folded(ratio)),
    curve.map(([, heat]) => heat)
  )
  return (ratio: number) => at(folded(ratio))
})

/** Heat capacity of sulfuric acid of a mass fraction in %, J/(g·K). */
export const capacityAt = curveThrough(
  capacity.map(([percent]) => percent),
  capacity.map(([, J_per_gK]) => J_per_gK)
)

/** Heat from one dilution to another by each evaluation, Circular 500 first, kJ a mol of acid. */
export const heatsBetween = (from: number, to: number): readonly number[] =>
  heatsBy.map(at => at(to) - at(from))

/** The larger of the evaluations. */
export const largerHeat = (from: number, to: number): number => Math.max(...heatsBetween(from, to))
