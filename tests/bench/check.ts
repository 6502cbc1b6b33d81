/** Checking records against parsing the same files as YAML and doing nothing with them. */

import { parseDocument } from 'yaml'
import { openRegister } from '../../src/documents/issued.ts'
import { evaluateContent } from '../../src/evaluate/evaluate.ts'
import { judgeContent } from '../../src/pipeline.ts'
import { isError, formatProblem } from '../../src/problem.ts'
import { loadContent } from '../../src/records/content.ts'
import { generateWorkshop } from './generate.ts'
import { allIssued } from './issued.ts'
import { reportRatio, timeSides } from './measure.ts'

export async function benchCheck(lots: number): Promise<string> {
  const files = generateWorkshop(lots)
  const { problems } = judgeContent(files)
  const first = problems.find(isError)
  if (first) throw new Error(`the generated workshop has an error:\n${formatProblem(first)}`)
  const register = await allIssued(files)
  const timings = await timeSides([
    { name: 'check: parse, validate, evaluate, judge', run: () => judgeContent(files) },
    {
      name: 'the same, every certificate in the register',
      run: async () => judgeContent(files, undefined, await openRegister(register))
    },
    { name: 'of it: parse and validate', run: () => loadContent(files) },
    {
      name: 'of it: parse, validate, evaluate',
      run: () => {
        const content = loadContent(files)
        if (content.ok) evaluateContent(content.value)
      }
    },
    {
      name: 'bare parse of the same files',
      run: () => files.map(({ text }) => parseDocument(text, { schema: 'failsafe' }))
    }
  ])
  return reportRatio(`Check, ${lots} lots, ${files.length} files`, timings, 1.8)
}
