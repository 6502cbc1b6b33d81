/**
 * The place a PDF keeps for its own signature, and putting one there. All of the file is signed but
 * that place, so the file is drawn with the place blank, signed, and filled in.
 *
 * Source: ISO 32000-1:2008, 12.8.1, ByteRange and Contents; ETSI EN 319 142-1, PAdES baseline
 * signatures (clauses from memory, not checked against the print).
 */

import type { Dictionary } from './pdfkit.ts'

/** Room for the signature in bytes, whatever its length: the file is laid out before it is made. */
export const SIGNATURE_ROOM = 8192

/** Ten places for a number that is known once the file is laid out. */
const UNKNOWN = '**********'

/**
 * What the file says of its signature.
 *
 * @param at the moment it claims to be made, from a document and not from a clock
 */
export const signatureDictionary = (name: string, at: Date): Dictionary => ({
  Type: 'Sig',
  Filter: 'Adobe.PPKLite',
  SubFilter: 'ETSI.CAdES.detached',
  ByteRange: [0, UNKNOWN, UNKNOWN, UNKNOWN],
  Contents: new Uint8Array(SIGNATURE_ROOM),
  M: at,
  Name: new String(name)
})

const BLANK_RANGE = `/ByteRange [0 /${UNKNOWN} /${UNKNOWN} /${UNKNOWN}]`
const CONTENTS = '\n/Contents <'

/** Where a file's signature goes: offsets of its '<' and of what follows its '>'. */
interface Gap {
  readonly start: number
  readonly end: number
}

/** @throws RangeError for a file without a blank place for a signature */
function gapIn(pdf: Buffer): Gap & { readonly range: number } {
  const range = pdf.lastIndexOf(BLANK_RANGE, undefined, 'latin1')
  const start = pdf.indexOf(CONTENTS, range, 'latin1') + CONTENTS.length - 1
  if (range < 0) throw new RangeError('the file has no place for a signature')
  return { range, start, end: start + 2 * SIGNATURE_ROOM + 2 }
}

/**
 * Write into a blank file which of its bytes are signed.
 *
 * @throws RangeError for a file without a blank place for a signature
 */
function withRange(pdf: Uint8Array): { readonly file: Buffer; readonly gap: Gap } {
  const file = Buffer.from(pdf)
  const { range, start, end } = gapIn(file)
  const told = `/ByteRange [0 ${start} ${end} ${file.length - end}]`
  file.write(told.padEnd(BLANK_RANGE.length), range, 'latin1')
  return { file, gap: { start, end } }
}

/** The bytes that a signature of a blank file is over. */
export function signedPart(pdf: Uint8Array): Uint8Array {
  const { file, gap } = withRange(pdf)
  return Buffer.concat([file.subarray(0, gap.start), file.subarray(gap.end)])
}

/**
 * A blank file with its signature in place.
 *
 * @param cms over `signedPart` of the file
 * @throws RangeError where it has no room
 */
export function withSignature(pdf: Uint8Array, cms: Uint8Array): Uint8Array {
  if (cms.length > SIGNATURE_ROOM)
    throw new RangeError(`a signature of ${cms.length} bytes, with room for ${SIGNATURE_ROOM}`)
  const { file, gap } = withRange(pdf)
  file.write(Buffer.from(cms).toString('hex'), gap.start + 1, 'latin1')
  return file
}
