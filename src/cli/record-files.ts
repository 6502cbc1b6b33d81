/** The records a form may read and write: files of the content folder, and no others. */

import { lstat, realpath } from 'node:fs/promises'
import { basename, join, relative, resolve, sep } from 'node:path'
import { recordName } from '../forms/references.ts'
import type { SourceFile } from '../problem.ts'
import { type Kind, kindOf } from '../records/kinds.ts'
import { readContent } from '../site/read-content.ts'
import { userFolder } from './folders.ts'
import { pathSteps } from './server.ts'

export interface RecordFile {
  readonly kind: Kind
  readonly file: SourceFile
  /** Where it is written to. */
  readonly to: string
  /** Address of its form. */
  readonly address: string
}

/** Where forms are served. */
export const FORMS = '/-/records/'

/** All files of the content folder. */
export const contentFiles = (content: string): Promise<SourceFile[]> =>
  readContent(content, userFolder(process.env))

/** The records among them; what is issued is none. */
export function recordFiles(content: string, files: readonly SourceFile[]): RecordFile[] {
  return files.flatMap(file => {
    const to = resolve(userFolder(process.env), file.path)
    const steps = relative(content, to).split(sep)
    const kind = kindOf(file)
    if (!kind || steps.includes('register')) return []
    return [{ kind, file, to, address: FORMS + steps.map(encodeURIComponent).join('/') }]
  })
}

/** What a record is called: by its number, or else by its file. */
export const nameOf = ({ kind, file }: RecordFile): string =>
  recordName(file) ?? (kind === 'producer' ? 'Producer' : basename(file.path))

/** Whether a file lies in the content folder itself, not behind a link that leads elsewhere. */
export async function isPlainFile(content: string, { to }: RecordFile): Promise<boolean> {
  const own = join(await realpath(content), relative(content, to))
  return (await lstat(to)).isFile() && (await realpath(to)) === own
}

/** Kinds of record by the first step of a page's address. */
const kindsOfPages: Readonly<Record<string, readonly Kind[]>> = {
  lots: ['batches', 'expansions', 'foils'],
  grades: ['grades'],
  certificates: ['certificates']
}

/** The record a page of the site is about: the latest of its name. */
export function recordOfPage(path: string, content: string, files: readonly SourceFile[]) {
  const [folder = '', page = ''] = pathSteps(path) ?? []
  const name = page.toLowerCase()
  const kinds = kindsOfPages[folder] ?? []
  const named = files.filter(file => {
    const kind = kindOf(file)
    return kind !== undefined && kinds.includes(kind) && recordName(file)?.toLowerCase() === name
  })
  return recordFiles(content, named).at(-1)
}
