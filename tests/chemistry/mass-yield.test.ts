import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  carbonRecovery,
  lossCeiling,
  massYield,
  overallYield,
  trimYield,
  uptakeDry,
  uptakeWithoutSalt
} from '../../src/chemistry/mass-yield.ts'
import { measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const dry = {
  graphite_g: 100,
  product_g: 118.4,
  graphiteMoisture_percent: 0,
  productMoisture_percent: 0
}
const wet = { ...dry, graphiteMoisture_percent: 0.2, productMoisture_percent: 1.5 }

describe('by hand from the definitions', () => {
  const rows = [
    ['100 g become 118.4 g', massYield(exactly(dry)), '118.4'],
    ['both dry, 18.4 % taken up', uptakeDry(exactly(dry)), '18.40'],
    // 118.4 · 0.985 / (100 · 0.998) − 1 = 116.624 / 99.8 − 1
    ['moisture 0.2 % in, 1.5 % out', uptakeDry(exactly(wet)), '16.8577'],
    // 116.624 · 0.97 / 99.8 − 1 = 113.12528 / 99.8 − 1
    [
      '3 % of leachable salt taken off',
      uptakeWithoutSalt(exactly({ ...wet, leachableSalt_percent: 3 })),
      '13.3520'
    ],
    ['uptake 18.4 %: ceiling of the loss', lossCeiling(exactly({ uptake_percent: 18.4 })), '15.54'],
    ['uptake 0: nothing can leave', lossCeiling(exactly({ uptake_percent: 0 })), '0.00'],
    [
      'yield 118.4 %, loss 15 %',
      carbonRecovery(exactly({ massYield_percent: 118.4, lossOnExpansion_percent: 15 })),
      '100.64'
    ],
    [
      '42.5 g of 50 g worms saleable',
      trimYield(exactly({ worms_g: 50, saleable_g: 42.5 })),
      '85.0'
    ],
    [
      'recovery 100.64 %, trim 85 %',
      overallYield(exactly({ carbonRecovery_percent: 100.64, trimYield_percent: 85 })),
      '85.544'
    ]
  ] as const

  test.for(rows)('%s', ([, result, printed]) => {
    expect(asPrinted(result.value, printed)).toBe(printed)
  })
})

describe('inputs outside the domain', () => {
  const salt = { ...wet, leachableSalt_percent: 3 }

  test.for([
    [{ graphite_g: 0 }, 'graphite_g must be greater than 0, got 0'],
    [{ product_g: 0 }, 'product_g must be greater than 0, got 0'],
    [
      { graphiteMoisture_percent: 100 },
      'graphiteMoisture_percent must be at least 0 and below 100'
    ],
    [{ productMoisture_percent: -1 }, 'productMoisture_percent must be at least 0 and below 100'],
    [{ leachableSalt_percent: 100 }, 'leachableSalt_percent must be at least 0 and below 100']
  ] as const)('uptake %o', ([wrong, message]) => {
    const inputs = exactly({ ...salt, ...wrong })
    expect(() => uptakeWithoutSalt(inputs)).toThrow(message)
    if (!('leachableSalt_percent' in wrong)) expect(() => uptakeDry(inputs)).toThrow(message)
    if ('graphite_g' in wrong || 'product_g' in wrong)
      expect(() => massYield(inputs)).toThrow(message)
  })

  test('a negative uptake has no ceiling of the loss', () => {
    const message = 'uptake_percent must be at least 0, got -2'
    expect(() => lossCeiling(exactly({ uptake_percent: -2 }))).toThrow(message)
  })

  test.for([
    [{ massYield_percent: 0 }, 'massYield_percent must be greater than 0, got 0'],
    [{ lossOnExpansion_percent: -1 }, 'lossOnExpansion_percent must be at least 0 and below 100'],
    [{ lossOnExpansion_percent: 100 }, 'lossOnExpansion_percent must be at least 0 and below 100']
  ] as const)('recovery %o', ([wrong, message]) => {
    const inputs = exactly({ massYield_percent: 118.4, lossOnExpansion_percent: 15, ...wrong })
    expect(() => carbonRecovery(inputs)).toThrow(message)
  })

  test.for([
    [{ carbonRecovery_percent: 0 }, 'carbonRecovery_percent must be greater than 0, got 0'],
    [{ trimYield_percent: -1 }, 'trimYield_percent must be at least 0, got -1']
  ] as const)('overall yield %o', ([wrong, message]) => {
    const inputs = exactly({ carbonRecovery_percent: 100.64, trimYield_percent: 85, ...wrong })
    expect(() => overallYield(inputs)).toThrow(message)
  })

  test.for([
    [0, 0, 'worms_g must be greater than 0, got 0'],
    [50, -1, 'saleable_g must be at least 0, got -1'],
    [50, 50.1, 'saleable_g must be at most worms (50 g), got 50.1']
  ] as const)('trim %f g worms, %f g foil', ([worms_g, saleable_g, message]) => {
    expect(() => trimYield(exactly({ worms_g, saleable_g }))).toThrow(message)
  })
})

const mass = fc.integer({ min: 100, max: 100_000 }).map(centigrams => centigrams / 100)
const percent = fc.integer({ min: 0, max: 400 }).map(tenths => tenths / 10)

test('dry to dry, the uptake is the yield less 100 %, whatever the scale', () => {
  fc.assert(
    fc.property(mass, mass, fc.integer({ min: 2, max: 9 }), (graphite_g, product_g, k) => {
      const of = (scale: number) =>
        exactly({ ...dry, graphite_g: scale * graphite_g, product_g: scale * product_g })
      const yield_percent = massYield(of(1)).value
      expect(uptakeDry(of(1)).value).toBeCloseTo(yield_percent - 100, 6)
      expect(massYield(of(k)).value / yield_percent).toBeCloseTo(1, 12)
    })
  )
})

test('equal moisture on both sides cancels; salt of 0 changes nothing', () => {
  fc.assert(
    fc.property(mass, percent, percent, (product_g, moisture, salt) => {
      const both = { graphiteMoisture_percent: moisture, productMoisture_percent: moisture }
      const inputs = exactly({ ...dry, product_g, ...both })
      const plain = uptakeDry(exactly({ ...dry, product_g })).value
      expect(uptakeDry(inputs).value).toBeCloseTo(plain, 7)
      const salted = (s: number) =>
        uptakeWithoutSalt({ ...inputs, ...exactly({ leachableSalt_percent: s }) }).value
      expect(salted(0)).toBeCloseTo(plain, 7)
      expect(salted(salt)).toBeCloseTo((100 + plain) * (1 - salt / 100) - 100, 7)
    })
  )
})

test('a loss at its ceiling recovers exactly the graphite charged', () => {
  fc.assert(
    fc.property(percent, uptake_percent => {
      const ceiling = lossCeiling(exactly({ uptake_percent })).value
      const recovered = carbonRecovery(
        exactly({ massYield_percent: 100 + uptake_percent, lossOnExpansion_percent: ceiling })
      )
      expect(recovered.value).toBeCloseTo(100, 9)
    })
  )
})

test('the overall yield is saleable foil over graphite, the chain between cancelling', () => {
  fc.assert(
    fc.property(mass, mass, percent, percent, (graphite_g, product_g, loss, trim) => {
      const massYield_percent = massYield(exactly({ graphite_g, product_g })).value
      const saleable_g = product_g * (1 - loss / 100) * (trim / 100)
      const { value } = carbonRecovery(
        exactly({ massYield_percent, lossOnExpansion_percent: loss })
      )
      const overall = overallYield(
        exactly({ carbonRecovery_percent: value, trimYield_percent: trim })
      )
      expect(overall.value).toBeCloseTo((100 * saleable_g) / graphite_g, 6)
    })
  )
})

test('one balance for both masses: its calibration cancels from the yield', () => {
  const weighed = (value: number) => measured(value, 0.001 * value, 'BAL-1 calibration')
  const result = massYield({ graphite_g: weighed(100), product_g: weighed(118.4) })
  expect(uncertaintyOf(result)).toBeLessThan(1e-4)
})

describe('trials of the distributions agree', () => {
  const masses = uncertain({ graphite_g: [100, 0.1], product_g: [118.4, 0.1] })
  const moistures = uncertain({
    graphiteMoisture_percent: [0.5, 0.05],
    productMoisture_percent: [1.5, 0.08]
  })
  const run = uncertain({ massYield_percent: [118.4, 0.15], lossOnExpansion_percent: [15, 0.08] })
  const chain = uncertain({ carbonRecovery_percent: [100.64, 0.16], trimYield_percent: [85, 0.12] })
  test('massYield', () => expectLinear(massYield, masses))
  test('uptakeDry', () => expectLinear(uptakeDry, { ...masses, ...moistures }))
  test('uptakeWithoutSalt', () =>
    expectLinear(uptakeWithoutSalt, {
      ...masses,
      ...moistures,
      ...uncertain({ leachableSalt_percent: [3, 0.07] })
    }))
  test('lossCeiling', () => expectLinear(lossCeiling, uncertain({ uptake_percent: [18.4, 0.2] })))
  test('carbonRecovery', () => expectLinear(carbonRecovery, run))
  test('overallYield', () => expectLinear(overallYield, chain))
  test('trimYield', () =>
    expectLinear(trimYield, uncertain({ worms_g: [50, 0.05], saleable_g: [42.5, 0.05] })))
})
