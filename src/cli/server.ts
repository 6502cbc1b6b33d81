/** Shows a site's folder to browsers on this machine. */

import { existsSync } from 'node:fs'
import { readFile, realpath } from 'node:fs/promises'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import { extname, join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { isWithin } from '../site/output-folder.ts'

const mediaTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.woff2': 'font/woff2'
}

/** The workshop edition is private: no other site may read or frame it, and no copy is kept. */
export const headers = {
  'Cache-Control': 'no-store',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY'
}

/** What is sent back. */
export interface Answer {
  readonly status: number
  readonly type: string
  readonly body: Buffer | string
  readonly location?: string
}

/** What goes into pages beside what the folder holds. */
export interface LivePart {
  /** Answer an address of its own; false where it has none such. */
  readonly answers: (path: string, response: ServerResponse) => boolean
  /** Answer a form's address, to read or to write; undefined where it is none. */
  readonly form: (request: IncomingMessage) => Promise<Answer | undefined>
  /** @param path of the page's address */
  readonly intoPage: (html: string, path: string) => Promise<string>
  /** Instead of a page, where there is none yet. */
  readonly emptyPage: string
}

/** A server for the files of a folder, which may be swapped while it runs. */
export function siteServer(folder: string, live?: LivePart): Server {
  return createServer((request, response) => {
    if (isLocalRead(request) && live?.answers(request.url ?? '/', response)) return
    answerWith(request, folder, live).then(
      ready => send(request, response, ready),
      () => send(request, response, plain(500, 'the page could not be read'))
    )
  })
}

async function answerWith(
  request: IncomingMessage,
  folder: string,
  live: LivePart | undefined
): Promise<Answer> {
  const form = isLocalName(request.headers.host) ? await live?.form(request) : undefined
  if (form) return form
  const ready = await answer(request, folder)
  return live ? withLive(ready, live, request.url ?? '/') : ready
}

/** A read by a page of this very server, or by nobody's page. */
const isLocalRead = ({ headers: { host, origin }, method }: IncomingMessage) =>
  method === 'GET' && isLocalName(host) && (origin === undefined || origin === `http://${host}`)

async function withLive(
  ready: Answer,
  { intoPage, emptyPage }: LivePart,
  path: string
): Promise<Answer> {
  const type = mediaTypes['.html']!
  if (ready.status === 503) return { ...ready, type, body: await intoPage(emptyPage, path) }
  return ready.type === type
    ? { ...ready, body: await intoPage(ready.body.toString(), path) }
    : ready
}

async function answer(request: IncomingMessage, folder: string): Promise<Answer> {
  if (!isLocalName(request.headers.host)) return plain(403, 'only for this machine')
  if (request.method !== 'GET' && request.method !== 'HEAD') return plain(405, 'only to read')
  const steps = pathSteps(request.url ?? '/')
  if (!steps) return plain(400, 'no such address')
  await untilPresent(folder)
  const found = await pageAt(folder, steps)
  return found ?? (await notFound(folder))
}

/** Whether a Host header names this machine: a foreign name may be a foreign page's trick. */
const isLocalName = (host: string | undefined): boolean =>
  /^(?:localhost|127\.0\.0\.1)(?::\d+)?$/iu.test(host ?? '')

/** The steps of an address's path, or undefined where one of them is no plain name. */
export function pathSteps(url: string): string[] | undefined {
  try {
    const steps = decodeURIComponent(url.split(/[?#]/u, 1)[0] ?? '')
      .split('/')
      .slice(1)
    const odd = steps.some(step => step === '..' || step === '.' || /[\\:\p{Cc}]/u.test(step))
    return odd || !url.startsWith('/') ? undefined : steps
  } catch {
    return undefined
  }
}

/** Between the two renames of a swap the folder is away for an instant. */
async function untilPresent(folder: string): Promise<void> {
  for (let tries = 0; tries < 20 && !existsSync(folder); tries++) await pause(10)
}

async function pageAt(folder: string, steps: readonly string[]): Promise<Answer | undefined> {
  const asFolder = steps.at(-1) === ''
  const path = join(folder, ...steps, ...(asFolder ? ['index.html'] : []))
  try {
    if (!isWithin(await realpath(path), await realpath(folder))) return undefined
    const type = mediaTypes[extname(path).toLowerCase()] ?? 'application/octet-stream'
    return { status: 200, type, body: await readFile(path) }
  } catch {
    const page = join(folder, ...steps, 'index.html')
    return !asFolder && existsSync(page) ? redirect(steps) : undefined
  }
}

/** To the address with a closing slash, on which relative links rest; never to another host. */
function redirect(steps: readonly string[]): Answer {
  const named = steps.filter(step => step !== '').map(encodeURIComponent)
  return { ...plain(308, 'moved'), location: `/${named.join('/')}/` }
}

async function notFound(folder: string): Promise<Answer> {
  if (!existsSync(folder)) return plain(503, 'no page yet: the terminal shows why')
  const page = await readFile(join(folder, '404.html')).catch(() => undefined)
  return page
    ? { status: 404, type: 'text/html; charset=utf-8', body: page }
    : plain(404, 'no such page')
}

const plain = (status: number, body: string): Answer => ({
  status,
  type: 'text/plain; charset=utf-8',
  body: `${body}\n`
})

function send(request: IncomingMessage, response: ServerResponse, ready: Answer): void {
  const { status, type, body, location } = ready
  response.writeHead(status, {
    ...headers,
    'Content-Type': type,
    'Content-Length': Buffer.byteLength(body),
    ...(location !== undefined && { Location: location })
  })
  response.end(request.method === 'HEAD' ? undefined : body)
}
