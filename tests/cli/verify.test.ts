/** Keys, signing, checking copies, and joining two registers. */

import { execFileSync } from 'node:child_process'
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync
} from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, inject, test } from 'vitest'
import {
  done,
  eventsOf,
  keysOf,
  putInRegister,
  refused,
  registerOf,
  workshopOf
} from '../site/issuing.ts'
import { lotfolio, namesIn, workplace } from '../site/workplace.ts'

const day = ['--date', '2026-03-01']

/** How many bytes of an issued PDF to flip; a long campaign sets this. */
const PDF_FLIPS = Number(process.env['LOTFOLIO_PDF_FLIPS'] ?? 60)

let issued: string
beforeAll(() => {
  issued = mkdtempSync(join(inject('runFolder'), 'issued '))
})

/**
 * A place with three revisions: superseded, withdrawn and standing, signed; its site is built. Made
 * once, and copied; its keys stay behind.
 */
async function issuedPlace(): Promise<string> {
  const place = workplace()
  if (namesIn(issued).length === 0) cpSync(await makeIssued(), issued, { recursive: true })
  cpSync(issued, place, { recursive: true })
  return place
}

async function makeIssued(): Promise<string> {
  const place = workshopOf('EB-2')
  await done(place, 'keys', '--make', '--note', 'office', ...day)
  await done(place, 'issue', 'EB-1', ...day)
  await done(place, 'issue', 'EB-1', '--reason', 'date corrected', ...day)
  await done(place, 'issue', 'EB-2', ...day)
  await done(place, 'withdraw', 'CT-2', '--reason', 'acid rises', ...day)
  await done(place, 'build')
  rmSync(keysOf(place), { recursive: true })
  return place
}

const wordOf = async (place: string, ...args: string[]): Promise<string> => {
  const { status, stdout, stderr } = await lotfolio(['verify', ...args], place)
  expect(stderr).toBe('')
  const word = stdout.split('\n')[0]!
  expect(status).toBe(word === 'Genuine' ? 0 : 1)
  return word
}

test('verify has five words, for PDF and JSON, by the records and by the site', async () => {
  const place = await issuedPlace()
  const site = ['--register', '_site/register/register.json']
  for (const how of [[], site]) {
    for (const [name, word] of [
      ['CT-1-r2', 'Genuine'],
      ['CT-1-r1', 'Superseded'],
      ['CT-2-r1', 'Withdrawn']
    ] as const) {
      expect(await wordOf(place, `archive/${name}.pdf`, ...how)).toBe(word)
      expect(await wordOf(place, `content/register/${name}.json`, ...how)).toBe(word)
    }
    const text = registerOf(place)['CT-1-r2.json']!
    writeFileSync(join(place, 'a.json'), text.replace('EB-1', 'EB-3'))
    expect(await wordOf(place, 'a.json', ...how)).toBe('Altered')
    writeFileSync(join(place, 'a.json'), text.replaceAll('CT-1', 'CT-9'))
    expect(await wordOf(place, 'a.json', ...how)).toBe('Unknown')
    expect(await wordOf(place, 'content/producer.yaml', ...how)).toBe('Unknown')
  }
  expect(await wordOf(place, 'archive/CT-1-r2.pdf', '--offline')).toBe('Unknown')
  expect(await wordOf(place, 'content/register/CT-1-r2.json', '--offline')).toBe('Unknown')
  execFileSync('pdfdetach', [
    '-savefile',
    'proof.json',
    '-o',
    join(place, 'p.json'),
    join(place, 'archive', 'CT-1-r2.pdf')
  ])
  const carried = ['--proof', 'p.json']
  expect(await wordOf(place, 'content/register/CT-1-r2.json', '--offline', ...carried)).toBe(
    'Genuine'
  )
  expect(await wordOf(place, 'content/register/CT-1-r1.json', ...carried)).not.toBe('Genuine')
})

