import { describe, expect, test } from 'vitest'
import { acceptanceOfProcess } from '../../src/quality/acceptance.ts'
import { type Aql, aqls, inspectionLevels } from '../../src/metrology/sampling-scheme.ts'
import { codeLetter, isPrinted, samplingPlan } from '../../src/quality/sampling-plan.ts'
import { rowsOf } from './outside.ts'

// ISO 2859-1, table 1: letters of the general levels, as two public tables of it have them.
test.for([
  [2, 'A', 'A', 'B'],
  [8, 'A', 'A', 'B'],
  [9, 'A', 'B', 'C'],
  [15, 'A', 'B', 'C'],
  [16, 'B', 'C', 'D'],
  [25, 'B', 'C', 'D'],
  [26, 'C', 'D', 'E'],
  [50, 'C', 'D', 'E'],
  [51, 'C', 'E', 'F'],
  [90, 'C', 'E', 'F'],
  [91, 'D', 'F', 'G'],
  [150, 'D', 'F', 'G'],
  [151, 'E', 'G', 'H'],
  [280, 'E', 'G', 'H'],
  [281, 'F', 'H', 'J'],
  [500, 'F', 'H', 'J'],
  [501, 'G', 'J', 'K'],
  [1200, 'G', 'J', 'K'],
  [1201, 'H', 'K', 'L'],
  [3200, 'H', 'K', 'L'],
  [3201, 'J', 'L', 'M'],
  [10_000, 'J', 'L', 'M'],
  [10_001, 'K', 'M', 'N'],
  [35_000, 'K', 'M', 'N'],
  [35_001, 'L', 'N', 'P'],
  [150_000, 'L', 'N', 'P'],
  [150_001, 'M', 'P', 'Q'],
  [500_000, 'M', 'P', 'Q']
] as const)('a lot of %i: %s, %s, %s', ([size, ...letters]) => {
  expect(inspectionLevels.map(level => codeLetter(size, level))).toEqual(letters)
})

// ISO 2859-1, table 2-A, level II: letter of the lot, letter and sample taken, Ac (from memory).
test.for([
  [40, '1.0', 'D', 'E', 13, 0],
  [80, '1.0', 'E', 'E', 13, 0],
  [100, '1.0', 'F', 'E', 13, 0],
  [200, '1.0', 'G', 'H', 50, 1],
  [400, '1.0', 'H', 'H', 50, 1],
  [800, '1.0', 'J', 'J', 80, 2],
  [2000, '1.0', 'K', 'K', 125, 3],
  [5000, '1.0', 'L', 'L', 200, 5],
  [12, '2.5', 'B', 'C', 5, 0],
  [20, '2.5', 'C', 'C', 5, 0],
  [40, '2.5', 'D', 'C', 5, 0],
  [60, '2.5', 'E', 'F', 20, 1],
  [100, '2.5', 'F', 'F', 20, 1],
  [200, '2.5', 'G', 'G', 32, 2],
  [400, '2.5', 'H', 'H', 50, 3],
  [600, '2.5', 'J', 'J', 80, 5],
  [2000, '2.5', 'K', 'K', 125, 7],
  [5000, '2.5', 'L', 'L', 200, 10],
  [20_000, '2.5', 'M', 'M', 315, 14],
  [100_000, '2.5', 'N', 'N', 500, 21],
  [400_000, '2.5', 'P', 'N', 500, 21],
  [12, '4.0', 'B', 'B', 3, 0],
  [20, '4.0', 'C', 'B', 3, 0],
  [40, '4.0', 'D', 'E', 13, 1],
  [60, '4.0', 'E', 'E', 13, 1],
  [100, '4.0', 'F', 'F', 20, 2],
  [200, '4.0', 'G', 'G', 32, 3],
  [400, '4.0', 'H', 'H', 50, 5],
  [600, '4.0', 'J', 'J', 80, 7],
  [2000, '4.0', 'K', 'K', 125, 10],
  [100, '0.65', 'F', 'F', 20, 0],
  [200, '0.65', 'G', 'F', 20, 0],
  [400, '0.65', 'H', 'J', 80, 1],
  [12, '6.5', 'B', 'A', 2, 0],
  [20, '6.5', 'C', 'D', 8, 1],
  [40, '6.5', 'D', 'D', 8, 1]
] as const)('a lot of %i, AQL %s: %s', ([size, aql, letter, takenFrom, sampleSize, acceptance]) => {
  expect(samplingPlan(size, 'II', aql)).toEqual({
    letter,
    takenFrom,
    sampleSize,
    acceptance,
    rejection: acceptance + 1,
    isWhole: false
  })
})

