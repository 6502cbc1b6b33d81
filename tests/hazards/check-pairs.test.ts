/** Compositions with the classification and label that published sources give them. */

import { describe, expect, test } from 'vitest'
import { classify } from '../../src/hazards/classify.ts'
import { classifyFlake, type LotEvidence } from '../../src/hazards/classify-lot.ts'
import { dustText } from '../../src/hazards/dust.ts'
import { mergeIngredients } from '../../src/hazards/mixture.ts'
import { labelElements } from '../../src/hazards/label-elements.ts'
import { statementText } from '../../src/hazards/statements.ts'
import { findSubstance, withSupplier } from '../../src/hazards/substances.ts'
import { classesOf, example, labelOf, said, solution } from './mixtures.ts'

/**
 * Aqueous solutions, % by mass. 'VI': bands of CLP Annex VI, Table 3. 'GIS': bands that public data
 * sheets of German statutory accident insurers print. 'C': computed by hand from those.
 */
describe('solutions in water', () => {
  test.for([
    ['sulfuric acid', 96, ['Skin Corr. 1A'], 'GHS05 · Danger · H314', 'VI'],
    ['sulfuric acid', 15, ['Skin Corr. 1A'], 'GHS05 · Danger · H314', 'VI'],
    ['sulfuric acid', 14.9, ['Skin Irrit. 2', 'Eye Irrit. 2'], 'GHS07 · Warning · H315 H319', 'VI'],
    ['sulfuric acid', 5, ['Skin Irrit. 2', 'Eye Irrit. 2'], 'GHS07 · Warning · H315 H319', 'VI'],
    // Nothing is classified, but the sheet is to be had: CLP Annex II, 2.10.
    ['sulfuric acid', 4.9, [], '– · – · EUH210', 'VI'],
    ['sodium hydroxide', 5, ['Skin Corr. 1A'], 'GHS05 · Danger · H314', 'VI'],
    ['sodium hydroxide', 4.9, ['Skin Corr. 1B'], 'GHS05 · Danger · H314', 'VI'],
    ['sodium hydroxide', 2, ['Skin Corr. 1B'], 'GHS05 · Danger · H314', 'VI'],
    [
      'sodium hydroxide',
      0.5,
      ['Skin Irrit. 2', 'Eye Irrit. 2'],
      'GHS07 · Warning · H315 H319',
      'VI'
    ],
    ['sodium hydroxide', 0.49, [], '– · – · –', 'VI'],
    [
      'nitric acid',
      65,
      ['Ox. Liq. 3', 'Acute Tox. 3 inhalation', 'Skin Corr. 1A'],
      'GHS03 GHS05 GHS06 · Danger · H272 H331 H314 EUH071',
      'VI, C'
    ],
    [
      'nitric acid',
      60,
      ['Acute Tox. 3 inhalation', 'Skin Corr. 1A'],
      'GHS05 GHS06 · Danger · H331 H314 EUH071',
      'GIS, 26 to 65 %'
    ],
    [
      'nitric acid',
      26.5,
      ['Acute Tox. 3 inhalation', 'Skin Corr. 1A'],
      'GHS05 GHS06 · Danger · H331 H314 EUH071',
      'C'
    ],
    [
      'nitric acid',
      26.4,
      ['Acute Tox. 4 inhalation', 'Skin Corr. 1A'],
      'GHS05 GHS07 · Danger · H332 H314 EUH071',
      'C'
    ],
    [
      'nitric acid',
      13.25,
      ['Acute Tox. 4 inhalation', 'Skin Corr. 1B'],
      'GHS05 GHS07 · Danger · H332 H314 EUH071',
      'C'
    ],
    ['nitric acid', 13.2, ['Skin Corr. 1B'], 'GHS05 · Danger · H314', 'VI, C'],
    ['hydrogen peroxide', 4.9, [], '– · – · EUH210', 'VI'],
    ['hydrogen peroxide', 7.9, ['Eye Irrit. 2'], 'GHS07 · Warning · H319', 'VI, GIS'],
    [
      'hydrogen peroxide',
      20,
      ['Eye Dam. 1'],
      'GHS05 · Danger · H318',
      'GIS, but for transport’s oxidiser class'
    ],
    ['hydrogen peroxide', 24.9, ['Eye Dam. 1'], 'GHS05 · Danger · H318', 'GIS, C'],
    [
      'hydrogen peroxide',
      25,
      ['Acute Tox. 4 oral', 'Eye Dam. 1'],
      'GHS05 GHS07 · Danger · H302 H318',
      'GIS, C'
    ],
    [
      'hydrogen peroxide',
      29.9,
      ['Acute Tox. 4 oral', 'Eye Dam. 1'],
      'GHS05 GHS07 · Danger · H302 H318',
      'GIS, C'
    ],
    [
      'hydrogen peroxide',
      30,
      ['Acute Tox. 4 oral', 'Acute Tox. 4 inhalation', 'Eye Dam. 1'],
      'GHS05 GHS07 · Danger · H302+H332 H318',
      'GIS, C'
    ],
    [
      'hydrogen peroxide',
      50,
      [
        'Ox. Liq. 2',
        'Acute Tox. 4 oral',
        'Acute Tox. 4 inhalation',
        'Skin Corr. 1B',
        'STOT SE 3 airways'
      ],
      'GHS03 GHS05 GHS07 · Danger · H272 H302+H332 H314 H335',
      'VI'
    ],
    [
      'ammonia',
      25,
      ['Skin Corr. 1B', 'STOT SE 3 airways', 'Aquatic Acute 1'],
      'GHS05 GHS07 GHS09 · Danger · H314 H335 H400',
      'VI, M = 1'
    ],
    // The sheets print H400 from 10 % on, the arithmetic of M = 1 says 25 %.
    [
      'ammonia',
      8,
      ['Skin Corr. 1B', 'STOT SE 3 airways'],
      'GHS05 GHS07 · Danger · H314 H335',
      'GIS, 5 to 10 %'
    ],
    [
      'potassium permanganate',
      3,
      ['Repr. 2', 'Aquatic Chronic 2'],
      'GHS08 GHS09 · Warning · H361d H411',
      'VI, C'
    ],
    [
      'potassium permanganate',
      100,
      ['Ox. Sol. 2', 'Acute Tox. 4 oral', 'Repr. 2', 'Aquatic Acute 1', 'Aquatic Chronic 1'],
      'GHS03 GHS07 GHS08 GHS09 · Danger · H272 H302 H361d H410',
      'VI'
    ],
    [
      'sodium nitrate',
      100,
      ['Ox. Sol. 3', 'Eye Irrit. 2'],
      'GHS03 GHS07 · Warning · H272 H319',
      'from memory'
    ],
    [
      'ammonium nitrate',
      100,
      ['Ox. Sol. 3', 'Eye Irrit. 2'],
      'GHS03 GHS07 · Warning · H272 H319',
      'from memory'
    ],
    [
      'ammonia, anhydrous',
      100,
      ['Flam. Gas 2', 'Press. Gas', 'Acute Tox. 3 inhalation', 'Skin Corr. 1B', 'Aquatic Acute 1'],
      'GHS04 GHS05 GHS06 GHS09 · Danger · H221 H280 H331 H314 H400 EUH071',
      'GIS'
    ]
  ] as const)('%s %d %%', ([name, percent, classes, label]) => {
    const mixture = { ingredients: solution(name, percent) }
    expect(classesOf(mixture)).toEqual(classes)
    expect(labelOf(mixture)).toBe(label)
  })

  test('permanganate with a supplier’s M of 10', () => {
    const m = ['acute', 'chronic'] as const
    const substance = withSupplier(findSubstance('potassium permanganate'), 'KMnO4', {
      mFactors: m.map(kind => ({ kind, m: 10, ...said }))
    })
    const mixture = { ingredients: [{ substance, percent: 3 }, ...solution('water', 97)] }
    expect(classesOf(mixture)).toEqual(['Repr. 2', 'Aquatic Acute 1', 'Aquatic Chronic 1'])
    expect(labelOf(mixture)).toBe('GHS08 GHS09 · Warning · H361d H410')
  })
})

