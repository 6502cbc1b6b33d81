/** Coating panels before the fire: what the paint holds, and what lies on the plate. */

import {
  dryLoading,
  dryLoadingBasis,
  wetLoading,
  wetLoadingBasis,
  wetOfDry,
  wetOfDryBasis
} from '../chemistry/loading.ts'
import { paintSolids, paintSolidsBasis } from '../chemistry/paint-solids.ts'
import { type Computed, measured, propagate, rectangular } from '../metrology/estimate.ts'
import type { Reading } from '../metrology/written.ts'
import {
  activeMass,
  activeMassBasis,
  filmDensity,
  filmDensityBasis,
  filmOfThickness,
  filmOfThicknessBasis,
  weighedFilm,
  weighedFilmBasis
} from '../physics/coating-film.ts'
import type { FieldPath } from '../problem.ts'
import type { ProcessName } from '../quantities.ts'
import type { Role } from '../records/schemas/common.ts'
import type { Panel } from '../records/types.ts'
import { type Bench, openSession, read, type Session } from './bench.ts'
import { instrumentsFor } from './flake.ts'
import { repeatedResult, singleResult } from './result.ts'
import type { Result, Results } from './types.ts'

type Part = 'wetFilm' | 'dryFilm' | 'char'

/** Readings of a part of the record, by its own instruments or the panel's. */
export const openPart = (
  bench: Bench,
  panel: Panel,
  field: FieldPath,
  instruments?: Session['instruments']
): Session =>
  openSession(bench, panel.tested ?? panel.made, field, panel.method, {
    ...panel.instruments,
    ...instruments
  })

/** Mean of readings spread over a panel, which differ because the panel does. */
export function spreadResult(
  bench: Bench,
  panel: Panel,
  part: Part,
  quantity: ProcessName,
  role: Role
): Result | undefined {
  const spread = panel[part]
  if (!spread) return undefined
  const session = openPart(bench, panel, [part], spread.instruments)
  return repeatedResult(
    session,
    spread.readings_mm,
    {
      quantity,
      basis: { formula: 'x = (Σ x_i) / n, n places', source: 'definition of the mean' },
      written: { columns: ['Reading'], rows: spread.readings_mm.map(({ written }) => [written]) },
      instrumentOf: instrumentsFor(session, { height_mm: role }),
      uneven: true
    },
    (reading, what): Computed =>
      propagate(x => x.height_mm, { height_mm: read(session, reading, 'mm', role, what) })
  )
}

/** A figure of others on the same panel. */
export const derived = (
  bench: Bench,
  panel: Panel,
  field: FieldPath,
  account: Parameters<typeof singleResult>[1],
  model: () => Computed
): Result | undefined => singleResult(openPart(bench, panel, field), account, model)

/** A figure as somebody states it: within what they say, or one step of its last digit. */
const stated = ({ value, resolution }: Reading, within: Reading | undefined, name: string) =>
  measured(value, rectangular(within?.value ?? resolution), name)

export function solidsResult(bench: Bench, panel: Panel): Result | undefined {
  const { stated_percent: figure, readings } = panel.solids ?? {}
  if (figure) return statedSolids(bench, panel, figure)
  return readings && driedSolids(bench, panel, readings)
}

function statedSolids(bench: Bench, panel: Panel, figure: Reading): Result | undefined {
  const { within_percent: within, from } = panel.solids!
  const taken = propagate(x => x.stated_percent, {
    stated_percent: stated(figure, within, `${panel.code} solids as stated`)
  })
  const basis = { formula: 's = s_stated', source: from ?? 'as recorded, nobody named' }
  return derived(bench, panel, ['solids'], { quantity: 'paintSolids_percent', basis }, () => taken)
}

type Dried = NonNullable<NonNullable<Panel['solids']>['readings']>

function driedSolids(bench: Bench, panel: Panel, readings: Dried): Result | undefined {
  const session = openPart(bench, panel, ['solids'], panel.solids?.instruments)
  const roles = { dish_g: 'mass', before_g: 'mass', after_g: 'mass' } as const
  return repeatedResult(
    session,
    readings,
    {
      quantity: 'paintSolids_percent',
      basis: paintSolidsBasis,
      written: {
        columns: ['Dish', 'Before', 'After'],
        rows: readings.map(one => [one.dish_g.written, one.before_g.written, one.after_g.written])
      },
      instrumentOf: instrumentsFor(session, roles)
    },
    (one, what) =>
      paintSolids({
        dish_g: read(session, one.dish_g, 'g', 'mass', `${what} dish`),
        before_g: read(session, one.before_g, 'g', 'mass', `${what} before`),
        after_g: read(session, one.after_g, 'g', 'mass', `${what} after`)
      })
  )
}

