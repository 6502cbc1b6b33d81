/** What a line may hold, and how anything else is told. */

import { describe, expect, test } from 'vitest'
import { type Json, membersOf } from '../../src/register/canonical.ts'
import { eventKinds, lineOf } from '../../src/register/events.ts'

const hash = 'ab'.repeat(32)
const line = { n: 1, previous: hash, date: '2026-03-14' }
const certificate = { number: 'CT-26-001', revision: 1 }
const signature = `${'A'.repeat(86)}==`
const publicKey = `${'A'.repeat(43)}=`

const events = {
  issued: { is: 'issued', ...certificate, lot: 'EB-1', data: hash, sealed: hash },
  amended: { is: 'amended', ...certificate, lot: 'EB-1', data: hash, reason: 'mistyped' },
  drawn: { is: 'drawn', ...certificate, pdf: hash, pages: 2 },
  withdrawn: { is: 'withdrawn', ...certificate, reason: 'mixed up' },
  voided: { is: 'voided', ...certificate, data: hash, reason: 'drawn twice' },
  'key-added': { is: 'key-added', key: 'ab'.repeat(8), publicKey, note: 'first' },
  'key-retired': { is: 'key-retired', key: 'ab'.repeat(8), reason: 'lost' },
  signed: { is: 'signed', ...certificate, key: 'ab'.repeat(8), signature }
} as const satisfies Record<string, Json>

const optional = ['sealed', 'pages', 'note']

/** Sentences of the flaws of an event, or nothing. */
const flaws = (event: Json, more: Readonly<Record<string, Json>> = {}) => {
  const read = lineOf({ ...line, event, ...more })
  return Array.isArray(read) ? read.map(([code, sentence]) => `${code} ${sentence}`) : []
}

test('every kind is among them', () => {
  expect(Object.keys(events)).toEqual(eventKinds)
})

describe.for(Object.values(events))('$is', event => {
  test('is read', () => {
    expect(lineOf({ ...line, event })).toEqual({ ...line, event })
  })

  test('needs every field but the optional ones, and takes no other', () => {
    for (const name of Object.keys(event)) {
      const { [name]: _, ...rest } = membersOf(event)
      const expected = optional.includes(name) || name === 'is'
      expect(flaws(rest).length === 0).toBe(expected && name !== 'is')
      if (!expected) expect(flaws(rest)).toEqual([`REGISTER_FIELD '${name}' is missing`])
    }
    expect(flaws({ ...event, colour: 'red' })).toEqual([
      "REGISTER_FIELD 'colour' is not a field here"
    ])
  })

  test('takes no field of another kind of value', () => {
    for (const name of Object.keys(event))
      for (const value of [null, true, [], {}, -1, 1.5, '', ' ', '\u202E', 'a\nb', 1e21])
        expect(flaws({ ...event, [name]: value })).toHaveLength(1)
  })
})

describe('the form of fields', () => {
  test.for([
    [{ data: hash.toUpperCase() }, "'data' must be 64 lower-case hex digits"],
    [{ data: hash.slice(1) }, "'data' must be 64 lower-case hex digits"],
    [{ revision: 0 }, "'revision' must be a whole number from 1"],
    [{ revision: '1' }, "'revision' must be a whole number from 1"],
    [{ number: 'CT 1' }, "'number' must be 1 to 40 letters, digits, hyphens, dots or underscores"],
    [{ number: '../x' }, "'number' must be 1 to 40 letters, digits, hyphens, dots or underscores"]
  ] as const)('%j', ([more, sentence]) => {
    expect(flaws({ ...events.issued, ...more })).toEqual([`REGISTER_FIELD ${sentence}`])
  })

  test('a reason is one line without a space at either end, and not too long', () => {
    const reason = (text: string) => flaws({ ...events.withdrawn, reason: text })
    for (const good of ['a', 'größer als 5 µm, siehe Brief vom 3. 2.', 'x'.repeat(500)])
      expect(reason(good)).toEqual([])
    for (const bad of [' a', 'a ', 'a\u2028b', 'a\u200Bb', 'x'.repeat(501), 'a\tb'])
      expect(reason(bad)).toHaveLength(1)
  })

  test('a signature and a key have their bytes, in the one base64 there is', () => {
    expect(flaws({ ...events.signed, signature: signature.replace('A==', 'B==') })).toEqual([
      "REGISTER_FIELD 'signature' must be 64 bytes in base64"
    ])
    expect(flaws({ ...events['key-added'], publicKey: signature })).toEqual([
      "REGISTER_FIELD 'publicKey' must be 32 bytes in base64"
    ])
  })

  test.for(['2026-02-30', '26-03-14', '2026-3-14', '2026-03-14T00:00:00Z', ''])(
    '%j is no date',
    date => {
      expect(flaws(events.issued, { date })).toEqual([
        "REGISTER_FIELD 'date' must be a day of the calendar as 2026-03-14"
      ])
    }
  )

  test('a line has its four fields and no other', () => {
    expect(flaws(events.issued, { note: 'x' })).toEqual([
      "REGISTER_FIELD 'note' is not a field here"
    ])
    expect(lineOf([])).toEqual([['REGISTER_FIELD', 'the line is no group of fields']])
    expect(flaws(events.issued, { n: 0 })).toEqual([
      "REGISTER_FIELD 'n' must be a whole number from 1"
    ])
  })
})

test.for([
  [{ is: 'destroyed' }, "'destroyed' is no kind of event"],
  [{ is: 'constructor' }, "'constructor' is no kind of event"],
  [{ is: 7 }, "'7' is no kind of event"],
  [{}, "'null' is no kind of event"],
  ['issued', "'null' is no kind of event"]
] as const)('%j is of no kind', ([event, sentence]) => {
  const [flaw] = flaws(event)
  expect(flaw).toContain(`REGISTER_UNKNOWN_KIND ${sentence}; known are issued, amended`)
})
