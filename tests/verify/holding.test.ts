/** What somebody holds: a certificate as PDF or JSON, or a sentence why it is none. */

import { expect, test } from 'vitest'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { carried, holdingOf } from '../../src/verify/holding.ts'
import { certificateDocument, previewDocument } from '../fixtures/documents.ts'

const data = '{"number":"CT-1","revision":1,"says":"≥ 5 µm"}'
const proof = '{"proof":true}'

/** A paper that carries these files. */
const paperWith = (
  files: Readonly<Record<string, string | Uint8Array>>,
  document = certificateDocument
) =>
  certificatePdf(document, {
    attachments: Object.entries(files).map(([name, file]) => ({ name, bytes: Buffer.from(file) }))
  })

const none =
  'The PDF carries no certificate data: a preview, a printed or scanned copy, or a file from elsewhere.'

test('the names are those of the files an issued paper carries', () => {
  expect(carried).toEqual({
    data: 'certificate.json',
    proof: 'proof.json',
    copy: 'copy.json'
  })
})

test('a PDF is held with what it says, its proof, and its own bytes', async () => {
  const pdf = await paperWith({ 'data.json': '{}', 'certificate.json': data, 'proof.json': proof })
  expect(await holdingOf(pdf)).toEqual({ data, proof, pdf })
})

test('a PDF without a proof is held without one', async () => {
  const pdf = await paperWith({ 'data.json': '{}', 'certificate.json': data })
  expect(await holdingOf(pdf)).toEqual({ data, pdf })
})

test('a PDF without data of a certificate is none: a preview, or one from elsewhere', async () => {
  expect(await holdingOf(await paperWith({ 'data.json': '{}' }, previewDocument))).toBe(none)
  expect(await holdingOf(Buffer.from('%PDF-2.0\n%%EOF\n'))).toBe(none)
})

test('data that is no UTF-8 is none', async () => {
  const broken = new Uint8Array([0x7b, 0xff, 0x7d])
  const pdf = await paperWith({ 'data.json': '{}', 'certificate.json': broken })
  expect(await holdingOf(pdf)).toBe(none)
  expect(await holdingOf(broken)).toBe('The file is neither a PDF nor JSON.')
})

test('JSON is held as its very text', async () => {
  expect(await holdingOf(Buffer.from(data))).toEqual({ data })
  expect(await holdingOf(Buffer.from(`\n ${data}\n`))).toEqual({ data: `\n ${data}\n` })
})

test.for([
  ['', 'The file is empty.'],
  ['number: CT-1', 'The file is neither a PDF nor JSON.'],
  ['[1]', 'The file is neither a PDF nor JSON.'],
  ['  ', 'The file is neither a PDF nor JSON.'],
  [' %PDF-2.0', 'The file is neither a PDF nor JSON.']
])('%j is no certificate', async ([text, sentence]) => {
  expect(await holdingOf(Buffer.from(text!))).toBe(sentence)
})

// ISO/IEC 10646: EF BB BF at the start. Without it the text would have another fingerprint.
test('a byte order mark stays part of the text', async () => {
  expect(await holdingOf(Buffer.from(`\uFEFF${data}`))).toEqual({ data: `\uFEFF${data}` })
})
