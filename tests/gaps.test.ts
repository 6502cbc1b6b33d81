/** Gaps of texts, as archive and register fill them. */

import { expect, test } from 'vitest'
import { fill } from '../src/archive/words.ts'
import { fillGaps } from '../src/gaps.ts'
import { checkWords, sayIn } from '../src/register/words.ts'

test('a gap is filled by its name, each time it comes, with whatever signs; one of no name stays', () => {
  const parts: Readonly<Record<string, string | number>> = { lot: 'EB-1 $& {n}', n: 0 }
  expect(fillGaps('{n} of {lot}, {lot}, {unknown}, {}', name => parts[name])).toBe(
    '0 of EB-1 $& {n}, EB-1 $& {n}, {unknown}, {}'
  )
})

test('lists fill them with what they are given, sentences of the register with a language’s terms', () => {
  expect(fill('{n} of {all} lots', { n: 1, all: 25 })).toBe('1 of 25 lots')
  const said = {
    is: 'superseded',
    parts: { revision: 2, date: '2026-01-02', reason: 'lost' }
  } as const
  expect(sayIn(checkWords, said, { lost: 'verloren' })).toBe(
    'It was superseded by revision 2 on 2026-01-02: verloren'
  )
})
