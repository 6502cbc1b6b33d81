/**
 * Nothing private in any byte of the public site: pages, data, and certificates with their streams
 * unpacked, their text as printed, and what they carry.
 */

import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { requireTool } from '../tools.ts'
import { builtDemo } from './built-demo.ts'

const words = (
  JSON.parse(readFileSync('tests/fixtures/private-words.json', 'utf8')) as { word: string }[]
).map(({ word }) => word)

const tools = requireTool('qpdf', 'qpdf') && requireTool('pdftotext', 'poppler-utils')

const folder = mkdtempSync(join(tmpdir(), 'lotfolio-canary-'))
let site: string
let files: string[]

beforeAll(async () => {
  site = await builtDemo('public')
  files = readdirSync(site, { recursive: true, encoding: 'utf8' })
}, 180_000)

afterAll(() => rmSync(folder, { recursive: true, force: true }))

const pathOf = (file: string) => join(site, file)

/** The text of all pages of some certificates; merged first, as each alone takes six times as long. */
function printed(paths: readonly string[]): string {
  const merged = join(folder, 'merged.pdf')
  execFileSync('qpdf', ['--empty', '--pages', ...paths, '--', merged])
  return execFileSync('pdftotext', ['-layout', merged, '-'], { maxBuffer: 1 << 28 }).toString()
}

/** Every other form in which a reader or a program can come at a certificate's words. */
function unpacked(path: string): string[] {
  const carried = mkdtempSync(join(folder, 'carried-'))
  execFileSync('pdfdetach', ['-saveall', '-o', carried, path])
  return [
    execFileSync('qpdf', ['--qdf', '--object-streams=disable', path, '-'], {
      maxBuffer: 1 << 28
    }).toString('latin1'),
    execFileSync('pdfinfo', ['-meta', path]).toString('utf8'),
    ...readdirSync(carried).map(name => readFileSync(join(carried, name), 'utf8'))
  ]
}

/** A word as text, and as the UTF-16 in which a PDF writes titles: plain or in hexadecimal. */
function formsOf(word: string): string[] {
  const wide = Buffer.from(word, 'utf16le').swap16()
  return [word, wide.toString('latin1'), wide.toString('hex'), wide.toString('hex').toUpperCase()]
}

const holds = (text: string, word: string) => formsOf(word).some(form => text.includes(form))

/** All forms of all words at once; word by word it takes twelve times as long. */
const anyWord = new RegExp(
  words
    .flatMap(formsOf)
    .map(form => form.replaceAll(/[.*+?^${}()|[\]\\]/gu, '\\$&'))
    .join('|')
)

const found = (text: string) => (anyWord.test(text) ? words.filter(word => holds(text, word)) : [])

test('the words planted in private fields are in the records', () => {
  const records = readdirSync('content', { recursive: true, encoding: 'utf8' })
    .filter(path => path.endsWith('.yaml'))
    .map(path => readFileSync(join('content', path), 'utf8'))
    .join('\n')
  expect(words.length).toBeGreaterThan(40)
  expect(words.filter(word => !records.includes(word))).toEqual([])
})

test('no file or its name holds one of them', () => {
  expect(files.length).toBeGreaterThan(60)
  for (const file of files) {
    expect(found(file), file).toEqual([])
    if (/\.\w+$/u.test(file)) expect(found(readFileSync(pathOf(file), 'latin1')), file).toEqual([])
    if (/\.(html|json|csv|xml)$/u.test(file))
      expect(found(readFileSync(pathOf(file), 'utf8')), file).toEqual([])
  }
})

test.runIf(tools)(
  'no certificate holds one of them, unpacked, printed or attached',
  { timeout: 120_000 },
  () => {
    const certificates = files.filter(file => file.endsWith('.pdf'))
    expect(certificates.length).toBeGreaterThan(15)
    for (const file of certificates)
      for (const text of unpacked(pathOf(file))) expect(found(text), file).toEqual([])
    const all = printed(certificates.map(pathOf))
    for (const file of certificates.filter(lotOf)) expect(all, file).toContain(lotOf(file))
    if (found(all).length > 0)
      for (const file of certificates) expect(found(printed([pathOf(file)])), file).toEqual([])
    expect(found(all)).toEqual([])
  }
)

/** The number of the lot beside whose page a paper lies. */
const lotOf = (file: string) => /^lots[\\/]([^\\/]+)/u.exec(file)?.[1]

test.runIf(tools)('the search finds what is there: the lot in each form of a certificate', () => {
  const file = files.find(name => name.endsWith('.pdf'))!
  const lot = file.split(/[\\/]/u)[1]!
  const [plain = '', , carried] = unpacked(pathOf(file))
  expect(printed([pathOf(file)])).toContain(lot)
  expect(carried).toContain(lot)
  expect(holds(plain, 'Certificate')).toBe(true)
  for (const word of words)
    for (const form of formsOf(word)) expect(found(`…${form}…`)).toContain(word)
  expect(found(`…${Buffer.from(words[0]!, 'utf16le').swap16().toString('latin1')}…`)).toEqual([
    words[0]
  ])
})

test('the workshop edition carries no more in its certificates than the public one', async () => {
  const out = await builtDemo('workshop')
  for (const file of files.filter(name => /(?<!-working)\.pdf$/u.test(name)))
    expect(readFileSync(join(out, file)).equals(readFileSync(pathOf(file))), file).toBe(true)
}, 120_000)
