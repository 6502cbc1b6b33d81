/** Charges measured out by volume: their mass in stock, in the liquor, and against limits. */

import { describe, expect, test } from 'vitest'
import { plainMass, volumeText } from '../../src/evaluate/charged.ts'
import { overLimit } from '../../src/evaluate/charge-limits.ts'
import { allUses } from '../../src/evaluate/uses.ts'
import { evaluate, smallFiles, wholeProblemsOf, withChange } from '../records-on-disk.ts'

interface Given {
  readonly line?: string
  readonly strength?: string
  readonly substance?: string
}

/** The small workshop with its acid measured out. */
function measuredOut({ line = 'volume: 55 mL', strength = '96 %', substance }: Given = {}) {
  const composed = withChange(
    smallFiles,
    'materials/SA-1.yaml',
    'quantity: 2000 g\n',
    strength === ''
      ? 'quantity: 2000 g\n'
      : `quantity: 2000 g\ncomposition: [{ substance: ${substance ?? 'sulfuric acid'}, fraction: ${strength} }]\n`
  )
  return withChange(composed, 'batches/EB-1.yaml', 'as: acid, mass: 300.0 g', `as: acid, ${line}`)
}

function charged(given: Given) {
  const { content } = evaluate(measuredOut(given))
  const line = content.batches.get('EB-1')!.record.charge![1]!
  return { content, line, mass: plainMass(content, line), text: volumeText(content, line) }
}

describe('the mass of a volume', () => {
  // By hand, from the table's printed lines: 96 % has 1.8355 g/cm³ at 20 °C, falling 0.001 a kelvin.
  test.for([
    ['volume: 55 mL', 55 * 1.8355],
    ['volume: 0.055 L', 55 * 1.8355],
    ['volume: 55 mL, temperature: 25 °C', 55 * (1.8355 - 5 * 0.001)],
    ['volume: 55 mL, density: 1.84 g/cm³', 55 * 1.84]
  ] as const)('%s', ([line, mass_g]) => {
    expect(charged({ line }).mass.value).toBeCloseTo(mass_g, 9)
  })

  test('is what stock has given', () => {
    const { content, mass } = charged({})
    const use = allUses(content).find(({ lot }) => lot === 'SA-1')!
    expect(use.mass_g).toBe(mass.value)
    // The last digit of the volume, 1 mL.
    expect(use.step_g).toBeCloseTo(1.8355, 9)
  })

  test('is shown with its density, and that such a density does not tell the strength', () => {
    expect(charged({}).text).toMatch(
      /^55 mL, 101 g at 1\.8355 g\/cm³ by its table; such a density does not tell/u
    )
    expect(charged({ strength: '80 %' }).text).toBe('55 mL, 95 g at 1.7272 g/cm³ by its table')
    expect(charged({ line: 'volume: 55 mL, density: 1.7 g/cm³', strength: '' }).text).toBe(
      '55 mL, 93.5 g at 1.7 g/cm³ as stated'
    )
  })
})

describe('what tells no mass is told', () => {
  test.for([
    [{ strength: '' }, 'of whose density nothing is known'],
    [{ substance: 'ammonium persulfate' }, 'of whose density nothing is known'],
    [{ substance: 'ammonia', strength: '25 %' }, 'tells no mass'],
    [{ line: 'volume: 55 mL, temperature: 80 °C' }, 'tells no mass'],
    [{ line: 'volume: 55 mL, mass: 100 g' }, 'stands beside a mass'],
    [{ line: 'planned: 100 g' }, 'nothing says how much was charged'],
    [{ line: 'mass: 100 g, density: 1.84 g/cm³' }, 'belongs to a volume']
  ] as const)('%j', ([given, words]) => {
    const told = wholeProblemsOf(measuredOut(given))
    expect(told.filter(message => message.includes(words))).toHaveLength(1)
  })

  test('and nothing is told of one that does', () => {
    const codes = wholeProblemsOf(measuredOut()).filter(told => told.includes(' charge.1'))
    expect(codes).toEqual([])
  })
})

test('a volume counts against the limit of the vessel', () => {
  const limited = (acid: string) => {
    const named = withChange(
      measuredOut(),
      'batches/EB-1.yaml',
      'grade: FK-1\n',
      'grade: FK-1\nvessel: V-1\n'
    )
    const producer = named.find(({ path }) => path.endsWith('producer.yaml'))!
    const files = withChange(
      named,
      'producer.yaml',
      producer.text,
      `${producer.text}charge-limits:\n  - { vessel: V-1, since: 2026-01-01, acid: ${acid}, assessment: RA-1, by: quality manager }\n`
    )
    const { content } = evaluate(files)
    return overLimit(content, content.batches.get('EB-1')!.record)?.exceeded.length ?? 0
  }
  expect([limited('101 g'), limited('100.9 g')]).toEqual([0, 1])
})
