/** A PDF with a signature of its own: where it stands, what it is over, and the rules it keeps. */

import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { archivalTwin, certificatePdf } from '../../src/pdf/certificate.ts'
import { SIGNATURE_ROOM, signedPart, withSignature } from '../../src/pdf/signature.ts'
import { detachedCms } from '../../src/x509/cms.ts'
import { holderOf } from '../../src/x509/holder.ts'
import { openPkcs12 } from '../../src/x509/pkcs12.ts'
import { certificateDocument } from '../fixtures/documents.ts'
import { requireTool } from '../tools.ts'
import { throwaway } from '../x509/throwaway.ts'
import { plainText, preflight, preflightJars, run, withFile } from './inspect.ts'
import { faultsOf } from './rules.ts'
import { longDocument, sealed } from './samples.ts'

const tools = [
  requireTool('openssl', 'openssl'),
  requireTool('pdfsig', 'poppler-utils'),
  requireTool('qpdf', 'qpdf')
].every(found => found)

const signer = { name: 'Fennick Flakes', issuer: 'Example Trust', serial: '1f3a99', sha256: '' }
const sayOf = (bytes: Uint8Array) =>
  withFile(bytes, path => run('env', ['TZ=UTC', 'pdfsig', '-nocert', path]))

describe.skipIf(!tools)('a signed PDF', () => {
  const folder = mkdtempSync(join(tmpdir(), 'signed-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  let blank: Uint8Array
  let signed: Uint8Array
  let cms: Uint8Array
  let authority: string

  beforeAll(async () => {
    const made = throwaway(folder)
    const opened = await openPkcs12(readFileSync(made.path), made.phrase)
    const { until: _, ...named } = holderOf(opened.own, opened.key, ['2026-03-19'])
    blank = await certificatePdf(certificateDocument, {
      ...sealed,
      pdfSignature: { signer: named }
    })
    cms = detachedCms(opened, signedPart(blank))
    signed = withSignature(blank, cms)
    authority = made.authority
  })

  test('is signed as a whole, says pdfsig, at noon of its day', () => {
    const said = sayOf(signed)
    expect(said).toContain('Signature is Valid.')
    expect(said).toContain('Total document signed')
    expect(said).toContain('Signature Type: ETSI.CAdES.detached')
    expect(said).toContain('Signing Hash Algorithm: SHA-256')
    expect(said).toContain('Signer Certificate Common Name: Fennick seal 1')
    expect(said).toContain('Signing Time: Mar 19 2026 12:00:00')
  })

  test('bears a CAdES signature over the rest of the file, says openssl', () => {
    const text = Buffer.from(signed).toString('latin1')
    const [, ...range] = /\/ByteRange \[(\d+) (\d+) (\d+) (\d+)\]/u.exec(text)!
    const [start = 0, before = 0, after = 0, length = 0] = range.map(Number)
    expect([start, after + length]).toEqual([0, signed.length])
    const hex = text.slice(before, after)
    expect(hex).toMatch(/^<[0-9a-f]+>$/u)
    writeFileSync(join(folder, 'cms'), Buffer.from(hex.slice(1, -1), 'hex').subarray(0, cms.length))
    writeFileSync(
      join(folder, 'rest'),
      Buffer.concat([signed.subarray(0, before), signed.subarray(after)])
    )
    const check = ['cms', '-verify', '-cades', '-binary', '-inform', 'DER', '-purpose', 'any']
    const files = ['-in', 'cms', '-content', 'rest', '-CAfile', authority, '-out', 'out']
    execFileSync('openssl', [...check, ...files], { cwd: folder, stdio: 'pipe' })
    expect(readFileSync(join(folder, 'out')).length).toBe(signed.length - hex.length)
  })

  test('is told from one with a byte changed, anywhere outside the signature', () => {
    for (const share of [0.01, 0.5, 0.99]) {
      const altered = Buffer.from(signed)
      const at = Math.floor(altered.length * share)
      altered[at]! ^= 1
      expect(sayOf(altered), String(at)).not.toContain('Signature is Valid.')
    }
  })

  test('keeps the rules of PDF/A-3a and PDF/UA-1, and is a sound file', () => {
    expect(faultsOf(signed, 3)).toEqual([])
    expect(withFile(signed, path => run('qpdf', ['--check', path]))).toContain(
      'No syntax or stream'
    )
  })

  test('says whose signature it is, and that trust is judged elsewhere', () => {
    const text = plainText(signed)
    expect(text).toContain('signed for Fennick Flakes (Fennick seal 1)')
    expect(text).toContain('issued by Example Trust (Example document authority)')
    expect(text).toContain('serial number 1f3a99.')
  })

  test('comes to the same bytes again, and with other data to others', async () => {
    const again = { ...sealed, pdfSignature: { signer, cms } }
    const once = await certificatePdf(longDocument, again)
    expect(Buffer.compare(once, await certificatePdf(longDocument, again))).toBe(0)
    expect(once.length).not.toBe(signed.length)
    expect(sayOf(once)).not.toContain('Signature is Valid.')
  })

  test('has room for no longer signature, and no place where it was not asked for', async () => {
    expect(() => withSignature(blank, new Uint8Array(SIGNATURE_ROOM + 1))).toThrow('with room for')
    expect(() => withSignature(signed, cms)).toThrow('no place for a signature')
    const plain = await certificatePdf(certificateDocument, sealed)
    expect(() => signedPart(plain)).toThrow('no place for a signature')
  })

  const canValidate = preflightJars.every(([jar, name]) => requireTool(jar, name))
  test.skipIf(!canValidate)('passes PDFBox Preflight as PDF/A-1b', async () => {
    const twin = await archivalTwin(certificateDocument, { fingerprint: '5f1c'.repeat(16), signer })
    expect(preflight(twin)).toBe('is a valid PDF/A-1b file')
  })

  test.for([
    ['/TU (', '/TX (', 'a field has no words in its place'],
    ['/F 132', '/F 134', 'a field is hidden, or not printed'],
    ['/S /Form', '/S /Span', 'Span is not an element in use'],
    ['/SigFlags 3', '/XFA     3 ', 'a program is to draw the fields'],
    ['/AP <<', '/AB <<', 'a field has no appearance, or more than one']
  ] as const)('the rules notice %s turned to %s', ([from, to, fault]) => {
    const text = Buffer.from(signed).toString('latin1')
    expect(text.includes(from)).toBe(true)
    const altered = Buffer.from(text.replace(from, to.padEnd(from.length)), 'latin1')
    expect(faultsOf(altered, 3)).toContain(fault)
  })
})
