/** What each type of EN 10204 asks for, and what is offered where that is not there. */

import { describe, expect, test } from 'vitest'
import { judgeContent } from '../../src/pipeline.ts'
import { fieldText, type SourceFile } from '../../src/problem.ts'
import { base, edited } from '../records/workshop.ts'

const order = (...lines: readonly string[]): SourceFile => ({
  path: 'certificates/CT-1.yaml',
  text: edited('certificates/CT-1.yaml').trimEnd() + `\n${lines.join('\n')}\n`
})

const shipment = (...lines: readonly string[]): SourceFile => ({
  path: 'shipments/SH-1.yaml',
  text: [
    'number: SH-1',
    'sent: 2026-02-08',
    'customer: Brask Seals',
    'contents:',
    '  - { lot: EB-1, mass: 5.00 g }',
    ...lines
  ].join('\n')
})

const free: SourceFile = {
  path: 'producer.yaml',
  text: edited('producer.yaml', [
    'name: Odile Varnholt }',
    'name: Odile Varnholt, independent-of-manufacturing: yes }'
  ])
}

/** What is said of the workshop with some records in place of its own. */
function said(...files: readonly SourceFile[]): string[] {
  const paths = new Set(files.map(({ path }) => path))
  const all = [...base.filter(({ path }) => !paths.has(path)), ...files]
  return judgeContent(all).problems.map(
    ({ code, field, message, hint }) => `${code} ${fieldText(field)}: ${message} | ${hint}`
  )
}

const ordered = shipment('order: PO 1')
const typed = (type: string) => order(`type: ${type}`, 'shipment: SH-1')

describe('an inspection certificate 3.1', () => {
  test('is issued to an order, signed by an independent role', () => {
    expect(said(free, typed('3.1'), ordered)).toEqual([])
  })

  test('needs an order in the shipment it names', () => {
    expect(said(free, typed('3.1'), shipment())).toEqual([
      expect.stringMatching(
        /^NOT_CERTIFIABLE shipment: .*shipment SH-1 names none \| add 'order:' to the shipment, or leave 'type' out/u
      )
    ])
  })

  test('is not signed by a role of the manufacturing department', () => {
    const two: SourceFile = {
      ...free,
      text: `${free.text}  - { role: owner, name: Jory Pell, independent-of-manufacturing: no }\n`
    }
    const signed = typed('3.1').text.replace('signatory: quality manager', 'signatory: owner')
    expect(said(two, { ...typed('3.1'), text: signed }, ordered)).toEqual([
      expect.stringMatching(
        /^NOT_CERTIFIABLE signatory: .*the owner is none \| let the quality manager sign, or leave 'type' out/u
      )
    ])
  })

  test('is not signed by whoever made the lot, whatever the role says', () => {
    const made: SourceFile = {
      path: 'batches/EB-1.yaml',
      text: edited('batches/EB-1.yaml', ['grade: FK-1', 'by: Odile Varnholt\ngrade: FK-1'])
    }
    expect(said(free, made, typed('3.1'), ordered)).toEqual([
      expect.stringMatching(/^NOT_CERTIFIABLE signatory: .*whoever made EB-1 cannot also be/u)
    ])
  })
})

test.for(['2.1', '2.2', '3.1'])('%s is not issued on a lot let go under concession', type => {
  const under: SourceFile = {
    path: 'batches/EB-1.yaml',
    text: edited('batches/EB-1.yaml', [
      'is: released, on: 2026-02-06, by: quality manager',
      'is: concession, on: 2026-02-06, by: quality manager, because: x, customer: Brask Seals, quantity: 20 g, until: 2026-12-31'
    ])
  }
  const typical: SourceFile = {
    path: 'grades/FK-1.yaml',
    text: `${edited('grades/FK-1.yaml').trimEnd()}\ntypical: { ash: 0.7 % }\n`
  }
  expect(said(free, under, typical, typed(type), ordered)).toEqual([
    expect.stringMatching(/^NOT_CERTIFIABLE type: .*let go under concession.* \| leave 'type' out/u)
  ])
})

describe('without tests on the lot', () => {
  test('2.1 needs an order and nobody independent', () => {
    expect(said(typed('2.1'), ordered)).toEqual([])
  })

  test('2.2 needs typical figures of the grade', () => {
    expect(said(typed('2.2'), ordered)).toEqual([
      expect.stringMatching(/^NOT_CERTIFIABLE type: .*grade FK-1 states no typical figures/u)
    ])
  })
})

test('a certificate of analysis needs none of it', () => {
  expect(said(order('shipment: SH-1'), shipment())).toEqual([])
})

test('a certificate is for a shipment that its lot was in', () => {
  const other = shipment('order: PO 1').text.replace('EB-1', 'FL-1').replace('02-08', '12-08')
  const all = said(free, typed('3.1'), { path: 'shipments/SH-1.yaml', text: other })
  expect(all).toContainEqual(
    expect.stringMatching(/^UNKNOWN_REFERENCE lot: there is no lot in shipment SH-1 'EB-1'/u)
  )
})