describe('made-up ingredients', () => {
  const water = findSubstance('water')!
  const of = (...parts: (readonly [ReturnType<typeof example>, number])[]) => ({
    ingredients: [
      ...parts.map(([substance, percent]) => ({ substance, percent })),
      { substance: water, percent: 100 - parts.reduce((sum, [, percent]) => sum + percent, 0) }
    ]
  })
  const corrosive = example('corrosive', ['Skin Corr. 1B'])
  const irritant = example('irritant', ['Skin Irrit. 2'])
  const airways = example('airways', ['STOT SE 3 airways'])

  // CLP Annex I, Tables 3.2.3 and 3.3.3, computed by hand: 10 × 4 + 6 = 46 ≥ 10, and 4 ≥ 3.
  test('corrosive 4 % and irritant 6 %', () => {
    const mixture = of([corrosive, 4], [irritant, 6])
    expect(classesOf(mixture)).toEqual(['Skin Irrit. 2', 'Eye Dam. 1'])
    expect(labelOf(mixture)).toBe('GHS05 · Danger · H315 H318')
  })

  // European Chemicals Agency, exercises on classifying mixtures (seminar of national helpdesks, 2012).
  test.for([
    [0.8, [], '– · – · –'],
    // Nothing is classified, but the sheet is to be had: CLP Annex II, 2.10.
    [1.8, [], '– · – · EUH210'],
    [10, ['Skin Irrit. 2'], 'GHS07 · Warning · H315']
  ] as const)('irritant %d %%', ([percent, classes, label]) => {
    expect(classesOf(of([irritant, percent]))).toEqual(classes)
    expect(labelOf(of([irritant, percent]))).toBe(label)
  })

  // CLP Annex I, 3.8.3.4.5 (from memory, not checked against the print).
  test.for([
    [19.9, [], '– · – · EUH210'],
    [20, ['STOT SE 3 airways'], 'GHS07 · Warning · H335']
  ] as const)('airway irritant %d %%', ([percent, classes, label]) => {
    expect(classesOf(of([airways, percent]))).toEqual(classes)
    expect(labelOf(of([airways, percent]))).toBe(label)
  })

  // UN ST/SG/AC.10/C.4/2008/23, example 3.2.3.3(a): an ingredient of category 1 whose own pH is 1.8.
  // Category 3 of the UN is not part of CLP; its 5 % does not matter to either outcome.
  test('a strong acid of 4 % corrodes by the table for what does not add up, and irritates by the sum', () => {
    const strong = example('acid', ['Skin Corr. 1'], {
      traits: [{ trait: 'strong acid', ...said }]
    })
    const plain = example('acid', ['Skin Corr. 1'])
    const rest = [
      [irritant, 5],
      [water, 91]
    ] as const
    expect(classesOf(of([strong, 4], ...rest))).toContain('Skin Corr. 1')
    expect(classesOf(of([plain, 4], ...rest))).toContain('Skin Irrit. 2')
    expect(classesOf(of([plain, 4], ...rest))).not.toContain('Skin Corr. 1')
  })

  // UN ST/SG/AC.10/C.4/2012/25, example 4.1(a): sums 0.1, 2, 20 and 26.01.
  test('environment: a quarter of Chronic 4 and traces of others', () => {
    const m = ['acute', 'chronic'] as const
    const first = example('first', ['Aquatic Acute 1', 'Aquatic Chronic 1'], {
      mFactors: m.map(kind => ({ kind, m: 10, ...said }))
    })
    const second = example('second', ['Aquatic Chronic 2'])
    const fourth = example('fourth', ['Aquatic Chronic 4'])
    const mixture = of([first, 0.01], [second, 1], [fourth, 25])
    expect(classesOf(mixture)).toEqual(['Aquatic Chronic 4'])
    expect(labelOf(mixture)).toBe('– · – · H413')
    expect(classify(mixture).classes[0]!.reasons[0]!.text).toContain('= 26.01 %')
  })

  // CLP Annex I, Table 3.9.4 (from memory, not checked against the print).
  test.for([
    [0.9, []],
    [1, ['STOT RE 2']],
    [9.9, ['STOT RE 2']],
    [10, ['STOT RE 1']]
  ] as const)('respirable quartz %d %%', ([percent, classes]) => {
    expect(classesOf(of([findSubstance('quartz')!, percent]))).toEqual(classes)
  })

  // CLP Annex I, Tables 3.5.2 to 3.7.2.
  test.for([
    ['Carc. 1B', 0.1, 0.09],
    ['Carc. 2', 1, 0.9],
    ['Muta. 1B', 0.1, 0.09],
    ['Muta. 2', 1, 0.9],
    ['Repr. 1B', 0.3, 0.29],
    ['Repr. 2', 3, 2.9],
    ['Resp. Sens. 1', 1, 0.9],
    ['Skin Sens. 1', 1, 0.9],
    ['STOT SE 1', 10, 0.9],
    ['STOT SE 2', 10, 9.9],
    ['STOT RE 2', 10, 9.9]
  ] as const)('%s from %d %%, not from %d %%', ([name, from, below]) => {
    const substance = example('one', [name])
    expect(classesOf(of([substance, from]))).toEqual([name])
    expect(classesOf(of([substance, below]))).toEqual([])
  })

  test('limits of their own and generic ones add up as shares', () => {
    const own = example('own', ['Skin Corr. 1A'], {
      limits: [
        { class: 'Skin Corr. 1A', from_percent: 20 },
        { class: 'Skin Irrit. 2', from_percent: 8 }
      ]
    })
    // 10/20 + 2.4/5 = 0.98; 10/20 + 2.5/5 = 1.
    expect(classesOf(of([own, 10], [corrosive, 2.4]))).toContain('Skin Irrit. 2')
    expect(classesOf(of([own, 10], [corrosive, 2.5]))).toEqual(['Skin Corr. 1B'])
  })

  test('an ingredient with a limit of its own stays out of the sum for airways', () => {
    const own = example('own', ['STOT SE 3 airways'], {
      limits: [{ class: 'STOT SE 3 airways', from_percent: 35 }]
    })
    expect(classesOf(of([own, 34], [airways, 19]))).toEqual([])
    expect(classesOf(of([own, 35]))).toEqual(['STOT SE 3 airways'])
  })

  test('effects on airways and narcotic effects are summed apart', () => {
    const narcotic = example('narcotic', ['STOT SE 3 narcotic'])
    expect(classesOf(of([airways, 15], [narcotic, 15]))).toEqual([])
  })

  test.for([
    [[5, 0, 0, 0], 'Skin Corr. 1A'],
    [[4, 1, 0, 0], 'Skin Corr. 1B'],
    [[2, 2, 1, 0], 'Skin Corr. 1C'],
    [[2, 2, 0.9, 1], 'Skin Corr. 1'],
    [[0, 0, 0, 5], 'Skin Corr. 1'],
    [[5, 0, 0, 5], 'Skin Corr. 1A']
  ] as const)('%j %% of 1A, 1B, 1C and 1 make %s', ([percents, expected]) => {
    const names = ['Skin Corr. 1A', 'Skin Corr. 1B', 'Skin Corr. 1C', 'Skin Corr. 1'] as const
    const parts = names.map((name, index) => [example(name, [name]), percents[index]!] as const)
    expect(classesOf(of(...parts))).toEqual([expected])
  })

  // CLP Annex I, Tables 3.2.3, 3.2.4, 3.3.3 and 3.3.4 (as clauses.ts marks them), at their limits.
  const acid = { traits: [{ trait: 'strong acid', ...said }] } as const
  test.for([
    ['Skin Corr. 1B', 1, {}, ['Skin Irrit. 2', 'Eye Irrit. 2']],
    ['Eye Dam. 1', 1, {}, ['Eye Irrit. 2']],
    ['Eye Irrit. 2', 10, {}, ['Eye Irrit. 2']],
    ['Eye Irrit. 2', 9.9, {}, []],
    ['Skin Irrit. 2', 3, acid, ['Skin Irrit. 2']],
    ['Skin Irrit. 2', 2.9, acid, []],
    ['Eye Irrit. 2', 3, acid, ['Eye Irrit. 2']],
    ['Eye Irrit. 2', 2.9, acid, []],
    ['Eye Dam. 1', 1, acid, ['Eye Dam. 1']],
    ['STOT SE 1', 1, {}, ['STOT SE 2']]
  ] as const)('%s %d %% %j: %j', ([name, percent, rest, classes]) => {
    expect(classesOf(of([example('one', [name], rest), percent]))).toEqual(classes)
  })

  test('a limit of its own goes before the cut-off of its class', () => {
    const limits = [{ class: 'Repr. 1B', from_percent: 0.03 }] as const
    expect(classesOf(of([example('one', ['Repr. 1B'], { limits }), 0.03]))).toEqual(['Repr. 1B'])
  })

  test('environment: a hundredfold share of Chronic 1 makes Chronic 3', () => {
    const one = example('one', ['Aquatic Chronic 1'])
    expect(classesOf(of([one, 0.25]))).toEqual(['Aquatic Chronic 3'])
    expect(classesOf(of([one, 0.24]))).toEqual([])
  })

  test('below 1 % an ingredient without a limit of its own does not count', () => {
    const many = Array.from(
      { length: 6 },
      (_, index) => [example(`c${index}`, ['Skin Corr. 1B']), 0.99] as const
    )
    expect(classesOf(of(...many))).toEqual([])
  })
})

