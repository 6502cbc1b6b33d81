/** Bytes as text and back, strictly: one text for one row of bytes. */

/** UTF-8. Half a surrogate pair has none; canonical JSON holds none. */
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

/** The text that `bytes` hold as UTF-8, a byte order mark included; undefined where they hold none. */
export function textOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    return undefined
  }
}

export function concat(...parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

export const isSame = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, index) => byte === b[index])

export const toHex = (bytes: Uint8Array): string =>
  Array.from(bytes, byte => byte.toString(16).padStart(2, '0')).join('')

/** @throws RangeError where `hex` is not an even number of lower-case digits */
export function fromHex(hex: string): Uint8Array {
  if (!/^(?:[0-9a-f]{2})*$/u.test(hex))
    throw new RangeError('fromHex requires lower-case hex digits')
  return Uint8Array.from(hex.match(/../gu) ?? [], pair => Number.parseInt(pair, 16))
}

export const toBase64 = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, byte => String.fromCharCode(byte)).join(''))

/** Bytes of base64 with its padding; undefined for any text that `toBase64` would not write. */
export function fromBase64(text: string): Uint8Array | undefined {
  try {
    const bytes = Uint8Array.from(atob(text), character => character.charCodeAt(0))
    return toBase64(bytes) === text ? bytes : undefined
  } catch {
    return undefined
  }
}

/** The same bytes in memory that no other thread can change: browsers hash and sign no others. */
export const owned = (bytes: Uint8Array): Uint8Array<ArrayBuffer> =>
  bytes.buffer instanceof ArrayBuffer ? (bytes as Uint8Array<ArrayBuffer>) : bytes.slice()
