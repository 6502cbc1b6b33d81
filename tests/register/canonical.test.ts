/** RFC 8785: one text for one piece of JSON. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { canonicalText, type Json, membersOf, readJson } from '../../src/register/canonical.ts'

/** The double whose IEEE 754 bits these are. */
function doubleOf(bits: string): number {
  const view = new DataView(new ArrayBuffer(8))
  view.setBigUint64(0, BigInt(`0x${bits}`))
  return view.getFloat64(0)
}

describe('numbers: RFC 8785, appendix B', () => {
  test.for([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2']
  ] as const)('%s is %s', ([bits, text]) => {
    expect(canonicalText(doubleOf(bits))).toBe(text)
  })

  test.for(['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])('%s is refused', bits => {
    expect(() => canonicalText(doubleOf(bits))).toThrow()
  })
})

describe('texts and names', () => {
  test('RFC 8785, 3.2.2: numbers, a string with every kind of escape, literals', () => {
    const text = String.raw`{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}`
    expect(canonicalText(JSON.parse(text) as Json)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`
    )
  })

  test('RFC 8785, 3.2.3: names in the order of their UTF-16 code units', () => {
    const names = ['\u20ac', '\r', '\ufb33', '1', '\ud83d\ude00', '\u0080', '\u00f6']
    const value = Object.fromEntries(names.map(name => [name, name]))
    const sorted = ['\r', '1', '\u0080', '\u00f6', '\u20ac', '\ud83d\ude00', '\ufb33']
    expect(Object.keys(JSON.parse(canonicalText(value)) as object).sort()).toEqual(sorted)
    expect(canonicalText(value)).toBe(
      `{${sorted.map(name => `${JSON.stringify(name)}:${JSON.stringify(name)}`).join(',')}}`
    )
  })

  test('letters are not normalized', () => {
    expect(canonicalText('A\u030a')).not.toBe(canonicalText('\u00c5'))
  })

  test('half a surrogate pair is refused', () => {
    expect(() => canonicalText('\ud800')).toThrow()
    expect(() => canonicalText({ '\udc00': 1 })).toThrow()
  })

  test('nothing at all is no JSON', () => {
    expect(() => canonicalText(undefined as unknown as Json)).toThrow(TypeError)
  })

  test('what it writes reads back as the same, and is canonical', () => {
    fc.assert(
      fc.property(fc.jsonValue(), value => {
        const text = canonicalText(value as Json)
        expect(readJson(text).is).toBe('canonical')
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)))
      })
    )
  })
})

describe('reading', () => {
  test.for([
    ['a space', '{"a": 1}'],
    ['names out of order', '{"b":1,"a":1}'],
    ['names out of order within a list', '[{"a":[{"b":1,"a":1}]}]'],
    ['names of digits in the order of their numbers', '{"9":1,"10":1}'],
    ['half a surrogate pair as a name', '{"\\udc00":1}'],
    ['a name twice', '{"a":1,"a":1}'],
    ['a number written otherwise', '{"a":1.0}'],
    ['minus zero', '-0'],
    ['an escape that needs none', '"\\u0041"'],
    ['a line end behind', '1\n'],
    ['half a surrogate pair, escaped', '"\\ud800"'],
    ['half a surrogate pair, as it is', '"\ud800"']
  ] as const)('%s is not canonical', ([, text]) => {
    expect(readJson(text).is).toBe('not canonical')
  })

  test('names of digits stand in the order of their texts', () => {
    expect(readJson('{"10":1,"9":1}').is).toBe('canonical')
  })

  test.for(['', '{', '\uFEFF1', 'undefined', 'NaN', "'a'", '{"a":1,}'])('%s is not JSON', text => {
    expect(readJson(text)).toEqual({ is: 'not JSON' })
  })

  test('nesting deeper than the stack is no fault of ours', () => {
    const text = '['.repeat(200_000) + ']'.repeat(200_000)
    expect(['not canonical', 'not JSON']).toContain(readJson(text).is)
  })

  test('members are those of an object only', () => {
    expect(membersOf({ a: 1 })).toEqual({ a: 1 })
    for (const value of [null, undefined, 1, 'a', [1]]) expect(membersOf(value)).toEqual({})
  })
})
