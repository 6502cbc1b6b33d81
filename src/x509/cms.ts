/**
 * A signature over bytes that it does not hold, in the form PDF programs read.
 *
 * Source: RFC 5652 (CMS), RFC 5035 (signing-certificate-v2); the choice of attributes after ETSI EN
 * 319 122-1 and 319 142-1, baseline B-B (from memory, not checked against the print). There is no time
 * in it: a PDF states its own.
 */

import { createHash, type KeyObject, sign } from 'node:crypto'
import { Null, ObjectIdentifier, OctetString, Sequence } from 'asn1js'
import {
  AlgorithmIdentifier,
  Attribute,
  type Certificate,
  ContentInfo,
  EncapsulatedContentInfo,
  IssuerAndSerialNumber,
  SignedAndUnsignedAttributes,
  SignedData,
  SignerInfo
} from 'pkijs'
import { derOf, type Opened } from './pkcs12.ts'

/** Source: RFC 5652, section 11; RFC 5035, section 3; RFC 5754, sections 2 and 3. */
const oid = {
  contentType: '1.2.840.113549.1.9.3',
  messageDigest: '1.2.840.113549.1.9.4',
  signingCertificateV2: '1.2.840.113549.1.9.16.2.47',
  sha256: '2.16.840.1.101.3.4.2.1',
  sha256WithRsa: '1.2.840.113549.1.1.11',
  ecdsaWithSha256: '1.2.840.10045.4.3.2'
} as const

/** Tag of a SET OF, under which attributes are signed; in the file they stand under another. */
const SET_OF = 0x31

const digestOf = (bytes: Uint8Array): OctetString =>
  new OctetString({ valueHex: new Uint8Array(createHash('sha256').update(bytes).digest()) })

/** The signature over bytes, DER. Of an RSA key it is always the same. */
export function detachedCms({ key, own, others }: Opened, bytes: Uint8Array): Uint8Array {
  const signedAttrs = new SignedAndUnsignedAttributes({
    type: 0,
    attributes: attributesOf(own, bytes)
  })
  const signer = new SignerInfo({
    version: 1,
    sid: new IssuerAndSerialNumber({ issuer: own.issuer, serialNumber: own.serialNumber }),
    digestAlgorithm: new AlgorithmIdentifier({ algorithmId: oid.sha256 }),
    signedAttrs,
    signatureAlgorithm: algorithmOf(key),
    signature: new OctetString({ valueHex: new Uint8Array(signatureOf(key, signedAttrs)) })
  })
  const signed = new SignedData({
    version: 1,
    digestAlgorithms: [new AlgorithmIdentifier({ algorithmId: oid.sha256 })],
    encapContentInfo: new EncapsulatedContentInfo({ eContentType: ContentInfo.DATA }),
    certificates: [own, ...others].sort(byDer),
    signerInfos: [signer]
  })
  const content = signed.toSchema(true)
  const info = new ContentInfo({ contentType: ContentInfo.SIGNED_DATA, content })
  return new Uint8Array(info.toSchema().toBER())
}

/** Source: DER of a SET OF, ITU-T X.690, 11.6: its elements in the order of their bytes. */
const byDer = (one: Certificate, other: Certificate): number =>
  Buffer.compare(derOf(one), derOf(other))

function attributesOf(own: Certificate, bytes: Uint8Array): Attribute[] {
  const attribute = (type: string, value: ObjectIdentifier | OctetString | Sequence) =>
    new Attribute({ type, values: [value] })
  // With SHA-256 the name of the hash is left out: RFC 5035 makes it the default.
  const certificate = new Sequence({ value: [digestOf(derOf(own))] })
  return [
    attribute(oid.contentType, new ObjectIdentifier({ value: ContentInfo.DATA })),
    attribute(oid.messageDigest, digestOf(bytes)),
    attribute(
      oid.signingCertificateV2,
      new Sequence({ value: [new Sequence({ value: [certificate] })] })
    )
  ].sort((one, other) =>
    Buffer.compare(Buffer.from(one.toSchema().toBER()), Buffer.from(other.toSchema().toBER()))
  )
}

function signatureOf(key: KeyObject, attributes: SignedAndUnsignedAttributes): Buffer {
  const der = Buffer.from(attributes.toSchema().toBER())
  der[0] = SET_OF
  return sign('sha256', der, key)
}

const algorithmOf = ({ asymmetricKeyType }: KeyObject): AlgorithmIdentifier =>
  asymmetricKeyType === 'ec'
    ? new AlgorithmIdentifier({ algorithmId: oid.ecdsaWithSha256 })
    : new AlgorithmIdentifier({ algorithmId: oid.sha256WithRsa, algorithmParams: new Null() })
