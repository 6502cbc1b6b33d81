import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Estimate, exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { type Sieve, sieveNamed, sieves } from '../../src/metrology/sieves.ts'
import { retainedOn, sieveLoss, type SieveRun, sizeAt } from '../../src/physics/sieve-analysis.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { uncertain } from '../metrology/given.ts'
import { expectLinear, FEWER_DRAWS } from '../metrology/monte-carlo.ts'

const stackOf = (...apertures_um: readonly number[]): Sieve[] =>
  apertures_um.map(aperture => sieves.find(one => one.aperture_um === aperture)!)

const runOf = (charged: number, retained: readonly number[], pan: number): SieveRun => ({
  charged_g: exact(charged),
  retained_g: retained.map(exact),
  pan_g: exact(pan)
})

/** A large flake, worked by hand and again with NumPy: sums, logarithms and nothing else. */
const stack = stackOf(500, 300, 180, 150, 75)
const run = runOf(100, [1.84, 80.36, 12.48, 2.31, 1.95], 0.48)

describe('the worked example of a large flake: 99.42 g found of 100.00 g', () => {
  test.for([
    [500, '1.851'],
    [300, '82.680'],
    [180, '95.232'],
    [150, '97.556'],
    [75, '99.517']
  ] as const)('retained on %i µm: %s %% of what was recovered', ([aperture, printed]) => {
    const { value } = retainedOn(run, stack, stackOf(aperture)[0]!)
    expect(asPrinted(value, printed)).toBe(printed)
  })

  test('loss 0.580 % of what was charged', () => {
    expect(asPrinted(sieveLoss(run, stack).value, '0.580')).toBe('0.580')
  })

  // Interpolated linearly in ln d; in d itself d10 would come to 230.0192, d50 to 380.8611.
  test.for([
    [10, '222.7127'],
    [16, '284.3050'],
    [50, '368.8213'],
    [84, '457.2302'],
    [90, '474.9008']
  ] as const)('d%i = %s µm', ([part, printed]) => {
    expect(asPrinted(sizeAt(run, stack, part)!.value, printed)).toBe(printed)
  })

  test('a size outside the stack is not determined', () => {
    expect(sizeAt(run, stack, 99)).toBeUndefined()
    expect(sizeAt(run, stack, 0.4)).toBeUndefined()
  })
})

test('by hand: 41.2, 5.1, 2.3 and a pan of 1.2 of 50.0 g: 82.7, 93.0, 97.6 %, loss 0.40 %', () => {
  const three = stackOf(300, 180, 150)
  const one = runOf(50, [41.2, 5.1, 2.3], 1.2)
  const retained = three.map(sieve => asPrinted(retainedOn(one, three, sieve).value, '0.0'))
  expect(retained).toEqual(['82.7', '93.0', '97.6'])
  expect(asPrinted(sieveLoss(one, three).value, '0.40')).toBe('0.40')
})

describe('sieves: numbers of ASTM E11, apertures of ISO 3310-1 (from a published transcription)', () => {
  test.for([
    ['No. 20', 850, 26],
    ['No. 35', 500, 16],
    ['No. 50', 300, 10],
    ['No 80', 180, 6.8],
    ['No. 100', 150, 6],
    ['No. 200', 75, 3.7],
    ['No. 325', 45, 2.8],
    ['300 µm', 300, 10],
    ['300 um', 300, 10]
  ] as const)('%s is %f µm ± %f µm', ([text, aperture_um, tolerance_um]) => {
    expect(sieveNamed(text)).toMatchObject({ aperture_um, tolerance_um })
  })

  test.for(['297 µm', 'No. 32', '300', '0.3 mm', '+80', '80 mesh', ''])(
    '%s names no sieve',
    text => {
      expect(sieveNamed(text)).toBeUndefined()
    }
  )

  test('run from coarse to fine, numbers upwards', () => {
    const sizes = sieves.map(one => one.aperture_um)
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a))
    const numbers = sieves.map(one => one.number)
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b))
  })
})

test('the mean aperture of a sieve is off by up to its tolerance: d50 at a sieve has u = Y/√3', () => {
  // 50 % pass 300 µm exactly, so d50 = 300 µm and moves with that sieve alone.
  const at = sizeAt(runOf(100, [10, 40, 50], 0), stackOf(500, 300, 180), 50)!
  expect(at.value).toBeCloseTo(300, 9)
  expect(uncertaintyOf(at)).toBeCloseTo(10 / Math.sqrt(3), 4)
})

describe('refuses', () => {
  test.for([
    ['nothing charged', runOf(0, [1, 1, 1, 1, 1], 1), 'charged_g must be greater than 0, got 0'],
    ['a negative mass', runOf(10, [1, -1, 1, 1, 1], 1), 'retained_g must be at least 0, got -1'],
    ['a negative pan', runOf(10, [1, 1, 1, 1, 1], -1), 'pan_g must be at least 0, got -1'],
    [
      'an empty stack',
      runOf(10, [0, 0, 0, 0, 0], 0),
      'retained_g must be above 0 in all and at most what was charged (10), got 0'
    ],
    [
      'more found than charged',
      runOf(10, [5, 5, 1, 0, 0], 0),
      'retained_g must be above 0 in all and at most what was charged (10), got 11'
    ],
    [
      'a sieve without its mass',
      runOf(10, [5, 5], 0),
      'retained_g must be one mass for each of 5 sieves, got 2'
    ]
  ] as const)('%s', ([, bad, message]) => {
    expect(() => retainedOn(bad, stack, stack[0]!)).toThrow(message)
    expect(() => sieveLoss(bad, stack)).toThrow(message)
    expect(() => sizeAt(bad, stack, 50)).toThrow(message)
  })

  test('a little more found than charged where the balance explains it', () => {
    const noisy = {
      ...runOf(50, [25, 25, 0.02, 0, 0], 0),
      charged_g: measured(50, 0.01, 'balance')
    }
    expect(sieveLoss(noisy, stack).value).toBeCloseTo(-0.04, 9)
  })
})

test('k times every mass leaves every figure as it was', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), k => {
      const scaled = runOf(
        k * 100,
        [1.84, 80.36, 12.48, 2.31, 1.95].map(m => k * m),
        k * 0.48
      )
      expect(retainedOn(scaled, stack, stack[1]!).value).toBeCloseTo(82.67954, 4)
      expect(sizeAt(scaled, stack, 50)!.value).toBeCloseTo(368.8213, 3)
    })
  )
})

describe('trials of the distributions agree', () => {
  const inputs = (u: number) =>
    uncertain({ charged: [100, u], top: [20, u], middle: [45, u], low: [28, u], pan: [4, u] })
  const runFrom = (x: Record<string, Estimate>): SieveRun => ({
    charged_g: x['charged']!,
    retained_g: [x['top']!, x['middle']!, x['low']!],
    pan_g: x['pan']!
  })
  const three = stackOf(500, 300, 180)

  test('retained, loss', () => {
    expectLinear(x => retainedOn(runFrom(x), three, three[1]!), inputs(0.11), FEWER_DRAWS)
    expectLinear(x => sieveLoss(runFrom(x), three), inputs(0.05), FEWER_DRAWS)
  })

  test('size, masses alone: the apertures are the model’s own', () => {
    const masses = (x: Record<string, Estimate>): Estimate => {
      const { value, terms } = sizeAt(runFrom(x), three, 50)!
      return {
        value,
        terms: new Map([...terms].filter(([name]) => !name.startsWith('mean aperture')))
      }
    }
    expectLinear(masses, inputs(0.04), FEWER_DRAWS)
  })
})
