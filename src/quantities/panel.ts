/** Quantities of coating panels: bench screening, private throughout. */

import type { Quantity } from './quantity.ts'

const shared = { side: 'process', test: 'panel' } as const

export const panelQuantities = {
  paintSolids_percent: {
    ...shared,
    key: 'paint-solids',
    title: 'Solids of the paint',
    unit: '%',
    band: [15, 100],
    meaning: 'what is left of the paint when it has dried, before flake was stirred in'
  },
  wetLoading_percent: {
    ...shared,
    key: 'wet-loading',
    title: 'Loading, wet',
    unit: '%',
    band: [0.5, 50],
    meaning: 'flake in the wet paint as it is brushed on; the dry film holds a larger part'
  },
  dryLoading_percent: {
    ...shared,
    key: 'dry-loading',
    title: 'Loading, dry',
    unit: '%',
    band: [0.5, 70],
    meaning: 'flake in the dry film; the wet paint holds a smaller part'
  },
  wetFilm_mm: {
    ...shared,
    key: 'wet-film',
    title: 'Wet film thickness',
    unit: 'mm',
    band: [0.03, 6],
    meaning: 'mean of the readings over the panel, before the film dried'
  },
  dryFilm_mm: {
    ...shared,
    key: 'dry-film',
    title: 'Dry film thickness',
    unit: 'mm',
    band: [0.02, 5],
    meaning: 'mean of the readings over the panel'
  },
  filmMass_g_per_m2: {
    ...shared,
    key: 'film-mass',
    title: 'Film mass per area',
    unit: 'g/m²',
    band: [20, 7000],
    meaning: 'mass of the dry film per area of the panel'
  },
  filmDensity_g_per_cm3: {
    ...shared,
    key: 'film-density',
    title: 'Density of the dry film',
    unit: 'g/cm³',
    band: [0.5, 2.5],
    meaning: 'film mass per area over its thickness: a check of one by the other'
  },
  activeMass_g_per_m2: {
    ...shared,
    key: 'active-mass',
    title: 'Active mass per area',
    unit: 'g/m²',
    band: [2, 2500],
    meaning: 'mass of flake per area of the panel'
  },
  charHeight_mm: {
    ...shared,
    key: 'char-height',
    title: 'Char height',
    unit: 'mm',
    band: [0.5, 120],
    meaning: 'mean height of the char above the plate, read cold'
  },
  charRatio: {
    ...shared,
    key: 'char-ratio',
    title: 'Expansion ratio of the film',
    unit: '1',
    band: [1, 120],
    meaning:
      'char height over dry film thickness; it falls with thickness, so compare equal films only'
  },
  charCeiling_mm: {
    ...shared,
    key: 'char-ceiling',
    title: 'Ceiling of the char height',
    unit: 'mm',
    band: [0.5, 300],
    meaning: 'height if all the flake expanded freely and upwards alone'
  },
  charEfficiency_percent: {
    ...shared,
    key: 'char-efficiency',
    title: 'Efficiency of expansion',
    unit: '%',
    band: [3, 110],
    meaning:
      'rise of the film over its ceiling; above 100 % something else blew, or the volume is of another temperature'
  },
  backsideTime_min: {
    ...shared,
    key: 'backside-time',
    title: 'Time to the stated temperature',
    unit: 'min',
    band: [0.5, 180],
    meaning: 'from the start of heating until the back of the plate is as hot as stated'
  },
  timeGained_min: {
    ...shared,
    key: 'time-gained',
    title: 'Time gained over a bare panel',
    unit: 'min',
    band: [-1, 150],
    meaning: 'the same less the time of a bare plate heated alike'
  },
  gainPerFilm_min_per_mm: {
    ...shared,
    key: 'gain-per-film',
    title: 'Time gained per thickness',
    unit: 'min/mm',
    band: [-5, 100],
    meaning: 'time gained over dry film thickness'
  },
  gainPerFilmMass_sm2_per_g: {
    ...shared,
    key: 'gain-per-film-mass',
    title: 'Time gained per film mass',
    unit: 's·m²/g',
    band: [-1, 10],
    meaning: 'seconds gained for each gram per square metre of dry film'
  },
  gainPerActiveMass_sm2_per_g: {
    ...shared,
    key: 'gain-per-active-mass',
    title: 'Time gained per active mass',
    unit: 's·m²/g',
    band: [-5, 60],
    meaning: 'seconds gained for each gram per square metre of flake'
  }
} as const satisfies Record<string, Quantity>
