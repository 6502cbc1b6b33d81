/** A small register with one of everything, and the parts to make others. */

import type { Json } from '../../src/register/canonical.ts'
import { canonicalText } from '../../src/register/canonical.ts'
import { bytesOf } from '../../src/register/bytes.ts'
import type { RegisterEvent } from '../../src/register/events.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { type KeyPair, keyPairOf, sign } from '../../src/register/keys.ts'
import { append, documentsOf, type Log, readLog, treeOf } from '../../src/register/log.ts'
import { proofOf, proofText } from '../../src/register/proof.ts'
import { publishedText } from '../../src/register/published.ts'
import type { Documents } from '../../src/register/rules.ts'

/** A frozen document: JSON whose top names number and revision. */
export const documentOf = (number: string, revision: number, more: Json = {}): string =>
  canonicalText({ number, revision, lot: lotOf(number), says: more })

export const lotOf = (number: string): string => number.replace('CT', 'EB')

export const issuedOf = async (document: string): Promise<RegisterEvent> => {
  const { number, lot } = JSON.parse(document) as { number: string; lot: string }
  return { is: 'issued', number, revision: 1, lot, data: await fingerprint(document) }
}

export const amendedOf = async (document: string, reason: string): Promise<RegisterEvent> => {
  const { number, lot, revision } = JSON.parse(document) as {
    number: string
    lot: string
    revision: number
  }
  return { is: 'amended', number, revision, lot, data: await fingerprint(document), reason }
}

/** Key pairs of fixed seeds: byte 0, 1, 2 thirty-two times. */
export const keyOf = (seed: number): Promise<KeyPair> => keyPairOf(new Uint8Array(32).fill(seed))

export const addedOf = ({ id, publicKey }: KeyPair, note?: string): RegisterEvent => ({
  is: 'key-added',
  key: id,
  publicKey,
  ...(note === undefined ? {} : { note })
})

export const signedOf = async (
  { id, privatePem }: KeyPair,
  document: string
): Promise<RegisterEvent> => {
  const { number, revision } = JSON.parse(document) as { number: string; revision: number }
  const signature = await sign(privatePem, bytesOf(document))
  return { is: 'signed', number, revision, key: id, signature }
}

/** Append, or fail the test with the faults. */
export async function grown(
  text: string,
  events: readonly RegisterEvent[],
  date: string,
  documents?: Documents
): Promise<string> {
  const outcome = await append(text, events, date, documents)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults))
  return outcome.text
}

/** Append without asking whether the rules allow it, as another program might. */
export async function forced(
  text: string,
  events: readonly RegisterEvent[],
  date: string
): Promise<string> {
  const lines = linesOf(text)
  for (const event of events) {
    const previous = await fingerprint(lines.at(-1)!)
    lines.push(canonicalText({ n: lines.length + 1, previous, date, event } as Json))
  }
  return textOfLines(lines)
}

export interface Sample {
  readonly text: string
  readonly log: Log
  readonly documents: Readonly<Record<'one' | 'oneAmended' | 'two' | 'three', string>>
  readonly held: Documents
  readonly pdfOfTwo: string
  readonly published: string
  /** Proof of each revision, as its text. */
  proof(number: string, revision: number): Promise<string>
}

/**
 * Ten lines: a key (1), CT-1 issued, drawn, signed (2 to 4), amended (5), CT-2 issued, drawn (6, 7),
 * CT-3 issued and withdrawn (8, 9), CT-2 signed (10).
 */
export async function makeSample(): Promise<Sample> {
  const key = await keyOf(0)
  const documents = {
    one: documentOf('CT-1', 1, { mass: '25.00 g' }),
    oneAmended: documentOf('CT-1', 2, { mass: '25.10 g' }),
    two: documentOf('CT-2', 1, 'größer ≥ 5 µm'),
    three: documentOf('CT-3', 1)
  }
  const held = await documentsOf(Object.values(documents))
  const pdfOfTwo = await fingerprint('a PDF of CT-2')
  let text = await grown('', [addedOf(key, 'first key')], '2026-01-05', held)
  const first = [
    await issuedOf(documents.one),
    drawnOf('CT-1', 1, await fingerprint('a PDF of CT-1')),
    await signedOf(key, documents.one)
  ]
  text = await grown(text, first, '2026-01-06', held)
  text = await grown(
    text,
    [await amendedOf(documents.oneAmended, 'a mass was mistyped')],
    '2026-02-01',
    held
  )
  const second = [await issuedOf(documents.two), drawnOf('CT-2', 1, pdfOfTwo)]
  text = await grown(text, second, '2026-02-03', held)
  text = await grown(text, [await issuedOf(documents.three)], '2026-02-04', held)
  text = await grown(
    text,
    [
      { is: 'withdrawn', number: 'CT-3', revision: 1, reason: 'the lot was mixed up' },
      await signedOf(key, documents.two)
    ],
    '2026-03-01',
    held
  )
  const log = await readLog(text, held)
  const tree = await treeOf(log)
  return {
    text,
    log,
    documents,
    held,
    pdfOfTwo,
    published: await publishedText(log, tree),
    proof: async (number, revision) => proofText((await proofOf(log, tree, number, revision))!)
  }
}

export const drawnOf = (number: string, revision: number, pdf: string): RegisterEvent => ({
  is: 'drawn',
  number,
  revision,
  pdf,
  pages: 2
})

/** The lines of a log, without their ends. */
export const linesOf = (text: string): string[] => text.split('\n').slice(0, -1)

export const textOfLines = (lines: readonly string[]): string =>
  lines.map(line => `${line}\n`).join('')

/** Faults as 'line CODE'. */
export const codesOf = ({ faults }: Pick<Log, 'faults'>): string[] =>
  faults.map(({ line, code }) => `${line} ${code}`)
