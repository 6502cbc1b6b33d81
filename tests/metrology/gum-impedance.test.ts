/** GUM annex H.2: resistance, reactance and impedance from voltage, current and phase read together. */

import { describe, expect, test } from 'vitest'
import {
  type Estimate,
  estimate,
  exact,
  propagate,
  uncertaintyOf
} from '../../src/metrology/estimate.ts'
import { meanOfReadings } from '../../src/metrology/readings.ts'
import { correlation } from './correlation.ts'

/** Table H.2: five simultaneous observations. */
const voltages_V = [5.007, 4.994, 5.005, 4.99, 4.999]
const currents_mA = [19.663, 19.639, 19.64, 19.685, 19.678]
const phases_rad = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]

/** One name for the three: the k-th reading of each is one event. */
const together = (values: readonly number[]) => meanOfReadings(values.map(exact), 'set')

const V = together(voltages_V)
const I = together(currents_mA)
const phase = together(phases_rad)

type Electrical = Record<'V' | 'I' | 'phase', number>
const ohm = ({ V, I }: Electrical) => (1000 * V) / I
const resistance = (x: Electrical) => ohm(x) * Math.cos(x.phase)
const reactance = (x: Electrical) => ohm(x) * Math.sin(x.phase)

const near = (actual: number, expected: number, within: number) =>
  expect(Math.abs(actual - expected)).toBeLessThan(within)

describe('JCGM 100:2008, annex H.2, table H.2', () => {
  test.for([
    ['V', V, 4.999, 0.00320936, 1e-8],
    ['I', I, 19.661, 0.00947101, 1e-8],
    ['φ', phase, 1.04446, 0.000752064, 1e-9]
  ] as const)('mean and its uncertainty: %s', ([, mean, value, u, within]) => {
    near(mean.value, value, within)
    near(uncertaintyOf(mean), u, within)
  })

  test.for([
    ['V, I', V, I, -0.355311],
    ['V, φ', V, phase, 0.857624],
    ['I, φ', I, phase, -0.645111]
  ] as const)('correlation coefficient of %s', ([, a, b, r]) => near(correlation(a, b), r, 1e-6))
})

const R = propagate(resistance, { V, I, phase })
const X = propagate(reactance, { V, I, phase })
const Z = propagate(ohm, { V, I, phase })

describe('JCGM 100:2008, annex H.2, table H.3: from the means, correlations included', () => {
  test.for([
    ['R', R, 127.73217, 0.0710714],
    ['X', X, 219.846512, 0.2955817],
    ['Z', Z, 254.259702, 0.2363361]
  ] as const)('%s', ([, result, value, u]) => {
    near(result.value, value, 1e-6)
    near(uncertaintyOf(result), u, 1e-6)
  })

  test.for([
    ['R, X', R, X, -0.58843],
    ['R, Z', R, Z, -0.485259],
    ['X, Z', X, Z, 0.992512]
  ] as const)('correlation coefficient of %s', ([, a, b, r]) => near(correlation(a, b), r, 1e-6))
})

describe('JCGM 100:2008, annex H.2, table H.4: mean of the values of each set', () => {
  const sets = voltages_V.map((voltage, k) => ({
    V: voltage,
    I: currents_mA[k]!,
    phase: phases_rad[k]!
  }))
  test.for([
    ['R', resistance, 127.73163, 0.071274],
    ['X', reactance, 219.846895, 0.295489],
    ['Z', ohm, 254.26005, 0.236248]
  ] as const)('%s', ([, model, value, u]) => {
    const mean = together(sets.map(model))
    near(mean.value, value, 1e-6)
    near(uncertaintyOf(mean), u, 1e-6)
  })
})

describe('with the correlations thrown away, wrong on purpose', () => {
  const apart = (mean: Estimate, name: string) =>
    estimate(
      mean.value,
      [...mean.terms.values()].map(({ cause, u }) => ({
        cause: { ...cause, name: `${name}, ${cause.name}` },
        u
      }))
    )
  const inputs = { V: apart(V, 'V'), I: apart(I, 'I'), phase: apart(phase, 'φ') }

  test.for([
    ['R', resistance, 0.19454],
    ['X', reactance, 0.20091],
    ['Z', ohm, 0.20408]
  ] as const)('u of %s is another', ([, model, u]) =>
    near(uncertaintyOf(propagate(model, inputs)), u, 1e-5)
  )
})
