/** What may follow what, and what the events come to. */

import { beforeAll, describe, expect, test } from 'vitest'
import type { RegisterEvent } from '../../src/register/events.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { append, readLog } from '../../src/register/log.ts'
import { revisionOf, revisionsOf, stateOf, successorOf } from '../../src/register/standing.ts'
import {
  addedOf,
  amendedOf,
  codesOf,
  documentOf,
  drawnOf,
  grown,
  issuedOf,
  keyOf,
  makeSample,
  type Sample,
  signedOf
} from './sample.ts'

let sample: Sample
beforeAll(async () => void (sample = await makeSample()))

const hash = '12'.repeat(32)
const withdrawn = (number: string, revision: number): RegisterEvent => ({
  is: 'withdrawn',
  number,
  revision,
  reason: 'it was wrong'
})
const voided = (number: string, data: string): RegisterEvent => ({
  is: 'voided',
  number,
  revision: 1,
  data,
  reason: 'drawn twice'
})
const retired = (key: string): RegisterEvent => ({ is: 'key-retired', key, reason: 'lost' })

/** Refusals of events appended to the sample, as 'line CODE: sentence'. */
async function refusals(...events: (RegisterEvent | Promise<RegisterEvent>)[]): Promise<string[]> {
  const all = await Promise.all(events)
  const outcome = await append(sample.text, all, '2026-04-01', sample.held)
  return outcome.ok
    ? []
    : outcome.faults.map(({ line, code, sentence }) => `${line} ${code}: ${sentence}`)
}

const refused = async (
  expected: string,
  ...events: (RegisterEvent | Promise<RegisterEvent>)[]
): Promise<void> => expect(await refusals(...events)).toEqual([expected])

describe('issued', () => {
  test('a number once, whatever its case', async () => {
    const again = await issuedOf(documentOf('CT-2', 1, 'again'))
    await refused('11 REGISTER_NUMBER_TAKEN: number CT-2 is taken since line 6', again)
    const small = await issuedOf(documentOf('ct-2', 1, 'again'))
    await refused('11 REGISTER_NUMBER_TAKEN: number CT-2 is taken since line 6', small)
  })

  test('from revision 1', async () => {
    await refused(
      '11 REGISTER_REVISION: CT-9 revision 2 is issued first: a number starts with revision 1',
      { ...(await issuedOf(documentOf('CT-9', 2))), revision: 2 } as RegisterEvent
    )
  })

  test('no document under two numbers', async () => {
    const same = { ...(await issuedOf(sample.documents.two)), number: 'CT-9' } as RegisterEvent
    await refused('11 REGISTER_SAME_DATA: this document is CT-2 revision 1, line 6', same)
  })
})

describe('amended', () => {
  const amended = (number: string, revision: number) =>
    amendedOf(documentOf(number, revision, 'amended'), 'mistyped')

  test('by the next revision of an issued number', async () => {
    expect(await refusals(amended('CT-2', 2), amended('CT-2', 3), amended('CT-1', 3))).toEqual([])
    await refused(
      '11 REGISTER_NOT_ISSUED: CT-9 revision 2 was not issued before this line',
      amended('CT-9', 2)
    )
    await refused(
      '11 REGISTER_NOT_ISSUED: ct-2 revision 2 was not issued before this line',
      amended('ct-2', 2)
    )
    const gap = '11 REGISTER_REVISION: CT-2 stands at revision 1: the next is 2, not'
    await refused(`${gap} 3`, amended('CT-2', 3))
    await refused(`${gap} 1`, amended('CT-2', 1))
  })

  test('never after a withdrawal', async () => {
    await refused(
      '11 REGISTER_WITHDRAWN: CT-3 revision 1 was withdrawn on line 9: nothing amends it, issue under a new number',
      amended('CT-3', 2)
    )
  })

  test('for the same lot, by another document', async () => {
    const other = { ...(await amended('CT-2', 2)), lot: 'EB-7' } as RegisterEvent
    await refused(
      '11 REGISTER_OTHER_LOT: CT-2 is for lot EB-2, not EB-7: withdraw it and issue another',
      other
    )
    const same = { ...(await amended('CT-2', 2)), data: await fingerprint(sample.documents.two) }
    await refused(
      '11 REGISTER_SAME_DATA: this document is CT-2 revision 1, line 6',
      same as RegisterEvent
    )
  })
})

describe('drawn', () => {
  test('once, while the revision is current', async () => {
    expect(await refusals(drawnOf('CT-1', 2, hash))).toEqual([])
    await refused(
      '11 REGISTER_TWICE: CT-2 revision 1 was drawn on line 7 already',
      drawnOf('CT-2', 1, hash)
    )
    await refused(
      '11 REGISTER_WITHDRAWN: CT-3 revision 1 is withdrawn and can no longer be drawn',
      drawnOf('CT-3', 1, hash)
    )
    const amended = await amendedOf(documentOf('CT-1', 3), 'again')
    await refused(
      '12 REGISTER_SUPERSEDED: CT-1 revision 2 is superseded and can no longer be drawn',
      amended,
      drawnOf('CT-1', 2, hash)
    )
    await refused(
      '11 REGISTER_NOT_ISSUED: CT-2 revision 2 was not issued before this line',
      drawnOf('CT-2', 2, hash)
    )
  })
})

describe('withdrawn', () => {
  test('once, and not what is superseded', async () => {
    expect(await refusals(withdrawn('CT-1', 2), withdrawn('CT-2', 1))).toEqual([])
    await refused(
      '11 REGISTER_SUPERSEDED: CT-1 revision 1 is superseded and can no longer be withdrawn',
      withdrawn('CT-1', 1)
    )
    await refused(
      '11 REGISTER_WITHDRAWN: CT-3 revision 1 is withdrawn and can no longer be withdrawn',
      withdrawn('CT-3', 1)
    )
    await refused(
      '11 REGISTER_NOT_ISSUED: CT-9 revision 1 was not issued before this line',
      withdrawn('CT-9', 1)
    )
  })
})

