import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  bytesOf,
  concat,
  fromBase64,
  fromHex,
  isSame,
  textOf,
  toBase64,
  toHex
} from '../../src/register/bytes.ts'

const anyBytes = fc.uint8Array({ maxLength: 70 })

test('bytes survive hex and base64', () => {
  fc.assert(
    fc.property(anyBytes, bytes => {
      expect(fromHex(toHex(bytes))).toEqual(bytes)
      expect(fromBase64(toBase64(bytes))).toEqual(bytes)
    })
  )
})

describe('RFC 4648, 10: test vectors of base64', () => {
  test.for([
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy']
  ] as const)('%s is %s', ([text, base64]) => {
    expect(toBase64(bytesOf(text))).toBe(base64)
    expect(fromBase64(base64)).toEqual(bytesOf(text))
  })

  test.for(['Zg', 'Zg=', 'Zh==', 'Zg==\n', ' Zg==', 'Z', 'Zm9v*', 'Zm-_'])(
    '%j is refused',
    text => {
      expect(fromBase64(text)).toBeUndefined()
    }
  )
})

test.for(['0', 'AB', '0g', ' 00'])('%s is no hex', text => {
  expect(() => fromHex(text)).toThrow(RangeError)
})

describe('text', () => {
  test('survives, a byte order mark included', () => {
    for (const text of ['', 'µ ≥ 😂', '\uFEFFa', 'a\r\nb']) expect(textOf(bytesOf(text))).toBe(text)
  })

  test.for([[0xff], [0xc3], [0xc0, 0x80], [0xed, 0xa0, 0x80]])('%j is none', bytes => {
    expect(textOf(Uint8Array.from(bytes))).toBeUndefined()
  })
})

test('bytes are the same where none differs', () => {
  const [a, b] = [Uint8Array.of(1, 2), Uint8Array.of(1, 3)]
  expect([isSame(a, a.slice()), isSame(a, b), isSame(a, a.slice(0, 1))]).toEqual([
    true,
    false,
    false
  ])
  expect(concat(a, new Uint8Array(), b)).toEqual(Uint8Array.of(1, 2, 1, 3))
})
