import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LabelDocument } from '../../src/documents/label-types.ts'
import { labelLanguages } from '../../src/documents/label-words/index.ts'
import { classNames } from '../../src/hazards/classes.ts'
import { isIn } from '../../src/hazards/editions.ts'
import { type LabelProfile, labelProfiles } from '../../src/hazards/label-size.ts'
import type { Language } from '../../src/hazards/statements.ts'
import { labelPdf, measureWith, openPdf } from '../../src/pdf/label.ts'
import { type LabelLayout, layoutLabel, LabelTooSmall } from '../../src/pdf/label-layout.ts'
import type { PlacedItem } from '../../src/pdf/label-items.ts'
import { X_HEIGHT } from '../../src/pdf/label-text.ts'
import { requireTool } from '../tools.ts'
import { wordBoxes } from './inspect.ts'
import { labelOf, type Wanted, worst } from './label-samples.ts'

const measure = measureWith(
  openPdf(labelOf({ classes: [], languages: ['en'], profile: 'us', capacity_L: 1 }))
)

const set = (wanted: Wanted): { document: LabelDocument; layout: LabelLayout } => {
  const document = labelOf(wanted)
  return { document, layout: layoutLabel(document, measure) }
}

/** Less than a hair: sums of floats. */
const HAIR = 1e-9

/** What an item really takes: a text as wide as its widest line. */
function inkOf(item: PlacedItem) {
  const width =
    item.is === 'text'
      ? item.size * Math.max(...item.lines.map(line => measure(item.face, line.trimEnd())))
      : item.width
  return { ...item, right: item.x + width, bottom: item.y + item.height }
}

function geometryFaults({ width, height, items }: LabelLayout): string[] {
  const inks = items.map(inkOf)
  const shown = (item: PlacedItem) => (item.is === 'text' ? item.lines[0] : item.is)
  return [
    ...inks
      .filter(
        item => item.x < 0 || item.y < 0 || item.right > width + HAIR || item.bottom > height + HAIR
      )
      .map(item => `outside: ${shown(item)}`),
    ...inks.flatMap((a, index) =>
      inks
        .slice(index + 1)
        .filter(
          b =>
            Math.min(a.right, b.right) - Math.max(a.x, b.x) > HAIR &&
            Math.min(a.bottom, b.bottom) - Math.max(a.y, b.y) > HAIR
        )
        .map(b => `overlap: ${shown(a)} and ${shown(b)}`)
    )
  ]
}

function legalFaults({ minima }: LabelDocument, { width, height, items }: LabelLayout): string[] {
  const [short, long] = minima.label_mm
  const texts = items.flatMap(item => (item.is === 'text' ? [item] : []))
  const pictograms = items.flatMap(item => (item.is === 'pictogram' ? [item] : []))
  return [
    ...(Math.min(width, height) < short || Math.max(width, height) < long
      ? ['label too small']
      : []),
    ...texts
      .filter(({ size }) => size * X_HEIGHT < minima.xHeight_mm)
      .map(({ lines }) => `type too small: ${lines[0]}`),
    ...texts
      .filter(({ size, leading }) => leading < minima.leading * size - HAIR)
      .map(({ lines }) => `lines too close: ${lines[0]}`),
    ...pictograms
      .filter(one => one.width / Math.SQRT2 < minima.pictogram_mm - HAIR)
      .map(({ pictogram }) => `${pictogram.code} too small`)
  ]
}

/** Words without the spaces, so that line breaks make no difference. */
const letters = (texts: readonly string[]) => texts.join('').replace(/\s/gu, '')

/** Every text that has to be there and is not. */
function missing({ contents }: LabelDocument, { items }: LabelLayout): string[] {
  const content = contents[0]!
  const set = letters(items.flatMap(item => (item.is === 'text' ? item.lines : [])))
  const wanted = [
    content.name,
    ...content.product.map(({ text }) => text),
    ...content.identifiers,
    ...content.blocks.flatMap(({ signal = '', contains = '', storage = '', ...block }) => [
      signal,
      contains,
      ...block.hazards,
      ...block.precautions,
      storage
    ]),
    ...content.facts.flatMap(({ label, text }) => [label, text]),
    ...content.supplier,
    content.wording ?? ''
  ]
  return [
    ...wanted.filter(text => !set.includes(letters([text]))),
    ...content.pictograms
      .filter(
        one => !items.some(item => item.is === 'pictogram' && item.pictogram.code === one.code)
      )
      .map(({ code }) => code),
    ...(content.code && !items.some(item => item.is === 'code') ? ['code'] : [])
  ]
}

