/**
 * pH that a filtrate must have if the free acidity of its sample is what was titrated.
 *
 *     c         = 10 · w · m / (M · V)                     mol/L of H2SO4
 *     [H⁺]      = Kw/[H⁺] + c · (1 + K′ / ([H⁺] + K′))     charge balance
 *     K′        = K2 · γ⁻⁴,  lg γ = −A · (√I / (1 + √I) − 0.3 · I)
 *     pH        = −lg (γ · [H⁺])
 *
 * The first step of H2SO4 is complete, the second has K2. Activity coefficients by the Davies equation,
 * the doubly charged ion's as γ⁴; fair up to an ionic strength of 0.5 mol/L, about 20 % free acid in a
 * slurry of 10 g in 100 mL. All acid is taken to be in the water, the volume as that of the water, 25 °C.
 * Salts and other acids in the filtrate are not accounted for: use it to catch a pH and an acidity that
 * contradict each other, not in place of a pH meter.
 *
 * Source: K2 = 0.0102 mol/L (pK 1.99), Kw = 1.0·10⁻¹⁴ and the Davies equation with A = 0.509, all at
 * 25 °C, as handbooks give them (from memory, not checked against the print).
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

const K2_MOL_PER_L = 0.0102
const KW_MOL2_PER_L2 = 1e-14
const DAVIES_A = 0.509
const DAVIES_B = 0.3

const ML_PER_L = 1000

/** [H⁺] lies between these, mol/L. */
const LEAST = 1e-16
const MOST = 100

/** Halvings of the bracket on a logarithmic scale: 41 in natural logarithm, below 1e-16 after 60. */
const HALVINGS = 60

/** Each round takes about one more digit of the activity coefficient. */
const ROUNDS = 14

export interface FiltrateInputs {
  /** Free acidity as sulfuric acid, %; below 0 counts as alkali. */
  freeAcid_percent: Estimate
  /** Sample in the slurry, g. */
  mass_g: Estimate
  /** Water in the slurry, mL. */
  water_mL: Estimate
}

/**
 * Predicted pH of the filtrate of a slurry.
 *
 * Its uncertainty is first order: near 0 % free acid, where pH swings from acid to alkaline within the
 * titration's own scatter, it says nothing.
 *
 * @returns pH at 25 °C
 * @throws DomainError when the mass or the volume is not above 0
 */
export function filtratePH(inputs: FiltrateInputs): Computed<keyof FiltrateInputs> {
  requirePositive(inputs, 'mass_g', 'check the mass of the sample')
  requirePositive(inputs, 'water_mL', 'check the volume of water')
  const molarMass = molarMass_g_per_mol('H2SO4')
  return propagate(x => {
    const acid_g = (x.freeAcid_percent / 100) * x.mass_g
    return pHOf(((acid_g / molarMass) * ML_PER_L) / x.water_mL)
  }, inputs)
}

/** pH of sulfuric acid of `c` mol/L: [H⁺] and the activity coefficient, each from the other. */
function pHOf(c: number): number {
  let gamma = 1
  let hydrogen = 0
  for (let round = 0; round < ROUNDS; round += 1) {
    const K = K2_MOL_PER_L / (gamma * gamma * gamma * gamma)
    hydrogen = solveHydrogen(c, K)
    gamma = activityCoefficient(ionicStrength(c, K, hydrogen))
  }
  return -Math.log10(gamma * hydrogen)
}

/** The one root of the charge balance, by halving its bracket. */
function solveHydrogen(c: number, K: number): number {
  let low = LEAST
  let high = MOST
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = Math.sqrt(low * high)
    const excess = middle - KW_MOL2_PER_L2 / middle - c * (1 + K / (middle + K))
    if (excess > 0) high = middle
    else low = middle
  }
  return Math.sqrt(low * high)
}

/** Half the sum of concentration times charge squared, over H⁺, OH⁻, HSO4⁻ and SO4²⁻, mol/L. */
function ionicStrength(c: number, K: number, hydrogen: number): number {
  const second = K / (hydrogen + K)
  const sulfate = Math.abs(c) * (1 - second + 4 * second)
  return (hydrogen + KW_MOL2_PER_L2 / hydrogen + sulfate) / 2
}

/** Davies equation for an ion of one charge. */
function activityCoefficient(I: number): number {
  const root = Math.sqrt(I)
  return Math.exp(-Math.LN10 * DAVIES_A * (root / (1 + root) - DAVIES_B * I))
}
