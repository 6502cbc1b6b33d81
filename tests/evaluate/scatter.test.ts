import { describe, expect, test } from 'vitest'
import { excessiveScatter } from '../../src/evaluate/scatter.ts'
import { demoFiles, problemsOf, withChange } from '../records-on-disk.ts'

const known = { s: 4, df: 27, name: 'TM-01 repeatability' }

test.for([
  // ISO 5725-6:1994, table 1 (from memory): f(3) = 3.3, f(4) = 3.6; half as much again is 19.8, 21.6
  ['three readings within', [262, 270, 281.7], undefined],
  ['three readings beyond', [262, 270, 281.9], { range: 19.9, most: 19.8 }],
  ['four readings beyond', [250, 260, 262, 271.7], { range: 21.7, most: 21.6 }],
  ['a factor of ten', [26.2, 257, 261], { range: 234.8, most: 19.8 }],
  ['a single reading', [262], undefined]
] as const)('%s', ([, values, expected]) => {
  const found = excessiveScatter(values, known)
  expect(found && { range: found.range, most: found.most }).toEqual(
    expected && { range: expect.closeTo(expected.range, 9), most: expect.closeTo(expected.most, 9) }
  )
})

test('without a known repeatability only a slip is told', () => {
  expect(excessiveScatter([0.08, 0.1, 0.12], undefined)).toBeUndefined()
  expect(excessiveScatter([0.1, 1, 0.1], undefined)).toBeDefined()
  expect(excessiveScatter([-0.1, 0.1], undefined)).toBeDefined()
})

test('of places that differ by themselves, only what lies next to none of the others', () => {
  expect(excessiveScatter([8, 10, 17], undefined, true)).toBeUndefined()
  expect(excessiveScatter([12, 12, 12, 12, 12, 12, 12, 12, 12e-6], undefined, true)).toBeDefined()
  expect(excessiveScatter([12, 12, 12, 12, 120], undefined, true)).toBeDefined()
})

describe('duplicates of ash', () => {
  const record = 'batches/EB-26-015.yaml'
  const told = (after: string) =>
    problemsOf(withChange(demoFiles, record, 'after: 22.9235 g', `after: ${after}`)).filter(line =>
      line.startsWith('SCATTERED_READINGS')
    )

  test('further apart than laboratories found are told of', () => {
    expect(told('22.9250 g')).toEqual([
      expect.stringMatching(
        /^SCATTERED_READINGS tests\.ash\.readings: the readings of ash lie 0\.0\d+ % apart, more than those of ASTM C561's laboratories did \(0\.05334 %\)$/u
      )
    ])
  })

  test('once, where the method itself scatters less', () => {
    expect(told('22.9290 g')).toEqual([
      expect.stringContaining('the readings of ash, dry basis lie') as string
    ])
  })

  test('within it are not', () => {
    expect(told('22.9242 g')).toEqual([])
  })
})
