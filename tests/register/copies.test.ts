/** The chain of customers' copies, and what is published of it. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { appendCopies, readCopies } from '../../src/register/copies.ts'
import { copyName, type Sent } from '../../src/register/copy-events.ts'
import { copyListText } from '../../src/register/copy-list.ts'
import { belongsTo, isListed, readCopyList } from '../../src/register/copy-entries.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { joinCopies } from '../../src/register/join-copies.ts'

const SECRET = 'ab'.repeat(32)
const DAY = '2026-03-02'

const sent = async (shipment: string, more: Partial<Sent> = {}): Promise<Sent> => {
  const copy = more.copy ?? 1
  return {
    is: 'sent',
    number: 'CT-1',
    revision: 1,
    shipment,
    copy,
    data: await fingerprint(`${shipment} ${copy}`),
    pdf: await fingerprint(`${shipment} ${copy} as a PDF`),
    ...(copy > 1 ? { reason: 'order corrected' } : {}),
    ...more
  }
}

async function chainOf(...events: readonly Sent[]): Promise<string> {
  const outcome = await appendCopies('', events, DAY, SECRET)
  if (!outcome.ok) throw new Error(outcome.faults[0]!.sentence)
  return outcome.text
}

const saltOf = (name: string) => `the salt of ${name}`

async function listOf(text: string, lines: readonly string[] = []) {
  const chain = await readCopies(text)
  const salts = new Map(chain.copies.map(one => [copyName(one), saltOf(copyName(one))]))
  return readCopyList(await copyListText(chain, salts, { lines }))!
}

const manyOf = (count: number): Promise<Sent[]> =>
  Promise.all(Array.from({ length: count }, (_, index) => sent(`SH-${index}`)))

describe('the chain', () => {
  test('every byte flipped is noticed, by reading or by the documents', async () => {
    const text = await chainOf(
      await sent('SH-1'),
      await sent('SH-2'),
      await sent('SH-1', { copy: 2 })
    )
    const own = await readCopies(text)
    const bytes = Buffer.from(text)
    for (let at = 0; at < bytes.length; at += 1) {
      const other = Buffer.from(bytes)
      other[at]! ^= 1
      const read = await readCopies(other.toString('utf8'))
      // The last line has no other after it: what it says of its document is held by that.
      const same = read.faults.length === 0 && String(read.hashes) === String(own.hashes)
      expect(same, `byte ${at}`).toBe(false)
    }
  })

  test.for([
    ['a copy before its turn', { copy: 2 }, 'stands at copy 0: the next is 1, not 2'],
    ['a reason missing', { shipment: 'SH-1', copy: 2, reason: undefined }, '"reason"'],
    ['the same document again', { data: 'same' }, 'this document is CT-1-r1-SH-1']
  ] as const)('refuses %s', async ([, more, message]) => {
    const first = await sent('SH-1')
    const { reason, ...rest } = { ...(await sent('SH-2')), ...more }
    const next = {
      ...rest,
      ...(reason === undefined ? {} : { reason }),
      data: 'data' in more ? first.data : rest.data
    }
    const outcome = await appendCopies(await chainOf(first), [next], DAY, SECRET)
    expect(outcome.ok ? '' : outcome.faults[0]!.sentence).toContain(message)
  })

  test('refuses a day before that of the line above', async () => {
    const chain = await chainOf(await sent('SH-1'))
    const outcome = await appendCopies(chain, [await sent('SH-2')], '2026-03-01', SECRET)
    expect(outcome).toMatchObject({ ok: false, faults: [{ code: 'REGISTER_DATE_ORDER', line: 3 }] })
  })

  test('a line dropped, doubled or moved is noticed', async () => {
    const lines = (await chainOf(...(await manyOf(4)))).trimEnd().split('\n')
    const faulty = async (changed: readonly string[]) =>
      (await readCopies(`${changed.join('\n')}\n`)).faults.length > 0
    expect(await faulty(lines)).toBe(false)
    for (let at = 0; at < lines.length - 1; at += 1) {
      expect(await faulty(lines.toSpliced(at, 1)), `dropped ${at}`).toBe(true)
      expect(await faulty(lines.toSpliced(at, 0, lines[at]!)), `doubled ${at}`).toBe(true)
      expect(await faulty(lines.toSpliced(at, 2, lines[at + 1]!, lines[at]!)), `moved ${at}`).toBe(
        true
      )
    }
  })
})

describe('the list', () => {
  test('has the state of each copy for whoever knows its salt, and for nobody else', async () => {
    const first = await sent('SH-1')
    const second = await sent('SH-1', { copy: 2 })
    const list = await listOf(await chainOf(first, second))
    const has = (sha256: string, state: 'current' | 'superseded', salt: string) =>
      isListed(list, { is: 'data', sha256, state }, salt)
    const [one, two] = [saltOf(copyName(first)), saltOf(copyName(second))]
    expect(await has(first.data, 'superseded', one)).toBe(true)
    expect(await has(first.data, 'current', one)).toBe(false)
    expect(await has(second.data, 'current', two)).toBe(true)
    expect(await has(first.data, 'superseded', two)).toBe(false)
    expect(await isListed(list, { is: 'pdf', sha256: second.pdf }, two)).toBe(true)
  })

  test('is as long for 1 copy as for 85, and says nothing in plain', async () => {
    const [few, many] = [await chainOf(await sent('SH-0')), await chainOf(...(await manyOf(85)))]
    expect((await listOf(few)).entries).toHaveLength(256)
    expect((await listOf(many)).entries).toHaveLength(256)
    expect((await listOf(await chainOf(...(await manyOf(86))))).entries).toHaveLength(1024)
    const { head: _head, epoch: _epoch, entries } = await listOf(many)
    const { data, pdf } = (await readCopies(many)).copies[0]!
    expect(entries.some(entry => data.startsWith(entry) || pdf.startsWith(entry))).toBe(false)
    expect(entries).toEqual([...new Set(entries)].sort())
  })

  test('is bound to the register it was published with, and none of it can be exchanged', async () => {
    const lines = ['one', 'two']
    const list = await listOf(await chainOf(await sent('SH-1')), lines)
    expect(list.tree.size).toBe(3)
    expect(await belongsTo(list, { lines })).toBe(true)
    expect(await belongsTo(list, { lines: ['one'] })).toBe(false)
    expect(await belongsTo(list, { lines: ['one', 'tw0'] })).toBe(false)
    const [first, ...others] = list.entries
    for (const changed of [
      { ...list, head: list.epoch },
      { ...list, epoch: list.head },
      { ...list, entries: others },
      { ...list, entries: [first!.replace(/^./u, x => (x === '0' ? '1' : '0')), ...others] },
      { ...list, tree: { ...list.tree, size: 2 } },
      { ...list, tree: { ...list.tree, root: list.head } }
    ])
      expect(await belongsTo(changed, { lines })).toBe(false)
  })

  test('shares no entry with the list after one more copy, or after the register grew', async () => {
    const [before, after] = [await manyOf(3), await manyOf(4)]
    const old = await listOf(await chainOf(...before))
    for (const other of [
      await listOf(await chainOf(...after)),
      await listOf(await chainOf(...before), ['a line'])
    ])
      expect(old.entries.filter(entry => other.entries.includes(entry))).toEqual([])
    expect(await listOf(await chainOf(...before))).toEqual(old)
  })
})

describe('two chains', () => {
  test('come to one: ours is kept, nothing is lost unsaid, and it is sound', async () => {
    const pool = await manyOf(6)
    await fc.assert(
      fc.asyncProperty(fc.subarray(pool), fc.subarray(pool), async (mine, yours) => {
        const [ours, theirs] = [await chainOf(...mine), await chainOf(...yours)]
        const joined = await joinCopies(ours, theirs, DAY)
        if (!joined.ok) throw new Error(joined.faults[0]!.sentence)
        expect(joined.text.startsWith(ours)).toBe(true)
        const { copies, faults } = await readCopies(joined.text)
        expect(faults).toEqual([])
        const names = new Set([...mine, ...yours].map(copyName))
        expect(new Set(copies.map(copyName))).toEqual(names)
        expect(joined.dropped).toEqual([])
      }),
      { numRuns: 30 }
    )
  })

  test('another copy of one name is left out, and said', async () => {
    const other = await sent('SH-1', { data: await fingerprint('otherwise') })
    const joined = await joinCopies(await chainOf(await sent('SH-1')), await chainOf(other), DAY)
    expect(joined).toMatchObject({ ok: true, entered: [], dropped: [{ shipment: 'SH-1' }] })
  })

  test('where nothing was sent here, theirs is taken whole', async () => {
    const theirs = await chainOf(await sent('SH-1'))
    expect(await joinCopies('', theirs, DAY)).toMatchObject({ ok: true, text: theirs })
  })
})
