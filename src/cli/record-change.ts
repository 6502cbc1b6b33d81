/** Records about to be written: checked with all others, shown as a difference, confirmed. */

import { readFile } from 'node:fs/promises'
import { createInterface } from 'node:readline/promises'
import { resolve } from 'node:path'
import { createTwoFilesPatch } from 'diff'
import { openRegister } from '../documents/issued.ts'
import { compareText, fieldText, isError, type Problem, type SourceFile } from '../problem.ts'
import { Failure, isMissing } from '../site/failure.ts'
import { readRegister } from '../site/read-register.ts'
import { userFolder } from './folders.ts'
import { problemsText } from './report.ts'
import { writeWhole } from './write.ts'

/** Records that are new or say something else, beside all there are. */
export interface RecordChange {
  readonly folder: string
  readonly before: readonly SourceFile[]
  readonly written: readonly SourceFile[]
}

/** What writing would make wrong that is not wrong now. */
export async function newProblems({ folder, before, written }: RecordChange): Promise<Problem[]> {
  const { judgeContent } = await import('../pipeline.ts')
  const register = await openRegister(await readRegister(folder, userFolder(process.env)))
  const paths = new Set(written.map(({ path }) => path))
  const after = [...before.filter(({ path }) => !paths.has(path)), ...written]
  const known = new Set(judgeContent(before, undefined, register).problems.map(nameOf))
  const sorted = after.sort((a, b) => compareText(a.path, b.path))
  return judgeContent(sorted, undefined, register).problems.filter(
    problem => !known.has(nameOf(problem))
  )
}

const nameOf = ({ file, code, field, message }: Problem) =>
  [file.path, code, fieldText(field), message].join('\n')

/** Refuse what is wrong: every problem is shown, nothing is written, and the exit code says so. */
export function refuseProblems(problems: readonly Problem[]): boolean {
  process.stderr.write(problemsText(problems))
  if (!problems.some(isError)) return false
  process.stdout.write('Nothing written\n')
  process.exitCode = 1
  return true
}

/** What writing changes, line by line. */
export function differenceText({ before, written }: RecordChange): string {
  return written
    .map(file => {
      const old = before.find(({ path }) => path === file.path)?.text ?? ''
      const name = old === '' ? '(new)' : file.path
      return createTwoFilesPatch(name, file.path, old, file.text, undefined, undefined, {
        context: 2,
        stripTrailingCr: true
      }).replace(/^Index: .*\n=+\n/u, '')
    })
    .join('')
}

/** Whether to write: said by option, or by whoever sits at the terminal. */
export async function isWanted(write: boolean): Promise<boolean> {
  if (write) return true
  if (!process.stdin.isTTY) {
    process.stdout.write('Nothing written: add --write if this is right\n')
    return false
  }
  const terminal = createInterface({ input: process.stdin, output: process.stdout })
  try {
    const answer = await terminal.question('Write this? (yes or no) ')
    const isYes = /^y(?:es)?$/iu.test(answer.trim())
    if (!isYes) process.stdout.write('Nothing written\n')
    return isYes
  } catch (error) {
    if (!(error instanceof Error && error.name === 'AbortError')) throw error
    process.stdout.write('\nNothing written\n')
    return false
  } finally {
    terminal.close()
  }
}

/**
 * Write the records, each whole or not at all.
 *
 * @throws Failure where one was changed since it was read
 */
export async function writeRecords({ before, written }: RecordChange): Promise<void> {
  const files = written.map(file => ({ ...file, to: resolve(userFolder(process.env), file.path) }))
  for (const { path, to } of files) {
    const was = before.find(one => one.path === path)?.text
    if ((await textAt(to)) !== was)
      throw new Failure(`${path}: was changed in the meantime; run the command again`)
  }
  for (const { to, text } of files) await writeWhole(to, text)
}

async function textAt(path: string): Promise<string | undefined> {
  try {
    return (await readFile(path, 'utf8')).replace(/^\uFEFF/u, '')
  } catch (error) {
    if (isMissing(error)) return undefined
    throw error
  }
}
