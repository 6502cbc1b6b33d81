import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { expect, test, vi } from 'vitest'
import { canonicalText } from '../../src/register/canonical.ts'
import {
  canHash,
  fingerprint,
  sealedFingerprint,
  shortFingerprint
} from '../../src/register/fingerprint.ts'

test.for([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'
  ]
] as const)('FIPS 180-2, appendix B (from memory): %s', async ([text, hash]) => {
  expect(await fingerprint(text)).toBe(hash)
})

test('it is the SHA-256 of the UTF-8', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'grapheme' }), async text => {
      const hash = createHash('sha256').update(text, 'utf8').digest('hex')
      expect(await fingerprint(text)).toBe(hash)
      expect(await fingerprint(new TextEncoder().encode(text))).toBe(hash)
    })
  )
})

test('the short one is four groups of four', () => {
  expect(shortFingerprint('ba7816bf8f01cfea414140de5dae2223')).toBe('ba78 16bf 8f01 cfea')
})

test('a sealed part is found neither without its salt nor under another', async () => {
  const [salt, other] = ['0123456789abcdef', '0123456789abcdeg']
  const hash = await sealedFingerprint({ customer: 'A' }, salt)
  expect(hash).toBe(await fingerprint(canonicalText({ part: { customer: 'A' }, salt })))
  expect(hash).not.toBe(await sealedFingerprint({ customer: 'A' }, other))
  expect(hash).not.toBe(await sealedFingerprint({ customer: 'B' }, salt))
  await expect(sealedFingerprint({}, '0123456789abcde')).rejects.toThrow(RangeError)
})

test('a page not opened safely cannot hash, and says so', () => {
  expect(canHash()).toBe(true)
  vi.stubGlobal('crypto', {})
  expect(canHash()).toBe(false)
  vi.stubGlobal('crypto', undefined)
  expect(canHash()).toBe(false)
  vi.unstubAllGlobals()
})
