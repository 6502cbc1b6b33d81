/** A folder served by http as it lies, on a port of its own. */

import { readFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'

const types: Readonly<Record<string, string>> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  svg: 'image/svg+xml',
  png: 'image/png'
}

/**
 * Serve a folder.
 *
 * @param under where it stands on its server: '' or '/papers'
 */
export async function serve(folder: string, under = ''): Promise<Server> {
  const server = createServer((request, response) => {
    const asked = decodeURI(request.url!.replace(/[?#].*$/u, '')).replace(/\/$/u, '/index.html')
    const read = (path: string) => {
      response.setHeader(
        'content-type',
        types[path.split('.').at(-1)!] ?? 'application/octet-stream'
      )
      return readFileSync(join(folder, path))
    }
    try {
      if (!asked.startsWith(`${under}/`)) throw new Error('not below it')
      response.end(read(asked.slice(under.length)))
    } catch {
      response.writeHead(404, { 'content-type': 'text/html' })
      response.end(readFileSync(join(folder, '404.html')))
    }
  })
  await new Promise<void>(resolve => void server.listen(0, '127.0.0.1', resolve))
  return server
}

/** Where it answers, with a slash at the end. */
export const addressOf = (server: Server, under = ''): string =>
  `http://127.0.0.1:${(server.address() as AddressInfo).port}${under}/`