test('a sample as large as the lot is the lot', () => {
  expect(samplingPlan(6, 'II', '1.0')).toMatchObject({ sampleSize: 6, isWhole: true })
  expect(samplingPlan(13, 'II', '1.0')).toMatchObject({ sampleSize: 13, isWhole: true })
  expect(samplingPlan(14, 'II', '1.0')).toMatchObject({ sampleSize: 13, isWhole: false })
})

test.for([0, 1, 2.5, 500_001, NaN])('refuses a lot of %f', size => {
  expect(() => codeLetter(size, 'II')).toThrow('lotSize must be a whole number from 2 to 500000')
})

const printed = rowsOf('sampling-plans')

/** A lot and a level that ask for a letter. */
const lotOf = (letter: string) =>
  [2, 9, 16, 26, 51, 91, 151, 281, 501, 1201, 3201, 10_001, 35_001, 150_001]
    .flatMap(size => inspectionLevels.map(level => ({ size, level })))
    .find(({ size, level }) => codeLetter(size, level) === letter)!

/** The line of the print that an AQL's arrows lead to from a letter. */
function followed(at: number, aql: string): { letter: string; size: number; rejection: number } {
  const cellOf = (index: number) => printed[index]![aql]!
  const numbers = printed.map((_, index) => index).filter(index => /^\d+$/u.test(cellOf(index)))
  const isDown = cellOf(at) === 'v' || (cellOf(at) === '|' && at < numbers[0]!)
  const to = /^\d+$/u.test(cellOf(at))
    ? at
    : isDown
      ? numbers.find(index => index > at)!
      : numbers.findLast(index => index < at)!
  const { letter, size } = printed[to]!
  return { letter: letter!, size: Number(size), rejection: Number(cellOf(to)) }
}

describe('as printed', () => {
  test.for(printed.map((row, index) => [row.letter!, index] as const))(
    'letter %s, every AQL from 0.65 %% on',
    ([letter, at]) => {
      const { size, level } = lotOf(letter)
      for (const aql of aqls.filter(one => one in printed[0]!)) {
        const to = followed(at, aql)
        expect([aql, samplingPlan(size, level, aql)]).toEqual([
          aql,
          {
            letter,
            takenFrom: to.letter,
            sampleSize: Math.min(to.size, size),
            acceptance: to.rejection - 1,
            rejection: to.rejection,
            isWhole: to.size >= size
          }
        ])
      }
    }
  )

  test('has all the AQLs that the paper calls printed', () => {
    expect(aqls.filter(isPrinted)).toEqual(['0.65', '1.0', '1.5', '2.5', '4.0', '6.5'])
    expect(Object.keys(printed[0]!).slice(2).sort()).toEqual(aqls.filter(isPrinted).sort())
  })

  test('smaller AQLs go on along the same diagonals', () => {
    const plans = (aql: Aql) =>
      printed
        .map(({ letter }) => lotOf(letter!))
        .map(({ size, level }) => samplingPlan(size, level, aql).acceptance)
    for (const [index, aql] of aqls.slice(1).entries())
      expect([aql, plans(aql).slice(0, -1)]).toEqual([aql, plans(aqls[index]!).slice(1)])
  })
})

/** Every plan that an AQL has, by sample size. */
const plansOf = (aql: Aql) =>
  [2, 9, 16, 26, 51, 91, 151, 281, 501, 1201, 3201, 10_001, 35_001, 150_001]
    .map(size => samplingPlan(size, 'III', aql))
    .filter(({ isWhole }) => !isWhole)

describe('what plans of one AQL have in common, whatever the table was written from', () => {
  test.for(aqls)('%s %%: at the AQL each accepts more than 7 lots in 8', aql => {
    const risks = plansOf(aql).map(({ sampleSize, acceptance }) =>
      acceptanceOfProcess(Number(aql) / 100, sampleSize, acceptance)
    )
    expect(risks.length).toBeGreaterThan(5)
    for (const probability of risks) {
      expect(probability).toBeGreaterThan(0.87)
      expect(probability).toBeLessThan(0.999)
    }
  })

  test.for(aqls)('%s %%: larger samples never accept a worse part', aql => {
    const plans = plansOf(aql)
    for (const [index, plan] of plans.slice(1).entries()) {
      expect(plan.sampleSize).toBeGreaterThanOrEqual(plans[index]!.sampleSize)
      expect(plan.acceptance).toBeGreaterThanOrEqual(plans[index]!.acceptance)
    }
  })
})
