/** Charts of individuals and their averages against the handbook's. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  D2,
  ewmaChart,
  individualsChart,
  rangeDegreesOfFreedom,
  usualEwma
} from '../../src/quality/individuals.ts'
import { meanOfValues, sampleOf } from '../../src/quality/sample.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { normalDraws } from './draws.ts'
import { averaged, flowRates } from './handbook.ts'

describe('NIST/SEMATECH e-Handbook, 6.3.2.2: flow rates', () => {
  const chart = individualsChart(flowRates)

  test('mean 50.81, mean range 1.8778', () => {
    expect(asPrinted(chart.centre, '50.81')).toBe('50.81')
    expect(asPrinted(chart.rangeLimits.centre, '1.8778')).toBe('1.8778')
  })

  test('limits 55.8041 and 45.8159 with the printed 1.128, which ours holds exactly', () => {
    const rounded = (limit: number) => chart.centre + ((limit - chart.centre) * D2) / 1.128
    expect(asPrinted(rounded(chart.upper), '55.8041')).toBe('55.8041')
    expect(asPrinted(rounded(chart.lower), '45.8159')).toBe('45.8159')
    // With 2/√π: computed from the definition.
    expect(asPrinted(chart.upper, '55.8024')).toBe('55.8024')
    expect(asPrinted(chart.lower, '45.8176')).toBe('45.8176')
  })

  // ISO 7870-2, table of constants for n = 2: D4 = 3.267, which is 1 + 3 d₃/d₂ = 3.2665 rounded up.
  test('upper limit of the ranges 3.2665 times their mean', () => {
    const { centre, lower, upper } = chart.rangeLimits
    expect(asPrinted(upper / centre, '3.2665')).toBe('3.2665')
    expect(lower).toBe(0)
  })
})

describe('NIST/SEMATECH e-Handbook, 6.3.2.4: EWMA', () => {
  const points = ewmaChart(averaged, { centre: 50, sigma: 2.0539 }, { weight: 0.3, width: 3 })

  test('all twenty averages', () => {
    const printed = [
      '50.60',
      '49.52',
      '50.56',
      '50.18',
      '50.16',
      '49.21',
      '49.75',
      '49.85',
      '50.26',
      '50.33',
      '50.11',
      '49.36',
      '49.52',
      '50.05',
      '49.38',
      '49.92',
      '50.73',
      '51.23',
      '51.94',
      '51.99'
    ]
    expect(points.map(({ value }, index) => asPrinted(value, printed[index]!))).toEqual(printed)
  })

  test('steady limits 52.5884 and 47.4116', () => {
    expect(asPrinted(points.at(-1)!.upper, '52.588')).toBe('52.588')
    expect(asPrinted(points.at(-1)!.lower, '47.412')).toBe('47.412')
  })

  test.for([
    [1, '1.8485'],
    [2, '2.2564'],
    [3, '2.4314'],
    [10, '2.5874']
  ] as const)('after %d figures they lie %s from the centre', ([n, half]) => {
    expect(asPrinted(points[n - 1]!.upper - 50, half)).toBe(half)
  })

  test.for([[0], [1.1], [NaN]] as const)('a weight of %d is refused', ([weight]) => {
    expect(() => ewmaChart([1], { centre: 1, sigma: 1 }, { weight, width: 3 })).toThrow(RangeError)
  })

  test('a weight of 1 is the chart of individuals itself', () => {
    const state = { centre: 50, sigma: 2 }
    const all = ewmaChart(averaged, state, { weight: 1, width: 3 })
    expect(all.map(({ value }) => value)).toEqual(averaged)
    expect(all[0]).toMatchObject({ lower: 44, upper: 56 })
  })

  // The run length of an EWMA solved as a Markov chain of 401 states, in another language: 371.
  test('one false alarm in about 370 figures', () => {
    const runs = normalDraws(400, 2500, 11).map(values => {
      const at = ewmaChart(values, { centre: 0, sigma: 1 }).findIndex(
        ({ value, lower, upper }) => value < lower || value > upper
      )
      return at < 0 ? 2500 : at + 1
    })
    // The mean of 400 runs scatters by 371/√400; the limits' growing costs some early alarms.
    expect(Math.abs(meanOfValues(runs) - 371)).toBeLessThan(60)
    expect(usualEwma).toEqual({ weight: 0.2, width: 2.86 })
  })
})

describe('moving ranges', () => {
  test('scale with the figures and ignore their level', () => {
    const figures = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), {
      minLength: 3,
      maxLength: 30
    })
    fc.assert(
      fc.property(figures, values => {
        const chart = individualsChart(values)
        const moved = individualsChart(values.map(value => 3 * value + 7))
        expect(moved.sigma).toBeCloseTo(3 * chart.sigma, 8)
        expect(moved.centre).toBeCloseTo(3 * chart.centre + 7, 8)
      })
    )
  })

  test('a drift moves the limits apart less than it moves s', () => {
    const drifting = averaged.map((value, index) => value + 2 * index)
    const { sigma } = individualsChart(drifting)
    expect(sigma).toBeLessThan(sampleOf(drifting).s / 2)
  })

  test('σ is without bias, and scatters as its degrees of freedom say', () => {
    const sigmas = normalDraws(4000, 12).map(values => individualsChart(values).sigma)
    const { mean, s } = sampleOf(sigmas)
    expect(Math.abs(mean - 1)).toBeLessThan(0.02)
    // Relative variance 1/(2ν) by definition.
    expect(Math.abs(s ** 2 * 2 * rangeDegreesOfFreedom(11) - 1)).toBeLessThan(0.07)
  })

  // Two figures: s = R/√2 has one degree of freedom; R/d₂ has the relative variance of a half-normal
  // figure, π/2 − 1, so 1/(π − 2) = 0.876. Many: Hoel's efficiency 0.605 (from memory).
  test('degrees of freedom: 0.876 for one range, 0.605 each for many', () => {
    expect(rangeDegreesOfFreedom(1)).toBeCloseTo(1 / (Math.PI - 2), 10)
    expect(asPrinted(rangeDegreesOfFreedom(1e6) / 1e6, '0.605')).toBe('0.605')
  })

  test('one figure makes no chart', () => {
    expect(() => individualsChart([1])).toThrow('a chart requires at least 2 figures')
  })
})
