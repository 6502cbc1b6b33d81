/** Does it meet its grade: the sentence for each outcome. */

import { describe, expect, test } from 'vitest'
import { english, type Tongue } from '../../src/documents/languages/tongue.ts'
import { answerOf } from '../../src/documents/lot.ts'
import type { LotView } from '../../src/documents/lot-view.ts'
import { listText } from '../../src/documents/words.ts'
import type { VerdictWord } from '../../src/quality/judge.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { smallFiles, withChange } from '../records-on-disk.ts'
import { pageOf, siteOf } from './demo.ts'

type Outcome = readonly [QuantityName, VerdictWord | undefined]

/** A lot with limits on these quantities and these verdicts; without one, it was not measured. */
const answerIn = (tongue: Tongue, word: LotView['word'], ...outcomes: readonly Outcome[]) => {
  const rows: LotView['rows'] = outcomes.map(([quantity, verdict]) => ({
    quantity,
    scope: 'lot mean',
    limit: {} as never,
    ...(verdict ? { verdict: { word: verdict, undecidableMethod: false } } : {})
  }))
  return answerOf({ tongue, rows, word, grade: { id: 'F', revision: 2 } } as LotView).sentence
}

const answer = (word: LotView['word'], ...outcomes: readonly Outcome[]) =>
  answerIn(english, word, ...outcomes)

const volume = 'expansionVolume_mL_per_g'
const water = 'moisture_percent'
const ash = 'ash_percent'

describe('one limit', () => {
  test.for([
    ['pass', 'Meets the only limit of grade F, revision 2.'],
    [
      'conditional pass',
      'Within the only limit of grade F, revision 2, but moisture by less than the uncertainty.'
    ],
    [
      'conditional fail',
      'Outside the only limit of grade F, revision 2, but by no more than the uncertainty: moisture.'
    ],
    ['fail', 'Does not meet the only limit of grade F, revision 2: moisture.'],
    ['not decidable', 'Cannot be decided against the only limit of grade F, revision 2: moisture.']
  ] as const)('%s: %s', ([word, sentence]) => {
    expect(answer(word, [water, word])).toBe(sentence)
  })
})

test('two limits are both', () => {
  expect(answer('pass', [water, 'pass'], [ash, 'pass'])).toBe(
    'Meets both limits of grade F, revision 2.'
  )
  expect(answer('fail', [water, 'pass'], [ash, 'fail'])).toBe(
    'Does not meet 1 of the 2 limits of grade F, revision 2: ash, dry basis.'
  )
})

describe('three limits', () => {
  test.for([
    [['pass', 'pass', 'pass'], 'pass', 'Meets all 3 limits of grade F, revision 2.'],
    [
      ['conditional pass', 'pass', 'conditional pass'],
      'conditional pass',
      'Within all 3 limits of grade F, revision 2, but expansion volume; and ash, dry basis by less than the uncertainty.'
    ],
    [
      ['pass', 'not decidable', 'conditional pass'],
      'not decidable',
      'Cannot be decided against 1 of the 3 limits of grade F, revision 2: moisture.'
    ],
    [
      ['conditional pass', 'conditional fail', 'pass'],
      'conditional fail',
      'Outside 1 of the 3 limits of grade F, revision 2, but by no more than the uncertainty: moisture.'
    ],
    [
      ['fail', 'conditional fail', 'pass'],
      'fail',
      'Does not meet 2 of the 3 limits of grade F, revision 2: expansion volume and moisture.'
    ],
    [
      ['fail', 'not decidable', 'pass'],
      'fail',
      'Does not meet 1 of the 3 limits of grade F, revision 2: expansion volume. Cannot be decided: moisture.'
    ],
    [
      ['fail', undefined, 'pass'],
      'fail',
      'Does not meet 1 of the 3 limits of grade F, revision 2: expansion volume. Not measured: moisture.'
    ],
    [
      ['pass', undefined, 'pass'],
      'not judged',
      'Measurements are missing for 1 of the 3 limits of grade F, revision 2: moisture.'
    ],
    [
      ['not decidable', undefined, 'pass'],
      'not judged',
      'Measurements are missing for 1 of the 3 limits of grade F, revision 2: moisture. Cannot be decided: expansion volume.'
    ]
  ] as const)('%o: %s, %s', ([verdicts, word, sentence]) => {
    const [a, b, c] = verdicts
    expect(answer(word, [volume, a], [water, b], [ash, c])).toBe(sentence)
  })
})

test('a grade without limits judges nothing', () => {
  expect(answer('not judged')).toBe('There is no limit in grade F, revision 2 to judge it by.')
})

describe('a typical figure', () => {
  const rowsWith = (typical: string) =>
    pageOf(
      siteOf(
        withChange(
          withChange(smallFiles, 'grades/FK-1.yaml', 'limits:', `typical: { ${typical} }\nlimits:`),
          'grades/FK-1.yaml',
          'limits:',
          'public: [results]\nlimits:'
        ),
        { edition: 'public' }
      ),
      'EB-1'
    ).document.results.map(({ key, basis, value }) => `${key} ${basis} ${value?.printed}`)

  test('stands under its own word, without verdict', () => {
    expect(rowsWith('moisture: 0.40 %')).toContain('moisture typical 0.40')
  })

  test('never stands beside the figure of the lot', () => {
    const rows = rowsWith('expansion-volume: 250 mL/g').filter(row => row.startsWith('expansion'))
    expect(rows).toEqual([expect.stringMatching(/^expansion-volume measured 26\d/u)])
  })

  test('never stands in for a limit that nobody measured', () => {
    const files = withChange(
      withChange(
        smallFiles.filter(({ path }) => !/certificates|expansions|foils/u.test(path)),
        'grades/FK-1.yaml',
        'limits:',
        'typical: { moisture: 0.40 % }\nlimits:\n  moisture: { max: 1.0 % }'
      ),
      'batches/EB-1.yaml',
      'is: released',
      'is: quarantine'
    )
    const { document } = pageOf(siteOf(files, { edition: 'workshop' }), 'EB-1')
    expect(document.results.filter(({ key }) => key === 'moisture')).toEqual([
      expect.objectContaining({ basis: 'not measured' })
    ])
  })
})

test.for([
  [[], ''],
  [['a'], 'a'],
  [['a', 'b'], 'a and b'],
  [['a', 'b', 'c'], 'a, b and c'],
  [['a', 'b, c', 'd'], 'a; b, c; and d']
] as const)('%o is listed as %s', ([items, text]) => {
  expect(listText(items)).toBe(text)
})