/** Joint registration of EC 235-819-4; CLP Annex I, 3.2.3.1.2 and 2.14, from what was measured. */
describe('expandable graphite', () => {
  const washed: LotEvidence = {
    freeAcid_percent: { value: 0, U: 0, below: 0.01 },
    slurryPH: { value: 6, U: 0 }
  }
  const labelled = (evidence: LotEvidence) => {
    const { classes, supplements, state } = classifyFlake(evidence)
    const { pictograms, signal = '–', statements } = labelElements(classes, supplements)
    const codes = statements.map(({ code }) => code)
    return `${pictograms.join(' ') || '–'} · ${signal} · ${codes.join(' ') || '–'} · ${state}`
  }
  test.for([
    ['washed, pH 6', washed, '– · – · – · complete'],
    [
      'pH 1.8 and no other data',
      { slurryPH: { value: 1.8, U: 0 } },
      'GHS05 · Danger · H314 · incomplete'
    ],
    [
      'with detectable permanganate',
      {
        ...washed,
        residues: [{ substance: findSubstance('potassium permanganate')!, percent: 0.01 }]
      },
      '– · – · – · incomplete'
    ],
    ['with detectable nitrate', { ...washed, oxidiserFound: true }, '– · – · – · incomplete']
  ] as const)('%s', ([, evidence, label]) => {
    expect(labelled(evidence)).toBe(label)
  })
})