test(
  'no flipped byte of a certificate, JSON or PDF, is genuine',
  { timeout: 60_000 + PDF_FLIPS * 60 },
  async () => {
    const place = workshopOf()
    await done(place, 'issue', 'EB-1', ...day)
    const flipped = join(place, 'flipped')
    const json = readFileSync(join(place, 'content', 'register', 'CT-1-r1.json'))
    const pdf = readFileSync(join(place, 'archive', 'CT-1-r1.pdf'))
    const words: Record<string, number> = {}
    const flip = async (bytes: Buffer, at: number) => {
      const copy = Buffer.from(bytes)
      copy[at]! ^= 1 << (at % 8)
      writeFileSync(flipped, copy)
      const word = await wordOf(place, 'flipped')
      words[word] = (words[word] ?? 0) + 1
    }
    const step = PDF_FLIPS >= 1000 ? 1 : 40
    for (let at = 0; at < json.length; at += step) await flip(json, at)
    for (let n = 0; n < PDF_FLIPS; n++)
      await flip(pdf, Math.floor(((n * 0.618_033_988_75) % 1) * pdf.length))
    console.info(`flips: ${JSON.stringify(words)}`)
    expect(words['Genuine']).toBeUndefined()
    expect(words['Altered']).toBeGreaterThan(10)
  }
)

describe('a register that was tampered with', () => {
  test.for([
    ['a line dropped', (lines: string[]) => lines.toSpliced(1, 1), 'REGISTER_CHAIN'],
    ['a line doubled', (lines: string[]) => lines.toSpliced(1, 0, lines[1]!), 'REGISTER_CHAIN'],
    ['lines moved', ([a, b, c, ...rest]: string[]) => [a!, c!, b!, ...rest], 'REGISTER_CHAIN'],
    ['the end dropped', (lines: string[]) => lines.slice(0, 3), 'REGISTER_NO_LINE']
  ] as const)('%s: check and build refuse', async ([, change, code]) => {
    const place = await issuedPlace()
    const lines = registerOf(place)['log.jsonl']!.trimEnd().split('\n')
    putInRegister(
      place,
      'log.jsonl',
      change(lines)
        .map(line => `${line}\n`)
        .join('')
    )
    for (const command of ['check', 'build']) {
      const { status, stderr, stdout } = await lotfolio([command], place)
      expect(status).toBe(1)
      expect(stderr + stdout).toMatch(
        new RegExp(`^content/register/log\\.jsonl:\\d+:1 ${code}$`, 'mu')
      )
    }
    expect(await refused(place, 'withdraw', 'CT-1', '--reason', 'x')).toContain(
      'register has faults'
    )
  })

  test('a document changed, missing or foreign: the same', async () => {
    const place = await issuedPlace()
    const name = 'CT-1-r2.json'
    const text = registerOf(place)[name]!
    const told = async () => (await lotfolio(['check'], place)).stdout
    putInRegister(place, name, text.replace('EB-1', 'EB-3'))
    expect(await told()).toContain('REGISTER_DOCUMENT_CHANGED')
    rmSync(join(place, 'content', 'register', name))
    expect(await told()).toContain('REGISTER_NO_DOCUMENT')
    putInRegister(place, name, text)
    putInRegister(place, 'CT-8-r1.json', text)
    expect(await told()).toContain('REGISTER_NO_LINE')
  })

  test('lines that were published and are gone: build refuses', async () => {
    const place = workshopOf()
    await done(place, 'keys', '--make', ...day)
    await done(place, 'build')
    const log = registerOf(place)['log.jsonl']!
    putInRegister(place, 'log.jsonl', '')
    expect((await lotfolio(['build'], place)).status).toBe(1)
    putInRegister(place, 'log.jsonl', log)
    await done(place, 'build')
  })
})

