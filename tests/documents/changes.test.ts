/** What differs between two states of a certificate. */

import { describe, expect, test } from 'vitest'
import { changesBetween } from '../../src/documents/changes.ts'
import { documentOf } from '../../src/documents/frozen-schema.ts'
import type { CertificateDocument, ResultRow } from '../../src/documents/types.ts'
import { firstText, frozenOf } from './issuing.ts'

const before: CertificateDocument = documentOf(frozenOf(firstText).certificate)
const row = before.results.find(({ key }) => key === 'expansion-volume')!

const told = (change: Partial<CertificateDocument>) =>
  changesBetween(before, { ...before, ...change })

/** What is told where the row of expansion volume differs. */
const toldOfRow = (change: Partial<ResultRow>) =>
  told({ results: before.results.map(one => (one === row ? { ...row, ...change } : one)) })

test('nothing of a certificate beside itself', () => {
  expect(told({})).toEqual([])
})

test('nothing of what no customer relies on: state of the lot, mark, paper, fixed sentences', () => {
  const release = { state: 'withdrawn' as const, sentence: 'x' }
  expect(told({ release, mark: 'withdrawn', paper: 'Letter' })).toEqual([])
  expect(told({ statements: ['x'], decisionRule: 'x', revision: '2', url: 'x' })).toEqual([])
})

describe('one sentence a difference', () => {
  const { value, expandedUncertainty, limit, verdict, method } = row
  test.for([
    [
      { value: { ...value!, printed: '270.0' } },
      'Expansion volume, result: was 260.3\u00a0mL/g ± 5.4\u00a0mL/g, now 270.0\u00a0mL/g ± 5.4\u00a0mL/g.'
    ],
    [
      { expandedUncertainty: { ...expandedUncertainty!, printed: '9.9' } },
      'Expansion volume, result: was 260.3\u00a0mL/g ± 5.4\u00a0mL/g, now 260.3\u00a0mL/g ± 9.9\u00a0mL/g.'
    ],
    [{ n: 4 }, 'Expansion volume, readings: was 3, now 4.'],
    [{ spread: 'a to b' }, 'Expansion volume, spread: added, a to b.'],
    [{ basis: 'typical' as const }, 'Expansion volume, standing: was measured, now typical.'],
    [
      { limit: { ...limit!, of: 'every reading' } },
      'Expansion volume, limit: was ≥ 200 (lot mean), now ≥ 200 (every reading).'
    ],
    [
      { verdict: { ...verdict!, word: 'fail' as const } },
      'Expansion volume, verdict: was pass, now fail.'
    ],
    [
      { method: { ...method!, edition: '2', conditions: 'long' } },
      'Expansion volume, method: was TM-1 edition 1; 0.5\u00a0g at 950\u00a0°C for 20\u00a0s, poured untapped, now TM-1 edition 2; long.'
    ],
    [
      { method: { ...method!, deviation: 'poured twice '.repeat(8) } },
      'Expansion volume, method: the text differs.'
    ]
  ] as const)('%#: %o', ([change, sentence]) => {
    expect(toldOfRow(change)).toEqual([sentence])
  })

  test.for([
    [{ lot: 'EB-2' }, 'Lot: was EB-1, now EB-2.'],
    [{ issued: '8 February 2026' }, 'Issued: was 7 February 2026, now 8 February 2026.'],
    [{ signatory: 'owner' }, 'Signatory: was quality manager, now owner.'],
    [{ notMeasured: ['Ash'] }, 'Not measured: added, Ash.'],
    [{ cautions: ['Keep dry.', 'Keep cool.'] }, 'Cautions: added, Keep dry. Keep cool.'],
    [{ facts: [...before.facts, { label: 'Sieve', text: '80 mesh.' }] }, 'Sieve: added, 80 mesh.'],
    [{ facts: before.facts.slice(1) }, `${before.facts[0]!.label}: left out, was `],
    [{ answer: { ...before.answer, sentence: 'No.' } }, 'Overall: '],
    [{ producer: { ...before.producer, address: ['3 Kiln Lane'] } }, 'Producer: was Fennick'],
    [{ traceability: ['x'.repeat(81)] }, 'Traceability: ']
  ] as [Partial<CertificateDocument>, string][])('%#', ([change, sentence]) => {
    const found = told(change)
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(sentence)
    expect(found[0]).toMatch(/[^.]\.$/u)
  })

  test('what is longer than 80 signs is not told twice over', () => {
    const long = { label: 'Note', text: 'y'.repeat(81) }
    expect(told({ facts: [...before.facts, long] })).toEqual([`Note: added, ${'y'.repeat(80)} ….`])
    const fits = { label: 'Note', text: 'y'.repeat(80) }
    expect(told({ facts: [...before.facts, fits] })).toEqual([`Note: added, ${'y'.repeat(80)}.`])
  })
})

