/**
 * A picture as customers get it: JPEG or PNG without what cameras and editors write into it, as where
 * and by whom it was taken, and without what follows its end.
 *
 * Sources: ITU-T T.81, annex B (segments of a JPEG); ITU-T T.871, 10 (JFIF, its small picture; clause
 * from memory, not checked against the print); W3C PNG Third Edition, sections 5 and 11 (chunks); TIFF
 * 6.0, section 2 (the directory that holds the orientation).
 */

import type { PictureKind } from '../documents/picture-types.ts'

export interface PlainPicture {
  readonly kind: PictureKind
  readonly bytes: Uint8Array
  readonly width_px: number
  readonly height_px: number
}

/** Why a file cannot be shown, as the end of 'the picture …'. */
export interface PictureFault {
  readonly fault: string
}

const NO_PICTURE: PictureFault = { fault: 'is neither a JPEG nor a PNG' }
const CUT_SHORT: PictureFault = { fault: 'is cut short or damaged' }
const EMPTY: PictureFault = { fault: 'has no pixels in it' }
const TURNED: PictureFault = {
  fault: 'lies on its side or head, and only a note inside it says how to turn it'
}

/** The picture a file holds, or why it cannot be shown. */
export function plainPicture(file: Uint8Array): PlainPicture | PictureFault {
  const bytes = Buffer.from(file.buffer, file.byteOffset, file.byteLength)
  try {
    if (bytes.subarray(0, 2).toString('hex') === 'ffd8') return withPixels(plainJpeg(bytes))
    if (bytes.subarray(0, 8).toString('latin1') === '\u0089PNG\r\n\u001a\n')
      return withPixels(plainPng(bytes))
    return NO_PICTURE
  } catch (error) {
    // Reading beyond the end of what is there.
    if (error instanceof RangeError) return CUT_SHORT
    throw error
  }
}

/** Of a JFIF segment without a small picture: that one may show what was cut off the large one. */
const JFIF_LENGTH = 18

/** Some scanners write a height of 0 and tell it behind the pixels, which browsers do not read. */
const withPixels = (found: PlainPicture | PictureFault): PlainPicture | PictureFault =>
  'fault' in found || (found.width_px > 0 && found.height_px > 0) ? found : EMPTY

/** Segments that pictures are decoded by: tables, frames, scans, JFIF, colour profile, Adobe's colours. */
const isNeeded = (marker: number, body: Buffer): boolean => {
  const isNamed = (name: string) => body.subarray(4, 4 + name.length).toString('latin1') === name
  if (marker === 0xe0) return isNamed('JFIF\0') && body.length === JFIF_LENGTH
  if (marker === 0xe2) return isNamed('ICC_PROFILE')
  if (marker === 0xee) return isNamed('Adobe')
  // Below lie reserved numbers, under which anything might be written.
  return marker >= 0xc0 && marker < 0xe0
}

/** A frame says the size; DHT, JPG and DAC have numbers among those of frames. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)

function plainJpeg(bytes: Buffer): PlainPicture | PictureFault {
  const kept: Buffer[] = [bytes.subarray(0, 2)]
  let size: { width_px: number; height_px: number } | undefined
  let isScanned = false
  for (let at = 2; ;) {
    if (bytes.readUInt8(at) !== 0xff) return CUT_SHORT
    const marker = bytes.readUInt8(at + 1)
    // Any number of them may stand before a marker.
    if (marker === 0xff) {
      at += 1
      continue
    }
    if (marker === 0xd9) {
      kept.push(bytes.subarray(at, at + 2))
      return size && isScanned ? { kind: 'jpg', bytes: Buffer.concat(kept), ...size } : CUT_SHORT
    }
    const end = at + 2 + bytes.readUInt16BE(at + 2)
    const body = bytes.subarray(at, end)
    if (isFrame(marker))
      size = { height_px: bytes.readUInt16BE(at + 5), width_px: bytes.readUInt16BE(at + 7) }
    if (marker === 0xe1 && isExif(body) && turns(body.subarray(10))) return TURNED
    // A scan's data follow its segment, up to the next marker that is not part of them.
    isScanned ||= marker === 0xda
    const next = marker === 0xda ? afterScan(bytes, end) : end
    if (isNeeded(marker, body)) kept.push(bytes.subarray(at, next))
    at = next
  }
}

/** In a scan's data 0xff is followed by 0, or by the number of a restart. */
function afterScan(bytes: Buffer, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes.readUInt8(at + 1)
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at
  }
  throw new RangeError('the scan has no end')
}

const isExif = (segment: Buffer): boolean =>
  segment.subarray(4, 10).toString('latin1') === 'Exif\0\0'

const ORIENTATION = 0x0112

/** A note that cannot be read turns nothing, in any program. */
function turns(tiff: Buffer): boolean {
  try {
    return isTurned(tiff)
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}

/** Whether Exif says that the picture is to be turned: it would not be, once that is taken out. */
function isTurned(tiff: Buffer): boolean {
  const isLittle = tiff.subarray(0, 2).toString('latin1') === 'II'
  const two = (at: number) => (isLittle ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at))
  const directory = isLittle ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4)
  for (let index = 0; index < two(directory); index += 1) {
    const entry = directory + 2 + 12 * index
    if (two(entry) === ORIENTATION) return two(entry + 8) > 1
  }
  return false
}

/** Chunks that say how a picture looks; all others are words about it, or an editor's own. */
const shown = ['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS'].concat([
  'gAMA',
  'cHRM',
  'sRGB',
  'iCCP',
  'sBIT',
  'pHYs'
])

function plainPng(bytes: Buffer): PlainPicture | PictureFault {
  const kept: Buffer[] = [bytes.subarray(0, 8)]
  let isFilled = false
  for (let at = 8; ;) {
    const end = at + 12 + bytes.readUInt32BE(at)
    const name = bytes.subarray(at + 4, at + 8).toString('latin1')
    if (end > bytes.length || (at === 8) !== (name === 'IHDR')) return CUT_SHORT
    if (name === 'eXIf' && turns(bytes.subarray(at + 8, end - 4))) return TURNED
    if (shown.includes(name)) kept.push(bytes.subarray(at, end))
    isFilled ||= name === 'IDAT'
    if (name === 'IEND')
      return isFilled
        ? {
            kind: 'png',
            bytes: Buffer.concat(kept),
            width_px: bytes.readUInt32BE(16),
            height_px: bytes.readUInt32BE(20)
          }
        : CUT_SHORT
    at = end
  }
}
