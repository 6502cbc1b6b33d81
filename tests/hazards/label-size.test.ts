import { describe, expect, test } from 'vitest'
import { labelMinima, labelProfiles, labelSizes } from '../../src/hazards/label-size.ts'

describe('the least sizes', () => {
  // CLP Annex I, Table 1.3, and 1.2.1.5 as amended in 2024: capacity, label, pictogram, x-height.
  test.each([
    [0.5, [52, 74], 16, 1.2],
    [0.501, [52, 74], 16, 1.4],
    [3, [52, 74], 16, 1.4],
    [3.01, [74, 105], 23, 1.8],
    [50, [74, 105], 23, 1.8],
    [50.1, [105, 148], 32, 2],
    [500, [105, 148], 32, 2],
    [501, [148, 210], 46, 2]
  ] as const)('of a package of %d L are those of the law', (capacity, label, pictogram, x) => {
    const { label_mm, pictogram_mm, xHeight_mm, leading } = labelMinima(capacity, 'eu-2028')
    expect({ label_mm, pictogram_mm, xHeight_mm, leading }).toEqual({
      label_mm: [...label],
      pictogram_mm: pictogram,
      xHeight_mm: x,
      leading: 1.2
    })
    expect(labelMinima(capacity, 'eu-2015')).toMatchObject({ label_mm, pictogram_mm })
  })

  test('a pictogram covers at least a square centimetre, and a fifteenth but for the law’s rounding', () => {
    for (const capacity of [0.1, 1, 10, 100, 1000]) {
      const { label_mm, pictogram_mm } = labelMinima(capacity, 'eu-2028')
      const area = pictogram_mm * pictogram_mm
      expect(area).toBeGreaterThanOrEqual(100)
      expect(area / ((label_mm[0] * label_mm[1]) / 15)).toBeGreaterThan(0.988)
    }
  })

  test('are never less for a larger package', () => {
    for (const profile of labelProfiles) {
      const all = [0.003, 0.1, 0.5, 3, 50, 500, 600].map(one => labelMinima(one, profile))
      for (const [index, later] of all.slice(1).entries()) {
        const { label_mm, pictogram_mm, xHeight_mm } = all[index]!
        expect(later.label_mm[0]).toBeGreaterThanOrEqual(label_mm[0])
        expect(later.pictogram_mm).toBeGreaterThanOrEqual(pictogram_mm)
        expect(later.xHeight_mm).toBeGreaterThanOrEqual(xHeight_mm)
      }
    }
  })

  test('the sizes to go on to begin with the least and grow', () => {
    for (const capacity of [0.5, 20, 100, 1000]) {
      const minima = labelMinima(capacity, 'eu-2028')
      const sizes = labelSizes(minima)
      expect(sizes[0]).toEqual(minima.label_mm)
      expect(sizes.map(([side]) => side)).toEqual(
        [...new Set(sizes.map(([side]) => side))].sort((a, b) => a - b)
      )
      expect(sizes.at(-1)).toEqual([297, 420])
    }
  })
})
