/** What is wrong with the records while pages of theirs are open. */

import { createHash } from 'node:crypto'
import { serialize } from 'node:v8'
import { openRegister, type RegisterFiles } from '../documents/issued.ts'
import type { Pictures } from '../documents/picture-types.ts'
import type { Problem, SourceFile } from '../problem.ts'
import { readContent } from '../site/read-content.ts'
import { readPictures } from '../site/read-pictures.ts'
import { readRegister } from '../site/read-register.ts'
import { userFolder } from './folders.ts'

type Problems = readonly Problem[]

/**
 * Look through records again and again: pages, and each form, ask for it. While no file changes, what was
 * found holds, as everything follows from the files.
 */
export function problemsReader(content: string, asOf: string | undefined): () => Promise<Problems> {
  let last: { readonly key: string; readonly problems: Promise<Problems> } | undefined
  return async () => {
    const base = userFolder(process.env)
    const files = await readContent(content, base)
    const register = await readRegister(content, base)
    const pictures = await readPictures(content)
    const key = createHash('sha256')
      .update(serialize([files, register, pictures]))
      .digest('hex')
    if (last?.key !== key) last = { key, problems: problemsIn({ files, register, pictures }, asOf) }
    return last.problems
  }
}

interface Read {
  readonly files: readonly SourceFile[]
  readonly register: RegisterFiles
  readonly pictures: Pictures
}

async function problemsIn(
  { files, register, pictures }: Read,
  asOf: string | undefined
): Promise<Problems> {
  const { judgeContent, withSignals } = await import('../pipeline.ts')
  const opened = await openRegister(register)
  return withSignals(judgeContent(files, asOf, opened), opened, pictures)
}
