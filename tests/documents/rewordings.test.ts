/** Statements reworded since a certificate was issued: told as a note, never a difference of records. */

import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import clp from '../../src/hazards/clp-statements.json' with { type: 'json' }
import file from '../../src/hazards/earlier-wordings.json' with { type: 'json' }
import {
  editionOfWording,
  editionText,
  languages,
  statementText
} from '../../src/hazards/statements.ts'
import { formatProblem, problemData, type SourceFile } from '../../src/problem.ts'
import { base, edited } from '../records/workshop.ts'
import { none, problemsOf, registerSaying, textToIssue } from './issuing.ts'

const [earlier] = file.clp
const old = earlier!.edition
const oldP280 = earlier!.statements.P280.en

test('the file has the shape its type says, and words something otherwise than the one after it', () => {
  const texts = z.partialRecord(z.enum(languages), z.string().min(4))
  const wordings = z.array(
    z.strictObject({
      edition: z.string().min(10),
      short: z.string().max(30),
      sure: z.enum(['print', 'second hand', 'memory']),
      statements: z.record(z.string().regex(/^(?:H|EUH|P)\d{3}/u), texts)
    })
  )
  const shape = z.strictObject({ clp: wordings, un: wordings, us: wordings })
  expect(shape.safeParse(file).error).toBeUndefined()
  const names = [clp.edition, ...file.clp.map(({ edition }) => edition)]
  expect(new Set(names).size).toBe(names.length)
  for (const { statements } of file.clp)
    for (const [code, texts] of Object.entries(statements))
      expect(Object.entries(texts)).not.toEqual(
        Object.entries(clp.statements).find(([one]) => one === code)?.[1]
      )
})

test('an earlier wording is found by what papers name, and gives its own words', () => {
  expect(editionOfWording(old)).toBe('clp')
  expect(editionOfWording(editionText('us'))).toBe('us')
  expect(editionOfWording('another')).toBeUndefined()
  const words = (wording?: string, code = 'P280') =>
    statementText(code, 'en', undefined, 'clp', wording)
  expect(words(old)).toEqual({ ok: true, text: oldP280 })
  expect(words(editionText('clp'))).toEqual(words())
  expect(words()).not.toEqual(words(old))
  expect(words(old, 'H319')).toEqual(words(undefined, 'H319'))
  expect(statementText('P280', 'fr', undefined, 'clp', old)).toEqual(statementText('P280', 'fr'))
})

/** The workshop, its grade with hazards. */
const workshop = (hazards: string): SourceFile[] => {
  const put: Readonly<Record<string, string>> = {
    'grades/FK-1.yaml': edited('grades/FK-1.yaml', ['limits:', `hazards: { ${hazards} }\nlimits:`]),
    'batches/EB-1.yaml': edited('batches/EB-1.yaml', [
      'status:',
      'hazards:\n  decisions:\n    - { about: missing data, by: quality manager, on: 2026-02-06, because: seen before }\nstatus:'
    ])
  }
  return base.map(one => ({ ...one, text: put[one.path] ?? one.text }))
}

const declared = (more = '') =>
  `classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P280, P337+P313], basis: our own${more}`
const files = workshop(declared())
const today = textToIssue(files, none)
const nowP280 = statementText('P280', 'en')

/** The certificate as a program before the rewording issued it. */
const before = today
  .replaceAll(editionText('clp'), old)
  .replaceAll(nowP280.ok ? nowP280.text : '', oldP280)

const toldBy = async (text: string, records: readonly SourceFile[] = files) =>
  problemsOf(records, await registerSaying(text)).map(problem => {
    const { file: path, code } = problemData(problem)
    return [`${path} ${code}`, problem.message, formatProblem(problem)] as const
  })

describe('a certificate issued in an earlier wording', () => {
  test('is none in today’s: nothing is told', async () => {
    expect(await toldBy(today)).toEqual([])
    expect(before).not.toBe(today)
  })

  test('stands: the new words are a note', async () => {
    const [[code, message] = [], ...rest] = await toldBy(before)
    expect(rest).toEqual([])
    expect(code).toBe('certificates/CT-1.yaml REWORDED')
    expect(message).toBe(
      `CT-1: issued in the wording of ${old}; P280 would now be worded 'Wear protective gloves/protective clothing/eye protection/face protection/hearing protection.'`
    )
  })

  test.for([
    [
      'other precautions',
      declared().replace('P337+P313', 'P273'),
      'Hazards: was Warning H319 P280 P337+P313'
    ],
    [
      'words for its gap',
      declared(', fill: { P280: an apron }'),
      'Hazards: was Warning H319 P280 P337+P313, now Warning H319'
    ],
    ['another basis', declared().replace('our own', 'a test'), 'Hazards, basis: the text differs'],
    ['another class', declared().replace('Eye Irrit. 2', 'Eye Dam. 1'), 'Hazards: was Warning H319']
  ] as const)('differs where the record has %s', async ([, hazards, says]) => {
    const found = await toldBy(before, workshop(hazards))
    const [differs] = found.filter(([code]) => code.endsWith('CERTIFICATE_DIFFERS'))
    expect(differs?.[1]).toContain(says)
    expect(differs?.[1]).not.toMatch(/wording|words of P280/u)
  })

  test('differs where its words are not those of the wording it names', async () => {
    const [found] = await toldBy(before.replaceAll(oldP280, 'Wear gloves.'))
    expect(found?.[0]).toBe('certificates/CT-1.yaml CERTIFICATE_DIFFERS')
    expect(found?.[1]).toContain('Hazards, words of P280')
  })

  test('differs where it names a wording that this program never printed', async () => {
    const codes = (await toldBy(before.replaceAll(old, 'CLP of another day'))).map(([code]) => code)
    expect(codes).toEqual(['certificates/CT-1.yaml CERTIFICATE_DIFFERS'])
  })
})