describe('voided', () => {
  test('names another document under a number that is taken, once', async () => {
    expect(await refusals(voided('CT-2', hash))).toEqual([])
    await refused(
      '11 REGISTER_NOT_ISSUED: CT-9 revision 1 was not issued before this line',
      voided('CT-9', hash)
    )
    await refused(
      '11 REGISTER_SAME_DATA: this document is CT-2 revision 1, line 6',
      voided('CT-2', await fingerprint(sample.documents.two))
    )
    await refused(
      '12 REGISTER_TWICE: CT-2 revision 1 was given up on line 11 already',
      voided('CT-2', hash),
      voided('CT-2', hash)
    )
  })

  test('what was given up is not issued later', async () => {
    const event = await issuedOf(documentOf('CT-9', 1))
    const { data } = event as { data: string } & RegisterEvent
    await refused(
      '12 REGISTER_SAME_DATA: this document was given up on line 11',
      voided('CT-2', data),
      event
    )
  })
})

describe('keys and signatures', () => {
  test('a key is added once, under its own name', async () => {
    const [first, second] = [await keyOf(0), await keyOf(1)]
    expect(await refusals(addedOf(second))).toEqual([])
    await refused(`11 REGISTER_TWICE: key ${first.id} was added on line 1 already`, addedOf(first))
    await refused(
      `11 REGISTER_KEY_NAME: the name of this public key is ${second.id}, not ${'0'.repeat(16)}`,
      { ...addedOf(second), key: '0'.repeat(16) } as RegisterEvent
    )
    const back = [retired(first.id), addedOf(first)]
    await refused(`12 REGISTER_TWICE: key ${first.id} was added on line 1 already`, ...back)
  })

  test('a key is retired once', async () => {
    const [first, second] = [await keyOf(0), await keyOf(1)]
    await refused(
      `12 REGISTER_RETIRED_KEY: key ${first.id} is retired since line 11`,
      retired(first.id),
      retired(first.id)
    )
    await refused(
      `11 REGISTER_UNKNOWN_KEY: key ${second.id} was not added before this line`,
      retired(second.id)
    )
  })

  test('a signature needs a known key in use, a revision, and happens once a key', async () => {
    const [first, second] = [await keyOf(0), await keyOf(1)]
    const { three, two, one } = sample.documents
    expect(await refusals(signedOf(first, three))).toEqual([])
    expect(await refusals(addedOf(second), signedOf(second, one))).toEqual([])
    await refused(
      `11 REGISTER_UNKNOWN_KEY: key ${second.id} was not added before this line`,
      signedOf(second, two)
    )
    await refused(
      `12 REGISTER_RETIRED_KEY: key ${first.id} is retired since line 11`,
      retired(first.id),
      signedOf(first, three)
    )
    await refused(
      '11 REGISTER_TWICE: CT-2 revision 1 was signed with this key on line 10 already',
      signedOf(first, two)
    )
    await refused(
      '11 REGISTER_NOT_ISSUED: CT-9 revision 1 was not issued before this line',
      signedOf(first, documentOf('CT-9', 1))
    )
  })

  test('a signature over another document is refused where the document is at hand', async () => {
    const key = await keyOf(0)
    const forged = await signedOf(key, documentOf('CT-3', 1, 'forged'))
    await refused(
      `11 REGISTER_SIGNATURE: the signature is not that of key ${key.id} over CT-3 revision 1`,
      forged
    )
    const unseen = await append(sample.text, [forged], '2026-04-01')
    expect(unseen.ok).toBe(true)
    expect(codesOf(await readLog(unseen.ok ? unseen.text : '', sample.held))).toEqual([
      '11 REGISTER_SIGNATURE'
    ])
  })
})

describe('the standing', () => {
  test('of the sample', () => {
    const { standing } = sample.log
    const states = ['CT-1', 'CT-2', 'CT-3'].map(number =>
      revisionsOf(standing, number).map(revision => stateOf(standing, revision))
    )
    expect(states).toEqual([['superseded', 'current'], ['current'], ['withdrawn']])
    const [first, second] = revisionsOf(standing, 'ct-1')
    expect(successorOf(standing, first!)).toBe(second)
    expect(second).toMatchObject({ n: 5, date: '2026-02-01', reason: 'a mass was mistyped' })
    expect(first).toMatchObject({ n: 2, drawn: { n: 3, pages: 2 }, signatures: [{ n: 4 }] })
    expect(revisionOf(standing, 'CT-3', 1)?.withdrawn).toMatchObject({
      n: 9,
      reason: 'the lot was mixed up'
    })
    expect(standing.byData.get(second!.data)).toBe(second)
    expect(revisionOf(standing, 'CT-9', 1)).toBeUndefined()
  })

  test('a retired key keeps what it was', async () => {
    const key = await keyOf(0)
    const text = await grown(sample.text, [retired(key.id)], '2026-04-01')
    const { standing } = await readLog(text)
    expect(standing.keys.get(key.id)).toMatchObject({
      n: 1,
      publicKey: key.publicKey,
      note: 'first key',
      retired: { n: 11, reason: 'lost' }
    })
  })

  test('a document is found by its fingerprint with what became of it', () => {
    const { byData } = sample.log.standing
    expect(
      [...byData.values()].map(({ number, drawn, signatures }) => [
        number,
        drawn !== undefined,
        signatures.length
      ])
    ).toEqual([
      ['CT-1', true, 1],
      ['CT-1', false, 0],
      ['CT-2', true, 1],
      ['CT-3', false, 0]
    ])
  })
})
