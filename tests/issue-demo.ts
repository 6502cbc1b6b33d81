/**
 * Issues the demo workshop's certificates anew, day by day: `npx tsx tests/issue-demo.ts`.
 *
 * To be run when the papers change on purpose. A workshop of one's own never does this: there, what
 * was issued stays. The key is no secret, as everyone can make it from the words below.
 */

import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readdirSync } from 'node:fs'
import { parse } from 'yaml'
import { main } from '../src/cli/main.ts'
import { append } from '../src/register/log.ts'
import { keyPairOf } from '../src/register/keys.ts'

const content = join(import.meta.dirname, '..', 'content')
const scratch = mkdtempSync(join(tmpdir(), 'lotfolio-demo-'))
process.env.LOTFOLIO_KEYS = scratch

interface Task {
  readonly day: string
  readonly run: () => Promise<unknown>
}

const lotfolio = (...args: string[]) => main([...args, '--content', content])

const records = (folder: string): Record<string, unknown>[] =>
  readdirSync(join(content, folder))
    .filter(name => name.endsWith('.yaml'))
    .sort()
    .map(
      name => parse(readFileSync(join(content, folder, name), 'utf8')) as Record<string, unknown>
    )

const orders = records('certificates') as { number: string; lot: string; issued: string }[]

const issuing: Task[] = orders.map(({ lot, issued }) => ({
  day: issued,
  run: () => lotfolio('issue', lot, '--date', issued, '--archive', join(scratch, 'archive'))
}))

/** Certificates on lots called back are withdrawn the same day. */
const withdrawing: Task[] = [...records('batches'), ...records('foils')].flatMap(record => {
  const status = (record['status'] ?? []) as { is: string; on: string; because?: string }[]
  const back = status.find(({ is }) => is === 'withdrawn')
  const order = orders.find(({ lot }) => lot === record['lot'])
  return back && order
    ? [
        {
          day: back.on,
          run: () =>
            lotfolio('withdraw', order.number, '--date', back.on, '--reason', back.because ?? '')
        }
      ]
    : []
})

async function addKey(): Promise<void> {
  const seed = createHash('sha256').update('The key of the Ossenfold demo is no secret.').digest()
  const { id, publicKey, privatePem } = await keyPairOf(seed)
  writeFileSync(join(scratch, `${id}.pem`), privatePem, { mode: 0o600 })
  const event = { is: 'key-added', key: id, publicKey, note: 'demo key, no secret' } as const
  const log = await append('', [event], '2026-01-05')
  if (!log.ok) throw new Error(log.faults[0]?.sentence)
  writeFileSync(join(content, 'register', 'log.jsonl'), log.text)
}

for (const name of readdirSync(join(content, 'register'))) rmSync(join(content, 'register', name))
await addKey()
for (const { run } of [...issuing, ...withdrawing].sort((a, b) => (a.day < b.day ? -1 : 1)))
  await run()
rmSync(scratch, { recursive: true })
