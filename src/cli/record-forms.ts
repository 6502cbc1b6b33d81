/**
 * Forms of records, served beside the pages while `lotfolio start` runs: a form is read, filled in and
 * sent to this very server, which writes the record in place.
 */

import { createHash, randomUUID, timingSafeEqual } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import type { IncomingMessage } from 'node:http'
import { additionsOf, changesOf, type Submitted, textOf } from '../forms/changes.ts'
import { pointer } from '../forms/names.ts'
import {
  type FormPage,
  formPage,
  messagePage,
  recordsPage,
  unreadablePage,
  type Unwritten
} from '../forms/page.ts'
import { formOf, type GroupPart, valuesOf } from '../forms/parts.ts'
import { kinds, shapeOf } from '../forms/shape.ts'
import { fieldText, formatProblem, type Problem, type SourceFile } from '../problem.ts'
import { parseRecord } from '../records/document.ts'
import { changed, plainData } from '../records/edit.ts'
import { Failure } from '../site/failure.ts'
import {
  contentFiles,
  FORMS,
  isPlainFile,
  nameOf,
  type RecordFile,
  recordFiles,
  recordOfPage
} from './record-files.ts'
import { refusedBody, sentIn } from './sent-form.ts'
import type { Answer } from './server.ts'
import { writeWhole } from './write.ts'

export interface RecordForms {
  /** The answer to an address of a form; undefined where it is none. */
  readonly answer: (request: IncomingMessage) => Promise<Answer | undefined>
  /** Address of the form of the record that a page is about. */
  readonly addressFor: (path: string) => Promise<string | undefined>
  /** Forget the records that pages were looked up in: some were saved. */
  readonly forget: () => void
}

/** What a form was last read from, so that a later change of the file can be told apart. */
const TEXTS_KEPT = 50

interface Desk {
  readonly content: string
  readonly token: string
  readonly problems: () => Promise<readonly Problem[]>
  readonly read: Map<string, string>
}

/**
 * @param content folder of the records, absolute
 * @param problems what is wrong with the records now
 */
export function recordForms(content: string, problems: Desk['problems']): RecordForms {
  const desk: Desk = { content, token: randomUUID(), problems, read: new Map() }
  let last: Promise<unknown> = Promise.resolve()
  let known: Promise<SourceFile[]> | undefined
  // One after the other: two forms read from one text are never both written.
  const inOrder = (work: () => Promise<Answer>): Promise<Answer> => {
    const done = last.then(work, work)
    last = done
    return done
  }
  return {
    answer: async request => {
      const { pathname } = new URL(request.url ?? '/', 'http://localhost')
      const isTaken = /^(?:GET|HEAD|POST)$/u.test(request.method ?? '')
      if (!isTaken || !`${pathname}/`.startsWith(FORMS)) return undefined
      const answer =
        request.method === 'POST' ? inOrder(() => receive(desk, request)) : show(desk, request)
      return answer.catch(toldOnPage)
    },
    addressFor: async path => {
      known ??= contentFiles(content).catch(() => [])
      return recordOfPage(path, content, await known)?.address
    },
    forget: () => (known = undefined)
  }
}

const page = (status: number, body: string): Answer => ({
  status,
  type: 'text/html; charset=utf-8',
  body
})

const NOT_FOUND = page(404, messagePage('No such record', 'There is no record with a form here.'))

async function show(desk: Desk, request: IncomingMessage): Promise<Answer> {
  const { pathname, searchParams } = new URL(request.url ?? '/', 'http://localhost')
  const files = await contentFiles(desk.content)
  if (`${pathname}/` === FORMS || pathname === FORMS) return page(200, list(desk, files))
  const record = await found(desk, files, pathname)
  if (!record) return NOT_FOUND
  const isSaved = searchParams.has('saved')
  return answerForm(desk, files, record, { shown: searchParams.getAll('with'), isSaved })
}

/** What the disk refuses is told on a page. */
const toldOnPage = (error: unknown): Answer => {
  if (!(error instanceof Failure)) throw error
  return page(500, messagePage('This cannot be done', error.message))
}

function list({ content }: Desk, files: readonly SourceFile[]): string {
  const records = recordFiles(content, files)
  const named = records.map(one => ({ ...one, name: nameOf(one) }))
  const groups = kinds.map(kind => [kind, named.filter(one => one.kind === kind)] as const)
  return recordsPage(groups.filter(([, some]) => some.length > 0))
}

async function found(
  { content }: Desk,
  files: readonly SourceFile[],
  pathname: string
): Promise<RecordFile | undefined> {
  const record = recordFiles(content, files).find(({ address }) => address === pathname)
  return record && (await isPlainFile(content, record)) ? record : undefined
}

interface Wish extends Pick<FormPage, 'isSaved'> {
  readonly shown: readonly string[]
  readonly sent?: Submitted
  readonly refused?: FormPage['refused']
  readonly status?: number
}

