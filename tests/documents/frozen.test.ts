/** Freezing: what was issued reads back as it was, and only that. */

import { expect, test } from 'vitest'
import { certificateDocument } from '../../src/documents/certificate.ts'
import { certificateNow } from '../../src/documents/drift.ts'
import { documentOf, type FrozenCertificate } from '../../src/documents/frozen-schema.ts'
import { freeze, readFrozen, WORDING } from '../../src/documents/frozen.ts'
import { type LotData, lotDataSchema } from '../../src/documents/lot-data.ts'
import { viewLot } from '../../src/documents/lot-view.ts'
import { judgeContent } from '../../src/pipeline.ts'
import { problemData } from '../../src/problem.ts'
import { canonicalText, type Json } from '../../src/register/canonical.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { demoRegister } from './demo-register.ts'
import { base } from '../records/workshop.ts'
import { day, firstText, frozenOf, problemsOf, registerOf } from './issuing.ts'

const { evaluated, lots } = judgeContent(base)
const content = evaluated!.content
const lot = lots.find(one => one.evaluated.lot === 'EB-1')!
const order = content.certificates[0]!.record
const data = dataOf(frozenOf(firstText))

/** Figures for programs, as they were frozen. */
function dataOf({ data: frozen }: FrozenCertificate): LotData {
  return lotDataSchema.parse(frozen)
}

type Change = (json: { [name: string]: Json }) => unknown

/** The frozen certificate with members replaced, as canonical JSON. */
const changed = (change: Change): string => {
  const json = JSON.parse(firstText) as { [name: string]: Json }
  change(json)
  return canonicalText(json)
}

test('a frozen certificate reads back as the document, and freezes to the same text', () => {
  const document = certificateNow(content, lot, order)
  const read = frozenOf(firstText)
  expect(documentOf(read.certificate)).toEqual(document)
  expect(read).toMatchObject({ number: 'CT-1', revision: 1, wording: WORDING })
  expect(freeze(documentOf(read.certificate), data)).toBe(firstText)
})

test('every certificate of the demo freezes again to the very bytes that were issued', () => {
  expect(demoRegister.issued.length).toBeGreaterThanOrEqual(10)
  for (const { frozen, text } of demoRegister.issued)
    expect(freeze(documentOf(frozen.certificate), dataOf(frozen))).toBe(text)
})

test('a mark across the pages stays out, as it may change after the day of issue', () => {
  const document = { ...certificateNow(content, lot, order), mark: 'superseded' }
  expect(freeze(document, data)).toBe(firstText)
})

test('a preview is refused: it has neither number nor signatory', () => {
  const view = viewLot(content, lot, [])
  const preview = certificateDocument(view, content.producer.record, undefined, { paper: 'A4' })
  expect(preview).toMatchObject({ preview: true })
  expect(() => freeze(preview, data)).toThrow(
    new TypeError('freeze requires a certificate with number and signatory')
  )
})

test.for<[what: string, change: Change]>([
  ['a later format', json => (json['formatVersion'] = 2)],
  ['a further member', json => (json['more'] = 'x')],
  ['a member less', json => delete json['wording']],
  ['revision 0', json => (json['revision'] = 0)],
  ['a preview', json => Object.assign(json['certificate']!, { preview: true })]
])('%s is not read', ([, change]) => {
  expect(readFrozen(changed(() => undefined))).toBeDefined()
  expect(readFrozen(changed(change))).toBeUndefined()
})

test.for([
  ['spaces between', JSON.stringify(JSON.parse(firstText), null, 2)],
  ['no JSON', 'x'],
  ['nothing', ''],
  ['a list', '[]']
])('%s is not read', ([, text]) => {
  expect(readFrozen(text!)).toBeUndefined()
})

test('a certificate of a later format in the register is a problem of the log, not a stack', async () => {
  const text = changed(json => (json['formatVersion'] = 2))
  const hash = await fingerprint(text)
  const register = await registerOf({ 'CT-1-r1.json': text }, [
    [{ is: 'issued', number: 'CT-1', revision: 1, lot: 'EB-1', data: hash }],
    day
  ])
  expect(register.issued).toEqual([])
  const [problem, ...others] = problemsOf(base, register)
  expect(others).toEqual([])
  expect(problemData(problem!)).toMatchObject({
    file: 'register/log.jsonl',
    line: 1,
    column: 1,
    code: 'CERTIFICATE_FORMAT'
  })
  expect(problem!.message).toBe(
    'CT-1-r1.json is written in a format this version of Lotfolio does not read'
  )
  expect(problem!.hint).toContain('use the version of Lotfolio that issued it')
})
