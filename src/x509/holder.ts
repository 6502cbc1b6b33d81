/** What is taken from an X.509 certificate for a paper, and whether it may sign one. */

import { X509Certificate } from 'node:crypto'
import type { KeyObject } from 'node:crypto'
import { BitString } from 'asn1js'
import type { Certificate, RelativeDistinguishedNames } from 'pkijs'
import { derOf } from './pkcs12.ts'
import { Unusable } from './unusable.ts'

/** Of a certificate, what a paper shows of it; nothing else is taken from one. */
export interface Holder {
  /** Organisation it was issued to, and its own name where that is another. */
  readonly name: string
  /** The same of who issued it. */
  readonly issuer: string
  /** Hexadecimal digits. */
  readonly serial: string
  /** SHA-256 of the certificate. */
  readonly sha256: string
  /** Last day it is valid, YYYY-MM-DD. */
  readonly until: string
}

/** Attributes of a name. Source: RFC 5280, appendix A.1; ITU-T X.520. */
const attributes = {
  commonName: '2.5.4.3',
  organisation: '2.5.4.10',
  surname: '2.5.4.4',
  givenName: '2.5.4.42'
} as const

/**
 * Whose certificate it is, where it may sign a paper on each of these days.
 *
 * @param days YYYY-MM-DD; the certificate must be valid at their noon in UTC
 * @throws Unusable for a certificate that is a person's or names no organisation, that is not valid
 *   on a day, that is not for signing, or whose key is of another kind than PDF programs know
 */
export function holderOf(
  certificate: Certificate,
  key: KeyObject,
  days: readonly string[]
): Holder {
  const { serialNumber, fingerprint256 } = new X509Certificate(derOf(certificate))
  refusePerson(certificate.subject)
  refuseUse(certificate)
  refuseKey(key)
  for (const day of days) refuseDay(certificate, day)
  return {
    name: nameIn(certificate.subject),
    issuer: nameIn(certificate.issuer),
    serial: serialNumber.toLowerCase(),
    sha256: fingerprint256.replaceAll(':', '').toLowerCase(),
    until: dayOf(certificate.notAfter.value)
  }
}

const partOf = (name: RelativeDistinguishedNames, part: keyof typeof attributes) => {
  const found = name.typesAndValues.find(({ type }) => type === attributes[part])
  const text: unknown = found?.value.valueBlock.value
  return typeof text === 'string' ? visible(text) : ''
}

/** One line without anything that cannot be seen: the text is the issuer's, not ours. */
const visible = (text: string): string =>
  text
    .normalize('NFC')
    .replaceAll(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]/gu, '')
    .replaceAll(/\s+/gu, ' ')
    .trim()
    .slice(0, LONGEST_NAME)

/** Signs of a name that are printed. Source: upper bounds of RFC 5280, appendix A.1 (64, from memory). */
const LONGEST_NAME = 64

function nameIn(name: RelativeDistinguishedNames): string {
  const [organisation, common] = [partOf(name, 'organisation'), partOf(name, 'commonName')]
  if (organisation === '') return common === '' ? 'an issuer without a name' : common
  return common === '' || common === organisation ? organisation : `${organisation} (${common})`
}

/** The papers everyone may read name functions, not persons. */
function refusePerson(subject: RelativeDistinguishedNames): void {
  if (partOf(subject, 'givenName') !== '' || partOf(subject, 'surname') !== '')
    throw new Unusable(
      'its certificate is that of a person, whom everyone who has the paper would read: use one of the organisation (a seal)'
    )
  if (partOf(subject, 'organisation') === '')
    throw new Unusable(
      'its certificate names no organisation: use one that was issued to the workshop (a seal)'
    )
}

const KEY_USAGE = '2.5.29.15'
/** digitalSignature and contentCommitment, the first two bits. Source: RFC 5280, 4.2.1.3. */
const SIGNING_BITS = 0xc0

function refuseUse({ extensions = [] }: Certificate): void {
  const usage = extensions.find(({ extnID }) => extnID === KEY_USAGE)?.parsedValue
  if (!(usage instanceof BitString)) return
  const [bits = 0] = usage.valueBlock.valueHexView
  if ((bits & SIGNING_BITS) === 0)
    throw new Unusable(
      'its certificate is not for signing documents: its key usage has neither digitalSignature nor contentCommitment'
    )
}

const SMALLEST_RSA = 2048
const curves = ['prime256v1', 'secp384r1', 'secp521r1']

function refuseKey({ asymmetricKeyType: type, asymmetricKeyDetails: details = {} }: KeyObject) {
  const { modulusLength = 0, namedCurve = '' } = details
  if (type === 'rsa' && modulusLength >= SMALLEST_RSA) return
  if (type === 'ec' && curves.includes(namedCurve)) return
  throw new Unusable(
    `its key is of a kind PDF programs do not check (${type ?? 'unknown'} ${modulusLength || namedCurve}): use RSA from ${SMALLEST_RSA} bits, or the curves P-256, P-384, P-521`
  )
}

const dayOf = (moment: Date): string => moment.toISOString().slice(0, 10)

function refuseDay({ notBefore, notAfter }: Certificate, day: string): void {
  const noon = new Date(`${day}T12:00:00Z`)
  if (noon > notAfter.value)
    throw new Unusable(`its certificate expired on ${dayOf(notAfter.value)}, before ${day}`)
  if (noon < notBefore.value)
    throw new Unusable(`its certificate is valid from ${dayOf(notBefore.value)}, after ${day}`)
}
