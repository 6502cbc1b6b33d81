/**
 * The files carried inside a PDF that this program wrote.
 *
 * Reads the plain object layout such a file has. In any other PDF nothing may be found, which is an
 * answer too: what it carries was not put there here. Runs in Node and in a browser.
 */

import { concat } from '../register/bytes.ts'

/** Largest file unpacked, in bytes: what is attached to a certificate takes a small part of it. */
const LARGEST_FILE = 16_000_000

/** `%PDF-` at the very start. */
export const isPdf = (bytes: Uint8Array): boolean =>
  new TextDecoder('latin1').decode(bytes.subarray(0, 5)) === '%PDF-'

/**
 * Attached files by name.
 *
 * @returns files whose packing is damaged are left out
 */
export async function attachmentsOf(pdf: Uint8Array): Promise<ReadonlyMap<string, Uint8Array>> {
  const text = new TextDecoder('latin1').decode(pdf)
  const found = new Map<string, Uint8Array>()
  for (const { name, object } of fileSpecifications(text)) {
    const file = await embeddedFile(pdf, text, object)
    if (file) found.set(name, file)
  }
  return found
}

/** Name and object number of each file specification. */
const fileSpecifications = (text: string) =>
  [...text.matchAll(/\/Type \/Filespec\n[^]*?endobj/gu)].flatMap(([specification]) => {
    const name = /\/F \(([\w.-]+)\)/u.exec(specification)?.[1]
    const object = /\/EF <<\s*\/F (\d+) 0 R/u.exec(specification)?.[1]
    return name === undefined || object === undefined ? [] : [{ name, object }]
  })

async function embeddedFile(
  pdf: Uint8Array,
  text: string,
  object: string
): Promise<Uint8Array | undefined> {
  const start = text.indexOf(`\n${object} 0 obj\n`)
  const streamStart = text.indexOf('\nstream\n', start) + '\nstream\n'.length
  if (start < 0 || streamStart < '\nstream\n'.length) return undefined
  const head = text.slice(start, streamStart)
  const length = Number(/\/Length (\d+)/u.exec(head)?.[1])
  const packed = pdf.slice(streamStart, streamStart + length)
  if (!Number.isSafeInteger(length) || packed.length !== length) return undefined
  return /\/Filter \/FlateDecode/u.test(head) ? inflated(packed) : packed
}

/** Unpack, or undefined where the bytes are damaged or swell beyond all measure. */
async function inflated(packed: Uint8Array<ArrayBuffer>): Promise<Uint8Array | undefined> {
  const reader = new Blob([packed])
    .stream()
    .pipeThrough(new DecompressionStream('deflate'))
    .getReader()
  const chunks: Uint8Array[] = []
  let size = 0
  try {
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      size += part.value.length
      if (size > LARGEST_FILE) return undefined
      chunks.push(part.value)
    }
  } catch {
    return undefined
  }
  return concat(...chunks)
}
