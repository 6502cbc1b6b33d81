/** Lots of flake from what was measured, and the rule of the pH beside limits of concentration. */

import { describe, expect, test } from 'vitest'
import { filtratePH } from '../../src/chemistry/acid-ph.ts'
import { classify } from '../../src/hazards/classify.ts'
import {
  articleClassification,
  classifyFlake,
  type LotEvidence
} from '../../src/hazards/classify-lot.ts'
import { compareDeclared } from '../../src/hazards/declared.ts'
import { explainClass, explainConflict } from '../../src/hazards/explain.ts'
import { findSubstance } from '../../src/hazards/substances.ts'
import { exact } from '../../src/metrology/estimate.ts'
import { solution } from './mixtures.ts'

const lot = (evidence: LotEvidence) => {
  const found = classifyFlake(evidence)
  return { ...found, names: found.classes.map(({ class: name }) => name) }
}
const acid = (value: number, U = 0) => ({ freeAcid_percent: { value, U } })
const pH = (value: number, U = 0) => ({ slurryPH: { value, U } })

describe('flake', () => {
  // Joint registration of EC 235-819-4: washed, no classification.
  test('washed, free acid below 0.01 %, pH 6', () => {
    const found = lot({ freeAcid_percent: { value: 0.004, U: 0.01, below: 0.01 }, ...pH(6) })
    expect(found).toMatchObject({ names: [], state: 'complete', gaps: [], questions: [] })
  })

  test('below a reporting limit, the limit counts as the upper end', () => {
    const at = (below: number) =>
      lot({ freeAcid_percent: { value: 0, U: 0.1, below }, ...pH(6) }).names
    expect(at(4.9)).toEqual([])
    expect(at(5)).toEqual(['Skin Irrit. 2', 'Eye Irrit. 2'])
  })

  // CLP Annex VI, Table 3, 016-020-00-8, the free acid taken as the constituent.
  test.for([
    [4.9, 2.2, []],
    [5, 2.2, ['Skin Irrit. 2', 'Eye Irrit. 2']],
    [14.9, 2.2, ['Skin Irrit. 2', 'Eye Irrit. 2']],
    [15, 2.2, ['Skin Corr. 1A', 'Eye Dam. 1']]
  ] as const)('free acid %d %%, pH %d: %j', ([percent, value, names]) => {
    expect(lot({ ...acid(percent), ...pH(value) }).names).toEqual(names)
  })

  // CLP Annex I, 3.2.3.1.2: no sub-category.
  test('pH 1.8 and nothing else is corrosive, and incomplete', () => {
    const found = lot(pH(1.8))
    expect(found).toMatchObject({
      names: ['Skin Corr. 1', 'Eye Dam. 1'],
      state: 'incomplete',
      gaps: ['free acidity was not measured'],
      conflicts: []
    })
  })

  test.for([
    [2.01, []],
    [2, ['Skin Corr. 1', 'Eye Dam. 1']],
    [11.49, []],
    [11.5, ['Skin Corr. 1', 'Eye Dam. 1']]
  ] as const)('pH %d alone', ([value, names]) => {
    expect(lot(pH(value)).names).toEqual(names)
  })

  test('nothing measured is incomplete, not unclassified', () => {
    expect(lot({})).toMatchObject({
      state: 'incomplete',
      gaps: ['free acidity was not measured', 'the pH of the slurry was not measured']
    })
  })

  test('an oxidiser of the process is asked about until someone answers', () => {
    const evidence = { ...acid(0.01), ...pH(6), oxidiserCharged: true }
    expect(lot(evidence)).toMatchObject({
      state: 'incomplete',
      names: [],
      questions: [{ topic: 'oxidising' }]
    })
    const answers = [{ topic: 'oxidising', because: 'peroxide strip: none' }] as const
    expect(lot({ ...evidence, answers })).toMatchObject({ state: 'complete', questions: [] })
  })

  test('a residue of permanganate counts by its classes, and asks for a test', () => {
    const residues = [{ substance: findSubstance('potassium permanganate')!, percent: 3 }]
    const found = lot({ ...acid(0.01), ...pH(6), residues })
    expect(found.names).toEqual(['Repr. 2', 'Aquatic Chronic 2'])
    expect(found.questions.map(({ topic }) => topic)).toEqual(['oxidising'])
  })

  test('foil is an article', () => {
    expect(articleClassification).toMatchObject({ classes: [], state: 'complete' })
    expect(articleClassification.article).toContain('article')
  })
})

