/** Pictures without what cameras write into them. */

import { readFileSync } from 'node:fs'
import { crc32, deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { plainPicture } from '../../src/site/picture-file.ts'

const jpeg = readFileSync('content/pictures/EB-26-015-worms.jpg')

const segment = (marker: number, body: Buffer): Buffer => {
  const head = Buffer.from([0xff, marker, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([head, body])
}

/** Exif that holds one entry, in either order of bytes: how the picture is to be turned. */
function exif(orientation: number, isLittle: boolean): Buffer {
  const tiff = Buffer.alloc(26)
  tiff.write(isLittle ? 'II*\0' : 'MM\0*', 'latin1')
  const two = (value: number, at: number) =>
    isLittle ? tiff.writeUInt16LE(value, at) : tiff.writeUInt16BE(value, at)
  const four = (value: number, at: number) =>
    isLittle ? tiff.writeUInt32LE(value, at) : tiff.writeUInt32BE(value, at)
  four(8, 4)
  two(1, 8)
  two(0x0112, 10)
  two(3, 12)
  four(1, 14)
  two(orientation, 18)
  return segment(0xe1, Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]))
}

const withSegment = (extra: Buffer) => Buffer.concat([jpeg.subarray(0, 2), extra, jpeg.subarray(2)])

function bytesOf(file: Uint8Array): Buffer {
  const found = plainPicture(file)
  if ('fault' in found) throw new Error(found.fault)
  return Buffer.from(found.bytes)
}

const faultOf = (file: Uint8Array): string | undefined => {
  const found = plainPicture(file)
  return 'fault' in found ? found.fault : undefined
}

function chunk(name: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), body])
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(body.length)
  sum.writeUInt32BE(crc32(named) >>> 0)
  return Buffer.concat([length, named, sum])
}

/** A picture of 3 by 2 grey pixels, with words an editor left in it. */
const png = Buffer.concat([
  Buffer.from('\u0089PNG\r\n\u001a\n', 'latin1'),
  chunk('IHDR', Buffer.from([0, 0, 0, 3, 0, 0, 0, 2, 8, 0, 0, 0, 0])),
  chunk('tEXt', Buffer.from('Author\0somebody', 'latin1')),
  chunk('eXIf', Buffer.from('somewhere', 'latin1')),
  chunk('IDAT', deflateSync(Buffer.from([0, 10, 20, 30, 0, 40, 50, 60]))),
  chunk('IEND', Buffer.alloc(0)),
  Buffer.from('after the end', 'latin1')
])

describe('a JPEG', () => {
  test('keeps its size and loses artist, comment and what follows its end', () => {
    expect(jpeg.toString('latin1')).toContain('Zwirbelhoff')
    expect(plainPicture(jpeg)).toMatchObject({ width_px: 960, height_px: 640 })
    const bytes = bytesOf(Buffer.concat([jpeg, Buffer.from('Zwirbelhoff too')]))
    expect(bytes.toString('latin1')).not.toMatch(/Zwirbelhoff|Exif/u)
    expect(bytes.length).toBeGreaterThan(40_000)
    expect(bytes.subarray(-2).toString('hex')).toBe('ffd9')
  })

  test('keeps what its colours are decoded by, and no other note', () => {
    const profile = segment(0xe2, Buffer.from('ICC_PROFILE\0\u0001\u0001words', 'latin1'))
    const adobe = segment(0xee, Buffer.from('Adobe\0d\0\0\0\0\u0001', 'latin1'))
    for (const kept of [profile, adobe])
      expect(bytesOf(withSegment(kept)).includes(kept)).toBe(true)
    for (const marker of [0xe1, 0xe2, 0xe3, 0xeb, 0xed, 0xef, 0xfe]) {
      const note = segment(marker, Buffer.from('a note of any kind', 'latin1'))
      expect(bytesOf(withSegment(note)).includes(note), marker.toString(16)).toBe(false)
    }
  })

  test('loses small pictures of what it was before it was cut, and notes under a known number', () => {
    const plainHead = Buffer.from('JFIF\0\u0001\u0002\0\0\u0001\0\u0001\0\0', 'latin1')
    const smallHead = Buffer.concat([plainHead.subarray(0, 12), Buffer.from([1, 1, 9, 9, 9])])
    const head = segment(0xe0, plainHead)
    expect(bytesOf(withSegment(head)).indexOf(head)).toBe(2)
    for (const other of [
      segment(0xe0, smallHead),
      segment(0xe0, Buffer.from('JFXX\0\u0013 one more', 'latin1')),
      segment(0xee, Buffer.from('a note of any kind', 'latin1'))
    ])
      expect(bytesOf(withSegment(other)).includes(other)).toBe(false)
  })

  test('is told by what it holds, and read over bytes that fill', () => {
    expect(plainPicture(jpeg)).toMatchObject({ kind: 'jpg' })
    expect(plainPicture(png)).toMatchObject({ kind: 'png' })
    const filled = Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, 0xff]), jpeg.subarray(2)])
    expect(plainPicture(filled)).toMatchObject({ width_px: 960, height_px: 640 })
  })

  test('keeps nothing under a reserved number', () => {
    for (const marker of [0x02, 0x5a, 0xbf, 0xf0, 0xfd]) {
      const note = segment(marker, Buffer.from('a note of any kind', 'latin1'))
      expect(bytesOf(withSegment(note)).includes(note), marker.toString(16)).toBe(false)
    }
  })

  test.each([true, false])('that only a note turns is refused, little end first: %s', isLittle => {
    expect(faultOf(withSegment(exif(1, isLittle)))).toBeUndefined()
    for (const orientation of [2, 3, 6, 8])
      expect(faultOf(withSegment(exif(orientation, isLittle)))).toMatch(/on its side or head/u)
  })
})

