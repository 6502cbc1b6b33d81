/** What is printed never contradicts the verdict printed beside it. */

import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { resultRow } from '../../src/documents/result-row.ts'
import type { ResultRow } from '../../src/documents/types.ts'
import type { Result } from '../../src/evaluate/types.ts'
import type { JudgedRow } from '../../src/judge/types.ts'
import { expand } from '../../src/metrology/coverage.ts'
import { exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { roundResult } from '../../src/metrology/rounding.ts'
import { judgeScope } from '../../src/judge/judge-lot.ts'
import { type Bounds, type DecisionRule, judge, worstOf } from '../../src/quality/judge.ts'
import { pageOf, publicSite, workshopSite } from './demo.ts'

/** A measured moisture with U, judged and worded. */
function rowOf(value: number, U: number, bounds: Bounds, rule: DecisionRule, below?: number) {
  const estimate = U === 0 ? exact(value) : measured(value, U / 1.959963984540054, 'balance')
  const result: Result = {
    quantity: 'moisture_percent',
    estimate,
    n: 1,
    each: [],
    readings: [],
    field: [],
    ...(below === undefined ? {} : { below }),
    trace: () => ({ formula: '', source: '', inputs: [], instrumentOf: {}, notes: [] })
  }
  const judgeable = {
    value,
    standardUncertainty: uncertaintyOf(estimate),
    expandedUncertainty: expand(estimate).U,
    ...(below === undefined ? {} : { below })
  }
  const row: JudgedRow = {
    quantity: 'moisture_percent',
    result,
    bounds,
    scope: 'lot mean',
    verdict: judge(judgeable, bounds, rule)
  }
  return resultRow(row, rule)
}

/** Sheets of foil, their mean beside a limit that holds for each of them. */
function sheetsRow(
  values: readonly number[],
  U: number,
  bounds: Bounds,
  rule: DecisionRule
): ResultRow {
  const each = values.map((value, index) => ({
    label: `sheet ${index + 1}`,
    estimate: measured(value, U / 1.959963984540054, 'balance')
  }))
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const result: Result = {
    quantity: 'foilDensity_g_per_cm3',
    estimate: measured(mean, U / 1.959963984540054, 'balance'),
    n: values.length,
    each,
    readings: [],
    field: [],
    trace: () => ({ formula: '', source: '', inputs: [], instrumentOf: {}, notes: [] })
  }
  const judged = judgeScope(result, bounds, 'every sheet', rule)
  return resultRow(
    { quantity: 'foilDensity_g_per_cm3', result, bounds, scope: 'every sheet', ...judged },
    rule
  )
}

/**
 * A float at 12 digits, ties to even, from its shortest decimal. `toPrecision` rounds its binary
 * value instead: 157.8414157285 lies a trace above its tie in binary, and is one in decimal.
 */
const heldText = (value: number): string =>
  new Decimal(String(value)).toSignificantDigits(12, Decimal.ROUND_HALF_EVEN).toFixed()

const numberIn = (text: string) => Number(text.replace('−', '-'))

/** The verdict a reader comes to with the printed figures alone: those that decide. */
function readersVerdict({ limit, below, decidedBy, ...row }: ResultRow, rule: DecisionRule) {
  const { value, expandedUncertainty } = decidedBy ?? row
  const bounds = {
    ...(limit?.min ? { min: limit.min.printed.replace('−', '-') } : {}),
    ...(limit?.max ? { max: limit.max.printed.replace('−', '-') } : {})
  }
  const figure = below
    ? { value: 0, expandedUncertainty: 0, below: numberIn(value!.printed.slice(2)) }
    : {
        value: numberIn(value!.printed),
        expandedUncertainty: numberIn(expandedUncertainty!.printed)
      }
  return judge({ standardUncertainty: 0, ...figure }, bounds, rule).word
}

/** A limit of up to four decimals. */
const limit = fc
  .tuple(fc.integer({ min: -99999, max: 99999 }), fc.integer({ min: 0, max: 4 }))
  .map(([n, places]) => (n / 10 ** places).toFixed(places))

/** Multiples of U away from the limit, where verdicts change, and a hair to either side. */
const near = fc.tuple(
  fc.constantFrom(-2, -1, -0.5, 0, 0.5, 1, 2),
  fc.constantFrom(0, 1e-9, 1e-6, 1e-4, 0.003, 0.01, 0.04),
  fc.constantFrom(-1, 1)
)
const rules = fc.constantFrom<DecisionRule>('simple', 'rounded', 'guarded')
const someU = fc.double({ min: 1e-4, max: 900, noNaN: true })

describe('the printed figure', () => {
  const cases = fc.record({
    written: limit,
    side: fc.constantFrom<'min' | 'max' | 'both'>('min', 'max', 'both'),
    U: fc.oneof(someU, fc.constant(0)),
    place: near,
    rule: rules
  })

  test('judged by the printed rule gives the printed word', () => {
    fc.assert(
      fc.property(cases, ({ written, side, U, place: [multiple, hair, sign], rule }) => {
        const step = U || 0.01
        const value = Number(written) + (multiple + sign * hair) * step
        const bounds =
          side === 'both'
            ? { min: written, max: (Number(written) + 3).toFixed(4) }
            : { [side]: written }
        const row = rowOf(value, U, bounds, rule)
        expect(readersVerdict(row, rule)).toBe(row.verdict?.word)
      }),
      { numRuns: 3000 }
    )
  })

  test('has no more digits than two of U, unless its verdict takes them', () => {
    fc.assert(
      fc.property(cases, ({ written, U, place: [multiple, hair, sign], rule }) => {
        fc.pre(U > 0)
        const value = Number(written) + (multiple + sign * hair) * U
        const row = rowOf(value, U, { max: written }, rule)
        const plain = roundResult(value, U)
        const shown = row.expandedUncertainty!.printed
        if (shown === plain.U) return
        const fewer = { value: Number(plain.value), expandedUncertainty: Number(plain.U) }
        const word = judge({ standardUncertainty: 0, ...fewer }, { max: written }, rule).word
        expect(word).not.toBe(row.verdict?.word)
      })
    )
  })

  // Worked by hand from the rule above.
  test.for([
    ['passes at U, plain', 0.9, 0.1, 'guarded', '0.90', '0.10', 'pass'],
    ['a hair less than U', 0.9001, 0.1, 'guarded', '0.9001', '0.1000', 'conditional pass'],
    ['U rounded down', 0.945, 0.0554, 'guarded', '0.9450', '0.0554', 'conditional pass'],
    ['over by a hair', 1.0004, 0.1, 'simple', '1.0004', '0.1000', 'fail'],
    ['under by a hair', 0.9996, 0.1, 'simple', '1.00', '0.10', 'pass'],
    ['rounded to the limit', 1.0004, 0.1, 'rounded', '1.00', '0.10', 'pass']
  ] as const)('%s: %f ± %f, %s', ([, value, U, rule, printed, printedU, word]) => {
    const row = rowOf(value, U, { max: '1.000' }, rule)
    expect([row.value?.printed, row.expandedUncertainty?.printed, row.verdict?.word]).toEqual([
      printed,
      printedU,
      word
    ])
  })
})

describe('the figure of the sheet that decides', () => {
  const cases = fc.record({
    written: limit,
    side: fc.constantFrom<'min' | 'max'>('min', 'max'),
    U: someU,
    places: fc.array(near, { minLength: 1, maxLength: 5 }),
    rule: rules
  })

  /** Its first sheet is 157.8414157285: a tie at 12 digits, as decimals go. */
  const tiedInDecimal = {
    written: '158.1',
    side: 'max' as const,
    U: 0.5621397206521086,
    places: [
      [-0.5, 0.04, 1],
      [-2, 0, -1]
    ] as [-0.5 | -2, 0.04 | 0, 1 | -1][],
    rule: 'simple' as DecisionRule
  }

  test('judged as it is printed gives the printed word, which no sheet falls short of', () => {
    fc.assert(
      fc.property(cases, ({ written, side, U, places, rule }) => {
        const values = places.map(
          ([multiple, hair, sign]) => Number(written) + (multiple + sign * hair) * U
        )
        const bounds = { [side]: written }
        const row = sheetsRow(values, U, bounds, rule)
        expect(readersVerdict(row, rule)).toBe(row.verdict?.word)
        const { place, value, expandedUncertainty, printed, count } = row.decidedBy!
        const decider = Number(place.replace('sheet ', '')) - 1
        expect(value.exact).toBe(heldText(values[decider]!))
        expect(count).toBe(values.length)
        expect(printed).toBe(
          `${place}, ${value.printed} g/cm³ ± ${expandedUncertainty.printed} g/cm³`
        )
        expect(row.verdict?.sentence).toContain(printed.replace(',', ' decides:'))
        const words = values.map(
          one =>
            judge(
              {
                value: one,
                standardUncertainty: 0,
                expandedUncertainty: Number(expandedUncertainty.exact)
              },
              bounds,
              rule
            ).word
        )
        expect(row.verdict?.word).toBe(worstOf(words))
      }),
      { numRuns: 2000, examples: [[tiedInDecimal]] }
    )
  })

  test('stands beside the mean, which alone would tell another story', () => {
    const row = sheetsRow([1.0, 1.02, 0.94], 0.02, { min: '0.95' }, 'simple')
    expect(row.value?.printed).toBe('0.987')
    expect(row.verdict?.word).toBe('fail')
    expect(row.decidedBy?.printed).toBe('sheet 3, 0.940 g/cm³ ± 0.020 g/cm³')
  })

  test('is not there where the limit holds for the lot mean', () => {
    expect(rowOf(0.9, 0.1, { max: '1.00' }, 'simple').decidedBy).toBeUndefined()
  })
})

describe('below the reporting limit', () => {
  test('the bound printed is true and comes to the verdict', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 9, noNaN: true }), limit, (below, written) => {
        const row = rowOf(0, 0.1, { max: written }, 'simple', below)
        expect(readersVerdict(row, 'simple')).toBe(row.verdict?.word)
        expect(numberIn(row.value!.printed.slice(2))).toBeGreaterThanOrEqual(
          Number(row.value!.exact)
        )
      })
    )
  })

  test.for([
    [0.0204, '0.10', '< 0.021', 'pass'],
    [0.0999, '0.10', '< 0.10', 'pass'],
    [0.0999, '0.0999', '< 0.0999', 'pass'],
    [0.1001, '0.10', '< 0.11', 'not decidable']
  ] as const)('%f against at most %s is printed %s: %s', ([below, max, printed, word]) => {
    const row = rowOf(0, 0.1, { max }, 'simple', below)
    expect([row.value?.printed, row.verdict?.word]).toEqual([printed, word])
    expect(row.verdict?.sentence).toBe(
      `The figure lies below ${printed.slice(2)} %; the limit is ≤ ${max} %.`
    )
    expect(row.expandedUncertainty).toBeUndefined()
  })
})

