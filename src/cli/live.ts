/** What open pages are told while `lotfolio start` runs: problems at once, new pages when they are built. */

import { readFile } from 'node:fs/promises'
import type { ServerResponse } from 'node:http'
import { join } from 'node:path'
import { openRegister } from '../documents/issued.ts'
import { formatProblem, isError, type Problem } from '../problem.ts'
import { Failure } from '../site/failure.ts'
import { projectFolder } from '../site/project.ts'
import { readContent } from '../site/read-content.ts'
import { readRegister } from '../site/read-register.ts'
import { liveScript } from '../site/scripts.ts'
import { userFolder } from './folders.ts'
import { count } from './report.ts'
import { headers, type LivePart } from './server.ts'

export interface Live extends LivePart {
  /** Look through the records and tell open pages what is wrong. */
  readonly check: () => void
  /** A build has ended. */
  readonly built: (succeeded: boolean) => void
}

interface State {
  readonly build: number
  readonly standing: string
  readonly problems: readonly string[]
}

/** The part of the server that open pages listen to. */
export async function livePart(content: string, asOf: string | undefined): Promise<Live> {
  const files: Readonly<Record<string, readonly [string, string]>> = {
    '/-/live.js': ['text/javascript; charset=utf-8', await liveScript()],
    '/-/live.css': [
      'text/css; charset=utf-8',
      await readFile(join(projectFolder, 'src', 'browser', 'live.css'), 'utf8')
    ]
  }
  const listeners = new Set<ServerResponse>()
  let state: State = { build: 0, standing: '', problems: [] }
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
  return {
    answers: (path, response) => {
      const file = files[path]
      if (path === '/-/events') listen(response)
      else if (file) response.writeHead(200, { ...headers, 'Content-Type': file[0] }).end(file[1])
      else return false
      return true
    },
    intoPage,
    emptyPage: intoPage(EMPTY),
    check: inTurn(async () => tell(await problemsOf(content, asOf))),
    built: succeeded => {
      if (succeeded) tell({ build: state.build + 1 })
    }
  }
}

const eventText = (state: State) => `event: state\ndata: ${JSON.stringify(state)}\n\n`

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

/** What is wrong, in the words of the terminal. */
async function problemsOf(content: string, asOf: string | undefined): Promise<Partial<State>> {
  try {
    const { judgeContent } = await import('../pipeline.ts')
    const base = userFolder(process.env)
    const files = await readContent(content, base)
    const register = await openRegister(await readRegister(content, base))
    const { problems } = judgeContent(files, asOf, register)
    const errors = problems.filter(isError)
    const warnings = problems.filter(problem => !isError(problem))
    return {
      standing: standingText(errors, warnings),
      problems: [...errors, ...warnings].map(formatProblem)
    }
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    return {
      standing: 'The records cannot be read; pages stay as they were',
      problems: [error.message]
    }
  }
}

function standingText(errors: readonly Problem[], warnings: readonly Problem[]): string {
  if (errors.length > 0)
    return `The records have ${count(errors.length, 'error')}; pages stay as they last were good`
  return warnings.length > 0 ? `The records have ${count(warnings.length, 'warning')}` : ''
}

/** A page with the script in it, which its own rules would not let in. */
const intoPage = (html: string): string =>
  html
    .replace(
      /(http-equiv="Content-Security-Policy" content=")([^"]*)"/u,
      (_, start: string, rules: string) => `${start}${liveRules(rules)}"`
    )
    .replace('</head>', '<link rel="stylesheet" href="/-/live.css"></head>')
    .replace(/<\/body>(?![\s\S]*<\/body>)/u, '<script src="/-/live.js"></script></body>')

/** Scripts of this server and word from it, beside what the page allows already. */
function liveRules(rules: string): string {
  const given = rules.split(';').map(rule => rule.trim())
  const widened = given.map(rule =>
    /^(?:script-src|connect-src) (?!.*'self')/u.test(rule) ? `${rule} 'self'` : rule
  )
  const missing = ['script-src', 'connect-src'].filter(
    name => !given.some(rule => rule.startsWith(`${name} `))
  )
  return [...widened, ...missing.map(name => `${name} 'self'`)].join('; ')
}

const EMPTY = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'">
<title>No page yet</title>
</head>
<body>
<main><h1>No page yet</h1><p>The terminal, and this page, show why. It follows by itself.</p></main>
</body>
</html>
`
