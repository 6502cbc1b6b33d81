/** The editor schemas, held against the language server editors use and against our own reader. */

import { readdirSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { expect, test } from 'vitest'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { getLanguageService } from 'yaml-language-server'
import { editorSchemas, schemaFileOf } from '../../src/records/editor-schema.ts'
import { kindOf } from '../../src/records/kinds.ts'

const records = readdirSync('content', { recursive: true, encoding: 'utf8' })
  .filter(path => path.endsWith('.yaml'))
  .map(path => join('content', path))
  .map(path => ({ path, text: readFileSync(path, 'utf8') }))

const example = records.find(({ path }) => path.endsWith('EB-26-001.yaml'))!

/** The language server keeps what it parsed by version. */
let version = 0

/** The service of each schema: making one anew for every record took most of the time. */
const services = new Map<string, ReturnType<typeof getLanguageService>>()

function serviceFor(name: string) {
  const known = services.get(name)
  if (known) return known
  const service = getLanguageService({
    schemaRequestService: () => Promise.reject(new Error('no schema is fetched')),
    workspaceContext: { resolveRelativePath: path => path }
  })
  const schema = editorSchemas().get(name)!
  service.configure({
    validate: true,
    schemas: [{ uri: `file:///schemas/${name}`, fileMatch: ['*.yaml'], schema }]
  })
  services.set(name, service)
  return service
}

/** What an editor would underline in a record. */
async function underlined(text: string, path: string): Promise<string[]> {
  const name = schemaFileOf(kindOf({ path: path.replaceAll('\\', '/'), text })!)
  // The record's own schema line is about a file beside it; the schema is given here.
  const own = text.replace(/^# yaml-language-server:.*$/mu, '#')
  const document = TextDocument.create(`file:///${name}.yaml`, 'yaml', ++version, own)
  const found = await serviceFor(name).doValidation(document, false)
  return found.map(({ message, range }) => `${range.start.line + 1}: ${message}`)
}

test('an editor finds nothing to underline in the demo records but the draft', async () => {
  const found = []
  for (const { path, text } of records)
    for (const message of await underlined(text, path)) found.push(`${basename(path)} ${message}`)
  const draft = records.find(({ text }) => /^draft: yes$/mu.test(text))!
  expect(found.filter(message => !message.startsWith(basename(draft.path)))).toEqual([])
})

test.for([
  ['a misspelt field', 'made: 2026-01-20', 'mad: 2026-01-20'],
  ['a unit of the wrong kind', /mass: ([\d.]+) g/u, 'mass: $1 mL'],
  ['a missing unit', /mass: ([\d.]+) g/u, 'mass: $1'],
  ['a decimal comma', /^(product:.*?mass:) [\d.]+ g/msu, '$1 "25,00 g"']
] as const)('an editor underlines %s', async ([, from, to]) => {
  const { path, text } = example
  const wrong = text.replace(from, to)
  expect(wrong).not.toBe(text)
  expect(await underlined(wrong, path)).not.toEqual([])
})

test('a number, a yes and a blank are read as an editor reads them', async () => {
  const { path, text } = example
  const typed = text.replace(/^notes: .*$/mu, 'notes:\ndraft: no')
  expect(typed).not.toBe(text)
  expect(await underlined(typed, path)).toEqual([])
})

test('the schema files beside the content are those of the present record format', () => {
  for (const [name, schema] of editorSchemas())
    expect(JSON.parse(readFileSync(join('schemas', name), 'utf8')), name).toEqual(schema)
})

test('each demo record names the schema file of its kind', () => {
  for (const { path, text } of records) {
    const named = /^# yaml-language-server: \$schema=(\S+)/u.exec(text)?.[1]
    const target = join(dirname(path), named ?? '')
    const kind = kindOf({ path: path.replaceAll('\\', '/'), text: '' })!
    expect(target, path).toBe(join('schemas', schemaFileOf(kind)))
  }
})
