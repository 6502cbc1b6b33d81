import { describe, expect, test } from 'vitest'
import { momentOf, secondsOf } from '../../src/metrology/moments.ts'

test.for([
  ['90 s', 90, 1, false],
  ['90.5 s', 90.5, 0.1, false],
  ['1.5 min', 90, 6, false],
  ['0 s', 0, 1, false],
  ['14:05:30', 50_730, 1, true],
  ['2026-03-14 14:05', 50_700, 60, true],
  ['14:05:30.25', 50_730.25, 0.01, true],
  ['2026-03-14T14:05:30Z', 50_730, 1, true]
] as const)('%s', ([text, seconds, step, isClock]) => {
  const moment = momentOf(text)!
  expect([moment.seconds, moment.isClock]).toEqual([seconds, isClock])
  expect(moment.step).toBeCloseTo(step, 12)
})

test.for(['noon', '90', '14:65', '90 °C', '1,5 min', ''])('no moment: %s', text => {
  expect(momentOf(text)).toBeUndefined()
})

describe('a log', () => {
  test('goes on past midnight by the clock alone', () => {
    expect(secondsOf(['23:59:50', '00:00:05'])).toEqual([86_390, 86_405])
    expect(secondsOf(['30 s', '15 s'])).toEqual([30, 15])
  })

  test('with a moment that cannot be read has none', () => {
    expect(secondsOf(['15 s', 'later'])).toBeUndefined()
  })
})
