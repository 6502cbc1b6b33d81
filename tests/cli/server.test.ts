import { mkdirSync, renameSync, symlinkSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { once } from 'node:events'
import { expect, onTestFinished, test } from 'vitest'
import { siteServer } from '../../src/cli/server.ts'
import { workplace } from '../site/workplace.ts'

interface Reply {
  readonly status: number | undefined
  readonly headers: Readonly<Record<string, unknown>>
  readonly body: string
}

/** A server for a small site, and a way to ask it for any path, however odd. */
async function served() {
  const place = workplace()
  const site = join(place, 'site')
  mkdirSync(join(site, 'lots', 'A 1'), { recursive: true })
  writeFileSync(join(site, 'index.html'), 'home')
  writeFileSync(join(site, '404.html'), 'not here')
  writeFileSync(join(site, 'lots', 'A 1', 'index.html'), 'lot')
  writeFileSync(join(site, 'lots', 'A 1', 'c.pdf'), '%PDF')
  writeFileSync(join(site, 'lots', 'A 1', 'data.json'), '{}')
  writeFileSync(join(place, 'secret.txt'), 'secret')
  symlinkSync(join(place, 'secret.txt'), join(site, 'link.txt'))
  const server = siteServer(site)
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  onTestFinished(() => {
    server.closeAllConnections()
    server.close()
  })
  const { port } = server.address() as AddressInfo
  return {
    site,
    ask: (path: string, method = 'GET', host = `localhost:${port}`) =>
      ask({ port, path, method, headers: { host } })
  }
}

function ask(options: { port: number; path: string; method: string; headers: object }) {
  return new Promise<Reply>((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', ...options, headers: { ...options.headers } },
      got => {
        const parts: Buffer[] = []
        got.on('data', (part: Buffer) => parts.push(part))
        got.on('end', () =>
          resolve({
            status: got.statusCode,
            headers: got.headers,
            body: Buffer.concat(parts).toString()
          })
        )
      }
    )
    sent.on('error', reject)
    sent.end()
  })
}

test('pages and files come with their type, and no copy is kept', async () => {
  const { ask } = await served()
  const rows = [
    ['/', 'text/html; charset=utf-8', 'home'],
    ['/?x=1', 'text/html; charset=utf-8', 'home'],
    ['/lots/A%201/', 'text/html; charset=utf-8', 'lot'],
    ['/lots/A%201/c.pdf', 'application/pdf', '%PDF'],
    ['/lots/A%201/data.json', 'application/json; charset=utf-8', '{}']
  ] as const
  for (const [path, type, body] of rows) {
    const reply = await ask(path)
    expect(reply).toMatchObject({ status: 200, body })
    expect(reply.headers).toMatchObject({
      'content-type': type,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
      'cross-origin-resource-policy': 'same-origin'
    })
  }
})

test('a folder without its slash leads to the one with it', async () => {
  const { ask } = await served()
  expect(await ask('/lots/A%201')).toMatchObject({
    status: 308,
    headers: { location: '/lots/A%201/' }
  })
})

test('nothing outside the site is shown', async () => {
  const { ask } = await served()
  const paths = [
    '/../secret.txt',
    '/lots/../../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/..%5csecret.txt',
    '/lots\\..\\..\\secret.txt',
    '/./secret.txt',
    '/C:/secret.txt',
    '/%00/secret.txt',
    '/%E0%A4%A',
    'http://localhost/secret.txt'
  ]
  for (const path of paths) {
    const { status, body } = await ask(path)
    expect({ path, status }).toEqual({ path, status: 400 })
    expect(body).not.toContain('secret')
  }
  expect(await ask('/link.txt')).toMatchObject({ status: 404, body: 'not here' })
  expect(await ask('//example.org/')).toMatchObject({ status: 404 })
})

test('only this machine’s names are answered', async () => {
  const { ask } = await served()
  for (const host of ['localhost', 'LOCALHOST:1', '127.0.0.1', '127.0.0.1:8080'])
    expect(await ask('/', 'GET', host)).toMatchObject({ status: 200 })
  for (const host of [
    'example.org',
    'localhost.example.org',
    '127.0.0.1.nip.example',
    'a b',
    '[::1]'
  ])
    expect(await ask('/', 'GET', host)).toMatchObject({ status: 403 })
})

test('it is only for reading', async () => {
  const { ask } = await served()
  for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
    expect(await ask('/', method)).toMatchObject({ status: 405 })
  expect(await ask('/', 'HEAD')).toMatchObject({
    status: 200,
    body: '',
    headers: { 'content-length': '4' }
  })
})

test('a site that is being swapped is waited for, one that is not there is said to be', async () => {
  const { site, ask } = await served()
  renameSync(site, `${site}-aside`)
  const waiting = ask('/')
  setTimeout(() => renameSync(`${site}-aside`, site), 50)
  expect(await waiting).toMatchObject({ status: 200, body: 'home' })
  renameSync(site, `${site}-aside`)
  expect(await ask('/')).toMatchObject({ status: 503 })
})
