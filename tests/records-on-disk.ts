/** Records for tests: the demo workshop, and a small one to spoil. */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { EvaluatedContent } from '../src/evaluate/types.ts'
import { type Judgement, judgeContent, withSignals } from '../src/pipeline.ts'
import type { SourceFile } from '../src/problem.ts'
import { root } from './root.ts'

/** Records below a folder, with paths as a command sees them. */
export const readRecords = (folder: string): SourceFile[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.yaml'))
    .map(name => ({
      path: `content/${name.replaceAll('\\', '/')}`,
      text: readFileSync(join(folder, name), 'utf8')
    }))
    .sort((a, b) => (a.path < b.path ? -1 : 1))

export const demoFiles = readRecords(join(root, 'content'))

/** One lot of each kind, and what they need. */
export const smallFiles = readRecords(join(root, 'tests/fixtures/base'))

/** The same records with a text replaced in one file, where it must stand. */
export function withChange(
  files: readonly SourceFile[],
  path: string,
  from: string,
  to: string
): SourceFile[] {
  const found = files.find(file => file.path === `content/${path}`)
  if (!found?.text.includes(from)) throw new Error(`${path} does not hold ${from}`)
  return files.map(file =>
    file === found ? { path: file.path, text: file.text.replace(from, () => to) } : file
  )
}

/** The same records with one more. */
export const withFile = (
  files: readonly SourceFile[],
  path: string,
  text: string
): SourceFile[] => [...files, { path: `content/${path}`, text }]

/** The demo and the small workshop are judged again and again: each set of records once a day asked for. */
const judgements = new WeakMap<readonly SourceFile[], Map<string | undefined, Judgement>>()

/** `judgeContent`, kept as long as the very array is. */
export function judged(files: readonly SourceFile[], asOf?: string): Judgement {
  const ofFiles = judgements.get(files) ?? new Map<string | undefined, Judgement>()
  judgements.set(files, ofFiles)
  const kept = ofFiles.get(asOf) ?? judgeContent(files, asOf)
  ofFiles.set(asOf, kept)
  return kept
}

/** What the records evaluate to, whatever is wrong with them beside. */
export function evaluate(files: readonly SourceFile[]): EvaluatedContent {
  const { evaluated, problems } = judged(files)
  if (!evaluated) throw new Error(problems.map(({ message }) => message).join('\n'))
  return evaluated
}

/** Problems as 'CODE field: message', in file order. */
export const problemsOf = (files: readonly SourceFile[], asOf?: string): string[] =>
  linesOf(judged(files, asOf))

/** The same with what only all records together say: of the process, and of the stock. */
export const wholeProblemsOf = (files: readonly SourceFile[]): string[] => {
  const judgement = judged(files)
  return linesOf({ ...judgement, problems: withSignals(judgement) })
}

const linesOf = ({ problems }: Judgement): string[] =>
  problems.map(({ code, field, message }) => `${code} ${field.join('.')}: ${message}`)
