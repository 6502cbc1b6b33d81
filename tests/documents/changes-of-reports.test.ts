/** A result measured elsewhere, in a certificate that was issued: kept, and told where it changes. */

import { expect, test } from 'vitest'
import { changesBetween } from '../../src/documents/changes.ts'
import { frozenCertificateSchema } from '../../src/documents/frozen-schema.ts'
import type { ReportText } from '../../src/documents/report-text.ts'
import type { ResultRow } from '../../src/documents/types.ts'
import { demoRegister } from './demo-register.ts'

/** CT-26-018 states the sulfur that an outside laboratory reported. */
const { frozen } = demoRegister.issued.find(({ revision }) => revision.number === 'CT-26-018')!
const { certificate } = frozen
const sulfur = certificate.results.find(({ key }) => key === 'sulfur')!
const report = sulfur.report!

/** The certificate with its sulfur under another report, or none. */
const withReport = (other: ReportText | undefined) => {
  const { report: _, ...bare } = sulfur
  const row: ResultRow = other ? { ...bare, report: other } : bare
  return { ...certificate, results: certificate.results.map(one => (one === sulfur ? row : one)) }
}

test('is frozen with what its report says, and nothing beside it', () => {
  expect(report).toEqual({
    by: 'an external laboratory',
    number: 'P-4533',
    date: '2026-09-02',
    method: 'combustion in a tube furnace',
    sentence:
      'External result: measured by an external laboratory, report P-4533 of 2 September 2026; method as reported: combustion in a tube furnace.'
  })
  const odd = { ...report, laboratory: 'an example' }
  expect(frozenCertificateSchema.safeParse(frozen).success).toBe(true)
  expect(
    frozenCertificateSchema.safeParse({ ...frozen, certificate: withReport(odd) }).success
  ).toBe(false)
})

test('is told where it comes, goes, or was of another report', () => {
  const sentence = 'External result: measured by an external laboratory, report P-9 of 2 May 2026.'
  expect(changesBetween(withReport(undefined), withReport({ ...report, sentence }))).toEqual([
    'Total sulfur, report: added, measured by an external laboratory, report P-9 of 2 May 2026.'
  ])
  expect(changesBetween(withReport({ ...report, sentence }), withReport(undefined))).toEqual([
    'Total sulfur, report: left out, was measured by an external laboratory, report P-9 of 2 May 2026.'
  ])
  expect(changesBetween(certificate, withReport({ ...report, sentence }))).toEqual([
    'Total sulfur, report: the text differs.'
  ])
})

test('is told where another file was received', () => {
  expect(changesBetween(certificate, withReport({ ...report, sha256: 'ab12' }))).toEqual([
    'Total sulfur, file of the report: added, ab12.'
  ])
})