// CLP, Articles 20(3), 26(1)(b) and 27.
test('the skull takes the exclamation mark away, and no statement', () => {
  const { pictograms, signal, statements } = labelElements([
    { class: 'Acute Tox. 3 inhalation' },
    { class: 'Acute Tox. 4 oral' },
    { class: 'Skin Irrit. 2' }
  ])
  expect([pictograms, signal]).toEqual([['GHS06'], 'Danger'])
  expect(statements.map(({ code }) => code).sort()).toEqual(['H302', 'H315', 'H331'])
})

// Consolidated text of 2025-09-01: both were reworded after 2008.
test.for([
  ['H314', 'fr', 'Provoque de graves brûlures de la peau et de graves lésions des yeux.'],
  [
    'P210',
    'en',
    'Keep away from heat, hot surfaces, sparks, open flames and other ignition sources. No smoking.'
  ]
] as const)('%s in %s is today’s', ([code, language, text]) => {
  expect(statementText(code, language)).toEqual({ ok: true, text })
})

describe('what arithmetic cannot tell', () => {
  const questions = (mixture: Parameters<typeof classify>[0]) =>
    classify(mixture).questions.map(({ topic }) => topic)

  test.for([
    ['hydrogen peroxide', 20, ['oxidising']],
    ['hydrogen peroxide', 7.9, []],
    ['hydrogen peroxide', 50, []],
    ['potassium permanganate', 3, ['oxidising']],
    ['potassium permanganate', 100, []],
    ['sulfuric acid', 96, ['metals']],
    ['nitric acid', 60, ['metals']],
    ['acetic acid', 30, ['metals', 'flammable']],
    ['water', 100, []]
  ] as const)('%s %d %% leaves open: %j', ([name, percent, topics]) => {
    const mixture = { ingredients: solution(name, percent) }
    expect(questions(mixture)).toEqual(topics)
    expect(classify(mixture).state).toBe(topics.length > 0 ? 'incomplete' : 'complete')
  })

  test('a test result closes the question, and gives its class', () => {
    const ingredients = solution('sulfuric acid', 96)
    const answers = [
      { topic: 'metals', class: 'Met. Corr. 1', because: 'UN C.1 on steel' }
    ] as const
    expect(questions({ ingredients, answers })).toEqual([])
    expect(labelOf({ ingredients, answers })).toBe('GHS05 · Danger · H290 H314')
    const none = [{ topic: 'metals', because: 'UN C.1: below 6.25 mm a year' }] as const
    expect(labelOf({ ingredients, answers: none })).toBe('GHS05 · Danger · H314')
    expect(classify({ ingredients, answers: none }).state).toBe('complete')
  })

  test('never an oxidiser class for a mixture by arithmetic', () => {
    for (const percent of [1, 10, 50, 90, 98.9])
      expect(labelOf({ ingredients: solution('potassium permanganate', percent) })).not.toContain(
        'H272'
      )
  })

  test('what is not known makes it incomplete, never unclassified', () => {
    const short = classify({ ingredients: [{ substance: findSubstance('water')!, percent: 90 }] })
    expect(short).toMatchObject({
      state: 'incomplete',
      gaps: ['10 % of the composition is not accounted for']
    })
    const long = classify({ ingredients: [{ substance: findSubstance('water')!, percent: 100.2 }] })
    expect(long).toMatchObject({
      state: 'incomplete',
      gaps: ['the composition adds up to 100.2 %']
    })
    const outside = classify({ ingredients: solution('nitric acid', 75) })
    expect(outside.gaps).toEqual([
      'nitric acid 75 % is outside what its entry is for (at most 70 %)'
    ])
  })

  test('dust: not excluded, found, excluded', () => {
    const point = {
      shares: mergeIngredients([{ substance: findSubstance('graphite')!, percent: 100 }])
    }
    expect(dustText(point, 'dust')).toMatchObject({
      signal: 'Warning',
      text: 'May form combustible dust concentrations in air.',
      because: 'not excluded by a dust test'
    })
    expect(dustText(point, 'pieces', 'combustible')?.text).toMatch(/^If small particles/u)
    expect(dustText(point, 'dust', 'not combustible')).toBeUndefined()
    expect(dustText({ shares: [] }, 'dust')).toBeUndefined()
  })
})
