/** A small, valid workshop, and records that replace or join those it holds. */

import { readdirSync, readFileSync } from 'node:fs'
import type { SourceFile } from '../../src/problem.ts'

const read = (folder: string): SourceFile[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(path => path.endsWith('.yaml'))
    .map(path => path.replaceAll('\\', '/'))
    .sort()
    .map(path => ({ path, text: readFileSync(`${folder}/${path}`, 'utf8') }))

/** Every record of the workshop; no problem in any. */
export const base: readonly SourceFile[] = read('tests/fixtures/base')

/** Records with something wrong in them, each with what is expected of it at its head. */
export const badRecords: readonly SourceFile[] = read('tests/bad-records')

/** The workshop with one file replaced or added. */
export const withFile = (path: string, text: string): SourceFile[] => [
  ...base.filter(file => file.path !== path),
  { path, text }
]

/** The text of one of its records, each `[found, put]` replaced; `found` stands in it once. */
export function edited(path: string, ...replacements: (readonly [string, string])[]): string {
  const file = base.find(one => one.path === path)
  if (!file) throw new Error(`no record ${path}`)
  return replacements.reduce((text, [found, put]) => {
    if (text.split(found).length !== 2) throw new Error(`${path}: '${found}' is not there once`)
    return text.replace(found, () => put)
  }, file.text)
}