async function answerForm(
  desk: Desk,
  files: readonly SourceFile[],
  record: RecordFile,
  wish: Wish
): Promise<Answer> {
  const { file, kind } = record
  const name = nameOf(record)
  const parsed = parseRecord(file)
  if (!parsed.ok)
    return page(wish.status ?? 200, unreadablePage(name, file, parsed.problems.map(formatProblem)))
  const form = formOf(shapeOf(kind), plainData(file.text), wish.shown)
  const problems = (await desk.problems()).filter(one => one.file.path === file.path)
  const { address, sent = new Map<string, string>(), isSaved, refused } = { ...record, ...wish }
  return page(
    wish.status ?? 200,
    formPage({
      ...{ kind, name, form, files, problems, sent, isSaved },
      ...(refused && { refused }),
      path: file.path,
      address: address + queryOf(wish.shown),
      token: desk.token,
      read: keep(desk, file.text)
    })
  )
}

/** The fingerprint of a text, which is kept for as long as few have been read since. */
function keep({ read }: Desk, text: string): string {
  const fingerprint = fingerprintOf(text)
  read.delete(fingerprint)
  read.set(fingerprint, text)
  for (const oldest of read.keys()) {
    if (read.size <= TEXTS_KEPT) break
    read.delete(oldest)
  }
  return fingerprint
}

const fingerprintOf = (text: string) => createHash('sha256').update(text).digest('hex')

const queryOf = (shown: readonly string[], ...others: readonly string[]) => {
  const query = [...others, ...shown.map(one => `with=${encodeURIComponent(one)}`)].join('&')
  return query === '' ? '' : `?${query}`
}

async function receive(desk: Desk, request: IncomingMessage): Promise<Answer> {
  const sent = await sentIn(request)
  if (!(sent instanceof Map)) return page(sent.status, refusedBody(sent))
  if (!isSame(sent.get('token') ?? '', desk.token))
    return page(
      403,
      refusedBody({ status: 403, why: 'this form is of an earlier run: load it anew' })
    )
  const { pathname, searchParams } = new URL(request.url ?? '/', 'http://localhost')
  const files = await contentFiles(desk.content)
  const record = await found(desk, files, pathname)
  return record ? write(desk, files, record, sent, searchParams.getAll('with')) : NOT_FOUND
}

const isSame = (a: string, b: string) =>
  a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b))

async function write(
  desk: Desk,
  files: readonly SourceFile[],
  record: RecordFile,
  sent: Submitted,
  shown: readonly string[]
): Promise<Answer> {
  const { file, kind, to, address } = record
  if (fingerprintOf(file.text) !== sent.get('read'))
    return answerForm(desk, files, record, changedSince(desk, record, sent, shown))
  const form = formOf(shapeOf(kind), plainData(file.text), shown)
  const changes = changesOf(form, sent)
  const [text, fault] = rewritten(file.text, changes)
  if (fault !== undefined) {
    const unwritten = changes.map(({ path, value }) => ({
      field: fieldText(path),
      entry: typeof value === 'string' ? value : JSON.stringify(value ?? ''),
      file: ''
    }))
    const because = `These entries cannot be put into the file in place (${fault}): write them in an editor`
    const refused = { because, unwritten }
    return answerForm(desk, files, record, { shown, sent, refused, status: 422, isSaved: false })
  }
  if (text !== file.text) await writeText(to, file.text, text)
  const open = [...new Set([...shown, ...additionsOf(form, sent)])]
  return {
    ...page(303, ''),
    location: `${address}${queryOf(open, 'saved=yes')}${open.length > shown.length ? `#f${open.at(-1)}` : ''}`
  }
}

/** The text with the changes in it, or why they cannot be made. */
function rewritten(
  text: string,
  changes: ReturnType<typeof changesOf>
): readonly [string, string | undefined] {
  try {
    return [changes.length > 0 ? changed(text, changes) : text, undefined]
  } catch (error) {
    if (!(error instanceof Error)) throw error
    return [text, error.message]
  }
}

/** Over the text it was made from, whose byte order mark stays. */
async function writeText(to: string, before: string, text: string): Promise<void> {
  const bytes = await readFile(to, 'utf8')
  if (bytes.replace(/^\uFEFF/u, '') !== before)
    throw new Failure(`${to}: was changed in the meantime; send the form again`)
  await writeWhole(to, (bytes.startsWith('\uFEFF') ? '\uFEFF' : '') + text)
}

/** The file says something else by now: both are shown, and what only the form changed is kept in it. */
function changedSince(
  { read }: Desk,
  { file, kind }: RecordFile,
  sent: Submitted,
  shown: readonly string[]
): Wish {
  const base = read.get(sent.get('read') ?? '')
  const shape = shapeOf(kind)
  const now = valuesByName(formOf(shape, plainData(file.text), shown))
  const then = base === undefined ? now : valuesByName(formOf(shape, plainData(base), shown))
  const kept = new Map<string, string>()
  const unwritten: Unwritten[] = []
  for (const [name, part] of then) {
    const entry = textOf(part, sent)
    const inFile = now.get(name)?.value ?? ''
    if (entry === part.value && base !== undefined) continue
    if (entry !== inFile) unwritten.push({ field: fieldText(part.path), entry, file: inFile })
    if (base !== undefined && inFile === part.value) kept.set(name, entry)
  }
  const because =
    base === undefined
      ? 'The file was changed since the form was read. Below stands what it says now; what your form said otherwise is listed here.'
      : 'The file was changed since the form was read. Below stands what it says now, with your entries in it where the file has not changed; save once more to write them.'
  return { shown, sent: kept, refused: { because, unwritten }, status: 409, isSaved: false }
}

const valuesByName = (form: GroupPart) =>
  new Map(valuesOf(form).map(part => [pointer(part.path), part]))
