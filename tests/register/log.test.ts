/** Reading a log: what was done to its text is told, at the right line, once. */

import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import { append, headOf, readLog, treeOf } from '../../src/register/log.ts'
import { readJson } from '../../src/register/canonical.ts'
import {
  codesOf,
  documentOf,
  forced,
  grown,
  issuedOf,
  linesOf,
  makeSample,
  type Sample,
  textOfLines
} from './sample.ts'

let sample: Sample
let lines: string[]
beforeAll(async () => {
  sample = await makeSample()
  lines = linesOf(sample.text)
})

const codes = async (text: string) => codesOf(await readLog(text, sample.held))

/** The one fault of code REGISTER_CHAIN: its line and sentence. */
async function chainBreak(changed: readonly string[]): Promise<[number, string]> {
  const { faults } = await readLog(textOfLines(changed), sample.held)
  const breaks = faults.filter(({ code }) => code === 'REGISTER_CHAIN')
  expect(breaks).toHaveLength(1)
  return [breaks[0]!.line, breaks[0]!.sentence]
}

describe('the sample', () => {
  test('is sound, with and without its documents', async () => {
    expect(sample.log.faults).toEqual([])
    expect((await readLog(sample.text)).faults).toEqual([])
    expect(sample.log.entries.map(({ event }) => event.is)).toEqual([
      'key-added',
      'issued',
      'drawn',
      'signed',
      'amended',
      'issued',
      'drawn',
      'issued',
      'withdrawn',
      'signed'
    ])
  })

  test('a line is canonical JSON, counts, and holds the hash of the one before', async () => {
    expect(lines.every(line => readJson(line).is === 'canonical')).toBe(true)
    expect(lines[0]).toMatch(
      /^\{"date":"2026-01-05","event":\{"is":"key-added","key":"[0-9a-f]{16}","note":"first key","publicKey":"[^"]{44}"\},"n":1,"previous":"0{64}"\}$/u
    )
    const { createHash } = await import('node:crypto')
    for (const [index, { n, previous }] of sample.log.entries.entries()) {
      expect(n).toBe(index + 1)
      if (index > 0)
        expect(previous).toBe(
          createHash('sha256')
            .update(lines[index - 1]!)
            .digest('hex')
        )
    }
  })

  test('no line is a log, and its root that of nothing', async () => {
    const log = await readLog('')
    expect([log.faults, log.lines]).toEqual([[], []])
    expect(await headOf(await treeOf(log))).toEqual({
      size: 0,
      root: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'
    })
  })
})

describe('the text', () => {
  test('line ends of two characters are told once, and read over', async () => {
    expect(await codes(sample.text.replaceAll('\n', '\r\n'))).toEqual(['1 REGISTER_LINE_END'])
    const fourth = lines.map((line, index) => (index === 3 ? `${line}\r` : line))
    expect(await codes(textOfLines(fourth))).toEqual(['4 REGISTER_LINE_END'])
  })

  test('a byte order mark likewise', async () => {
    const { faults } = await readLog(`\uFEFF${sample.text}`)
    expect(faults).toMatchObject([{ line: 1, code: 'REGISTER_LINE_END' }])
    expect(faults[0]!.sentence).toContain('byte order mark')
  })

  test('blank lines are told each, and read over', async () => {
    expect(
      await codes(textOfLines(['', ...lines.slice(0, 4), '  ', ...lines.slice(4), '']))
    ).toEqual(['1 REGISTER_BLANK_LINE', '6 REGISTER_BLANK_LINE', '13 REGISTER_BLANK_LINE'])
  })

  test('a last line without its end, and one cut at any place', async () => {
    const last = sample.text.length - 1
    expect(await codes(sample.text.slice(0, last))).toEqual(['10 REGISTER_CUT'])
    for (let kept = 1; kept < lines.at(-1)!.length; kept++)
      expect(await codes(sample.text.slice(0, last - kept))).toEqual(['10 REGISTER_CUT'])
  })

  test('a line that is not JSON breaks the chain behind it', async () => {
    const changed = lines.map((line, index) => (index === 4 ? line.slice(1) : line))
    expect(await codes(textOfLines(changed))).toEqual(['5 REGISTER_NOT_JSON', '6 REGISTER_CHAIN'])
  })

  test('a line that says the same in other words is not canonical', async () => {
    const changed = lines.with(4, lines[4]!.replace(',"n"', ', "n"'))
    expect(await codes(textOfLines(changed))).toEqual([
      '5 REGISTER_NOT_CANONICAL',
      '6 REGISTER_CHAIN'
    ])
    const twice = lines.with(9, lines[9]!.replace('"n":10', '"n":10,"n":10'))
    expect(await codes(textOfLines(twice))).toEqual(['10 REGISTER_NOT_CANONICAL'])
  })
})

describe('the chain', () => {
  test.for(Array.from({ length: 9 }, (_, index) => index))(
    'a changed line %i shows at the next',
    async index => {
      const changed = lines.with(index, lines[index]!.replace('"date":"2026-0', '"date":"2025-0'))
      const [line, sentence] = await chainBreak(changed)
      expect(line).toBe(index + 2)
      expect(sentence).toContain(`line ${index + 1} is not what it was`)
    }
  )

  test.for(Array.from({ length: 9 }, (_, index) => index))(
    'a dropped line %i shows where it stood, and nothing else does',
    async index => {
      const dropped = lines.toSpliced(index, 1)
      const [line, sentence] = await chainBreak(dropped)
      expect(line).toBe(index + 1)
      expect(sentence).toContain('1 line is missing before it')
      expect(await codes(textOfLines(dropped))).toEqual([`${index + 1} REGISTER_CHAIN`])
    }
  )

  test('two dropped lines are counted', async () => {
    expect(await chainBreak(lines.toSpliced(3, 2))).toEqual([
      4,
      '2 lines are missing before it: its number is 6, not 4'
    ])
  })

  test.for(Array.from({ length: 10 }, (_, index) => index))(
    'a doubled line %i shows at its double',
    async index => {
      const [line, sentence] = await chainBreak(lines.toSpliced(index, 0, lines[index]!))
      expect([line, sentence]).toEqual([
        index + 2,
        `this is line ${index + 1} once more: it was doubled`
      ])
    }
  )

  test('a line repeated further down is named as well', async () => {
    expect(await chainBreak(lines.toSpliced(7, 0, lines[2]!))).toEqual([
      8,
      'this is line 3 once more: it was doubled'
    ])
  })

  test('moved lines', async () => {
    for (let index = 0; index < 9; index++) {
      const swapped = lines.with(index, lines[index + 1]!).with(index + 1, lines[index]!)
      const [line, sentence] = await chainBreak(swapped)
      expect(line).toBe(index + 1)
      expect(sentence).toContain(`line ${index + 2}, which stands further down: lines were moved`)
    }
  })

  test('a foreign line put in, and a line that claims to be the first', async () => {
    const foreign = linesOf(
      await grown(
        textOfLines(lines.slice(0, 5)),
        [await issuedOf(documentOf('CT-9', 1))],
        '2026-02-01'
      )
    )[5]!
    const [line, sentence] = await chainBreak(lines.toSpliced(5, 0, foreign))
    expect(line).toBe(7)
    expect(sentence).toContain('it follows on line 5, not on line 6')
    const other = linesOf(
      await grown('', [await issuedOf(documentOf('CT-9', 1))], '2026-01-01')
    )[0]!
    expect(await chainBreak([lines[0]!, other])).toEqual([
      2,
      'it follows on nothing, not on line 1: lines were put in or moved between'
    ])
  })

  test("a first line with another 'previous'", async () => {
    const [line, sentence] = await chainBreak([lines[0]!.replace('"0000', '"1000')])
    expect([line, sentence]).toEqual([
      1,
      "the first line says that another came before it: its 'previous' was changed"
    ])
  })

  test('a wrong number in a sound chain is told once', async () => {
    const { createHash } = await import('node:crypto')
    let previous = '0'.repeat(64)
    const counted = lines.map((line, index) => {
      const wrong = line
        .replace(/"previous":"\w+"/u, `"previous":"${previous}"`)
        .replace(/"n":\d+/u, `"n":${index < 3 ? index + 1 : index + 2}`)
      previous = createHash('sha256').update(wrong).digest('hex')
      return wrong
    })
    expect(await codes(textOfLines(counted))).toEqual(['4 REGISTER_COUNT'])
  })

  test('dropping whole lines at the end cannot be seen in the text alone', async () => {
    for (let kept = 0; kept < lines.length; kept++)
      expect(await codes(textOfLines(lines.slice(0, kept)))).toEqual([])
  })

  test('dates say nothing more behind a break', async () => {
    const swapped = lines.with(3, lines[4]!).with(4, lines[3]!)
    expect(await codes(textOfLines(swapped))).toEqual(['4 REGISTER_CHAIN'])
  })

  test('a cut end hides no fault before it', async () => {
    const changed = lines.with(7, lines[7]!.replace(',"n"', ', "n"'))
    expect(await codes(textOfLines(changed).slice(0, -9))).toEqual([
      '8 REGISTER_NOT_CANONICAL',
      '9 REGISTER_CHAIN',
      '10 REGISTER_CUT'
    ])
  })

  test('what breaks a rule is told and not entered, and what follows is read on', async () => {
    const events = [
      await issuedOf(documentOf('CT-2', 1, 'again')),
      { is: 'withdrawn', number: 'CT-2', revision: 1, reason: 'wrong' } as const
    ]
    const log = await readLog(await forced(sample.text, events, '2026-04-01'))
    expect(codesOf(log)).toEqual(['11 REGISTER_NUMBER_TAKEN'])
    expect(log.standing.certificates.get('ct-2')).toMatchObject([{ n: 6, withdrawn: { n: 12 } }])
    const early = await forced(sample.text, [await issuedOf(documentOf('CT-9', 1))], '2025-01-01')
    expect(await codes(early)).toEqual(['11 REGISTER_DATE_ORDER'])
  })

  test('all faults in one run, in the order of the lines', async () => {
    const changed = lines
      .with(1, lines[1]!.replace('"n"', ' "n"'))
      .with(6, lines[6]!.replace('drawn', 'painted'))
      .toSpliced(4, 0, '')
    expect(await codes(textOfLines(changed))).toEqual([
      '2 REGISTER_NOT_CANONICAL',
      '3 REGISTER_CHAIN',
      '5 REGISTER_BLANK_LINE',
      '8 REGISTER_UNKNOWN_KIND'
    ])
  })
})

describe('appending', () => {
  test('what was appended reads sound, and the log before is its beginning', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 3 }), { maxLength: 6 }),
        async batches => {
          let text = sample.text
          for (const [at, batch] of batches.entries()) {
            const events = await Promise.all(batch.map(id => issuedOf(documentOf(`CT-1${id}`, 1))))
            const outcome = await append(text, events, `2026-03-1${at}`)
            if (!outcome.ok) continue
            expect(outcome.text.startsWith(text)).toBe(true)
            expect((await readLog(outcome.text)).faults).toEqual([])
            text = outcome.text
          }
          const numbers = linesOf(text).map(line => /"issued".*"number":"([^"]+)"/u.exec(line)?.[1])
          const issued = numbers.filter(number => number !== undefined)
          expect(new Set(issued).size).toBe(issued.length)
        }
      ),
      { numRuns: 40 }
    )
  })

  test('nothing is appended to a text with a fault', async () => {
    const event = await issuedOf(documentOf('CT-9', 1))
    for (const text of [
      sample.text.slice(0, -1),
      sample.text.replaceAll('\n', '\r\n'),
      textOfLines(lines.toSpliced(2, 1)),
      `${sample.text}\n`
    ])
      expect((await append(text, [event], '2026-03-02')).ok).toBe(false)
  })

  test('a date before the last line or of no calendar, and an event of no form', async () => {
    const event = await issuedOf(documentOf('CT-9', 1))
    const refusal = async (date: string, more: object = {}) => {
      const outcome = await append(sample.text, [{ ...event, ...more }], date)
      return outcome.ok ? [] : codesOf(outcome)
    }
    expect(await refusal('2026-02-28')).toEqual(['11 REGISTER_DATE_ORDER'])
    expect(await refusal('2026-03-01')).toEqual([])
    expect(await refusal('2026-02-30')).toEqual(['11 REGISTER_FIELD'])
    expect(await refusal('2026-03-02', { lot: '\ud800' })).toEqual(['11 REGISTER_FIELD'])
    expect(await refusal('2026-03-02', { colour: 'red' })).toEqual(['11 REGISTER_FIELD'])
  })

  test('no events leave the text as it is', async () => {
    expect(await append(sample.text, [], '2020-01-01')).toEqual({ ok: true, text: sample.text })
  })
})