const LOADING = ['loading']

export function wetLoadingResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const { wet_percent: wet, dry_percent: dry, flake_g, paint_g } = panel.loading ?? {}
  const quantity = 'wetLoading_percent'
  if (wet) return statedLoading(bench, panel, quantity, wet)
  if (flake_g && paint_g) {
    const session = openPart(bench, panel, LOADING)
    const instrumentOf = instrumentsFor(session, { flake_g: 'mass', paint_g: 'mass' })
    return singleResult(session, { quantity, basis: wetLoadingBasis, instrumentOf }, () =>
      wetLoading({
        flake_g: read(session, flake_g, 'g', 'mass', 'flake'),
        paint_g: read(session, paint_g, 'g', 'mass', 'paint')
      })
    )
  }
  const solids = sofar.paintSolids_percent
  if (!dry || !solids) return undefined
  return derived(bench, panel, LOADING, { quantity, basis: wetOfDryBasis }, () =>
    wetOfDry({
      dryLoading_percent: statedEstimate(panel, dry),
      paintSolids_percent: solids.estimate
    })
  )
}

export function dryLoadingResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const quantity = 'dryLoading_percent'
  const { dry_percent: dry } = panel.loading ?? {}
  if (dry) return statedLoading(bench, panel, quantity, dry)
  const { wetLoading_percent: wet, paintSolids_percent: solids } = sofar
  if (!wet || !solids) return undefined
  return derived(bench, panel, LOADING, { quantity, basis: dryLoadingBasis }, () =>
    dryLoading({ wetLoading_percent: wet.estimate, paintSolids_percent: solids.estimate })
  )
}

const statedEstimate = ({ number }: Panel, reading: Reading) =>
  stated(reading, undefined, `${number} loading as stated`)

const statedLoading = (bench: Bench, panel: Panel, quantity: ProcessName, reading: Reading) =>
  derived(
    bench,
    panel,
    LOADING,
    { quantity, basis: { formula: 'w = w_stated', source: 'as recorded' } },
    () => propagate(x => x.stated_percent, { stated_percent: statedEstimate(panel, reading) })
  )

/** Weighed where the plate was, else by thickness and a stated density. */
export function filmMassResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const { mass, plate, filmDensity_g_per_cm3: density } = panel
  const quantity = 'filmMass_g_per_m2'
  const dryFilm = sofar.dryFilm_mm
  if (mass) {
    const session = openPart(bench, panel, ['mass'])
    const instrumentOf = instrumentsFor(session, {
      plate_g: 'mass',
      coated_g: 'mass',
      length_mm: 'length',
      width_mm: 'length'
    })
    return singleResult(session, { quantity, basis: weighedFilmBasis, instrumentOf }, () =>
      weighedFilm({
        plate_g: read(session, mass.plate_g, 'g', 'mass', 'bare plate'),
        coated_g: read(session, mass.coated_g, 'g', 'mass', 'coated plate'),
        length_mm: read(session, plate.length_mm, 'mm', 'length', 'plate length'),
        width_mm: read(session, plate.width_mm, 'mm', 'length', 'plate width')
      })
    )
  }
  if (!density || !dryFilm) return undefined
  return derived(bench, panel, ['dryFilm'], { quantity, basis: filmOfThicknessBasis }, () =>
    filmOfThickness({
      dryFilm_mm: dryFilm.estimate,
      filmDensity_g_per_cm3: stated(density, undefined, `${panel.number} film density as stated`)
    })
  )
}

/** Only of a film both weighed and measured: otherwise it was put in. */
export function filmDensityResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const { filmMass_g_per_m2: film, dryFilm_mm: dryFilm } = sofar
  if (!panel.mass || !film || !dryFilm) return undefined
  const account = { quantity: 'filmDensity_g_per_cm3', basis: filmDensityBasis } as const
  return derived(bench, panel, ['dryFilm'], account, () =>
    filmDensity({ filmMass_g_per_m2: film.estimate, dryFilm_mm: dryFilm.estimate })
  )
}

export function activeMassResult(bench: Bench, panel: Panel, sofar: Results): Result | undefined {
  const { filmMass_g_per_m2: film, dryLoading_percent: loading } = sofar
  if (!film || !loading) return undefined
  const account = { quantity: 'activeMass_g_per_m2', basis: activeMassBasis } as const
  return derived(bench, panel, LOADING, account, () =>
    activeMass({ filmMass_g_per_m2: film.estimate, dryLoading_percent: loading.estimate })
  )
}
