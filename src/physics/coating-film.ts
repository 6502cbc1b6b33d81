/**
 * A dry film on a plate: its mass per area, its density, and the flake in it.
 *
 *     weighed       m″ = 10⁶ · (coated − plate) / (l · w)
 *     by thickness  m″ = 1000 · t · ρ
 *     density       ρ  = m″ / (1000 · t)
 *     flake         m″_EG = d · m″
 *
 * Coated on one face; the edges are taken as bare.
 *
 * Source: the definitions of mass per area and of density.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const weighedFilmBasis = {
  formula: 'm″ = (m_coated − m_plate) / (l · w)',
  source: 'definition of mass per area; one face coated, edges bare'
}

export const filmOfThicknessBasis = {
  formula: 'm″ = t · ρ, t and ρ of the dry film',
  source: 'definitions of mass per area and of density'
}

export const filmDensityBasis = {
  formula: 'ρ = m″ / t, t of the dry film',
  source: 'definition of density'
}

export const activeMassBasis = {
  formula: 'm″_EG = d · m″, d of the dry film',
  source: 'definition of a mass fraction'
}

/** Converts mm² to m², exact. */
const MM2_PER_M2 = 1_000_000

/** g/m² in a film of 1 mm and 1 g/cm³, exact. */
const G_PER_M2 = 1000

export interface WeighedFilmInputs {
  /** Plate before it was coated, g. */
  plate_g: Estimate
  /** Plate with its dry film, g. */
  coated_g: Estimate
  /** Length of the coated face, mm. */
  length_mm: Estimate
  /** Width of the coated face, mm. */
  width_mm: Estimate
}

/**
 * Film mass per area of a plate weighed before and after.
 *
 * @returns film mass per area, g/m²
 * @throws DomainError when a size is not above 0 or the plate did not gain
 */
export function weighedFilm(inputs: WeighedFilmInputs): Computed<keyof WeighedFilmInputs> {
  requirePositive(inputs, 'plate_g', 'check the mass of the bare plate')
  requirePositive(inputs, 'length_mm', 'check the length of the plate')
  requirePositive(inputs, 'width_mm', 'check the width of the plate')
  const { plate_g, coated_g } = inputs
  if (!(coated_g.value > plate_g.value))
    throw new DomainError(
      'coated_g',
      `greater than plate (${Number(plate_g.value.toPrecision(6))})`,
      coated_g.value,
      'a coated plate weighs more than a bare one: check both'
    )
  return propagate(
    x => (MM2_PER_M2 * (x.coated_g - x.plate_g)) / (x.length_mm * x.width_mm),
    inputs
  )
}

export interface FilmOfThicknessInputs {
  /** Dry film thickness, mm. */
  dryFilm_mm: Estimate
  /** Density of the dry film, g/cm³. */
  filmDensity_g_per_cm3: Estimate
}

/**
 * Film mass per area where it was not weighed.
 *
 * @returns film mass per area, g/m²
 * @throws DomainError when thickness or density is not above 0
 */
export function filmOfThickness(
  inputs: FilmOfThicknessInputs
): Computed<keyof FilmOfThicknessInputs> {
  requirePositive(inputs, 'dryFilm_mm', 'check the readings of the film')
  requirePositive(inputs, 'filmDensity_g_per_cm3', 'check the density of the film')
  return propagate(x => G_PER_M2 * x.dryFilm_mm * x.filmDensity_g_per_cm3, inputs)
}

export interface FilmDensityInputs {
  /** Film mass per area, g/m². */
  filmMass_g_per_m2: Estimate
  /** Dry film thickness, mm. */
  dryFilm_mm: Estimate
}

/**
 * Density of a film both weighed and measured.
 *
 * @returns density of the dry film, g/cm³
 * @throws DomainError when mass or thickness is not above 0
 */
export function filmDensity(inputs: FilmDensityInputs): Computed<keyof FilmDensityInputs> {
  requirePositive(inputs, 'filmMass_g_per_m2', 'check the masses of the plate')
  requirePositive(inputs, 'dryFilm_mm', 'check the readings of the film')
  return propagate(x => x.filmMass_g_per_m2 / (G_PER_M2 * x.dryFilm_mm), inputs)
}

export interface ActiveMassInputs {
  /** Film mass per area, g/m². */
  filmMass_g_per_m2: Estimate
  /** Flake in the dry film, %. */
  dryLoading_percent: Estimate
}

/**
 * Flake per area.
 *
 * @returns active mass per area, g/m²
 * @throws DomainError when the film's mass is not above 0 or the loading not between 0 and 100
 */
export function activeMass(inputs: ActiveMassInputs): Computed<keyof ActiveMassInputs> {
  requirePositive(inputs, 'filmMass_g_per_m2', 'check the masses of the plate')
  const { value } = inputs.dryLoading_percent
  if (!(value > 0 && value < 100))
    throw new DomainError('dryLoading_percent', 'above 0 and below 100', value, 'check the loading')
  return propagate(x => (x.filmMass_g_per_m2 * x.dryLoading_percent) / 100, inputs)
}
