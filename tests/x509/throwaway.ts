/** Keys and certificates that nobody trusts, made for one test; the file with both by openssl. */

import { execFileSync } from 'node:child_process'
import { generateKeyPairSync, type KeyObject, sign } from 'node:crypto'
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { BitString, Integer, Utf8String } from 'asn1js'
import {
  AlgorithmIdentifier,
  AttributeTypeAndValue,
  AuthenticatedSafe,
  CertBag,
  Certificate,
  Extension,
  PFX,
  PrivateKeyInfo,
  PublicKeyInfo,
  RelativeDistinguishedNames,
  SafeBag,
  SafeContents,
  Time,
  TimeType
} from 'pkijs'

const oids: Readonly<Record<string, string>> = {
  CN: '2.5.4.3',
  SN: '2.5.4.4',
  O: '2.5.4.10',
  GN: '2.5.4.42'
}

type Name = Readonly<Record<string, string>>

export interface Wish {
  readonly subject?: Name
  readonly from?: string
  readonly until?: string
  /** First byte of the key usage; 0x80 is digitalSignature. */
  readonly usage?: number
  readonly kind?: 'rsa' | 'small rsa' | 'ec' | 'ed25519'
  readonly phrase?: string
  /** Further arguments for openssl pkcs12 -export. */
  readonly how?: readonly string[]
}

const workshop: Name = { O: 'Fennick Flakes', CN: 'Fennick seal 1' }
const authority: Name = { O: 'Example Trust', CN: 'Example document authority' }

const nameOf = (name: Name) =>
  new RelativeDistinguishedNames({
    typesAndValues: Object.entries(name).map(
      ([type, value]) =>
        new AttributeTypeAndValue({ type: oids[type]!, value: new Utf8String({ value }) })
    )
  })

interface Pair {
  readonly privateKey: KeyObject
  readonly publicKey: KeyObject
}

/** Keys take most of the time, and any will do. */
const made = new Map<string, Pair>()

function pairOf(kind: string): Pair {
  const known = made.get(kind)
  const pair =
    known ??
    (kind.startsWith('ec')
      ? generateKeyPairSync('ec', { namedCurve: 'prime256v1' })
      : kind === 'ed25519'
        ? generateKeyPairSync('ed25519')
        : generateKeyPairSync('rsa', { modulusLength: kind === 'small rsa' ? 1024 : 2048 }))
  made.set(kind, pair)
  return pair
}

/** A certificate over a public key, signed by the authority's key, which is of the curve P-256. */
function issued(subject: Name, { publicKey }: Pair, wish: Wish, serial: number): Buffer {
  const { from = '2026-01-01', until = '2199-01-01', usage = 0x80 } = wish
  const certificate = new Certificate({
    version: 2,
    serialNumber: new Integer({ value: serial }),
    issuer: nameOf(authority),
    subject: nameOf(subject),
    subjectPublicKeyInfo: PublicKeyInfo.fromBER(
      new Uint8Array(publicKey.export({ type: 'spki', format: 'der' })).buffer
    ),
    signature: ecdsa(),
    signatureAlgorithm: ecdsa(),
    extensions: [keyUsage(usage)]
  })
  certificate.notBefore = startOf(from)
  certificate.notAfter = startOf(until)
  const body = Buffer.from(certificate.encodeTBS().toBER())
  certificate.tbsView = new Uint8Array(body)
  certificate.signatureValue = new BitString({
    valueHex: new Uint8Array(sign('sha256', body, pairOf('ec authority').privateKey)).buffer
  })
  return Buffer.from(certificate.toSchema().toBER())
}

/** The general form of a time, which is good for years after 2049 too. */
const startOf = (day: string) =>
  new Time({ type: TimeType.GeneralizedTime, value: new Date(`${day}T00:00:00Z`) })

const ecdsa = () => new AlgorithmIdentifier({ algorithmId: '1.2.840.10045.4.3.2' })

const keyUsage = (byte: number) =>
  new Extension({
    extnID: '2.5.29.15',
    critical: true,
    extnValue: new BitString({ valueHex: new Uint8Array([byte]).buffer }).toBER()
  })

const pem = (der: Buffer): string =>
  `-----BEGIN CERTIFICATE-----\n${der.toString('base64').replaceAll(/.{1,64}/gu, '$&\n')}-----END CERTIFICATE-----\n`

/** What a test gets: the file as a producer has it, and the authority that a check must trust. */
export interface Throwaway {
  readonly path: string
  readonly phrase: string
  readonly authority: string
}

/** A PKCS #12 file in a folder, closed to others. */
export function throwaway(folder: string, wish: Wish = {}): Throwaway {
  const { subject = workshop, kind = 'rsa', phrase = 'größer 9', how = [] } = wish
  mkdirSync(folder, { recursive: true })
  const at = (name: string) => join(folder, name)
  const pair = pairOf(kind)
  writeFileSync(at('own.pem'), pem(issued(subject, pair, wish, 0x1f3a99)))
  writeFileSync(
    at('authority.pem'),
    pem(issued(authority, pairOf('ec authority'), { usage: 4 }, 1))
  )
  writeFileSync(at('key.pem'), pair.privateKey.export({ type: 'pkcs8', format: 'pem' }))
  const path = at('workshop.p12')
  const args = ['-inkey', 'key.pem', '-in', 'own.pem', '-certfile', 'authority.pem', '-out', path]
  execFileSync('openssl', ['pkcs12', '-export', ...args, '-passout', `pass:${phrase}`, ...how], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'pipe']
  })
  chmodSync(path, 0o600)
  return { path, phrase, authority: at('authority.pem') }
}

/** A sound file whose key belongs to another certificate than its own: openssl makes none. */
export async function mismatched(phrase: string): Promise<Uint8Array> {
  const own = issued(workshop, pairOf('rsa'), {}, 2)
  const key = pairOf('ec other').privateKey.export({ type: 'pkcs8', format: 'der' })
  const bags = [
    new SafeBag({
      bagId: '1.2.840.113549.1.12.10.1.1',
      bagValue: PrivateKeyInfo.fromBER(new Uint8Array(key).buffer)
    }),
    new SafeBag({
      bagId: '1.2.840.113549.1.12.10.1.3',
      bagValue: new CertBag({ parsedValue: Certificate.fromBER(new Uint8Array(own).buffer) })
    })
  ]
  const authenticatedSafe = new AuthenticatedSafe({
    parsedValue: {
      safeContents: [{ privacyMode: 0, value: new SafeContents({ safeBags: bags }) }]
    }
  })
  await authenticatedSafe.makeInternalValues({ safeContents: [{}] })
  const pfx = new PFX({ parsedValue: { integrityMode: 0, authenticatedSafe } })
  await pfx.makeInternalValues({
    password: new Uint8Array(new TextEncoder().encode(phrase)).buffer,
    iterations: 1000,
    pbkdf2HashAlgorithm: 'SHA-256',
    hmacHashAlgorithm: 'SHA-256'
  })
  return new Uint8Array(pfx.toSchema().toBER())
}
