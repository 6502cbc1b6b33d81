/** Files carried in a PDF: found as another program finds them, and left out where damaged. */

import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { deflateSync } from 'node:zlib'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { attachmentsOf, isPdf } from '../../src/verify/attachments.ts'
import { certificateDocument } from '../fixtures/documents.ts'
import { withFile } from '../pdf/inspect.ts'
import { requireTool } from '../tools.ts'

const files = {
  'data.json': Buffer.from('{"mass":"25.00 g","größer":"≥ 5 µm"}\n'),
  'certificate.json': Buffer.from(JSON.stringify({ says: 'x'.repeat(20_000) })),
  // Every byte there is, and words that end an object.
  'proof.json': Buffer.concat([
    Buffer.from(Array.from({ length: 256 }, (_, byte) => byte)),
    Buffer.from('\nendstream\nendobj\n')
  ])
}
const pdf = await certificatePdf(certificateDocument, {
  fingerprint: 'a'.repeat(64),
  attachments: Object.entries(files).map(([name, bytes]) => ({ name, bytes }))
})
const names = Object.keys(files).sort()

const asBuffers = async (bytes: Uint8Array) =>
  Object.fromEntries(
    [...(await attachmentsOf(bytes))].map(([name, file]) => [name, Buffer.from(file)])
  )

test('all files come out, byte for byte', async () => {
  expect(await asBuffers(pdf)).toEqual(files)
})

test.skipIf(!requireTool('pdfdetach', 'poppler-utils'))(
  'and as another program takes them out',
  async () => {
    const found = await asBuffers(pdf)
    withFile(pdf, path => {
      execFileSync('pdfdetach', ['-saveall', '-o', dirname(path), path])
      for (const name of names) expect(readFileSync(join(dirname(path), name))).toEqual(found[name])
    })
  }
)

/** A PDF as this program lays one out, with one file. */
function pdfWith(
  stream: Uint8Array,
  { name = 'a.json', object = '2', filter = '/Filter /FlateDecode\n', length = stream.length } = {}
): Uint8Array {
  return Buffer.concat([
    Buffer.from(
      `%PDF-2.0\n1 0 obj\n<<\n/Type /Filespec\n/F (${name})\n/EF <<\n/F ${object} 0 R\n>>\n>>\nendobj\n` +
        `\n2 0 obj\n<<\n${filter}/Length ${length}\n>>\nstream\n`
    ),
    stream,
    Buffer.from('\nendstream\nendobj\n%%EOF\n')
  ])
}

const packed = deflateSync('{"a":1}')

describe('of a PDF written by hand', () => {
  test.for<[what: string, pdf: Uint8Array, text: string | undefined]>([
    ['a packed file', pdfWith(packed), '{"a":1}'],
    ['a plain file', pdfWith(Buffer.from('{"a":1}'), { filter: '' }), '{"a":1}'],
    ['an empty file', pdfWith(new Uint8Array(), { filter: '' }), ''],
    ['a file that is not there', pdfWith(packed, { object: '3' }), undefined],
    ['a length beyond the end', pdfWith(packed, { length: 9999 }), undefined],
    ['a length cut short', pdfWith(packed, { length: packed.length - 5 }), undefined],
    ['packing that is none', pdfWith(Buffer.from('{"a":1}')), undefined],
    [
      'a file of 16 million bytes',
      pdfWith(deflateSync(Buffer.alloc(16_000_000))),
      '\0'.repeat(16e6)
    ],
    ['one of a byte more', pdfWith(deflateSync(Buffer.alloc(16_000_001))), undefined],
    ['a name with a path in it', pdfWith(packed, { name: '../a.json' }), undefined]
  ])('%s', async ([, bytes, text]) => {
    const found = [...(await attachmentsOf(bytes)).values()].map(file => Buffer.from(file))
    expect(found.length).toBe(text === undefined ? 0 : 1)
    expect(found[0]?.equals(Buffer.from(text ?? '')) ?? true).toBe(true)
  })

  test('a damaged file does not take the others along', async () => {
    const at = Buffer.from(pdf).indexOf('\nstream\n', Buffer.from(pdf).indexOf('/EmbeddedFile'))
    const damaged = Buffer.from(pdf)
    damaged.fill(0xff, at + 8, at + 16)
    const found = await asBuffers(damaged)
    expect(Object.keys(found)).toHaveLength(names.length - 1)
    for (const [name, bytes] of Object.entries(found))
      expect(bytes).toEqual(files[name as keyof typeof files])
  })
})

test.for(['', '%PDF-', '%PDF-2.0\n%%EOF\n', 'no PDF', '\0\uFFFF'])(
  '%j carries nothing',
  async text => {
    expect((await attachmentsOf(Buffer.from(text))).size).toBe(0)
  }
)

test('a PDF is told by its first five bytes', () => {
  expect(isPdf(pdf)).toBe(true)
  expect(isPdf(Buffer.from(' %PDF-2.0'))).toBe(false)
  expect(isPdf(Buffer.from('%PDF'))).toBe(false)
  expect(isPdf(new Uint8Array())).toBe(false)
})
