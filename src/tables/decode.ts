/** Bytes of a file to text, by what the bytes say of themselves or what was said of them. */

import type { Encoding } from './sheet.ts'

type Decoded = { readonly text: string } | { readonly fault: readonly [string, string] }

/** Byte order marks, and the encodings they stand for. */
const marks: readonly (readonly [Encoding, readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]]
]

/**
 * Read bytes as text, every line ended by LF.
 *
 * A byte order mark decides; without one the bytes must be UTF-8, unless another encoding was named.
 * None is guessed from what the text looks like.
 */
export function decoded(bytes: Uint8Array, named?: Encoding): Decoded {
  const mark = marks.find(([, signs]) => signs.every((sign, at) => bytes[at] === sign))
  const encoding = mark?.[0] ?? named ?? 'utf-8'
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(bytes)
    return binaryFault(text) ?? { text: text.replace(/\r\n?/gu, '\n') }
  } catch {
    return { fault: wrongEncoding(bytes, encoding) }
  }
}

function binaryFault(text: string): Decoded | undefined {
  // eslint-disable-next-line no-control-regex
  const odd = /[\u0000-\u0008\u000E-\u001F\u007F]/u.exec(text)
  if (!odd) return undefined
  return {
    fault: [
      'holds bytes that no table of readings has',
      odd[0] === '\u0000'
        ? "export it as CSV; if it is a text in UTF-16, write 'encoding: utf-16le' in the mapping"
        : 'export it as CSV or .xlsx'
    ]
  }
}

function wrongEncoding(bytes: Uint8Array, encoding: Encoding): readonly [string, string] {
  const line = bytes.subarray(0, firstBad(bytes, encoding)).filter(byte => byte === 10).length + 1
  return [
    `is not text in ${encoding}: line ${line} has bytes that are none`,
    encoding === 'utf-8'
      ? "if an older program wrote it, write 'encoding: windows-1252' in the mapping; or save it as UTF-8"
      : 'name its true encoding in the mapping, or save it as UTF-8'
  ]
}

/** How many bytes can be read before the first that cannot: found by halving. */
function firstBad(bytes: Uint8Array, encoding: Encoding): number {
  let [good, bad] = [0, bytes.length]
  while (bad - good > 1) {
    const middle = (good + bad) >> 1
    if (reads(bytes.subarray(0, middle), encoding)) good = middle
    else bad = middle
  }
  return good
}

/** Whether bytes can be read so far; a character cut at the end is no fault yet. */
function reads(bytes: Uint8Array, encoding: Encoding): boolean {
  try {
    new TextDecoder(encoding, { fatal: true }).decode(bytes, { stream: true })
    return true
  } catch {
    return false
  }
}
