/** The one word a holder gets, and the sentences that say why. */

import { afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import { bytesOf, toHex } from '../../src/register/bytes.ts'
import type { RegisterEvent } from '../../src/register/events.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { append, headOf, readLog, treeOf } from '../../src/register/log.ts'
import { inclusionPath, rootOf, treeOver } from '../../src/register/merkle.ts'
import { proofOf, proofText, readProof } from '../../src/register/proof.ts'
import { publishedText, readPublished } from '../../src/register/published.ts'
import { type Evidence, verify } from '../../src/register/verify.ts'
import {
  addedOf,
  amendedOf,
  documentOf,
  grown,
  issuedOf,
  keyOf,
  linesOf,
  makeSample,
  type Sample,
  signedOf,
  textOfLines
} from './sample.ts'

let sample: Sample
beforeAll(async () => void (sample = await makeSample()))
afterEach(() => void vi.unstubAllGlobals())

/** The word, and all sentences as one text. */
async function answer(data: string, evidence: Evidence): Promise<[string, string]> {
  const { word, sentences } = await verify(data, evidence)
  for (const sentence of sentences) {
    expect(sentence).toMatch(/^\p{Lu}.*\.$/u)
    expect(sentence).not.toMatch(/undefined|NaN|\[object|\.\./u)
  }
  return [word, sentences.join(' ')]
}

/** The sample's register grown by events, as the site would publish it. */
async function publishedWith(events: readonly RegisterEvent[]): Promise<string> {
  const log = await readLog(await grown(sample.text, events, '2026-04-01'))
  return publishedText(log, await treeOf(log))
}

describe('with the published register', () => {
  const published = (more: Evidence = {}): Evidence => ({ published: sample.published, ...more })

  test('genuine: document, signature and PDF', async () => {
    const pdf = { sha256: sample.pdfOfTwo }
    const [word, text] = await answer(sample.documents.two, published({ pdf }))
    expect(word).toBe('genuine')
    const key = await keyOf(0)
    expect(text).toMatch(
      /^The document is CT-2 revision 1 for lot EB-2: its fingerprint (?:[0-9a-f]{4} ){3}[0-9a-f]{4} is the one that the register names on line 6, entered on 2026-02-03\./u
    )
    expect(text).toContain(
      `Signed on 2026-03-01 with key ${key.id}, added on 2026-01-05. The signature is good.`
    )
    expect(text).toContain('The PDF is the one drawn on 2026-02-03, byte for byte.')
  })

  test('genuine without a signature', async () => {
    expect(await answer(sample.documents.oneAmended, published())).toEqual([
      'genuine',
      expect.stringContaining('No key of the register has signed what it says.')
    ])
  })

  test('superseded: by which revision, when and why', async () => {
    const [word, text] = await answer(sample.documents.one, published())
    expect(word).toBe('superseded')
    expect(text).toContain('It was superseded by revision 2 on 2026-02-01: a mass was mistyped.')
  })

  test('superseded twice over, and the latest withdrawn', async () => {
    const third = await amendedOf(documentOf('CT-1', 3), 'again.')
    const later = await publishedWith([
      third,
      { is: 'withdrawn', number: 'CT-1', revision: 3, reason: 'all wrong' }
    ])
    expect(await answer(sample.documents.one, { published: later })).toEqual([
      'superseded',
      expect.stringContaining(
        'a mass was mistyped. The latest is revision 3 of 2026-04-01. Revision 3 was withdrawn on 2026-04-01: all wrong.'
      )
    ])
    expect(await answer(sample.documents.oneAmended, { published: later })).toEqual([
      'superseded',
      expect.stringMatching(/by revision 3 on 2026-04-01: again\. Revision 3 was withdrawn/u)
    ])
  })

  test('withdrawn: when and why', async () => {
    expect(await answer(sample.documents.three, published())).toEqual([
      'withdrawn',
      expect.stringContaining('It was withdrawn on 2026-03-01: the lot was mixed up.')
    ])
  })

  test('withdrawn: given up where two computers drew one number', async () => {
    const lost = documentOf('CT-2', 1, 'the other')
    const data = await fingerprint(lost)
    const event = {
      is: 'voided',
      number: 'CT-2',
      revision: 1,
      data,
      reason: 'drawn twice'
    } as const
    expect(await answer(lost, { published: await publishedWith([event]) })).toEqual([
      'withdrawn',
      'The document is one given up as CT-2 revision 1 on 2026-04-01: drawn twice.'
    ])
  })

  test('altered: the number is known, the document is another', async () => {
    const [word, text] = await answer(documentOf('CT-2', 1, 'better'), published())
    expect(word).toBe('altered')
    expect(text).toContain('The document calls itself CT-2 revision 1, but its fingerprint')
  })

  test('altered: only its writing differs', async () => {
    const spaced = sample.documents.two.replace(',', ', ')
    const [word, text] = await answer(spaced, published())
    expect(word).toBe('altered')
    expect(text).toContain('What it says is CT-2 revision 1 unchanged')
    expect((await answer(`${sample.documents.two}\n`, published()))[0]).toBe('altered')
  })

  test('altered: the data is genuine and the PDF another, and the sentence says exactly that', async () => {
    const pdf = { sha256: await fingerprint('another PDF') }
    const [word, text] = await answer(sample.documents.two, published({ pdf }))
    expect(word).toBe('altered')
    expect(text).toContain(
      'The data attached to the PDF is genuine, but the PDF itself is not the one drawn on 2026-02-03'
    )
    const [gone] = await answer(sample.documents.one, published({ pdf }))
    expect(gone).toBe('altered')
  })

  test('unknown: a PDF that the register does not name', async () => {
    const pdf = { sha256: sample.pdfOfTwo }
    expect(await answer(sample.documents.oneAmended, published({ pdf }))).toEqual([
      'unknown',
      expect.stringContaining('the register names no PDF for it')
    ])
  })

  test.for([
    ['a number never issued', documentOf('CT-9', 1)],
    ['a revision never issued', documentOf('CT-2', 2)],
    ['no number', '{"lot":"EB-2"}'],
    ['no object', '[1,2]'],
    ['a number of no text', '{"number":2,"revision":1}'],
    ['nothing', ''],
    ['no JSON', '%PDF-1.7']
  ] as const)('unknown: %s', async ([, data]) => {
    expect(await answer(data, published())).toEqual([
      'unknown',
      expect.stringContaining('No line of the register names the fingerprint')
    ])
  })

  test('altered: a signature that is not over this document', async () => {
    const forged = await signedOf(await keyOf(0), documentOf('CT-3', 1, 'forged'))
    expect(
      await answer(sample.documents.three, { published: await publishedWith([forged]) })
    ).toEqual([
      'altered',
      expect.stringContaining('The signature is not that of this key over this document.')
    ])
  })

  test('a key retired later leaves its signatures good, and is told', async () => {
    const { id } = await keyOf(0)
    const later = await publishedWith([
      { is: 'key-retired', key: id, reason: 'the laptop was lost' }
    ])
    expect(await answer(sample.documents.two, { published: later })).toEqual([
      'genuine',
      expect.stringContaining(
        'added on 2026-01-05 and retired on 2026-04-01: the laptop was lost. The signature is good.'
      )
    ])
  })
})

describe('with the proof alone', () => {
  test('genuine as far as can be known offline, and where to look', async () => {
    const proof = await sample.proof('CT-2', 1)
    const [word, text] = await answer(sample.documents.two, {
      proof,
      at: 'https://example.org/register'
    })
    expect(word).toBe('genuine')
    expect(text).toContain('The signature is good.')
    expect(text).toContain(
      'The proof reaches to 2026-03-01: what was entered later, an amendment or a withdrawal, cannot be known offline. Compare with the register at https://example.org/register.'
    )
    expect((await answer(sample.documents.two, { proof }))[1]).toContain(
      'Compare with the register that the producer publishes.'
    )
  })

  test('what the proof itself knows to be over', async () => {
    const { one, three } = sample.documents
    expect((await answer(one, { proof: await sample.proof('CT-1', 1) }))[0]).toBe('superseded')
    expect((await answer(three, { proof: await sample.proof('CT-3', 1) }))[0]).toBe('withdrawn')
  })

  test('the proof inside a PDF, taken before it was drawn, cannot name it', async () => {
    const log = await readLog(textOfLines(linesOf(sample.text).slice(0, 6)))
    const proof = proofText((await proofOf(log, await treeOf(log), 'CT-2', 1))!)
    const pdf = { sha256: sample.pdfOfTwo }
    const { two } = sample.documents
    expect(await answer(two, { proof, pdf })).toEqual([
      'unknown',
      expect.stringContaining('a proof carried inside a PDF cannot name the PDF itself')
    ])
    expect(await answer(two, { proof, pdf, published: sample.published })).toEqual([
      'genuine',
      expect.stringContaining(
        'The register still begins with the 6 lines that the proof was taken from.'
      )
    ])
    expect((await answer(two, { proof: await sample.proof('CT-2', 1), pdf }))[1]).toContain(
      'byte for byte'
    )
  })

  test('altered and unknown as with the register', async () => {
    const proof = await sample.proof('CT-2', 1)
    expect((await answer(documentOf('CT-2', 1, 'better'), { proof }))[0]).toBe('altered')
    expect(await answer(sample.documents.three, { proof })).toEqual([
      'unknown',
      expect.stringContaining(
        'The proof is of CT-2 revision 1, and not of the document given here.'
      )
    ])
    expect((await answer('{"damaged', { proof }))[0]).toBe('altered')
  })

  test('the proof of another revision of the same certificate is not this one', async () => {
    const proof = await sample.proof('CT-1', 2)
    expect((await answer(sample.documents.one, { proof }))[0]).toBe('unknown')
  })

  test('nothing to compare with, or nothing sound', async () => {
    expect((await answer(sample.documents.two, {}))[0]).toBe('unknown')
    expect((await answer(sample.documents.two, { proof: '{}' }))[0]).toBe('altered')
  })
})

describe('proof and register together', () => {
  /** A register with another line 6: CT-2 issued anew, as if the first had never been. */
  async function rewritten(document: string): Promise<string> {
    const start = textOfLines(linesOf(sample.text).slice(0, 5))
    const text = await grown(start, [await issuedOf(document)], '2026-02-03')
    const log = await readLog(text)
    return publishedText(log, await treeOf(log))
  }

  test('a register rewritten since is told, even to one who holds what it now says', async () => {
    const proof = await sample.proof('CT-2', 1)
    const better = documentOf('CT-2', 1, 'better')
    const published = await rewritten(better)
    expect(await answer(sample.documents.two, { proof, published })).toEqual([
      'altered',
      expect.stringContaining(
        'Line 6 of the register is not the one in the proof: the register was rewritten'
      )
    ])
    expect((await answer(better, { proof, published }))[0]).toBe('altered')
  })

  test('a proof of the same lines over other neighbours shows by its root', async () => {
    const other = await treeOf({ lines: sample.log.lines.with(2, 'another line') })
    const proof = proofText((await proofOf(sample.log, other, 'CT-2', 1))!)
    expect((await readProof(proof)).ok).toBe(true)
    expect(await answer(sample.documents.two, { proof, published: sample.published })).toEqual([
      'altered',
      expect.stringContaining('The first 10 lines of the register are not those of the proof')
    ])
  })

  test('an older copy of the register', async () => {
    const old = await readLog(textOfLines(linesOf(sample.text).slice(0, 7)))
    const published = await publishedText(old, await treeOf(old))
    expect(
      await answer(sample.documents.two, { proof: await sample.proof('CT-2', 1), published })
    ).toEqual([
      'genuine',
      expect.stringContaining('taken from 10 lines, and the register given here has 7')
    ])
  })
})

describe('a damaged register proves nothing', () => {
  test('not one, a broken chain, another head', async () => {
    const { root } = await headOf(await treeOf(sample.log))
    for (const [published, why] of [
      ['{}', 'it is not written as a register is'],
      [`${sample.published}\n`, 'it is not written as a register is'],
      [sample.published.replace('2026-02-01', '2026-02-02'), 'line 6: line 5 is not what it was'],
      [sample.published.replace(root, '0'.repeat(64)), 'its lines do not come to'],
      [sample.published.replace('"size":10', '"size":11'), 'its lines do not come to']
    ] as const)
      expect(await answer(sample.documents.two, { published })).toEqual([
        'unknown',
        expect.stringContaining(`The register given here is damaged and proves nothing: ${why}`)
      ])
  })

  test('it is made of a log without faults only', async () => {
    const bad = await readLog(textOfLines(linesOf(sample.text).toSpliced(2, 1)))
    await expect(publishedText(bad, await treeOf(bad))).rejects.toThrow(RangeError)
    expect((await readPublished(sample.published)).ok).toBe(true)
  })
})

describe('browsers that lack something', () => {
  test('without Ed25519: everything else is compared, and the signature is not checked', async () => {
    const { subtle } = globalThis.crypto
    vi.stubGlobal('crypto', {
      subtle: { digest: subtle.digest.bind(subtle), importKey: () => Promise.reject(new Error()) }
    })
    expect(await answer(sample.documents.two, { published: sample.published })).toEqual([
      'genuine',
      expect.stringContaining(
        'The signature was not checked here: this browser does not know Ed25519.'
      )
    ])
    expect((await readLog(sample.text, sample.held)).faults).toEqual([])
    const more = await issuedOf(documentOf('CT-9', 1))
    expect((await append(sample.text, [more], '2026-04-01', sample.held)).ok).toBe(true)
  })

  test('without hashing: nothing is said', async () => {
    vi.stubGlobal('crypto', {})
    expect(await answer(sample.documents.two, { published: sample.published })).toEqual([
      'unknown',
      'Nothing was compared: this browser computes fingerprints only on pages that come by https.'
    ])
  })
})

describe('a proof', () => {
  test('holds the lines of its certificate, the keys of its signatures, and the last line', async () => {
    const indexes = async (number: string, revision: number) =>
      (await proofOf(sample.log, await treeOf(sample.log), number, revision))?.lines.map(
        ({ index }) => index
      )
    expect(await indexes('CT-1', 1)).toEqual([0, 1, 2, 3, 4, 9])
    expect(await indexes('CT-2', 1)).toEqual([0, 5, 6, 9])
    expect(await indexes('CT-3', 1)).toEqual([7, 8, 9])
    expect(await indexes('CT-3', 2)).toBeUndefined()
    expect(await indexes('CT-9', 1)).toBeUndefined()
  })

  test('holds what was given up under its number, and the end of its key', async () => {
    const { id } = await keyOf(0)
    const lost = { is: 'voided', number: 'ct-2', revision: 1, data: 'ab'.repeat(32) } as const
    const events: RegisterEvent[] = [
      await issuedOf(documentOf('CT-9', 1)),
      { ...lost, reason: 'drawn twice' },
      { is: 'key-retired', key: id, reason: 'lost' },
      addedOf(await keyOf(1))
    ]
    const log = await readLog(await grown(sample.text, events, '2026-04-01'))
    const proof = (await proofOf(log, await treeOf(log), 'CT-2', 1))!
    expect(proof.lines.map(({ index }) => index)).toEqual([0, 5, 6, 9, 11, 12, 13])
    expect(await readProof(proofText(proof))).toMatchObject({ ok: true, asOf: '2026-04-01' })
  })

  test('to some of the lines is that of a log cut there', async () => {
    const tree = await treeOf(sample.log)
    for (let size = 1; size <= sample.log.lines.length; size++) {
      const cut = await readLog(textOfLines(linesOf(sample.text).slice(0, size)))
      for (const number of ['CT-1', 'CT-2', 'CT-3']) {
        const proof = await proofOf(sample.log, tree, number, 1, size)
        expect(proof).toEqual(await proofOf(cut, await treeOf(cut), number, 1))
        if (proof) expect(await readProof(proofText(proof))).toMatchObject({ ok: true })
      }
    }
  })

  test('is of a log without faults, by its own tree', async () => {
    const tree = await treeOf(sample.log)
    const bad = await readLog(textOfLines(linesOf(sample.text).toSpliced(2, 1)))
    await expect(proofOf(bad, await treeOf(bad), 'CT-2', 1)).rejects.toThrow(RangeError)
    const short = await readLog(textOfLines(linesOf(sample.text).slice(0, 7)))
    await expect(proofOf(short, tree, 'CT-2', 1)).rejects.toThrow(RangeError)
  })

  test('over lines that stand in other places than they count is not sound', async () => {
    const whole = (await proofOf(sample.log, await treeOf(sample.log), 'CT-2', 1))!
    const [one, two, ...others] = sample.log.lines
    const swapped = await treeOver([two!, one!, ...others].map(bytesOf))
    const lines = await Promise.all(
      whole.lines.map(async ({ index, line }) => {
        const at = index === 0 ? 1 : index
        return { index: at, line, path: (await inclusionPath(swapped, at)).map(toHex) }
      })
    )
    const root = toHex(await rootOf(swapped))
    const read = await readProof(proofText({ ...whole, root, lines }))
    expect(read).toMatchObject({ ok: false, why: 'its line 1 does not lead to its root' })
  })

  test('is sound only with all it needs', async () => {
    const whole = (await proofOf(sample.log, await treeOf(sample.log), 'CT-2', 1))!
    const why = async (more: object) => {
      const read = await readProof(proofText({ ...whole, ...more }))
      return read.ok ? 'sound' : read.why
    }
    const { lines } = whole
    expect(await why({})).toBe('sound')
    expect(await why({ size: 9 })).toBe('its line 10 does not lead to its root')
    expect(await why({ size: 11 })).toBe('its line 10 does not lead to its root')
    expect(await why({ lines: lines.toReversed() })).toBe(
      'its lines are not those that a proof of this certificate has'
    )
    expect(await why({ lines: [lines[0], ...lines] })).toBe(
      'its lines are not those that a proof of this certificate has'
    )
    // Without the line that issued it, its drawing has nothing to follow.
    expect(await why({ lines: lines.toSpliced(1, 1) })).toContain('its line 7 breaks a rule')
    expect(await why({ lines: lines.toSpliced(3, 1) })).toBe(
      'its lines are not those that a proof of this certificate has'
    )
    expect(await why({ revision: 2 })).toBe('it has no line for CT-2 revision 2')
    expect(await why({ number: 'ct-2' })).toBe('it has no line for ct-2 revision 1')
    const moved = lines.with(1, { ...lines[1]!, index: 4 })
    expect(await why({ lines: moved })).toBe('its line 6 does not lead to its root')
    const damaged = lines.with(1, { ...lines[1]!, line: `${lines[1]!.line} ` })
    expect(await why({ lines: damaged })).toBe('it holds a line that is no event')
  })
})

test('a proof cut short, padded or spaced out is none', async () => {
  const { log, documents } = sample
  const tree = await treeOf(log)
  const [three, other] = [await proofOf(log, tree, 'CT-3', 1), await proofOf(log, tree, 'CT-1', 1)]
  const text = proofText(three!)
  const padded = { ...three!, lines: [other!.lines[4]!, ...three!.lines] }
  const short = { ...three!, lines: three!.lines.slice(0, -1) }
  expect((await readProof(text)).ok).toBe(true)
  for (const bad of [proofText(padded), proofText(short), `${text}\n`])
    expect((await verify(documents.three, { proof: bad })).word).toBe('altered')
})

test('what is withdrawn in a PDF nobody named is unknown', async () => {
  const evidence = { published: sample.published, pdf: { sha256: sample.pdfOfTwo } }
  expect((await answer(sample.documents.three, evidence))[0]).toBe('unknown')
})

test('a second key signs the same revision', async () => {
  const second = await keyOf(1)
  const published = await publishedWith([
    addedOf(second),
    await signedOf(second, sample.documents.two)
  ])
  const [word, text] = await answer(sample.documents.two, { published })
  expect([word, text.match(/The signature is good\./gu)?.length]).toEqual(['genuine', 2])
})
