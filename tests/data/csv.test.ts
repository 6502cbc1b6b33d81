/** CSV against RFC 4180, as bytes and as another program reads it. */

import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { csvText } from '../../src/data/csv.ts'

/** Rows of RFC 4180, section 2, as the rule of that number asks for them. */
const ruled: readonly (readonly [rule: string, row: readonly string[], line: string])[] = [
  ['1: a line end of CR LF', ['aaa', 'bbb', 'ccc'], 'aaa,bbb,ccc\r\n'],
  ['4: spaces belong to the field', [' a ', 'b'], ' a ,b\r\n'],
  ['6: a line end is enclosed in quotes', ['aaa', 'b\r\nbb', 'ccc'], 'aaa,"b\r\nbb",ccc\r\n'],
  ['6: a line feed alone as well', ['b\nb', 'c'], '"b\nb",c\r\n'],
  ['6: a carriage return alone as well', ['b\rb', 'c'], '"b\rb",c\r\n'],
  ['6: a comma is enclosed in quotes', ['a,b', 'c'], '"a,b",c\r\n'],
  ['7: a quote is doubled', ['aaa', 'b"bb', 'ccc'], 'aaa,"b""bb",ccc\r\n'],
  ['an empty field stays empty', ['', 'b', ''], ',b,\r\n']
]

describe('RFC 4180, section 2', () => {
  test.each(ruled)('rule %s', (_, row, line) => {
    expect(csvText(row, [])).toBe(line)
    expect(csvText(['x'], [row]).slice('x\r\n'.length)).toBe(line)
  })
})

describe('formulas', () => {
  test.each(['=1+1', '+1 555 0100', '-1+2', '@SUM(A1)', '\tx', '\rx', '＝1', '-', '- 5', '-1e3'])(
    '%j gets an apostrophe',
    field => {
      const [[read = ''] = []] = parse(csvText([field], [])) as string[][]
      expect(read).toBe(`'${field}`)
    }
  )

  test.each(['-0.82', '0', '12.5', '-3', 'PO 5550-117', 'a=b', '2026-03-14'])('%j stays', field => {
    expect(csvText([field], [])).toBe(`${field}\r\n`)
  })
})

test('any table is read back by another program as it was, but for the apostrophes', () => {
  const table = fc.integer({ min: 1, max: 5 }).chain(width =>
    fc.array(
      fc.array(fc.string({ unit: fc.constantFrom(...'ab",\r\n ;=é\t0'), maxLength: 6 }), {
        minLength: width,
        maxLength: width
      }),
      { minLength: 1, maxLength: 6 }
    )
  )
  fc.assert(
    fc.property(table, ([head = [], ...rows]) => {
      const text = csvText(head, rows)
      const read = parse(text, { record_delimiter: '\r\n' }) as string[][]
      const plain = read.map(row => row.map(field => field.replace(/^'(?=[=\t\r])/u, '')))
      expect(plain).toEqual([head, ...rows])
      expect(text.endsWith('\r\n')).toBe(true)
    })
  )
})
