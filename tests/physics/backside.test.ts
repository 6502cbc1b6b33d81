import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import {
  backsideTime,
  gainPerFilm,
  gainPerMass,
  reachedAt,
  timeGained
} from '../../src/physics/backside.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const lines = {
  earlier_s: 600,
  later_s: 630,
  earlier_C: 495,
  later_C: 510,
  start_s: 0,
  limit_C: 500
}

/** By hand: a third of the way from 600 s to 630 s is 610 s. */
test.for([
  [lines, '10.167'],
  [{ ...lines, start_s: 10 }, '10.000'],
  [{ ...lines, later_C: 500 }, '10.500'],
  [{ ...lines, earlier_s: 0, later_s: 60, earlier_C: 20, later_C: 980 }, '0.500'],
  [{ ...lines, earlier_s: 0, later_s: 60, earlier_C: 20, later_C: 980, limit_C: 260 }, '0.250']
] as const)('by hand: %o', ([inputs, printed]) => {
  expect(asPrinted(backsideTime(exactly(inputs)).value, printed)).toBe(printed)
})

/** By hand. */
test('time gained, per millimetre and per gram', () => {
  const gained = timeGained(exactly({ backsideTime_min: 15.7, bareTime_min: 3.2 }))
  expect(asPrinted(gained.value, '12.5')).toBe('12.5')
  const timeGained_min = gained
  const film = gainPerFilm({ timeGained_min, ...exactly({ dryFilm_mm: 0.5 }) })
  expect(asPrinted(film.value, '25.0')).toBe('25.0')
  const mass = gainPerMass(
    { timeGained_min, ...exactly({ filmMass_g_per_m2: 675 }) },
    'filmMass_g_per_m2'
  )
  expect(asPrinted(mass.value, '1.111')).toBe('1.111')
  const active = gainPerMass(
    { timeGained_min, ...exactly({ activeMass_g_per_m2: 67.5 }) },
    'activeMass_g_per_m2'
  )
  expect(asPrinted(active.value, '11.111')).toBe('11.111')
})

describe('where a log reaches a temperature', () => {
  const log = [20, 200, 480, 505, 495, 510].map((temperature_C, index) => ({
    at_s: 30 * index,
    temperature_C
  }))

  test('is the first line not below it, whatever follows', () => {
    expect(reachedAt(log, 500)).toBe(3)
    expect(reachedAt(log, 505)).toBe(3)
    expect(reachedAt(log, 505.1)).toBe(5)
    expect(reachedAt(log, 20)).toBe(0)
  })

  test('is nowhere where it ends before', () => {
    expect(reachedAt(log, 511)).toBeUndefined()
    expect(reachedAt([], 20)).toBeUndefined()
  })
})

describe('a time', () => {
  const steps = fc.record({
    from: fc.double({ min: 20, max: 490, noNaN: true }),
    by: fc.double({ min: 1, max: 100, noNaN: true }),
    at: fc.double({ min: 0, max: 5000, noNaN: true }),
    for: fc.double({ min: 1, max: 60, noNaN: true }),
    part: fc.double({ min: 0.01, max: 1, noNaN: true })
  })

  test('lies between its two lines, and as far as the temperature does', () => {
    fc.assert(
      fc.property(steps, ({ from, by, at, for: seconds, part }) => {
        const found = backsideTime(
          exactly({
            earlier_s: at,
            later_s: at + seconds,
            earlier_C: from,
            later_C: from + by,
            start_s: 0,
            limit_C: from + part * by
          })
        ).value
        expect(found).toBeCloseTo((at + part * seconds) / 60, 8)
      })
    )
  })

  test('does not care what the clock showed when heating began', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 80_000, noNaN: true }), shift => {
        const moved = exactly({
          ...lines,
          earlier_s: 600 + shift,
          later_s: 630 + shift,
          start_s: shift
        })
        expect(backsideTime(moved).value).toBeCloseTo(backsideTime(exactly(lines)).value, 8)
      })
    )
  })

  test('of a thermocouple that reads high is short, by its error over the rate of heating', () => {
    const shared = (value: number) => measured(value, 3, 'thermocouple')
    const found = backsideTime({
      ...exactly(lines),
      earlier_C: shared(495),
      later_C: shared(510)
    })
    // 15 °C in 30 s: 3 °C is 6 s.
    expect(uncertaintyOf(found)).toBeCloseTo(0.1, 9)
    expect(found.terms.get('thermocouple')!.u).toBeLessThan(0)
  })
})

test('what both panels share goes out of the time gained', () => {
  const late = (value: number) => measured(value, 0.05, 'thermocouple')
  const gained = timeGained({ backsideTime_min: late(15), bareTime_min: late(3) })
  expect(uncertaintyOf(gained)).toBeLessThan(1e-9)
})

test('a coating that makes it worse has a gain below 0', () => {
  expect(timeGained(exactly({ backsideTime_min: 3, bareTime_min: 3.2 })).value).toBeCloseTo(-0.2, 9)
})

test.for([
  [{ later_s: 600 }, 'later_s must be after 600, got 600'],
  [{ earlier_C: 500 }, 'earlier_C must be below 500, got 500'],
  [{ later_C: 499 }, 'later_C must be at least 500, got 499'],
  [{ start_s: 631 }, 'start_s must be at most 630, got 631'],
  [{ limit_C: Number.NaN }, 'earlier_C must be below']
] as const)('refuses %o', ([change, message]) => {
  expect(() => backsideTime(exactly({ ...lines, ...change }))).toThrow(message)
})

test.for([
  [
    () => timeGained(exactly({ backsideTime_min: 0, bareTime_min: 3 })),
    'backsideTime_min must be greater than 0'
  ],
  [
    () => timeGained(exactly({ backsideTime_min: 9, bareTime_min: 0 })),
    'bareTime_min must be greater than 0'
  ],
  [() => gainPerFilm(exactly({ timeGained_min: 9, dryFilm_mm: 0 })), 'dryFilm_mm must be'],
  [
    () =>
      gainPerMass(exactly({ timeGained_min: 9, activeMass_g_per_m2: 0 }), 'activeMass_g_per_m2'),
    'activeMass_g_per_m2 must be'
  ]
] as const)('refuses: %o', ([model, message]) => {
  expect(model).toThrow(message)
})

test('trials of the distributions agree', () => {
  expectLinear(
    inputs => backsideTime({ ...inputs, ...{ limit_C: exact(500) } }),
    uncertain({
      earlier_s: [600, 0.3],
      later_s: [630, 0.3],
      earlier_C: [494, 0.05],
      later_C: [510, 0.05],
      start_s: [0, 0.6]
    })
  )
  expectLinear(timeGained, uncertain({ backsideTime_min: [15, 0.1], bareTime_min: [3, 0.08] }))
  expectLinear(gainPerFilm, uncertain({ timeGained_min: [12, 0.09], dryFilm_mm: [0.6, 0.0002] }))
  expectLinear(
    inputs => gainPerMass(inputs, 'activeMass_g_per_m2'),
    uncertain({ timeGained_min: [12, 0.22], activeMass_g_per_m2: [120, 0.5] })
  )
})
