/** What customers of foil take for granted and nobody measured is said, until a report says otherwise. */

import { describe, expect, test } from 'vitest'
import { notMeasuredOf, serviceText } from '../../src/documents/not-measured.ts'
import { changesBetween } from '../../src/documents/changes.ts'
import { english } from '../../src/documents/languages/tongue.ts'
import { publicSite, workshopSite } from './demo.ts'

const pageOf = (lot: string, site = workshopSite) =>
  site.lots.find(({ document }) => document.lot === lot)!

const factOf = (lot: string, label: string) =>
  pageOf(lot).document.facts.find(one => one.label === label)?.text

const all = Object.values(english.foil.missing)

describe('gasket factors, fire and oxygen', () => {
  test('are not measured on foil of which nobody reported anything', () => {
    for (const text of all) expect(factOf('FL-26-012', 'Not measured')).toContain(text)
  })

  test('gasket factors are left out where both were reported', () => {
    const missing = factOf('FL-26-014', 'Not measured')!
    expect(missing).not.toContain(english.foil.missing.gasketFactors)
    expect(missing).toContain(english.foil.missing.oxygen)
  })

  test('one factor alone is none', () => {
    const grade = { kind: 'foil' } as Parameters<typeof notMeasuredOf>[0]
    const both = ['gasket-factor-m', 'gasket-stress-y']
    expect(notMeasuredOf(grade, both.slice(0, 1), english)).toEqual(all)
    expect(notMeasuredOf(grade, both, english)).toEqual(all.slice(1))
  })

  test('a report on the grade prints as one, its laboratory unnamed', () => {
    const text = factOf('FL-26-013', 'Fire-safe test')!
    expect(text).toMatch(/^As reported of the grade, not measured on this lot: leak within/u)
    expect(text).toContain('an external laboratory, report P-4640 of 26 October 2026.')
    expect(factOf('FL-26-013', 'Not measured')).not.toContain(english.foil.missing.fireSafe)
    expect(factOf('FL-26-012', 'Fire-safe test')).toBeUndefined()
  })

  test('a laboratory that agreed is named', () => {
    const report = { says: 'a', method: 'b', laboratory: 'C', number: 'P-1', date: '2026-01-02' }
    expect(serviceText(report, english)).toBe(
      'As reported of the grade, not measured on this lot: a; b; C, report P-1 of 2 January 2026.'
    )
  })

  test('are nothing to flake', () => {
    expect(factOf('EB-26-013', 'Not measured')).toBeUndefined()
  })

  test('print on certificate and datasheet as well', () => {
    const [paper] = pageOf('FL-26-012', publicSite).certificates
    for (const text of all) expect(paper!.document.notMeasured).toContain(text)
    const grade = publicSite.grades.find(({ id }) => id === 'foil-100')!
    expect(grade.notMeasured).toContain(english.foil.missing.oxygen)
    expect(grade.notMeasured).not.toContain(english.foil.missing.fireSafe)
  })

  test('are no change of a certificate that was issued before this program said so', () => {
    const [paper] = pageOf('FL-26-012', publicSite).certificates
    const now = paper!.document
    const before = {
      ...now,
      notMeasured: now.notMeasured.filter(text => !(all as readonly string[]).includes(text))
    }
    expect(changesBetween(before, now)).toEqual([])
    expect(changesBetween(now, before)).toHaveLength(1)
  })
})

test('direction and inhibitor are told as recorded', () => {
  expect(factOf('FL-26-015', 'Direction of forming')).toBe('along the length')
  expect(factOf('FL-26-015', 'Inhibitor')).toBe('none')
  expect(factOf('FL-26-013', 'Inhibitor')).toBeUndefined()
})

test('what was seen goes where figures go', () => {
  expect(factOf('FL-26-016', 'Visual inspection')).toContain('13 of 40 sheets')
})
