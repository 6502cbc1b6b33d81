import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { Failure } from '../../src/site/failure.ts'
import { readContent } from '../../src/site/read-content.ts'
import { program, run, workplace } from './workplace.ts'

function placeOf(files: Readonly<Record<string, string | Uint8Array>>): string {
  const place = workplace()
  for (const [path, bytes] of Object.entries(files)) {
    mkdirSync(join(place, path, '..'), { recursive: true })
    writeFileSync(join(place, path), bytes)
  }
  return place
}

test('every record under the folder, in the order of their paths', async () => {
  const place = placeOf({
    'content/b.yaml': 'b',
    'content/C.yaml': 'c',
    'content/a/z.yml': 'z',
    'content/a/Y.YAML': 'y',
    'content/a b/é.yaml': 'é',
    'content/.hidden.yaml': 'no',
    'content/.folder/x.yaml': 'no',
    'content/notes.txt': 'no',
    'content/x.yaml.bak': 'no'
  })
  expect(await readContent(join(place, 'content'), place)).toEqual([
    { path: 'content/C.yaml', text: 'c' },
    { path: 'content/a b/é.yaml', text: 'é' },
    { path: 'content/a/Y.YAML', text: 'y' },
    { path: 'content/a/z.yml', text: 'z' },
    { path: 'content/b.yaml', text: 'b' }
  ])
})

test('more records than a process may have files open', async context => {
  if (process.platform === 'win32') return context.skip('no such limit here')
  const names = Array.from({ length: 300 }, (_, index) => `content/materials/X-${index}.yaml`)
  const place = placeOf(Object.fromEntries(names.map(name => [name, 'lot: x'])))
  const few = ['sh', '-c', 'ulimit -n 128 && exec "$0" "$@"', process.execPath, program, 'check']
  expect((await run(few, place)).stdout).toContain('300 files read')
})

test('paths start from the folder asked for', async () => {
  const place = placeOf({ 'content/a.yaml': 'a', 'docs/x.txt': '' })
  const [file] = await readContent(join(place, 'content'), join(place, 'docs'))
  expect(file?.path).toBe('../content/a.yaml')
})

test('a byte order mark is dropped, line ends are kept', async () => {
  const place = placeOf({ 'content/a.yaml': '\uFEFFa: 1\r\nb: 2\r\n' })
  const [file] = await readContent(join(place, 'content'), place)
  expect(file?.text).toBe('a: 1\r\nb: 2\r\n')
})

test('links are followed, and a ring of them ends', async () => {
  const place = placeOf({ 'content/a.yaml': 'a', 'elsewhere/b.yaml': 'b' })
  symlinkSync(join(place, 'elsewhere'), join(place, 'content', 'linked'))
  symlinkSync(join(place, 'content'), join(place, 'elsewhere', 'ring'))
  const files = await readContent(join(place, 'content'), place)
  expect(files.map(file => file.path)).toEqual(['content/a.yaml', 'content/linked/b.yaml'])
})

describe('in plain words:', () => {
  const rows: [what: string, files: Record<string, string | Uint8Array>, because: RegExp][] = [
    ['a missing folder', { 'x.txt': '' }, /content: does not exist$/u],
    ['a file for a folder', { content: '' }, /content: is not a folder$/u],
    ['a folder without records', { 'content/x.txt': '' }, /content: holds no record/u],
    ['Latin-1', { 'content/a.yaml': Buffer.from('a: é', 'latin1') }, /a\.yaml: is not UTF-8/u],
    ['UTF-16', { 'content/a.yaml': Buffer.from('\uFEFFa', 'utf16le') }, /a\.yaml: is not UTF-8/u]
  ]
  test.each(rows)('%s', async (_, files, because) => {
    const result = readContent(join(placeOf(files), 'content'))
    await expect(result).rejects.toThrow(because)
    await expect(result).rejects.toBeInstanceOf(Failure)
  })
})
