/**
 * The flip campaign: every byte of a log, of a frozen document, of a proof and of a published
 * register is changed in turn, and every change is noticed. FLIPS_ALL=1 tries all 8 bits of each
 * byte; without it, one bit of every eleventh byte, of every third in `.ci/run`, which goes round.
 */

import { beforeAll, describe, expect, test, vi } from 'vitest'
import { bytesOf, textOf } from '../../src/register/bytes.ts'
import {
  compareDocuments,
  compareEarlier,
  compareHead,
  documentName
} from '../../src/register/compare.ts'
import { type Head, headOf, readLog, treeOf } from '../../src/register/log.ts'
import { verify } from '../../src/register/verify.ts'
import { sized } from '../thorough.ts'
import { makeSample, type Sample } from './sample.ts'

let sample: Sample
let head: Head
beforeAll(async () => {
  sample = await makeSample()
  head = await headOf(await treeOf(sample.log))
})

const all = process.env.FLIPS_ALL === '1'

/** From one byte that is tried to the next. */
const STEP = sized(11, 3)
vi.setConfig({ testTimeout: all ? 3_600_000 : 60_000 })

/** Every text that differs in one bit; undefined where it is no longer UTF-8. */
const flipsOf = (text: string): { at: number; flipped: string | undefined }[] => {
  const bytes = bytesOf(text)
  return Array.from(bytes).flatMap((byte, at) => {
    const bits = all ? [0, 1, 2, 3, 4, 5, 6, 7] : at % STEP === 0 ? [(at / STEP) % 8] : []
    return bits.map(bit => ({ at, flipped: textOf(bytes.with(at, byte ^ (1 << bit))) }))
  })
}

/** Offsets of the flips that a check lets pass. */
async function unnoticed(text: string, isNoticed: (flipped: string) => Promise<boolean>) {
  const passed: number[] = []
  const flips = flipsOf(text)
  for (const { at, flipped } of flips)
    // What is no UTF-8 is not read at all.
    if (flipped !== undefined && !(await isNoticed(flipped))) passed.push(at)
  expect(flips.length).toBeGreaterThan(bytesOf(text).length / STEP - 1)
  return passed
}

describe('the log', () => {
  test('by reading, all but the last line; by an earlier log or head, every byte', async () => {
    const lastLine = sample.text.lastIndexOf('\n', sample.text.length - 2) + 1
    const start = bytesOf(sample.text.slice(0, lastLine)).length
    const byReading = await unnoticed(
      sample.text,
      async flipped => (await readLog(flipped, sample.held)).faults.length > 0
    )
    expect(byReading.filter(at => at < start)).toEqual([])
    expect(
      await unnoticed(sample.text, async flipped => compareEarlier(flipped, sample.text).length > 0)
    ).toEqual([])
    expect(
      await unnoticed(sample.text, async flipped => {
        const log = await readLog(flipped, sample.held)
        return log.faults.length > 0 || (await compareHead(await treeOf(log), head)).length > 0
      })
    ).toEqual([])
  })

  test('a line end changed within the log is noticed by reading', async () => {
    const ends = [...sample.text].flatMap((sign, at) => (sign === '\n' ? [at] : []))
    for (const at of ends) {
      const text = `${sample.text.slice(0, at)} ${sample.text.slice(at + 1)}`
      expect((await readLog(text)).faults.length).toBeGreaterThan(0)
    }
  })
})

test('a frozen document: never genuine, and another document on the disk', async () => {
  const { documents, published, log } = sample
  const proof = await sample.proof('CT-2', 1)
  for (const evidence of [{ published }, { proof }, { published, proof }])
    expect(
      await unnoticed(documents.two, async flipped => {
        const { word } = await verify(flipped, evidence)
        return word === 'altered' || word === 'unknown'
      })
    ).toEqual([])
  const revisions = [...log.standing.certificates.values()].flat()
  const found = new Map(revisions.map(revision => [documentName(revision), revision.data]))
  const { fingerprint } = await import('../../src/register/fingerprint.ts')
  expect(
    await unnoticed(documents.two, async flipped => {
      const faults = compareDocuments(
        log,
        new Map([...found, ['CT-2-r1.json', await fingerprint(flipped)]])
      )
      return faults.length === 1 && faults[0]!.code === 'REGISTER_DOCUMENT_CHANGED'
    })
  ).toEqual([])
})

test('a proof: altered, with the register and without', async () => {
  const { documents, published } = sample
  const proof = await sample.proof('CT-2', 1)
  for (const more of [{}, { published }])
    expect(
      await unnoticed(proof, async flipped => {
        const { word } = await verify(documents.two, { ...more, proof: flipped })
        return word === 'altered'
      })
    ).toEqual([])
})

test('a published register: proves nothing any more, or no longer the document', async () => {
  const { documents, published } = sample
  expect(
    await unnoticed(published, async flipped => {
      const { word } = await verify(documents.two, { published: flipped })
      return word === 'unknown'
    })
  ).toEqual([])
})
