/** lotfolio start: the workshop edition on this machine, built anew whenever a record changes. */

import { once } from 'node:events'
import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Command, InvalidArgumentError, Option } from 'commander'
import { Failure } from '../site/failure.ts'
import { readMarker } from '../site/marker.ts'
import { templatesFolder } from '../site/project.ts'
import { readContent } from '../site/read-content.ts'
import { folderFrom } from './folders.ts'
import { livePart } from './live.ts'
import { asOfOption, contentOption, paperOption } from './options.ts'
import { rebuilder } from './rebuild.ts'
import { siteServer } from './server.ts'
import { refuseStray } from './usage.ts'
import { watchFolders } from './watch.ts'

interface StartOptions {
  readonly content?: string
  readonly out?: string
  readonly port?: number
  readonly asOf?: string
  readonly paper?: 'A4' | 'Letter'
}

/** First port tried when none is asked for, and how many after it. */
const FIRST_PORT = 4170
const PORTS_TRIED = 20

const examples = `
Examples:
  lotfolio start
  lotfolio start --content ../records --port 5000

Only this machine can reach the pages. An error in the records is reported here and within the pages,
and leaves the last good ones standing, or none where there were none yet; saving a file builds again,
and open pages follow. Ctrl-C ends it.`

export const startCommand = (): Command =>
  new Command('start')
    .description('show the workshop edition in the browser and keep it up to date')
    .addOption(contentOption())
    .option('--out <DIR>', 'folder of the site (default: private)')
    .addOption(
      new Option(
        '--port <NUMBER>',
        `port to listen on (default: ${FIRST_PORT}, or the next free one)`
      ).argParser(portNumber)
    )
    .addOption(asOfOption())
    .addOption(paperOption())
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(start)

async function start(options: StartOptions, command: Command): Promise<void> {
  refuseStray(command, process.env)
  const content = folderFrom(options.content, 'content')
  const out = folderFrom(options.out, 'private')
  // Its faults, before anything is opened.
  await readContent(content)
  const live = await livePart(content, options.asOf)
  const server = siteServer(out, live)
  const builds = rebuilder(buildArguments(options, content, out), live.built)
  const watch = watchFolders([content, templatesFolder], () => {
    live.check()
    builds.request()
  })
  try {
    const port = await listen(server, options.port)
    live.check()
    builds.request()
    const built = await builds.settled()
    const isSite = (await readMarker(out)) !== undefined
    process.stdout.write(greeting(`http://localhost:${port}/`, built, isSite))
    await Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')])
  } finally {
    watch.close()
    builds.stop()
    server.close()
    server.closeAllConnections()
  }
}

/** Where the pages are, and which: the newest, the last good ones, or none yet. */
function greeting(address: string, built: boolean, isSite: boolean): string {
  if (built) return `Workshop edition at ${address} (Ctrl-C to end)\n`
  const shown = isSite ? `${address} shows the last good pages` : `${address} has no page yet`
  return `The build failed: ${shown}; it is built anew when a file is saved (Ctrl-C to end)\n`
}

function buildArguments({ asOf, paper }: StartOptions, content: string, out: string): string[] {
  return [
    ...['--edition', 'workshop', '--content', content, '--out', out],
    ...(asOf === undefined ? [] : ['--as-of', asOf]),
    ...(paper === undefined ? [] : ['--paper', paper])
  ]
}

/** Listen on this machine only; without a wish for a port, on the first free one. */
async function listen(server: Server, wish: number | undefined): Promise<number> {
  const first = wish ?? FIRST_PORT
  const last = wish ?? FIRST_PORT + PORTS_TRIED
  for (let port = first; port <= last; port++) {
    try {
      server.listen(port, '127.0.0.1')
      await once(server, 'listening')
      return (server.address() as AddressInfo).port
    } catch (error) {
      refuseUnlessTaken(error, port)
    }
  }
  const ports = first === last ? `port ${first} is` : `ports ${first} to ${last} are`
  throw new Failure(`${ports} taken; name another with --port`)
}

function refuseUnlessTaken(error: unknown, port: number): void {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'EACCES') throw new Failure(`port ${port}: permission denied; use one above 1023`)
  if (code !== 'EADDRINUSE') throw error
}

function portNumber(text: string): number {
  const port = Number(text)
  if (/^\d{1,5}$/u.test(text) && port <= 65535) return port
  throw new InvalidArgumentError('Write a whole number up to 65535; 0 takes any free port.')
}
