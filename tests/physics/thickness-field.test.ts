import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Estimate, exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { degreesOfFreedom } from '../../src/metrology/estimate.ts'
import { weightedSum } from '../../src/metrology/readings.ts'
import { fitPlane, type Spot, spansPlane, taper } from '../../src/physics/thickness-field.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const spotsOf = (places: readonly (readonly [number, number])[]): Spot[] =>
  places.map(([x_mm, y_mm]) => ({ x_mm, y_mm }))
const planeOf = (places: readonly (readonly [number, number])[], values: readonly number[]) =>
  fitPlane(spotsOf(places), values.map(exact), 'sheet')

// JCGM 100:2008, H.3, table H.6: corrections of a thermometer, from memory, checked by its own results.
const temperatures = [
  21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511
]
const corrections = [
  -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16
]

// JCGM 100:2008 (GUM), H.3: its line, laid down twice, at both edges of a strip (data from memory).
describe('GUM H.3, its eleven readings at two edges', () => {
  const plane = planeOf(
    [0, 1].flatMap(y => temperatures.map(t => [t, y] as const)),
    [...corrections, ...corrections]
  )
  test.for([
    ['slope', plane.along_mm_per_m.value / 1000, '0.00218'],
    // Twice the readings: 22 − 3 degrees of freedom where the example has 9, the same squares.
    [
      'its standard uncertainty',
      uncertaintyOf(plane.along_mm_per_m) / 1000 / Math.sqrt(9 / 19),
      '0.00067'
    ],
    ['scatter about the line', plane.residual_mm * Math.sqrt(19 / 18), '0.0035'],
    ['slope from edge to edge', plane.across_mm_per_m.value, '0.00000']
  ] as const)('%s', ([, value, printed]) => {
    expect(asPrinted(value + 0, printed)).toBe(printed)
  })
})

// Ten readings at uneven places, by numpy.linalg.lstsq and its covariance (python with scipy's numpy 1.24).
describe('an uneven field, as another language computed it', () => {
  const plane = planeOf(
    [
      [10, 12],
      [52, 8],
      [88, 15],
      [14, 47],
      [49, 55],
      [91, 44],
      [8, 93],
      [55, 86],
      [83, 90],
      [30, 70]
    ],
    [0.512, 0.508, 0.503, 0.515, 0.511, 0.506, 0.52, 0.514, 0.509, 0.516]
  )
  const shared = [...plane.along_mm_per_m.terms].reduce(
    (sum, [name, { u }]) => sum + u * (plane.across_mm_per_m.terms.get(name)?.u ?? 0),
    0
  )
  // By python with scipy.
  test.for([
    ['slope along', plane.along_mm_per_m.value, '-0.12533546132'],
    ['slope across', plane.across_mm_per_m.value, '0.08377281127'],
    ['u along', uncertaintyOf(plane.along_mm_per_m), '0.00852037439'],
    ['u across', uncertaintyOf(plane.across_mm_per_m), '0.00836645451'],
    ['scatter about the plane', plane.residual_mm, '0.00081780339'],
    ['covariance of the slopes', shared, '0.00000531178'],
    ['first reading above the plane', plane.above_mm[0]!, '-0.00081184'],
    ['last reading above the plane', plane.above_mm[9]!, '0.00083605']
  ] as const)('%s', ([, value, printed]) => expect(asPrinted(value, printed)).toBe(printed))

  test('n − 3 degrees of freedom', () => {
    expect(degreesOfFreedom(plane.along_mm_per_m)).toBeCloseTo(7, 9)
  })
})

const corners = [
  [0, 0],
  [100, 0],
  [0, 100],
  [100, 100]
] as const

test('a plane gives itself back, with nothing left over', () => {
  const slope = fc.double({ min: -2, max: 2, noNaN: true })
  const place = fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 200 }))
  fc.assert(
    fc.property(slope, slope, fc.array(place, { minLength: 1, maxLength: 12 }), (a, b, more) => {
      const places = [...corners, ...more]
      const plane = planeOf(
        places,
        places.map(([x, y]) => 0.5 + (a * x + b * y) / 1000)
      )
      expect(plane.along_mm_per_m.value).toBeCloseTo(a, 8)
      expect(plane.across_mm_per_m.value).toBeCloseTo(b, 8)
      expect(plane.residual_mm).toBeCloseTo(0, 9)
    })
  )
})

test('an error that all readings share is in no slope; one of a single reading is', () => {
  const gauge = (value: number): Estimate => measured(value, 0.002, 'gauge')
  const common = fitPlane(spotsOf(corners), [0.5, 0.5, 0.5, 0.5].map(gauge), 'sheet')
  expect(uncertaintyOf(common.along_mm_per_m)).toBeCloseTo(0, 12)
  const own = [0.5, 0.5, 0.5, 0.5].map((value, index) => measured(value, 0.002, `reading ${index}`))
  // Four corners 100 mm apart: u = 2 · 0.002 mm / 200 mm.
  const plane = fitPlane(spotsOf(corners), own, 'sheet')
  expect(uncertaintyOf(plane.along_mm_per_m)).toBeCloseTo(0.02, 12)
})

test.for([
  ['three places', corners.slice(0, 3), false],
  ['four corners', corners, true],
  [
    'on one slanting line',
    [
      [0, 0],
      [10, 20],
      [20, 40],
      [30, 60],
      [35, 70]
    ],
    false
  ],
  [
    'along one edge',
    [
      [0, 5],
      [10, 5],
      [20, 5],
      [30, 5]
    ],
    false
  ]
] as const)('%s', ([, places, spans]) => {
  expect(spansPlane(spotsOf(places))).toBe(spans)
  if (!spans)
    expect(() =>
      planeOf(
        places,
        places.map(() => 0.5)
      )
    ).toThrow('positions must be 4 or more, not on one line')
})

test('a spot is missing', () => {
  expect(() => fitPlane(spotsOf(corners), [exact(0.5)], 'sheet')).toThrow('a spot a reading')
})

test('taper: 0.2 mm/m over 90 mm, by hand', () => {
  expect(taper(exactly({ slope_mm_per_m: 0.2, side_mm: 90 })).value).toBeCloseTo(0.018, 15)
  expect(() => taper(exactly({ slope_mm_per_m: 0.2, side_mm: 0 }))).toThrow(
    'side_mm must be greater'
  )
  expectLinear(taper, uncertain({ slope_mm_per_m: [0.2, 0.02], side_mm: [90, 0.1] }))
})

test('a weighted sum carries what its parts share once', () => {
  const sum = weightedSum([measured(2, 0.1, 'a'), measured(3, 0.2, 'a')], [1, -0.5])
  expect(sum.value).toBeCloseTo(0.5, 12)
  expect(uncertaintyOf(sum)).toBeCloseTo(0, 12)
})