describe('limit and pH rule', () => {
  test('disagree between about 0.7 % and 15 % free acid: both are shown, the stricter holds', () => {
    const found = lot({ ...acid(6), ...pH(1.2) })
    expect(found.names).toEqual(['Skin Corr. 1', 'Eye Dam. 1'])
    expect(found.state).toBe('incomplete')
    const sentence = explainConflict(found.conflicts[0]!)
    expect(sentence).toMatch(/^Concentration limits give [^.].*[^.]\.$/su)
    for (const part of [
      'Skin Irrit. 2',
      'sulfuric acid 6 %',
      '016-020-00-8',
      'Skin Corr. 1',
      'pH 1.2',
      '3.2.3.1.2'
    ])
      expect(sentence).toContain(part)
  })

  test('are told by what was measured, and by its uncertain end only where that alone reaches them', () => {
    const told = (percent: number, value: number) => {
      const { conflicts, questions } = lot({ ...acid(percent, 0.03), ...pH(value, 0.07) })
      return [explainConflict(conflicts[0]!), ...questions.map(({ text }) => text)].join(' ')
    }
    const well = told(6, 1.25)
    for (const part of ['sulfuric acid 6 %', 'pH 1.25']) expect(well).toContain(part)
    expect(well).not.toMatch(/6\.03|1\.18/u)
    const barely = told(4.98, 2.05)
    for (const part of ['sulfuric acid 5.01 %', 'pH 1.98']) expect(barely).toContain(part)
  })

  test('a recorded decision settles it, either way', () => {
    const evidence = { ...acid(6), ...pH(1.2) }
    const answers = [{ topic: 'metals', because: 'UN C.1: not corrosive' }] as const
    const limits = lot({ ...evidence, answers, settled: 'limits' })
    expect(limits).toMatchObject({ names: ['Skin Irrit. 2', 'Eye Irrit. 2'], state: 'complete' })
    expect(limits.conflicts).toHaveLength(1)
    expect(lot({ ...evidence, answers, settled: 'pH' })).toMatchObject({
      names: ['Skin Corr. 1', 'Eye Dam. 1'],
      state: 'complete'
    })
  })

  test('agree from 15 % on', () => {
    expect(lot({ ...acid(16), ...pH(0.9) })).toMatchObject({
      conflicts: [],
      names: ['Skin Corr. 1A', 'Eye Dam. 1']
    })
  })

  test('a limit alone stands where no pH is known', () => {
    expect(classify({ ingredients: solution('sulfuric acid', 14.9) }).conflicts).toEqual([])
  })
})

describe('one filtrate', () => {
  const predicted = (percent: number) =>
    filtratePH({ freeAcid_percent: exact(percent), mass_g: exact(10), water_mL: exact(100) }).value

  // Computed: 10 g in 100 mL reach pH 2.5 at 0.17 % and pH 2 at 0.65 to 0.70 %; 6 % make pH 1.2.
  test.for([
    [0.17, 2.5, 1],
    [0.675, 2.0, 1],
    [6, 1.2, 1]
  ] as const)('%d %% free acid makes pH %d', ([percent, pH, places]) => {
    expect(predicted(percent)).toBeCloseTo(pH, places)
  })

  test.for([
    [0.3, 6, true],
    [6, 2.6, true],
    [0.17, 2.5, false],
    [0.17, 2.99, false],
    [0.17, 3.1, true]
  ] as const)('%d %% with pH %d contradict each other: %s', ([percent, value, contradict]) => {
    const found = lot({ ...acid(percent), ...pH(value), predictedPH: predicted(percent) })
    expect(found.mismatch !== undefined).toBe(contradict)
    expect(found.state).toBe(contradict ? 'incomplete' : 'complete')
  })
})

describe('uncertainty', () => {
  test.for([
    [4.8, 0.1, [], undefined],
    [4.8, 0.2, ['Skin Irrit. 2', 'Eye Irrit. 2'], 'reached only with the uncertainty added'],
    [5.1, 0.2, ['Skin Irrit. 2', 'Eye Irrit. 2'], 'not reached with the uncertainty taken off'],
    [5.3, 0.2, ['Skin Irrit. 2', 'Eye Irrit. 2'], undefined]
  ] as const)('free acid %d ± %d %%', ([value, U, names, margin]) => {
    const found = lot({ ...acid(value, U), ...pH(2.5) })
    expect(found.names).toEqual(names)
    expect(found.classes[0]?.margin).toBe(margin)
    if (margin) expect(explainClass(found.classes[0]!).join(' ')).toContain(margin)
  })

  test.for([
    [2.1, 0.05, []],
    [2.1, 0.1, ['Skin Corr. 1', 'Eye Dam. 1']],
    [11.4, 0.1, ['Skin Corr. 1', 'Eye Dam. 1']],
    [11.4, 0.05, []]
  ] as const)('pH %d ± %d', ([value, U, names]) => {
    expect(lot({ ...acid(0.1), ...pH(value, U) }).names).toEqual(names)
  })
})

describe('a declaration', () => {
  const computed = lot({ ...acid(6), ...pH(2.5) })
  test.for([
    [['Skin Irrit. 2', 'Eye Irrit. 2'], [], []],
    [['Skin Irrit. 2'], ['Eye Irrit. 2'], []],
    [['Skin Corr. 1B', 'Eye Dam. 1'], [], ['Skin Corr. 1B', 'Eye Dam. 1']],
    [['Skin Irrit. 2', 'Eye Irrit. 2', 'Aquatic Chronic 3'], [], ['Aquatic Chronic 3']],
    [[], ['Skin Irrit. 2', 'Eye Irrit. 2'], []]
  ] as const)('%j beside irritation: not declared %j, beyond %j', ([declared, missing, beyond]) => {
    expect(compareDeclared(declared, computed)).toEqual({ missing, beyond })
  })

  test('damage to eyes is declared with what corrodes skin', () => {
    expect(compareDeclared(['Skin Corr. 1A'], lot({ ...acid(15), ...pH(1) })).missing).toEqual([])
  })
})
