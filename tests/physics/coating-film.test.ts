import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import {
  activeMass,
  filmDensity,
  filmOfThickness,
  weighedFilm
} from '../../src/physics/coating-film.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

/** By hand: a film of 0.5 mm and 1350 kg/m³ weighs 675 g/m²; a tenth of it is 67.5 g/m². */
test.for([
  [0.5, 1.35, 10, '675', '67.5'],
  [0.619, 1.26, 15.38, '780', '120.0'],
  [1, 1, 50, '1000', '500']
] as const)(
  'by hand: %s mm of %s g/cm³ with %s %% of flake',
  ([dryFilm_mm, filmDensity_g_per_cm3, dryLoading_percent, film, active]) => {
    const mass = filmOfThickness(exactly({ dryFilm_mm, filmDensity_g_per_cm3 }))
    expect(asPrinted(mass.value, film)).toBe(film)
    const loading = exactly({ dryLoading_percent })
    const flake = activeMass({ filmMass_g_per_m2: mass, ...loading })
    expect(asPrinted(flake.value, active)).toBe(active)
  }
)

/** By hand: grams over square metres. */
test.for([
  [235, 241.75, 100, 100, '675'],
  [235, 242.79, 100, 99.98, '779.2'],
  [50.02, 50.12, 50, 40, '50.0']
] as const)('by hand: from %s g to %s g', ([plate_g, coated_g, length_mm, width_mm, printed]) => {
  const film = weighedFilm(exactly({ plate_g, coated_g, length_mm, width_mm }))
  expect(asPrinted(film.value, printed)).toBe(printed)
})

const above = fc.double({ min: 0.01, max: 100, noNaN: true })

describe('a film', () => {
  test('weighs the same on a plate laid the other way round', () => {
    fc.assert(
      fc.property(above, above, above, (gain, length_mm, width_mm) => {
        const on = (a: number, b: number) =>
          weighedFilm(exactly({ plate_g: 200, coated_g: 200 + gain, length_mm: a, width_mm: b }))
            .value
        expect(on(length_mm, width_mm)).toBeCloseTo(on(width_mm, length_mm), 9)
      })
    )
  })

  test('has the density it was computed from', () => {
    fc.assert(
      fc.property(above, above, (dryFilm_mm, filmDensity_g_per_cm3) => {
        const filmMass_g_per_m2 = filmOfThickness(exactly({ dryFilm_mm, filmDensity_g_per_cm3 }))
        const found = filmDensity({ filmMass_g_per_m2, ...exactly({ dryFilm_mm }) })
        expect(found.value / filmDensity_g_per_cm3).toBeCloseTo(1, 12)
      })
    )
  })
})

test('an error of the balance that both weighings share goes out of the film', () => {
  const shared = (value: number) => measured(value, 0.02, 'balance')
  const film = weighedFilm({
    plate_g: shared(235),
    coated_g: shared(242),
    ...exactly({ length_mm: 100, width_mm: 100 })
  })
  expect(uncertaintyOf(film)).toBeLessThan(1e-6)
})

const plate = { plate_g: 235, coated_g: 242, length_mm: 100, width_mm: 100 }

test.for([
  [{ ...plate, coated_g: 235 }, 'coated_g must be greater than plate (235), got 235'],
  [{ ...plate, plate_g: 0 }, 'plate_g must be greater than 0'],
  [{ ...plate, length_mm: 0 }, 'length_mm must be greater than 0'],
  [{ ...plate, width_mm: -1 }, 'width_mm must be greater than 0']
] as const)('refuses %o', ([inputs, message]) => {
  expect(() => weighedFilm(exactly(inputs))).toThrow(message)
})

test.for([
  [
    () => filmOfThickness(exactly({ dryFilm_mm: 0, filmDensity_g_per_cm3: 1 })),
    'dryFilm_mm must be'
  ],
  [
    () => filmOfThickness(exactly({ dryFilm_mm: 1, filmDensity_g_per_cm3: 0 })),
    'filmDensity_g_per_cm3 must be'
  ],
  [
    () => filmDensity(exactly({ filmMass_g_per_m2: 0, dryFilm_mm: 1 })),
    'filmMass_g_per_m2 must be'
  ],
  [() => filmDensity(exactly({ filmMass_g_per_m2: 1, dryFilm_mm: 0 })), 'dryFilm_mm must be'],
  [
    () => activeMass(exactly({ filmMass_g_per_m2: 0, dryLoading_percent: 9 })),
    'filmMass_g_per_m2 must be'
  ],
  [
    () => activeMass(exactly({ filmMass_g_per_m2: 9, dryLoading_percent: 100 })),
    'dryLoading_percent must be above 0 and below 100, got 100'
  ],
  [
    () => activeMass(exactly({ filmMass_g_per_m2: 9, dryLoading_percent: 0 })),
    'dryLoading_percent must be'
  ]
] as const)('refuses: %o', ([model, message]) => {
  expect(model).toThrow(message)
})

test('trials of the distributions agree', () => {
  expectLinear(
    weighedFilm,
    uncertain({
      plate_g: [235, 0.009],
      coated_g: [242, 0.009],
      length_mm: [100, 0.02],
      width_mm: [100, 0.02]
    })
  )
  expectLinear(
    filmOfThickness,
    uncertain({ dryFilm_mm: [0.5, 0.01], filmDensity_g_per_cm3: [1.35, 0.02] })
  )
  expectLinear(filmDensity, uncertain({ filmMass_g_per_m2: [675, 0.6], dryFilm_mm: [0.5, 0.0005] }))
  expectLinear(
    activeMass,
    uncertain({ filmMass_g_per_m2: [675, 9], dryLoading_percent: [10, 0.15] })
  )
})
