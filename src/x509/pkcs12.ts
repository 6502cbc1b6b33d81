/**
 * Reading a PKCS #12 file: a private key and certificates behind a pass phrase.
 *
 * Source: RFC 7292.
 */

import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto'
import {
  CertBag,
  Certificate,
  PFX,
  PKCS8ShroudedKeyBag,
  PrivateKeyInfo,
  type SafeContents
} from 'pkijs'
import { Unusable } from './unusable.ts'

export interface Opened {
  readonly key: KeyObject
  /** Whose key it is. */
  readonly own: Certificate
  /** Those that lead up from it, in the order of the file. */
  readonly others: readonly Certificate[]
}

/** DER of a certificate, as it was issued. */
export const derOf = (certificate: Certificate): Uint8Array =>
  new Uint8Array(certificate.toSchema().toBER())

/**
 * Open a PKCS #12 file.
 *
 * @throws Unusable in one plain sentence: no such file, another pass phrase, no key or not just one,
 *   no certificate for it, or an encryption of old that is no longer in use
 */
export async function openPkcs12(file: Uint8Array, phrase: string): Promise<Opened> {
  const { keys, certificates } = await contentOf(file, phrase)
  const [key] = keys
  if (!key || keys.length > 1)
    throw new Unusable(`it holds ${keys.length} private keys, where one is needed`)
  const own = certificates.find(one => new X509Certificate(derOf(one)).checkPrivateKey(key))
  if (own) return { key, own, others: certificates.filter(one => one !== own) }
  throw new Unusable(
    certificates.length === 0
      ? 'it holds no certificate'
      : 'its private key belongs to none of its certificates: another key was put into it'
  )
}

interface Content {
  readonly keys: readonly KeyObject[]
  readonly certificates: readonly Certificate[]
}

async function contentOf(file: Uint8Array, phrase: string): Promise<Content> {
  const password = ownBuffer(new TextEncoder().encode(phrase))
  const bags = await bagsOf(readPfx(file), password)
  return {
    keys: bags.flatMap(bag =>
      bag instanceof PKCS8ShroudedKeyBag || bag instanceof PrivateKeyInfo
        ? [keyOf(bag, phrase)]
        : []
    ),
    certificates: bags.flatMap(bag =>
      bag instanceof CertBag && bag.parsedValue instanceof Certificate ? [bag.parsedValue] : []
    )
  }
}

function readPfx(file: Uint8Array): PFX {
  try {
    return PFX.fromBER(ownBuffer(file))
  } catch {
    throw new Unusable('it is no PKCS #12 file (.p12 or .pfx)')
  }
}

async function bagsOf(pfx: PFX, password: ArrayBuffer): Promise<readonly unknown[]> {
  await checked(pfx, password)
  const safe = pfx.parsedValue?.authenticatedSafe
  if (!safe) throw new Unusable('it holds nothing that can be read')
  try {
    await safe.parseInternalValues({ safeContents: safe.safeContents.map(() => ({ password })) })
  } catch {
    throw new Unusable(OLD_METHOD)
  }
  const contents: readonly { readonly value: SafeContents }[] = safe.parsedValue.safeContents
  return contents.flatMap(({ value }) => value.safeBags.map(({ bagValue }) => bagValue))
}

/** The pass phrase was right: what stays shut is encrypted by what WebCrypto does not know, RC2 or DES. */
const OLD_METHOD =
  'it is encrypted by an old method; write it anew: openssl pkcs12 -legacy -in OLD.p12 -out all.pem, then openssl pkcs12 -export -in all.pem -out NEW.p12, and remove all.pem'

/** The file's own check, made with the pass phrase: it fails on any other, and on changed bytes. */
async function checked(pfx: PFX, password: ArrayBuffer): Promise<void> {
  if (!pfx.macData)
    throw new Unusable('it has no check by a pass phrase, so nobody can tell whether it is whole')
  try {
    await pfx.parseInternalValues({ password, checkIntegrity: true })
  } catch {
    throw new Unusable('the pass phrase is not that of this file, or the file was changed')
  }
}

function keyOf(info: PrivateKeyInfo | PKCS8ShroudedKeyBag, passphrase: string): KeyObject {
  const key = Buffer.from(info.toSchema().toBER())
  const isEncrypted = info instanceof PKCS8ShroudedKeyBag
  try {
    return createPrivateKey({
      key,
      format: 'der',
      type: 'pkcs8',
      ...(isEncrypted && { passphrase })
    })
  } catch {
    throw new Unusable(isEncrypted ? OLD_METHOD : 'its private key is of a kind not known here')
  }
}

/** Bytes as a buffer of their own, as the library wants them. */
const ownBuffer = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer
