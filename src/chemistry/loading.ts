/**
 * How much flake a paint holds, told of the wet paint or of the dry film.
 *
 *     wet                w = 100 · m(flake) / (m(flake) + m(paint))
 *     dry from wet       d = w / (w + (1 − w) · s)
 *     wet from dry       w = d · s / (1 − d + d · s)
 *
 * One gram of flake in ten of paint is 9.1 % of the wet paint but 15 % of the film that 55 % of solids
 * leaves: a loading means nothing until it says which. `s` is the solids of the paint before flake went in;
 * the flake itself is taken to dry to nothing less.
 *
 * Source: definition of a mass fraction; what dries off is solvent alone.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

const source = 'definition of a mass fraction; what dries off is solvent alone'

export const wetLoadingBasis = { formula: 'w = m_flake / (m_flake + m_paint)', source }
export const dryLoadingBasis = { formula: 'd = w / (w + (1 − w) · s), s of the paint', source }
export const wetOfDryBasis = { formula: 'w = d · s / (1 − d + d · s), s of the paint', source }

export interface MixedInputs {
  /** Flake stirred in, g. */
  flake_g: Estimate
  /** Paint it was stirred into, wet, g. */
  paint_g: Estimate
}

/**
 * Loading of the wet paint, from what was weighed together.
 *
 * @returns flake in flake and wet paint, %
 * @throws DomainError when either mass is not above 0
 */
export function wetLoading(inputs: MixedInputs): Computed<keyof MixedInputs> {
  requirePositive(inputs, 'flake_g', 'check the mass of the flake')
  requirePositive(inputs, 'paint_g', 'check the mass of the paint')
  return propagate(x => (100 * x.flake_g) / (x.flake_g + x.paint_g), inputs)
}

export interface DryLoadingInputs {
  /** Flake in the wet paint, %. */
  wetLoading_percent: Estimate
  /** Solids of the paint without flake, %. */
  paintSolids_percent: Estimate
}

/**
 * Loading of the dry film, from that of the wet paint.
 *
 * @returns flake in the dry film, %
 * @throws DomainError when the loading is not between 0 and 100, or the solids not above 0 and at most 100
 */
export function dryLoading(inputs: DryLoadingInputs): Computed<keyof DryLoadingInputs> {
  requireBetween(inputs, 'wetLoading_percent')
  requireSolids(inputs)
  return propagate(x => {
    const wet = x.wetLoading_percent / 100
    return (100 * wet) / (wet + (1 - wet) * (x.paintSolids_percent / 100))
  }, inputs)
}

export interface WetOfDryInputs {
  /** Flake in the dry film, %. */
  dryLoading_percent: Estimate
  /** Solids of the paint without flake, %. */
  paintSolids_percent: Estimate
}

/**
 * Loading of the wet paint, from that of the dry film.
 *
 * @returns flake in the wet paint, %
 * @throws DomainError when the loading is not between 0 and 100, or the solids not above 0 and at most 100
 */
export function wetOfDry(inputs: WetOfDryInputs): Computed<keyof WetOfDryInputs> {
  requireBetween(inputs, 'dryLoading_percent')
  requireSolids(inputs)
  return propagate(x => {
    const dry = x.dryLoading_percent / 100
    const solids = x.paintSolids_percent / 100
    return (100 * dry * solids) / (1 - dry + dry * solids)
  }, inputs)
}

function requireBetween<Name extends string>(inputs: Record<Name, Estimate>, input: Name): void {
  const { value } = inputs[input]
  if (!(value > 0 && value < 100))
    throw new DomainError(input, 'above 0 and below 100', value, 'check the loading')
}

function requireSolids(inputs: { paintSolids_percent: Estimate }): void {
  const { value } = inputs.paintSolids_percent
  if (!(value > 0 && value <= 100))
    throw new DomainError(
      'paintSolids_percent',
      'above 0 and at most 100',
      value,
      'check the solids of the paint'
    )
}