describe('keys', () => {
  test('are made outside, for the owner alone, listed, and retired', async () => {
    const place = workshopOf()
    expect(await done(place, 'keys')).toMatch(/^No keys/u)
    const id = /^Made key ([0-9a-f]{16});/u.exec(await done(place, 'keys', '--make', ...day))![1]!
    const path = join(keysOf(place), `${id}.pem`)
    expect(statSync(path).mode & 0o777).toBe(0o600)
    expect(await done(place, 'keys')).toContain(
      `${id}  from 2026-03-01; in use; private half on this`
    )
    await done(place, 'issue', 'EB-1', '--unsigned', ...day)
    chmodSync(path, 0o644)
    expect(await refused(place, 'sign', ...day)).toContain(`chmod 600 ${path}`)
    chmodSync(path, 0o600)
    expect(await done(place, 'sign', ...day)).toBe(`Signed 1 certificate with key ${id}\n`)
    expect(await done(place, 'sign', ...day)).toBe(`Signed no certificates with key ${id}\n`)
    expect(await refused(place, 'keys', '--retire', id)).toContain('--reason')
    await done(place, 'keys', '--retire', id, '--reason', 'lost', ...day)
    expect(await done(place, 'keys')).toContain('retired 2026-03-01: lost')
    expect(await refused(place, 'sign', ...day)).toContain('no key in use')
    expect(await wordOf(place, 'archive/CT-1-r1.pdf')).toBe('Genuine')
    rmSync(keysOf(place), { recursive: true })
  })

  test('are refused in the workshop, under version control, and through links to either', async () => {
    const place = workshopOf()
    const outside = workplace()
    mkdirSync(join(outside, 'kept', '.git'), { recursive: true })
    symlinkSync(join(outside, 'kept'), join(outside, 'to-git'))
    symlinkSync(place, join(outside, 'to-workshop'))
    for (const folder of [
      place,
      join(place, 'a/b'),
      join(place, 'content'),
      join(outside, 'to-workshop/k'),
      join(outside, 'kept/k'),
      join(outside, 'to-git/k')
    ]) {
      const { status, stderr } = await lotfolio(['keys', '--make'], place, {
        LOTFOLIO_KEYS: folder
      })
      expect(status, folder).toBe(1)
      expect(stderr).toMatch(
        /private keys must not lie in .*; name another folder in LOTFOLIO_KEYS\n$/u
      )
    }
    expect(eventsOf(place)).toEqual([])
    expect(namesIn(place)).toEqual(['content'])
  })
})

describe('join', () => {
  test('takes in what the other has, and gives up a number that both drew', async () => {
    const ours = workshopOf('EB-2', 'EB-3', 'EB-4')
    await done(ours, 'issue', 'EB-1', ...day)
    const theirs = workplace()
    cpSync(ours, theirs, { recursive: true })
    await done(ours, 'issue', 'EB-2', ...day)
    await done(theirs, 'issue', 'EB-3', ...day)
    await done(theirs, 'issue', 'EB-4', ...day)
    const before = registerOf(theirs)
    const said = await done(ours, 'join', join(theirs, 'content'), '--date', '2026-03-02')
    expect(said).toMatch(
      /^2 lines in common; entered 3 lines of the other register\nTaken in: CT-3, revision 1, on EB-4\nPapers of these check as altered, .*\nTo be issued anew, its number was taken: EB-3\n/u
    )
    expect(said).toContain('Copy their records too: certificates/CT-3-r1.yaml')
    expect(registerOf(theirs)).toEqual(before)
    expect(Object.keys(registerOf(ours))).toEqual([
      'CT-1-r1.json',
      'CT-2-r1.json',
      'CT-3-r1.json',
      'log.jsonl'
    ])
    const record = join('content', 'certificates', 'CT-3-r1.yaml')
    cpSync(join(theirs, record), join(ours, record))
    await done(ours, 'issue', 'EB-3', '--date', '2026-03-02')
    expect(await done(ours, 'check')).toMatch(/no errors/u)
    const held = (name: string) => wordOf(ours, join(theirs, name))
    expect(await held('content/register/CT-3-r1.json')).toBe('Genuine')
    expect(await held('content/register/CT-2-r1.json')).toBe('Withdrawn')
    // The paper's own proof is of lines that this register never had.
    expect(await held('archive/CT-3-r1.pdf')).toBe('Altered')
    await done(ours, 'issue', 'EB-4', '--reason', 'registers joined', '--date', '2026-03-02')
    expect(await wordOf(ours, 'archive/CT-3-r2.pdf')).toBe('Genuine')
    const again = await done(ours, 'join', join(theirs, 'content'), '--date', '2026-03-02')
    expect(again).toMatch(/entered no lines of the other register/u)
  })

  test('is refused for another producer and for a register with faults', async () => {
    const [ours, theirs] = [workshopOf(), workshopOf()]
    await done(ours, 'issue', 'EB-1', ...day)
    const producer = join(theirs, 'content', 'producer.yaml')
    writeFileSync(producer, readFileSync(producer, 'utf8').replace(/^name: .*$/mu, 'name: Other'))
    await done(theirs, 'issue', 'EB-1', ...day)
    expect(await refused(ours, 'join', join(theirs, 'content'), ...day)).toContain(
      'another producer'
    )
    putInRegister(theirs, 'CT-1-r1.json', '{}')
    expect(await refused(ours, 'join', join(theirs, 'content'), ...day)).toContain('has faults')
  })
})