const faults = (wanted: Wanted): string[] => {
  const { document, layout } = set(wanted)
  return [
    ...geometryFaults(layout),
    ...legalFaults(document, layout),
    ...missing(document, layout).map(text => `missing: ${text}`)
  ]
}

const capacities = { pouch: 0.5, carton: 2, pail: 20, drum: 60, 'large drum': 600 } as const

const shortSides = (wanted: Pick<Wanted, 'classes' | 'languages'>) => {
  const { layout } = set({ ...wanted, profile: 'eu-2028', capacity_L: 0.5 })
  return Math.min(layout.width, layout.height)
}

describe('a label', () => {
  test.each(
    labelProfiles.flatMap(profile =>
      Object.entries(capacities).map(([kind, capacity_L]) => [kind, profile, capacity_L] as const)
    )
  )('of a %s after %s holds the longest names in every language', (_, profile, capacity_L) => {
    const alone = labelLanguages.map((one): readonly Language[] => [one])
    const holds = (classes: Wanted['classes'], languages: readonly Language[]) =>
      expect(faults({ classes, languages, profile, capacity_L, names: 'long' })).toEqual([])
    for (const languages of [...alone, ['de', 'fr'] as const]) {
      holds([], languages)
      holds(worst, languages)
    }
    holds(['Eye Irrit. 2'], labelLanguages)
  })

  test('holds any set of statements, or says that it cannot', () => {
    const classes = fc.subarray(
      classNames.filter(name => name !== 'Press. Gas' && isIn('clp', name)),
      { maxLength: 8 }
    )
    const languages = fc.subarray([...labelLanguages], { minLength: 1, maxLength: 3 })
    const profile = fc.constantFrom<LabelProfile>(...labelProfiles)
    const capacity_L = fc.constantFrom(0.25, 0.5, 1, 3, 10, 60, 800)
    const names = fc.constantFrom('short' as const, 'long' as const)
    let held = 0
    fc.assert(
      fc.property(fc.record({ classes, languages, profile, capacity_L, names }), wanted => {
        try {
          expect(faults(wanted)).toEqual([])
          held += 1
        } catch (error) {
          if (!(error instanceof LabelTooSmall)) throw error
        }
      }),
      { numRuns: 60, seed: 26 }
    )
    expect(held).toBeGreaterThan(50)
  }, 60_000)

  test('goes on to the next size where its text does not fit, and no further', () => {
    const sizes = labelLanguages.map((_, count) => {
      const languages = labelLanguages.slice(0, count + 1)
      const { layout } = set({ classes: worst, languages, profile: 'eu-2028', capacity_L: 0.5 })
      return [layout.width, layout.height].sort((a, b) => a - b).join(' × ')
    })
    expect([...new Set(sizes)]).toEqual(['105 × 148', '148 × 210'])
    expect(shortSides({ classes: [], languages: ['en'] })).toBe(52)
    expect(shortSides({ classes: ['Eye Irrit. 2'], languages: ['en'] })).toBe(74)
  })

  test('is refused on stock that cannot hold it', () => {
    const document = labelOf({
      classes: worst,
      languages: ['de'],
      profile: 'eu-2028',
      capacity_L: 1
    })
    expect(() => layoutLabel(document, measure, [74, 52])).toThrow(LabelTooSmall)
    expect(layoutLabel(document, measure, [210, 148])).toMatchObject({ width: 210, height: 148 })
  })

  test('keeps its stock as it lies', () => {
    const document = labelOf({ classes: [], languages: ['de'], profile: 'eu-2028', capacity_L: 1 })
    expect(layoutLabel(document, measure, [74, 90])).toMatchObject({ width: 74, height: 90 })
  })
})

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('in print', () => {
  const wanted = labelLanguages.flatMap(language =>
    Object.values(capacities).map((capacity_L): Wanted => ({
      classes: worst,
      languages: [language],
      profile: 'eu-2028',
      capacity_L,
      names: 'long'
    }))
  )

  test('no word reaches over the edge or into another', { timeout: 60_000 }, () => {
    for (const one of wanted) {
      const boxes = wordBoxes(labelPdf(labelOf(one)))
      expect(boxes.length).toBeGreaterThan(60)
      const out = boxes.filter(
        ({ left, top, right, bottom, width, height }) =>
          left < 0 || top < 0 || right > width || bottom > height
      )
      expect(out.map(({ text }) => text)).toEqual([])
      const onto = boxes.flatMap((a, index) =>
        boxes
          .slice(index + 1)
          .filter(
            b =>
              Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.3 &&
              Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) >
                0.3 * Math.min(a.bottom - a.top, b.bottom - b.top)
          )
          .map(b => `${a.text} and ${b.text}`)
      )
      expect(onto).toEqual([])
    }
  })
})
