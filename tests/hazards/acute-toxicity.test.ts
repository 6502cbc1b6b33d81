/** Estimates of acute toxicity of mixtures: worked examples of the United Nations, and properties. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mixtureATE } from '../../src/hazards/acute-toxicity.ts'
import type { ClassName } from '../../src/hazards/classes.ts'
import { classify } from '../../src/hazards/classify.ts'
import type { Form, Substance } from '../../src/hazards/substances.ts'
import { example, labelOf, said } from './mixtures.ts'

const toxic = (
  id: string,
  ates: Partial<Record<Form, number>>,
  unknownForms: Form[] = []
): Substance =>
  example(id, [], {
    ates: Object.entries(ates).map(([form, ate]) => ({ form: form as Form, ate, ...said })),
    unknownForms
  })

const mixtureOf = (parts: readonly (readonly [number, Substance])[]) => ({
  ingredients: parts.map(([percent, substance]) => ({ substance, percent }))
})

const ateOf = (parts: readonly (readonly [number, Substance])[], form: Form) =>
  mixtureATE({ shares: mixtureOf(parts).ingredients }, form)?.ate

/** UN ST/SG/AC.10/C.4/2008/23, examples 3.1(a), (c) and (d): parts with their LD50, result as printed. */
describe('examples of the United Nations', () => {
  const a = [
    [16, toxic('1', { oral: 1600 })],
    [4, toxic('2', { oral: 200 })],
    [80, toxic('3', { oral: 3450 })]
  ] as const
  const c = [
    [4, toxic('1', { oral: 1737 })],
    [5, toxic('2', {})],
    [5, toxic('3', {})],
    [86, toxic('4', {})]
  ] as const
  const d = [
    [26, toxic('1', { oral: 2737, vapour: 11 })],
    [23, toxic('2', { oral: 4500, vapour: 19 })],
    [11, toxic('3', {}, ['vapour'])],
    [40, toxic('4', { oral: 400, vapour: 4 })]
  ] as const

  test.for([
    ['3.1(a), oral', a, 'oral', '1880', 3],
    ['3.1(c), oral', c, 'oral', '43425', 5],
    ['3.1(d), oral', d, 'oral', '873', 3],
    ['3.1(d), vapour, 11 % unknown', d, 'vapour', '6.6', 2]
  ] as const)('%s', ([, parts, form, printed, digits]) => {
    expect(Number(ateOf(parts, form)!.toPrecision(digits))).toBe(Number(printed))
  })

  test('label of 3.1(a)', () => {
    expect(labelOf(mixtureOf(a))).toBe('GHS07 · Warning · H302')
  })

  test('3.1(c) is not classified', () => {
    expect(labelOf(mixtureOf(c))).toBe('– · – · –')
  })

  test('label of 3.1(d), with what it says of the unknown part', () => {
    expect(labelOf(mixtureOf(d))).toBe('GHS06 · Danger · H302 H331')
    expect(classify(mixtureOf(d)).unknown).toEqual([{ form: 'vapour', percent: 11 }])
  })
})

// Published bands (trade association's note of 2016 on nitric acid; sheets of statutory accident
// insurers on hydrogen peroxide), reproduced from ATE 2.65 mg/L, 500 mg/kg and 1.5 mg/L.
test.for([
  [20, { vapour: 2.65 }, 'vapour', 13.25],
  [26.51, { vapour: 2.65 }, 'vapour', 9.996],
  [25, { oral: 500 }, 'oral', 2000],
  [24.9, { oral: 500 }, 'oral', 2008],
  [30, { mist: 1.5 }, 'mist', 5],
  [29.9, { mist: 1.5 }, 'mist', 5.017]
] as const)('%d %% of %j, %s: %d', ([percent, ates, form, expected]) => {
  const digits = expected.toString().replace('.', '').length
  const ate = ateOf([[percent, toxic('x', ates)]], form)!
  expect(Number(ate.toPrecision(digits))).toBe(expected)
})

const part = fc.tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 5000 }))

test('scaling every estimate by k scales that of the mixture by k', () => {
  fc.assert(
    fc.property(
      fc.array(part, { minLength: 1, maxLength: 5 }),
      fc.integer({ min: 2, max: 9 }),
      (parts, k) => {
        const total = parts.reduce((sum, [percent]) => sum + percent, 0)
        const at = (factor: number) =>
          ateOf(
            parts.map(([percent, ate], index) => [
              (100 * percent) / total,
              toxic(`${index}`, { oral: ate * factor })
            ]),
            'oral'
          )!
        // All above the cut-off of 1 %, or which ones count could change.
        fc.pre(parts.every(([percent]) => percent / total > 0.01))
        // Each is rounded to ten digits: half a unit of the last on either side.
        expect(Math.abs(at(k) / at(1) / k - 1)).toBeLessThan(1.01e-9)
      }
    )
  )
})

test('categories are read off at their upper ends', () => {
  const scale: readonly (readonly [Form, readonly number[], string])[] = [
    ['oral', [5, 50, 300, 2000], 'oral'],
    ['dermal', [50, 200, 1000, 2000], 'dermal'],
    ['gas', [100, 500, 2500, 20000], 'inhalation'],
    ['vapour', [0.5, 2, 10, 20], 'inhalation'],
    ['mist', [0.05, 0.5, 1, 5], 'inhalation']
  ]
  for (const [form, ends, route] of scale)
    for (const [index, end] of ends.entries()) {
      const at = (ate: number) =>
        classify(mixtureOf([[100, toxic('x', { [form]: ate })]])).classes.map(
          ({ class: name }) => name
        )
      expect(at(end)).toEqual([`Acute Tox. ${index + 1} ${route}`])
      expect(at(end * 1.001)).toEqual(index === 3 ? [] : [`Acute Tox. ${index + 2} ${route}`])
    }
})

// CLP Annex I, Table 3.1.2 (from memory, not checked against the print): what a class stands for.
test.for([
  ['oral', [0.5, 5, 100, 500]],
  ['dermal', [5, 50, 300, 1100]],
  ['gas', [10, 100, 700, 4500]],
  ['vapour', [0.05, 0.5, 3, 11]],
  ['mist', [0.005, 0.05, 0.5, 1.5]]
] as const)('point estimates, %s: %j', ([form, points]) => {
  for (const [index, point] of points.entries()) {
    const route = form === 'oral' || form === 'dermal' ? form : 'inhalation'
    const line = { class: `Acute Tox. ${index + 1} ${route}` as ClassName, form, ...said }
    expect(ateOf([[100, { ...toxic('x', {}), classes: [line] }]], form)).toBe(point)
  }
})

// CLP Annex I, Table 1.1: 0.1 % for categories 1 to 3, 1 % for category 4.
test('ingredients count from their cut-off on', () => {
  expect(ateOf([[0.1, toxic('x', { oral: 300 })]], 'oral')).toBe(300_000)
  expect(ateOf([[0.09, toxic('x', { oral: 300 })]], 'oral')).toBeUndefined()
  expect(ateOf([[1, toxic('x', { oral: 301 })]], 'oral')).toBe(30_100)
  expect(ateOf([[0.9, toxic('x', { oral: 301 })]], 'oral')).toBeUndefined()
})