describe('a PNG', () => {
  test.each([true, false])('that only a note turns is refused, little end first: %s', isLittle => {
    const noted = (orientation: number) => {
      const note = chunk('eXIf', exif(orientation, isLittle).subarray(10))
      return Buffer.concat([png.subarray(0, 33), note, png.subarray(33)])
    }
    expect(faultOf(noted(6))).toMatch(/on its side or head/u)
    expect(faultOf(noted(1))).toBeUndefined()
  })

  test('keeps its pixels and size, and loses words and what follows its end', () => {
    expect(plainPicture(png)).toMatchObject({ width_px: 3, height_px: 2 })
    const bytes = bytesOf(png)
    expect(bytes.toString('latin1')).not.toMatch(/some|after/u)
    expect(bytes.includes(chunk('IEND', Buffer.alloc(0)))).toBe(true)
    expect(bytes.toString('latin1')).toContain('IDAT')
  })
})

test('without pixels it is not shown', () => {
  const flat = Buffer.from(jpeg)
  const frame = flat.indexOf(Buffer.from('ffc0', 'hex'))
  flat.writeUInt16BE(0, frame + 5)
  expect(faultOf(flat)).toBe('has no pixels in it')
  const narrow = Buffer.from(png)
  narrow.writeUInt32BE(0, 16)
  expect(faultOf(narrow)).toBe('has no pixels in it')
  const sizeAlone = segment(0xc0, Buffer.from([8, 0, 16, 0, 16, 1, 1, 17, 0]))
  const [start, end] = [jpeg.subarray(0, 2), jpeg.subarray(-2)]
  expect(faultOf(Buffer.concat([start, sizeAlone, end]))).toMatch(/cut short/u)
  const headAlone = [png.subarray(0, 33), chunk('IEND', Buffer.alloc(0))]
  expect(faultOf(Buffer.concat(headAlone))).toMatch(/cut short/u)
})

test('what is plain stays as it is', () => {
  for (const picture of [jpeg, png])
    expect(bytesOf(bytesOf(picture)).equals(bytesOf(picture))).toBe(true)
})

test('cut anywhere, it is damaged or no picture: never shown, never a fault of ours', () => {
  const whole = bytesOf(jpeg)
  fc.assert(
    fc.property(fc.integer({ min: 0, max: whole.length - 1 }), length => {
      expect(faultOf(whole.subarray(0, length))).toMatch(/cut short|neither/u)
    })
  )
  const small = bytesOf(png)
  for (let length = 0; length < small.length; length += 1)
    expect(faultOf(small.subarray(0, length))).toMatch(/cut short|neither/u)
})

test('bytes of any kind end as a fault or a picture', () => {
  const head = fc.constantFrom('', 'ffd8', 'ffd8ffe1', '89504e470d0a1a0a')
  fc.assert(
    fc.property(head, fc.uint8Array({ maxLength: 200 }), (start, rest) => {
      const file = Buffer.concat([Buffer.from(start, 'hex'), rest])
      expect(typeof plainPicture(file)).toBe('object')
    })
  )
})
