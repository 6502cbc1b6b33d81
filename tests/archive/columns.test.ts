import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  readCodes,
  readDays,
  readLists,
  readNames,
  writeCodes,
  writeDays,
  writeLists,
  writeNames
} from '../../src/archive/columns.ts'
import { type PrintedFigure, readFigures, writeFigures } from '../../src/archive/figures.ts'

/** Through the file, as a page gets it. */
const carried = <Item>(item: Item): Item => JSON.parse(JSON.stringify(item)) as Item

const name = fc.oneof(
  fc.stringMatching(/^[A-Z]{1,3}-\d{1,4}$/u),
  fc.stringMatching(/^[A-Za-z0-9._-]{1,40}$/u)
)

describe('names', () => {
  test('come back as they were', () => {
    fc.assert(
      fc.property(fc.array(name), names => {
        expect(readNames(carried(writeNames(names)))).toEqual(names)
      })
    )
  })

  test.each(
    [['007', '08', '8', '00'], ['26e11', '0123'], ['9'.repeat(40), 'A'], [''], []].map(names => [
      names
    ])
  )('%j come back', names => {
    expect(readNames(carried(writeNames(names)))).toEqual(names)
  })

  test('that count on take a step each', () => {
    const { heads, steps } = writeNames(['EB-26-003', 'EB-26-002', 'EB-26-001'])
    expect(heads).toEqual(['EB-26-'])
    expect(steps).toBe('3,-1,-1')
  })

  test('come back in lists of any length', () => {
    fc.assert(
      fc.property(fc.array(fc.array(name, { maxLength: 7 })), lists => {
        expect(readLists(carried(writeLists(lists)))).toEqual(lists)
      })
    )
  })
})

test('words come back, more of them than there are letters', () => {
  const texts = Array.from({ length: 500 }, (_, index) => `grade ${index % 300}`)
  const column = carried(writeCodes(texts))
  expect([...readCodes(column)].map(code => column.words[code])).toEqual(texts)
})

test('days come back, across leap days and years', () => {
  const days = ['2028-03-01', '2028-02-29', '2028-02-28', '2026-12-31', '2027-01-01', '1999-12-31']
  expect(readDays(carried(writeDays(days)))).toEqual(days)
  expect(readDays(writeDays([]))).toEqual([])
})

describe('figures', () => {
  const digits = fc.stringMatching(/^\d{1,4}(?:\.\d{1,4})?$/u)
  const figure: fc.Arbitrary<PrintedFigure> = fc.oneof(
    fc.record({ value: digits, uncertainty: digits }),
    fc.record({ value: digits.map(text => `−${text}`), uncertainty: digits }),
    fc.record({ value: digits.map(text => `< ${text}`) }),
    fc.record({ value: digits })
  )

  test('come back as printed', () => {
    fc.assert(
      fc.property(fc.array(fc.option(figure, { nil: undefined }), { minLength: 1 }), figures => {
        expect(readFigures(carried(writeFigures(figures))).printed).toEqual(figures)
      })
    )
  })

  test('are numbers as well, upper bounds marked', () => {
    const { numbers, below } = readFigures(
      writeFigures([
        { value: '269.5', uncertainty: '3.4' },
        undefined,
        { value: '< 0.02' },
        { value: '−0.5', uncertainty: '0.10' }
      ])
    )
    expect([...numbers]).toEqual([269.5, NaN, 0.02, -0.5])
    expect([...below]).toEqual([0, 0, 1, 0])
  })

  test('take no more signs than their digits where U ends with the value', () => {
    expect(writeFigures([{ value: '0.01788', uncertainty: '0.00096' }]).uncertainties).toBe('96')
    expect(writeFigures([{ value: '2.31', uncertainty: '0.1' }]).uncertainties).toBe('=0.1')
  })
})