describe('the sentence of a verdict', () => {
  test.for([
    [0.9, 'guarded', '0.90 % ± 0.10 % is within the limit of ≤ 1.00 % by at least U.'],
    [0.95, 'guarded', '0.95 % ± 0.10 % is within the limit of ≤ 1.00 %, but by less than U.'],
    [1.05, 'guarded', '1.05 % ± 0.10 % is outside the limit of ≤ 1.00 %, but by no more than U.'],
    [1.2, 'guarded', '1.20 % ± 0.10 % is outside the limit of ≤ 1.00 % by more than U.'],
    [0.95, 'simple', '0.95 % ± 0.10 % is within the limit of ≤ 1.00 %.'],
    [1.05, 'simple', '1.05 % ± 0.10 % is outside the limit of ≤ 1.00 %.'],
    [
      1.004,
      'rounded',
      '1.00 % ± 0.10 % is within the limit of ≤ 1.00 %, once rounded to its last digit.'
    ],
    [
      1.02,
      'rounded',
      '1.02 % ± 0.10 % is outside the limit of ≤ 1.00 %, once rounded to its last digit.'
    ]
  ] as const)('%f, %s: %s', ([value, rule, sentence]) => {
    expect(rowOf(value, 0.1, { max: '1.00' }, rule).verdict?.sentence).toBe(sentence)
  })

  test('says that a figure above the limit passes by rounding', () => {
    const row = rowOf(40.4, 0.5, { max: '40' }, 'rounded')
    expect(row.verdict).toMatchObject({
      word: 'pass',
      sentence: '40.40 % ± 0.50 % is within the limit of ≤ 40 %, once rounded to its last digit.'
    })
  })

  test('names the sheet that decides', () => {
    const row = pageOf(workshopSite, 'FL-26-006').document.results.find(
      ({ key }) => key === 'foil-density'
    )
    expect(row?.verdict).toMatchObject({
      word: 'fail',
      sentence:
        'Of 3 sheets, sheet 06-2 decides: 0.793 g/cm³ ± 0.020 g/cm³ is outside the limit of 0.65 to 0.75 g/cm³.'
    })
  })
})

test('every row of the demo that is judged agrees with its print', () => {
  const rows = [...publicSite.lots, ...workshopSite.lots].flatMap(({ document }) =>
    document.results
      .filter(({ verdict }) => verdict)
      .map(row => ({ row, guarded: document.decisionRule.startsWith('Guarded') }))
  )
  expect(rows.length).toBeGreaterThan(100)
  expect(rows.filter(({ row }) => row.decidedBy).length).toBeGreaterThan(10)
  for (const { row } of rows) expect(!row.decidedBy).toBe(row.limit?.of === 'lot mean')
  for (const { row, guarded } of rows)
    expect(readersVerdict(row, guarded ? 'guarded' : 'simple')).toBe(row.verdict?.word)
})
