import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { appendFileSync, cpSync, readFileSync, writeFileSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { networkInterfaces } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { beforeAll, expect, onTestFinished, test } from 'vitest'
import { builtSmallWorkplace, smallSite } from '../site/built-small.ts'
import { lotfolio, plainEnvironment, program, smallWorkplace } from '../site/workplace.ts'

beforeAll(async () => {
  await smallSite()
})

/** Start the program and wait for its address. */
async function started(place: string, args: readonly string[] = ['--port', '0']) {
  const child = spawn(process.execPath, [program, 'start', ...args], {
    cwd: place,
    env: plainEnvironment()
  })
  onTestFinished(() => void child.kill('SIGKILL'))
  const said = { text: '' }
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (part: Buffer) => (said.text += part.toString()))
  await until(() => /http:\/\/localhost:\d+\//u.test(said.text) || child.exitCode !== null)
  const port = Number(/localhost:(\d+)/u.exec(said.text)?.[1])
  return { child, said, port, page: `http://127.0.0.1:${port}/` }
}

/** Wait for something to become true; half a minute at most, as whole sites are built. */
async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 300; tries++) {
    if (await holds()) return
    await pause(100)
  }
  throw new Error('waited in vain')
}

const textOf = async (address: string) => (await fetch(address)).text()

/** What a page says, without the words of the server that showed it. */
const mainOf = (html: string) =>
  /<main[\s\S]*<\/main>/u.exec(html)![0].replace(/<p class="to-records">.*?<\/p>/u, '')

/** End it as Ctrl-C does. */
async function interrupted(child: ChildProcess) {
  const ended = once(child, 'exit')
  child.kill('SIGINT')
  return (await ended) as [code: number | null, signal: string | null]
}

/** Whether something listens at an address of this machine. */
const listensAt = (host: string, port: number): Promise<boolean> =>
  new Promise(resolve => {
    const socket = connect({ host, port }, () => {
      socket.destroy()
      resolve(true)
    })
    socket.on('error', () => resolve(false))
  })

/** A workplace with both editions, and what makes its records wrong and sound again. */
async function builtPlace() {
  const place = await builtSmallWorkplace()
  const record = join(place, 'content', 'producer.yaml')
  const sound = readFileSync(record, 'utf8')
  return {
    place,
    spoil: () => appendFileSync(record, 'wrong: 1\n'),
    mend: () => writeFileSync(record, sound)
  }
}

test('start shows the workshop edition, keeps it up to date, and ends on Ctrl-C', async () => {
  const { place, spoil, mend } = await builtPlace()
  const first = await started(place)
  expect(first.said.text).toContain(
    `Workshop edition at http://localhost:${first.port}/ (Ctrl-C to`
  )
  const before = await textOf(first.page)
  expect(before).toContain('<title>')

  expect(await listensAt('127.0.0.1', first.port)).toBe(true)
  const addresses = Object.values(networkInterfaces()).flatMap(list => list ?? [])
  const others = addresses.map(({ address }) => address).filter(one => one !== '127.0.0.1')
  for (const address of [...others, '::1']) expect(await listensAt(address, first.port)).toBe(false)

  spoil()
  await until(() => first.said.text.includes('UNKNOWN_FIELD'))
  await until(() => first.said.text.includes('Nothing written'))
  expect(await textOf(first.page)).toBe(before)
  expect(await interrupted(first.child)).toEqual([0, null])
  expect(first.said.text).not.toContain('    at ')

  const second = await started(place)
  expect(second.said.text).toContain(
    `The build failed: http://localhost:${second.port}/ shows the last good pages; it is built`
  )
  expect(mainOf(await textOf(second.page))).toBe(mainOf(before))

  // Worms, as pages of these alone change: papers of others take a second each to draw.
  const worms = join(place, 'content', 'expansions', 'XR-1.yaml')
  const smaller = { 'XR-1': 'XR-2', '50.00 g': '10.00 g', '42.00 g': '8.40 g', '12000': '2400' }
  const text = Object.entries(smaller).reduce(
    (changed, [from, to]) => changed.replace(from, to),
    readFileSync(worms, 'utf8')
  )
  writeFileSync(worms.replace('XR-1', 'XR-2'), text)
  mend()
  await until(async () => (await textOf(second.page)).includes('XR-2'))
  expect(await interrupted(second.child)).toEqual([0, null])
})

test('start takes the next port where its own is taken, unless told which', async () => {
  const place = smallWorkplace()
  const blocker = createServer().listen(4170, '127.0.0.1')
  onTestFinished(() => void blocker.close())
  await once(blocker, 'listening').catch(() => undefined)
  expect(await lotfolio(['start', '--port', '4170'], place)).toMatchObject({
    status: 1,
    stderr: 'lotfolio: port 4170 is taken; name another with --port\n'
  })
  // What it serves makes no difference, and without a site to build it starts sooner.
  appendFileSync(join(place, 'content', 'producer.yaml'), 'wrong: 1\n')
  const { child, port } = await started(place, [])
  expect(port).toBeGreaterThan(4170)
  await interrupted(child)
})

test('start says that its first build failed and there is no page yet, and goes on serving', async () => {
  const { place, spoil } = await builtPlace()
  spoil()
  const { child, said, port, page } = await started(place)
  expect(said.text).toContain(
    `The build failed: http://localhost:${port}/ has no page yet; it is built anew when a file is saved`
  )
  expect(said.text).not.toContain('Workshop edition at')
  const answer = await fetch(page)
  expect([answer.status, answer.headers.get('content-type')]).toEqual([
    503,
    'text/html; charset=utf-8'
  ])
  expect(await answer.text()).toContain('<h1>No page yet</h1>')
  // What a build would put there: pages that came about meanwhile are shown.
  cpSync(join(place, '_site'), join(place, 'private'), { recursive: true })
  expect((await fetch(page)).status).toBe(200)
  expect(await interrupted(child)).toEqual([0, null])
})
