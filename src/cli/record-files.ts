/** The records a form may read and write: files of the content folder, and no others. */

import { lstat, realpath } from 'node:fs/promises'
import { join, relative, resolve, sep } from 'node:path'
import { recordName } from '../forms/references.ts'
import type { SourceFile } from '../problem.ts'
import { type Kind, kindOf } from '../records/kinds.ts'
import { readContent } from '../site/read-content.ts'
import { userFolder } from './folders.ts'

export interface RecordFile {
  readonly kind: Kind
  readonly file: SourceFile
  /** Where it is written to. */
  readonly to: string
  /** Address of its form. */
  readonly address: string
  readonly name: string
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
    const address = FORMS + steps.map(encodeURIComponent).join('/')
    const name = recordName(file) ?? (kind === 'producer' ? 'Producer' : steps.at(-1)!)
    return [{ kind, file, to, address, name }]
  })
}

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
  const [, folder = '', page = ''] = path.split('/')
  const name = decodeURIComponent(page).toLowerCase()
  const kinds = kindsOfPages[folder] ?? []
  const named = files.filter(file => {
    const kind = kindOf(file)
    return kind !== undefined && kinds.includes(kind) && namesItself(file, name)
  })
  return recordFiles(content, named).at(-1)
}

/** Whether a record gives itself this name, by the line it would stand on. */
const namesItself = ({ text }: SourceFile, name: string) =>
  name !== '' &&
  [...text.matchAll(/^(?:lot|id|number):[ \t]*['"]?([^'"#\s]+)/gmu)].some(
    ([, own]) => own!.toLowerCase() === name
  )
