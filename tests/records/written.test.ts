/** Whatever a plan or an old list makes a record of reads back as it was given, and is such a record. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readMapping, sheetBy } from '../../src/intake/mappings.ts'
import { oldLots } from '../../src/intake/old-lots.ts'
import { formatProblem } from '../../src/problem.ts'
import { parseRecord } from '../../src/records/document.ts'
import { numberFault } from '../../src/records/draft.ts'
import { plainData } from '../../src/records/edit.ts'
import { plannedDraft } from '../../src/records/planned-draft.ts'
import { chargeRoles } from '../../src/records/schemas/recipe.ts'
import { validateRecord } from '../../src/records/validate.ts'

/** Numbers that records go by, those that YAML would take for something else among them. */
const number = fc
  .oneof(
    fc.constantFrom('007', '1e5', '0x1F', 'yes', 'null', '12.50', '2026-01-01', 'no', 'EB-1'),
    fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._-]{0,20}$/u)
  )
  .filter(text => numberFault(text) === undefined)

const digits = fc
  .tuple(fc.integer({ min: 1, max: 9999 }), fc.stringMatching(/^\d{0,3}$/u))
  .map(([whole, part]) => (part === '' ? `${whole}` : `${whole}.${part}`))

/** What is wrong with a text as a batch, but for what is left to fill in. */
function faultsOf(text: string): string[] {
  const parsed = parseRecord({ path: 'content/batches/X.yaml', text })
  const { problems } = parsed.ok ? validateRecord(parsed.value, 'batches') : parsed
  return problems.filter(({ code }) => code !== 'MISSING_FIELD').map(formatProblem)
}

test('the draft of a plan', () => {
  const line = fc.record({
    material: number,
    as: fc.constantFrom(...chargeRoles),
    container: fc.option(number, { nil: undefined }),
    planned: digits
  })
  const plan = fc.record({
    lot: number,
    grade: number,
    made: fc.constant('2026-03-20'),
    vessel: number,
    charge: fc.array(line, { minLength: 1, maxLength: 12 })
  })
  fc.assert(
    fc.property(plan, given => {
      const text = plannedDraft(given)
      const { lot, grade, vessel, charge } = plainData(text) as Record<string, unknown>
      expect({ lot, grade, vessel }).toEqual({
        lot: given.lot,
        grade: given.grade,
        vessel: given.vessel
      })
      expect(charge).toEqual(
        given.charge.map(({ container, planned, ...rest }) => ({
          ...rest,
          ...(container === undefined ? {} : { container }),
          planned: `${planned} g`,
          mass: ''
        }))
      )
      expect(text.includes('oxidiser added')).toBe(given.charge.some(({ as }) => as === 'oxidiser'))
      expect(faultsOf(text)).toEqual([])
    }),
    { numRuns: 80, seed: 5 }
  )
})

const mapping = `id: old
fills: batch
file: { decimal: comma, delimiter: semicolon }
columns:
  - { column: Lot, to: lot }
  - { column: Made, to: made }
  - { column: Graphite, to: charge.1.mass, unit: g }
  - { column: Product, to: product.mass, unit: g }
  - { column: Notes, to: notes }
set:
  grade: FK-1
  charge.1.material: GR-1
  charge.1.as: graphite
`

/** What people write into the last column of a list. */
const note = fc.oneof(
  fc.constantFrom(
    '',
    '# 1',
    "it's",
    '"so"',
    'a: b',
    '- x',
    '{ }',
    '~',
    'null',
    '5 %',
    '*',
    '!!x',
    '@'
  ),
  fc
    .string({ unit: 'grapheme', maxLength: 30 })
    .map(text => text.replace(/[\p{C}\p{Z}]+/gu, ' ').trim())
)

test('the records of an old list', () => {
  const read = readMapping({ path: 'mappings/old.yaml', text: mapping })
  if (!read.ok) throw new Error(read.problems.map(formatProblem).join('\n'))
  const row = fc.record({ graphite: digits, product: digits, note })
  const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`
  let written = 0
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), rows => {
      const lines = rows.map(({ graphite, product, note: text }, index) =>
        [
          `L-${index}`,
          '2026-03-20',
          graphite.replace('.', ','),
          product.replace('.', ','),
          quoted(text)
        ].join(';')
      )
      const bytes = new TextEncoder().encode(
        `Lot;Made;Graphite;Product;Notes\n${lines.join('\n')}\n`
      )
      const sheet = sheetBy({ path: 'old.csv', bytes }, read.value)
      if ('code' in sheet) throw new Error(formatProblem(sheet))
      const lots = oldLots(sheet, read.value, 'batches', false)
      if ('problems' in lots) throw new Error(lots.problems.map(formatProblem).join('\n'))
      for (const [index, { text, problems }] of lots.entries()) {
        const given = rows[index]!
        // A text that would be a formula is refused, and nothing else is.
        if (/^[=@]/u.test(given.note)) {
          expect(problems.map(({ code }) => code)).toEqual(['COMPUTED_VALUE'])
          continue
        }
        written += 1
        expect(problems.map(formatProblem)).toEqual([])
        expect(plainData(text!)).toEqual({
          lot: `L-${index}`,
          made: '2026-03-20',
          grade: 'FK-1',
          charge: [{ mass: `${given.graphite} g`, material: 'GR-1', as: 'graphite' }],
          product: { mass: `${given.product} g` },
          ...(given.note === '' ? {} : { notes: given.note })
        })
        expect(faultsOf(text!)).toEqual([])
      }
    }),
    { numRuns: 80, seed: 5 }
  )
  expect(written).toBeGreaterThan(150)
})
