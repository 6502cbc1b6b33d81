/** Values that stand exactly at a limit, and limits that only bite there. */

import { describe, expect, test } from 'vitest'
import { unknownToxicity } from '../../src/hazards/acute-toxicity.ts'
import type { ClassName } from '../../src/hazards/classes.ts'
import { classify } from '../../src/hazards/classify.ts'
import { classifyFlake } from '../../src/hazards/classify-lot.ts'
import { findSubstance, type Substance } from '../../src/hazards/substances.ts'
import { classifyPhysical } from '../../src/hazards/tests-only.ts'
import { example, said } from './mixtures.ts'

const water = findSubstance('water')!
const of = (substance: Substance, percent: number, U = 0) =>
  classify({
    ingredients: [
      { substance, percent, U },
      { substance: water, percent: Number((100 - percent).toFixed(6)) }
    ]
  })
const namesOf = (found: { classes: readonly { class: ClassName }[] }) =>
  found.classes.map(({ class: name }) => name)

// CLP Annex I, 3.2.3.1.2: the stricter side of an alkaline slurry is the higher one.
test.for([
  [8, 3.5, ['Skin Corr. 1', 'Eye Dam. 1']],
  [8, 3.4, []],
  [6, 4, ['Skin Corr. 1', 'Eye Dam. 1']],
  [6, 3.9, []]
] as const)('pH %d ± %d: %j', ([value, U, names]) => {
  expect(namesOf(classifyFlake({ slurryPH: { value, U } }))).toEqual(names)
})

describe('acute toxicity', () => {
  const toxic = (ate: number) => example('toxic', [], { ates: [{ form: 'oral', ate, ...said }] })
  const unknown = example('unknown', [], { unknownForms: ['oral'] })

  // CLP Annex I, 3.1.3.6.1: 100/ATEmix = Σ C/ATE, and no C is more than 100 %.
  test('an uncertainty reaches no further than the whole', () => {
    expect(namesOf(of(toxic(2050), 99, 5))).toEqual([])
    expect(namesOf(of(toxic(2000), 99, 5))).toEqual(['Acute Tox. 4 oral'])
  })

  // CLP Annex I, 3.1.3.6.1 where all is known, 3.1.3.6.2.3 where more than 10 % is not.
  test.for([
    [10, '3.1.3.6.1', false],
    [10.5, '3.1.3.6.2.3', true]
  ] as const)('%d %% unknown goes by %s', ([percent, clause, isLeftOut]) => {
    const { classes } = classify({
      ingredients: [
        { substance: toxic(300), percent: 50 },
        { substance: unknown, percent },
        { substance: water, percent: 50 - percent }
      ]
    })
    const [reason] = classes[0]!.reasons
    expect(reason!.clauses.map(({ source }) => source).join()).toContain(clause)
    expect(reason!.text.includes('left out')).toBe(isLeftOut)
  })

  // CLP Annex I, 3.1.3.6.2.2: 'ingredient(s) of unknown acute toxicity' from 1 % on.
  test.for([
    [1, [{ form: 'oral', percent: 1 }]],
    [0.99, []]
  ] as const)('%d %% unknown is told: %j', ([percent, told]) => {
    expect(unknownToxicity({ shares: [{ substance: unknown, percent }] })).toEqual(told)
  })
})

describe('a mixture is the substance as such from 99 % on', () => {
  // CLP Annex II, 1.1.3.
  const reacting = example('reacting', ['Skin Irrit. 2'], {
    statements: [{ code: 'EUH014', ...said }]
  })
  test.for([
    [99, ['EUH014']],
    [98.9, []]
  ] as const)('%d %%: %j', ([percent, codes]) => {
    expect(of(reacting, percent).supplements.map(({ code }) => code)).toEqual(codes)
  })
})

// CLP Annex VI, Table 3, 008-003-00-9: bands of its own stand in place of the class as such.
test.for([
  [99, ['Ox. Liq. 1']],
  [70, ['Ox. Liq. 1']],
  [69.9, ['Ox. Liq. 2']],
  [50, ['Ox. Liq. 2']]
] as const)('hydrogen peroxide %d %% is %j, and once', ([percent, names]) => {
  const substance = findSubstance('hydrogen peroxide')!
  const found = classifyPhysical({ shares: [{ substance, percent }] })
  expect(found.map(({ class: name }) => name)).toEqual(names)
})

// CLP Annex I, Table 4.1.2: 10 × Chronic 1 for Chronic 2, 10 × Chronic 2 for Chronic 3.
test.for([
  ['Aquatic Chronic 1', 2.5, ['Aquatic Chronic 2']],
  ['Aquatic Chronic 1', 2.4, ['Aquatic Chronic 3']],
  ['Aquatic Chronic 1', 0.25, ['Aquatic Chronic 3']],
  ['Aquatic Chronic 1', 0.24, []],
  ['Aquatic Chronic 2', 2.5, ['Aquatic Chronic 3']],
  ['Aquatic Chronic 2', 2.4, []]
] as const)('%s at %d %%: %j', ([name, percent, names]) => {
  expect(namesOf(of(example('x', [name]), percent))).toEqual(names)
})

// UN GHS, 4.1.3.5.5.3 (from memory): the same weights for Acute 2 and 3.
test.for([
  ['Aquatic Acute 1', 2.4, ['Aquatic Acute 3']],
  ['Aquatic Acute 1', 0.24, []],
  ['Aquatic Acute 2', 2.4, []]
] as const)('UN: %s at %d %%: %j', ([name, percent, names]) => {
  const ingredients = [
    { substance: example('x', [name]), percent },
    { substance: water, percent: 100 - percent }
  ]
  expect(namesOf(classify({ ingredients, edition: 'un' }))).toEqual(names)
})

// Common practice, no source: half a unit between two figures of one filtrate is not yet a contradiction.
test.for([
  [3, false],
  [3.01, true],
  [2, false]
] as const)('pH %d where the acid makes 2.5 contradicts it: %s', ([value, contradicts]) => {
  const found = classifyFlake({ slurryPH: { value, U: 0 }, predictedPH: 2.5 })
  expect(found.mismatch !== undefined).toBe(contradicts)
})