test('a row that came or went is told by its result', () => {
  expect(told({ results: before.results.filter(one => one !== row) })).toEqual([
    'Expansion volume: left out, was 260.3\u00a0mL/g ± 5.4\u00a0mL/g.'
  ])
  const more: ResultRow = { ...row, key: 'ash', title: 'Ash', basis: 'not measured' }
  const { value: _value, ...notMeasured } = more
  expect(told({ results: [...before.results, notMeasured] })).toEqual(['Ash: added, not measured.'])
})

test('a figure below its reporting limit is told without U', () => {
  const value = { exact: '0.02', printed: '< 0.02' }
  expect(toldOfRow({ value, below: true })[0]).toMatch(/, now < 0\.02\u00a0mL\/g\.$/u)
})

test('hazards are told by their codes', () => {
  const hazards = {
    pictograms: [],
    classified: [],
    transport: 'ask',
    signal: 'Warning',
    statements: [{ code: 'H319', text: 'x' }],
    basis: 'x',
    edition: 'x'
  }
  expect(told({ hazards })).toEqual(['Hazards: added, Warning H319.'])
  expect(changesBetween({ ...before, hazards }, before)).toEqual([
    'Hazards: left out, was Warning H319.'
  ])
})

describe('of two hazard blocks', () => {
  const computed = {
    sentence: 'Computed for this lot: Eye Irrit. 2.',
    state: 'complete',
    from: ['Free acid: 2 %.'],
    classes: [{ name: 'Eye Irrit. 2', statement: 'H319', why: ['Sum 2 %, limit 1 %.'] }],
    notes: [],
    agreement: 'The declaration holds.'
  } as const
  const block = {
    pictograms: [],
    classified: ['Eye Irrit. 2'],
    transport: 'ask',
    signal: 'Warning',
    statements: [{ code: 'P501', text: 'Dispose to a dump.' }],
    basis: 'our own',
    edition: 'first',
    computed
  }
  const toldOf = (now: Partial<typeof block> | object) =>
    changesBetween({ ...before, hazards: block }, { ...before, hazards: { ...block, ...now } })

  test('nothing is told where they are the same', () => {
    expect(toldOf({})).toEqual([])
  })

  test.for([
    [{ signal: 'Danger' }, 'Hazards: was Warning P501, now Danger P501.'],
    [
      { pictograms: [{ code: 'GHS05', title: 'x', parts: [] }] },
      'Hazards, pictograms: added, GHS05.'
    ],
    [{ classified: ['Eye Dam. 1'] }, 'Hazards, classes: was Eye Irrit. 2, now Eye Dam. 1.'],
    [
      { computed: { ...computed, sentence: 'Nothing.' } },
      'Hazards, computed: was Computed for this lot: Eye Irrit. 2, now Nothing.'
    ],
    [
      { computed: { ...computed, agreement: 'It does not.' } },
      'Hazards, beside the declaration: was The declaration holds, now It does not.'
    ],
    [
      { computed: { ...computed, from: ['Free acid: 3 %.'] } },
      'Hazards, reasons: was Sum 2 %, limit 1 %. Free acid: 2 %, now Sum 2 %, limit 1 %. Free acid: 3 %.'
    ],
    [
      { computed: { ...computed, notes: ['Open.'] } },
      'Hazards, reasons: was Sum 2 %, limit 1 %. Free acid: 2 %, now Sum 2 %, limit 1 %. Free acid: 2 %. Open.'
    ],
    [{ computed: { ...computed, dust: 'Dust.' } }, 'Hazards, dust: added, Dust.'],
    [{ basis: 'a sheet' }, 'Hazards, basis: was our own, now a sheet.'],
    [{ edition: 'second' }, 'Hazards, edition of the wording: was first, now second.'],
    [
      { statements: [{ code: 'P501', text: 'Dispose to a works.' }] },
      'Hazards, words of P501: was Dispose to a dump, now Dispose to a works.'
    ]
  ] as const)('%j is told', ([now, told]) => {
    expect(toldOf(now)).toEqual([told])
  })

  test('but not where the sentence on dust is pointed otherwise', () => {
    const saying = (dust: string) => ({
      ...before,
      hazards: { ...block, computed: { ...computed, dust } }
    })
    const old = saying('In air. (not excluded; C.4.30.)')
    expect(changesBetween(old, saying('In air. Not excluded; C.4.30.'))).toEqual([])
    expect(changesBetween(old, saying('In air. Not excluded; C.4.31.'))).toHaveLength(1)
  })
})
