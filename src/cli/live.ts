/** What open pages are told while `lotfolio start` runs: problems at once, new pages when they are built. */

import { randomUUID } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import type { ServerResponse } from 'node:http'
import { join } from 'node:path'
import { inspect } from 'node:util'
import { formatProblem, isError, type Problem } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { projectFolder } from '../site/project.ts'
import { liveScript } from '../site/scripts.ts'
import { problemsReader } from './looked-through.ts'
import { FORMS } from './record-files.ts'
import { recordForms } from './record-forms.ts'
import { count } from './report.ts'
import { headers, type LivePart } from './server.ts'

export interface Live extends LivePart {
  /** Look through the records and tell open pages what is wrong. */
  readonly check: () => void
  /** A build has ended. */
  readonly built: (succeeded: boolean) => void
}

interface State {
  /** Which build is shown: the run of the server, and how many builds succeeded in it. */
  readonly build: string
  /** Whether the last build failed. */
  readonly failed: boolean
  readonly found: Found
}

/** What is wrong with the records. */
interface Found {
  readonly isBroken: boolean
  readonly standing: string
  readonly problems: readonly string[]
}

/** The part of the server that open pages listen to. */
export async function livePart(content: string, asOf: string | undefined): Promise<Live> {
  const files = await liveFiles()
  const run = randomUUID()
  const listeners = new Set<ServerResponse>()
  let builds = 0
  let state: State = { build: `${run} 0`, failed: false, found: NOTHING }
  const tell = (change: Partial<State>) => {
    state = { ...state, ...change }
    for (const listener of listeners) listener.write(eventText(state))
  }
  const listen = (response: ServerResponse) => {
    response.writeHead(200, { ...headers, 'Content-Type': 'text/event-stream; charset=utf-8' })
    response.write(eventText(state))
    listeners.add(response)
    response.on('close', () => listeners.delete(response))
  }
  const problemsNow = problemsReader(content, asOf)
  const forms = recordForms(content, problemsNow)
  const check = inTurn(async () => tell({ found: await lookThrough(problemsNow) }))
  return {
    answers: (path, response) => {
      const file = files[path]
      if (path === '/-/events') listen(response)
      else if (file) response.writeHead(200, { ...headers, 'Content-Type': file[0] }).end(file[1])
      else return false
      return true
    },
    form: forms.answer,
    intoPage: async (html, path) =>
      intoPage(html, state.build, await forms.addressFor(path.split(/[?#]/u, 1)[0] ?? '/')),
    emptyPage: EMPTY,
    check: () => {
      forms.forget()
      tell({ failed: false })
      check()
    },
    built: succeeded =>
      tell(succeeded ? { failed: false, build: `${run} ${++builds}` } : { failed: true })
  }
}

/** What the server has beside the site, each with its media type. */
async function liveFiles(): Promise<Readonly<Record<string, readonly [string, string]>>> {
  const style = async (...steps: readonly string[]) =>
    ['text/css; charset=utf-8', await readFile(join(projectFolder, ...steps), 'utf8')] as const
  return {
    '/-/live.js': ['text/javascript; charset=utf-8', await liveScript()],
    '/-/live.css': await style('src', 'browser', 'live.css'),
    // Forms are there before any site is, and look like it.
    '/-/site.css': await style('templates', 'assets', 'lotfolio.css'),
    '/-/forms.css': await style('src', 'forms', 'forms.css')
  }
}

function eventText({ build, failed, found }: State): string {
  const seen = failed && !found.isBroken ? { ...found, isBroken: true, standing: FAILED } : found
  return `event: state\ndata: ${JSON.stringify({ build, ...seen })}\n\n`
}

/** Asked for while one is running, another follows it. */
function inTurn(work: () => Promise<void>): () => void {
  let [isRunning, isAsked] = [false, false]
  const run = async () => {
    isRunning = true
    while (isAsked) {
      isAsked = false
      await work()
    }
    isRunning = false
  }
  return () => {
    isAsked = true
    if (!isRunning) void run()
  }
}

/** What is wrong, in the words of the terminal; a fault of ours as well, for pages must not go with it. */
async function lookThrough(problemsNow: () => Promise<readonly Problem[]>): Promise<Found> {
  try {
    return foundIn(await problemsNow())
  } catch (error) {
    const problems = [error instanceof Failure ? error.message : inspect(error)]
    return { isBroken: true, standing: UNREADABLE, problems }
  }
}

function foundIn(all: readonly Problem[]): Found {
  const errors = all.filter(isError)
  const warnings = all.filter(problem => !isError(problem))
  const isBroken = errors.length > 0
  const problems = [...errors, ...warnings].map(formatProblem)
  if (problems.length === 0) return NOTHING
  const standing = isBroken
    ? `${count(errors.length, 'error')} in the records: pages stay as they last were good`
    : `${count(warnings.length, 'warning')} in the records`
  return { isBroken, standing, problems }
}

const NOTHING: Found = { isBroken: false, standing: '', problems: [] }
const FAILED = 'The last build failed: pages stay as they last were good; the terminal says why'
const UNREADABLE = 'The records cannot be looked through: pages stay as they last were good'

/** A page with the script in it, which its own rules would not let in, and the way to the records. */
const intoPage = (html: string, build: string, form: string | undefined): string =>
  html
    .replace(
      /(http-equiv="Content-Security-Policy" content=")([^"]*)"/u,
      (_, start: string, rules: string) => `${start}${liveRules(rules)}"`
    )
    .replace('</head>', '<link rel="stylesheet" href="/-/live.css"></head>')
    .replace(/<main\b[^>]*>/u, main => main + wayToRecords(form))
    .replace(
      /<\/body>(?![\s\S]*<\/body>)/u,
      `<script src="/-/live.js" data-build="${build}"></script></body>`
    )

const wayToRecords = (form: string | undefined): string =>
  `<p class="to-records">${form === undefined ? '' : `<a href="${form}">Fill in this record</a> `}<a href="${FORMS}">All records</a></p>`

/** Scripts of this server and word from it, beside what the page allows already. */
function liveRules(rules: string): string {
  const given = rules.split(';').map(rule => rule.trim())
  const widened = given.map(rule =>
    /^(?:script-src|style-src|connect-src) (?!.*'self')/u.test(rule) ? `${rule} 'self'` : rule
  )
  const missing = ['script-src', 'style-src', 'connect-src'].filter(
    name => !given.some(rule => rule.startsWith(`${name} `))
  )
  return [...widened, ...missing.map(name => `${name} 'self'`)].join('; ')
}

const EMPTY = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'">
<title>No page yet</title>
</head>
<body>
<main class="no-page"><h1>No page yet</h1><p>The terminal shows why, and so does this page. The pages follow by themselves once it is mended.</p></main>
</body>
</html>
`
