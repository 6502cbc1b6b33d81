import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { columnShape, cutFigure } from '../../src/html/decimals.ts'

describe('a column', () => {
  const rows: readonly [texts: string[], places: number, rest: number][] = [
    [[], 0, 0],
    [['12', '7'], 0, 0],
    [['262.1', '0.118', '12'], 3, 0],
    [['0.502 g', '131 mL'], 3, 4],
    [['unlimited', '31'], 0, 0],
    [['36\u202f200', '< 0.02'], 2, 0],
    [['0.95 to 1.05', '≥ 250'], 2, 0],
    [['3.4 × 10⁻⁵ Ω·m'], 1, 12]
  ]
  test.each(rows)('of %j needs %i places and %i signs behind', (texts, places, rest) => {
    expect(columnShape(texts)).toEqual({ places, rest })
  })
})

describe('a cell', () => {
  const shape = { places: 3, rest: 4 }
  const rows: readonly [text: string, figure: string, pad: string, rest: string][] = [
    ['262.1', '262.1', '00', ''],
    ['131 mL', '131', '.000', ' mL'],
    ['0.502 g', '0.502', '', ' g'],
    ['< 0.02', '< 0.02', '0', ''],
    ['≥ −4', '≥ −4', '.000', ''],
    ['0.95 to 1.05', '0.95 to 1.05', '0', ''],
    ['36\u202f200 kPa', '36\u202f200', '.000', ' kPa'],
    ['0.5 mm, 0.6 mm', '0.5 mm, 0.6 mm', '', ''],
    ['5 a text that is no unit at all', '5 a text that is no unit at all', '', ''],
    ['unlimited', 'unlimited', '', ''],
    ['2026-03-16', '2026-03-16', '', ''],
    ['1.2.3', '1.2.3', '', ''],
    ['', '', '', '']
  ]
  test.each(rows)('%s', (text, figure, pad, rest) => {
    expect(cutFigure(text, shape)).toEqual({ figure, pad, rest })
  })

  test('in a column without places has nothing to fill', () => {
    expect(cutFigure('12', { places: 0, rest: 0 })).toEqual({ figure: '12', pad: '', rest: '' })
  })
})

describe('any column of numbers', () => {
  const number = fc
    .tuple(
      fc.constantFrom('', '−', '< ', '≥ '),
      fc.nat(99999),
      fc.nat(6),
      fc.constantFrom('', ' g')
    )
    .map(([sign, whole, places, unit]) => {
      const fraction = places > 0 ? `.${'7'.repeat(places)}` : ''
      return `${sign}${whole}${fraction}${unit}`
    })

  test('keeps its texts and gets equally long tails', () => {
    fc.assert(
      fc.property(fc.array(number, { minLength: 1 }), texts => {
        const shape = columnShape(texts)
        const cells = texts.map(text => cutFigure(text, shape))
        expect(cells.map(cell => cell.figure + cell.rest)).toEqual(texts)
        const tails = cells.map(cell => (cell.figure.split('.')[1] ?? '').length)
        const filled = cells.map((cell, i) => tails[i]! + cell.pad.replace('.', '').length)
        expect(new Set(filled)).toEqual(new Set([shape.places]))
      })
    )
  })
})
