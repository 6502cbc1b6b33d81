/** Certificates with their keys: what is taken from them, what is refused, and what they sign. */

import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { detachedCms } from '../../src/x509/cms.ts'
import { holderOf } from '../../src/x509/holder.ts'
import { openPkcs12 } from '../../src/x509/pkcs12.ts'
import { requireTool } from '../tools.ts'
import { mismatched, throwaway, type Wish } from './throwaway.ts'

const folder = mkdtempSync(join(tmpdir(), 'x509-'))
afterAll(() => rmSync(folder, { recursive: true }))

let files = 0
const made = (wish: Wish = {}) => throwaway(join(folder, String(++files)), wish)
const day = ['2026-03-01']

async function opened(wish: Wish = {}) {
  const { path, phrase } = made(wish)
  return openPkcs12(readFileSync(path), phrase)
}

const holder = async (wish: Wish, days: readonly string[] = day) => {
  const { own, key } = await opened(wish)
  return holderOf(own, key, days)
}

describe.skipIf(!requireTool('openssl', 'openssl'))('a PKCS #12 file', () => {
  test('gives of its certificate the names, the number and the last day', async () => {
    expect(await holder({ until: '2027-05-01' })).toEqual({
      name: 'Fennick Flakes (Fennick seal 1)',
      issuer: 'Example Trust (Example document authority)',
      serial: '1f3a99',
      sha256: expect.stringMatching(/^[0-9a-f]{64}$/u) as string,
      until: '2027-05-01'
    })
    const { others } = await opened()
    expect(others).toHaveLength(1)
    const hidden = { O: 'Fen\u202enick\n Flakes', CN: 'Fennick Flakes' }
    expect((await holder({ subject: hidden })).name).toBe('Fennick Flakes')
  })

  test.for([
    ['a person', { subject: { O: 'F', CN: 'A B', GN: 'A', SN: 'B' } }, 'is that of a person'],
    ['no organisation', { subject: { CN: 'A B' } }, 'names no organisation'],
    ['one expired', { until: '2026-02-28' }, 'expired on 2026-02-28, before 2026-03-01'],
    ['one of later', { from: '2026-03-02' }, 'is valid from 2026-03-02, after 2026-03-01'],
    ['an authority', { usage: 4 }, 'neither digitalSignature nor contentCommitment'],
    ['a short key', { kind: 'small rsa' }, '(rsa 1024)'],
    ['a key PDF programs do not know', { kind: 'ed25519' }, '(ed25519 )'],
    ['an old encryption', { how: ['-legacy'] }, 'encrypted by an old method'],
    ['another', { how: ['-certpbe', 'PBE-SHA1-3DES'] }, 'openssl pkcs12 -legacy -in OLD.p12'],
    ['no certificate', { how: ['-nokeys'] }, 'holds 0 private keys']
  ] as [what: string, wish: Wish, why: string][])('of %s is refused', async ([, wish, why]) => {
    await expect(holder(wish)).rejects.toThrow(why)
  })

  test('serves for content commitment alone, and on both ends of its days', async () => {
    const wish = { usage: 0x40, from: '2026-03-01', until: '2026-03-02', kind: 'ec' } as const
    expect((await holder(wish)).until).toBe('2026-03-02')
    await expect(holder(wish, ['2026-03-01', '2026-03-02'])).rejects.toThrow('expired')
    await expect(holder(wish, ['2026-02-28', '2026-03-01'])).rejects.toThrow('valid from')
  })

  test('opens with its pass phrase only, and whole', async () => {
    const { path, phrase } = made()
    const bytes = readFileSync(path)
    await expect(openPkcs12(bytes, 'großer 9')).rejects.toThrow('pass phrase is not that of')
    for (let at = 40; at < bytes.length; at += 97) {
      const altered = Buffer.from(bytes)
      altered[at]! ^= 1
      await expect(openPkcs12(altered, phrase), String(at)).rejects.toThrow()
    }
    await expect(openPkcs12(Buffer.from('%PDF-1.7'), phrase)).rejects.toThrow('no PKCS #12 file')
    const other = await mismatched(phrase)
    await expect(openPkcs12(other, phrase)).rejects.toThrow('belongs to none of its certificates')
  })

  test.for(['rsa', 'ec'] as const)('with an %s key signs what openssl checks', async kind => {
    const { path, phrase, authority } = made({ kind })
    const content = Buffer.from('bytes to be signed\r\n\0')
    const cms = detachedCms(await openPkcs12(readFileSync(path), phrase), content)
    const at = (name: string, bytes: Uint8Array) => {
      writeFileSync(join(folder, name), bytes)
      return join(folder, name)
    }
    const check = (bytes: Uint8Array, signature: Uint8Array) =>
      execFileSync(
        'openssl',
        ['cms', '-verify', '-cades', '-binary', '-inform', 'DER', '-purpose', 'any']
          .concat('-in', at('cms', signature), '-content', at('content', bytes))
          .concat('-CAfile', authority, '-out', join(folder, 'out')),
        { stdio: ['ignore', 'ignore', 'pipe'] }
      )
    check(content, cms)
    expect(() => check(Buffer.concat([content, content]), cms)).toThrow('verification failure')
    const altered = Buffer.from(cms)
    altered[altered.length - 9]! ^= 1
    expect(() => check(content, altered)).toThrow()
    const again = detachedCms(await openPkcs12(readFileSync(path), phrase), content)
    expect(Buffer.compare(again, cms) === 0).toBe(kind === 'rsa')
    const signingTime = Buffer.from('06092a864886f70d010905', 'hex')
    expect(Buffer.from(cms).includes(signingTime)).toBe(false)
  })
})
