/**
 * Checking records against parsing the same files as YAML and doing nothing with them: by the yaml
 * package as Node gives it to anyone, and not in the build that the bundle holds.
 */

import { createRequire } from 'node:module'
import * as bundledYaml from 'yaml'
import { openRegister } from '../../src/documents/issued.ts'
import { evaluateContent } from '../../src/evaluate/evaluate.ts'
import { judgeContent, withSignals } from '../../src/pipeline.ts'
import { isError, formatProblem, type SourceFile } from '../../src/problem.ts'
import { loadContent } from '../../src/records/content.ts'
import { generateWorkshop, inGermanToo } from './generate.ts'
import { allIssued } from './issued.ts'
import { reportRatio, timeSides } from './measure.ts'

const plainYaml = createRequire(import.meta.url)('yaml') as typeof bundledYaml

const parse = ({ parseDocument }: typeof bundledYaml, files: readonly SourceFile[]) =>
  files.map(({ text }) => parseDocument(text, { schema: 'failsafe' }))

export async function benchCheck(lots: number): Promise<string> {
  const files = generateWorkshop(lots)
  const { problems } = judgeContent(files)
  const first = problems.find(isError)
  if (first) throw new Error(`the generated workshop has an error:\n${formatProblem(first)}`)
  const register = await allIssued(files)
  // What was read of a file is kept as long as its object is.
  const unread = () => files.map(file => ({ ...file }))
  const timings = await timeSides([
    { name: 'check: parse, validate, evaluate, judge', run: () => judgeContent(unread()) },
    {
      name: 'the same, every certificate in the register',
      run: async () => judgeContent(unread(), undefined, await openRegister(register))
    },
    {
      name: 'check, and what all records say together',
      run: () => withSignals(judgeContent(unread()))
    },
    {
      name: 'that, pages in German too',
      run: () => withSignals(judgeContent(inGermanToo(unread())))
    },
    { name: 'of it: parse and validate', run: () => loadContent(unread()) },
    {
      name: 'of it: parse, validate, evaluate',
      run: () => {
        const content = loadContent(unread())
        if (content.ok) evaluateContent(content.value)
      }
    },
    { name: 'of it: parse alone, yaml as bundled', run: () => parse(bundledYaml, files) },
    { name: 'bare parse of the same files', run: () => parse(plainYaml, files) }
  ])
  return reportRatio(`Check, ${lots} lots, ${files.length} files`, timings, 1.8)
}
