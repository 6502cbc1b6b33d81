/** What suppliers' safety data sheets say, in records, in reasons and in what is decided. */

import { describe, expect, test } from 'vitest'
import { classify } from '../../src/hazards/classify.ts'
import { explainClass } from '../../src/hazards/explain.ts'
import { findSubstance, withSupplier } from '../../src/hazards/substances.ts'
import { suppliedSubstance } from '../../src/judge/supplier-lines.ts'
import { judgeContent } from '../../src/pipeline.ts'
import type { Material } from '../../src/records/types.ts'
import { problemsOf, smallFiles, withChange } from '../records-on-disk.ts'
import { classesOf, labelOf, said } from './mixtures.ts'

/** A delivery whose sheet says something of its substances. */
function delivery(composition: string, says: string): Material {
  const files = withChange(
    smallFiles,
    'materials/SA-1.yaml',
    'expires:',
    `composition: [${composition}]
safety-data-sheet: { reference: QA-96, revision: 3.1, date: 2025-10-02 }
classification: [${says}]
expires:`
  )
  const { evaluated, problems } = judgeContent(files)
  expect(problems.filter(({ file }) => file.path.includes('SA-1'))).toEqual([])
  return evaluated!.content.materials.get('SA-1')!.record
}

const water = findSubstance('water')!
const at = (percent: number, name: string, ...materials: Material[]) => ({
  ingredients: [
    { substance: suppliedSubstance(name, materials), percent },
    { substance: water, percent: 100 - percent }
  ]
})

describe('a supplier’s sheet', () => {
  const kmno4 = '{ substance: potassium permanganate, fraction: 99 % }'
  const m10 = delivery(kmno4, '{ substance: potassium permanganate, m-acute: 10, m-chronic: 10 }')

  // CLP Annex I, Tables 4.1.1 and 4.1.2, computed: 10 × 3 % = 30 %.
  test('gives M-factors where the law has none, and the reason names the sheet, not its owner', () => {
    const mixture = at(3, 'potassium permanganate', m10)
    expect(labelOf(mixture)).toBe('GHS08 GHS09 · Warning · H361d H410')
    const why = classify(mixture).classes.flatMap(explainClass).join(' ')
    expect(why).toContain('10 × potassium permanganate 3 % = 30 %')
    expect(why).toContain('supplier’s safety data sheet, revision 3.1 of 2025-10-02')
    expect(why).not.toMatch(/Quorl|QA-96/u)
  })

  test('is taken by any name of the substance, and of every delivery together', () => {
    const corrodes = delivery(
      kmno4,
      '{ substance: potassium permanganate, classes: [{ class: Skin Corr. 1C }] }'
    )
    expect(classesOf(at(3, '7722-64-7', m10, corrodes))).toEqual([
      'Skin Irrit. 2',
      'Eye Dam. 1',
      'Repr. 2',
      'Aquatic Acute 1',
      'Aquatic Chronic 1'
    ])
    expect(classesOf(at(3, 'potassium permanganate'))).toEqual(['Repr. 2', 'Aquatic Chronic 2'])
  })

  test('makes a substance of one that is not listed', () => {
    const agent = delivery(
      '{ substance: wetting agent, fraction: 1 % }',
      `{ substance: wetting agent, classes: [{ class: Eye Dam. 1 }, { class: Acute Tox. 3 inhalation, form: mist }, { class: STOT RE 2, organ: liver }],
        limits: [{ class: Eye Dam. 1, from: 2 % }], ate: { oral: 400 mg/kg, mist: 0.6 mg/L } }`
    )
    // Below its own limit for damage it irritates, from 1 % on: Table 3.3.3.
    expect(classesOf(at(1.9, 'wetting agent', agent))).toEqual(['Eye Irrit. 2'])
    expect(classesOf(at(2, 'Wetting agent', agent))).toEqual(['Eye Dam. 1'])
    // 100 × 0.6/50 = 1.2 mg/L; 100 × 400/50 = 800 mg/kg.
    expect(classesOf(at(50, 'wetting agent', agent))).toEqual([
      'Acute Tox. 4 oral',
      'Acute Tox. 4 inhalation',
      'Eye Dam. 1',
      'STOT RE 2'
    ])
    const { classes } = suppliedSubstance('wetting agent', [agent])
    expect(classes.find(({ class: name }) => name === 'STOT RE 2')?.fill).toBe('(liver)')
  })

  test('may say that a substance is not classified, and then nothing is missing of it', () => {
    const chalk = delivery(
      '{ substance: chalk, fraction: 1 % }',
      '{ substance: chalk, not-classified: yes }'
    )
    expect(classify(at(40, 'chalk')).gaps).toEqual(['nothing is known of chalk (40 %)'])
    expect(classify(at(40, 'chalk', chalk))).toMatchObject({ classes: [], gaps: [] })
  })

  test('that is unclassified takes nothing from what the law classifies', () => {
    const milder = delivery(
      '{ substance: sulfuric acid, fraction: 96 % }',
      '{ substance: sulfuric acid, not-classified: yes }'
    )
    expect(classesOf(at(15, 'sulfuric acid', milder))).toEqual(['Skin Corr. 1A'])
  })
})

describe('the law beside a supplier', () => {
  const line = { ...said }
  const peroxide = findSubstance('hydrogen peroxide')!

  // CLP Annex VI, 1.2.1: a category with * is the least. 30 % of ATE 500 makes 1667 mg/kg.
  test('an estimate milder than the category gives way, a stricter one holds', () => {
    const with_ = (ate: number) => ({
      ingredients: [
        {
          substance: withSupplier(peroxide, 'x', { ates: [{ form: 'oral', ate, ...line }] }),
          percent: 30
        },
        { substance: water, percent: 70 }
      ]
    })
    expect(classesOf(with_(2001))).toContain('Acute Tox. 4 oral')
    expect(classesOf(with_(2000))).not.toContain('Acute Tox. 4 oral')
    expect(classesOf(with_(80))).toContain('Acute Tox. 3 oral')
  })

  test('keeps its limits, and those of families it speaks of', () => {
    const limits = [
      { class: 'Skin Irrit. 2', from_percent: 1, ...line },
      { class: 'STOT SE 3 airways', from_percent: 10, ...line }
    ] as const
    const more = withSupplier(findSubstance('sulfuric acid')!, 'x', { limits })
    expect(more.limits.filter(({ source }) => source === said.source)).toEqual([limits[1]])
  })

  test('a class brings the question that goes with it', () => {
    const classes = (['Ox. Sol. 2', 'Met. Corr. 1', 'Flam. Liq. 3', 'Eye Dam. 1'] as const).map(
      name => ({ class: name, ...line })
    )
    const { traits } = withSupplier(undefined, 'x', { classes })
    expect(traits.map(({ trait }) => trait)).toEqual([
      'oxidiser',
      'corrosive to metals',
      'flammable'
    ])
  })

  test('what is known of it and no class says stays beside the supplier’s word', () => {
    const nitrate = withSupplier(findSubstance('potassium nitrate')!, 'x', { classes: [] })
    expect(nitrate).toMatchObject({ basis: 'supplier', classes: [] })
    expect(nitrate.traits.map(({ trait }) => trait)).toEqual(['oxidiser'])
  })
})

test('a lot’s residue counts as its supplier classifies it', () => {
  const says = `composition: [{ substance: stabiliser, fraction: 2 % }]
safety-data-sheet: { reference: QA-96, revision: 3.1, date: 2025-10-02 }
classification: [{ substance: stabiliser, classes: [{ class: Carc. 1B }] }]
expires:`
  const judged = (residue: string) =>
    problemsOf(
      withChange(
        withChange(
          withChange(smallFiles, 'materials/SA-1.yaml', 'expires:', says),
          'grades/FK-1.yaml',
          'limits:',
          'hazards: { classified: [not classified], basis: our own }\nlimits:'
        ),
        'batches/EB-1.yaml',
        'status:',
        `hazards:
  residues: [{ substance: ${residue}, fraction: 0.5 % }]
  decisions:
    - { about: missing data, by: quality manager, on: 2026-02-06, because: no pH asked for }
status:`
      )
    ).join()
  expect(judged('stabiliser')).toContain('computed as Carc. 1B, which its grade does not declare')
  expect(judged('water')).toBe('')
})

test('classes and statements no list knows are told, and limits the law keeps to itself', () => {
  const says = `composition: [{ substance: sulfuric acid, fraction: 96 % }]
safety-data-sheet: { reference: QA-96, revision: 3.1, date: 2025-10-02 }
classification:
  - substance: sulfuric acid
    classes: [{ class: Met. Corr. 2 }]
    limits: [{ class: Skin Irrit. 2, from: 20 % }, { class: Aquatic Acute 9, from: 5 % }]
    statements: [EUH999, H314]
expires:`
  expect(problemsOf(withChange(smallFiles, 'materials/SA-1.yaml', 'expires:', says))).toEqual([
    "UNKNOWN_WORD classification.0.classes.0.class: 'Met. Corr. 2' is no hazard class known here",
    'INVALID_VALUE classification.0.limits.0.class: the law itself classifies sulfuric acid in the class of Skin Irrit. 2, and leaves no limit of it to a supplier',
    "UNKNOWN_WORD classification.0.limits.1.class: 'Aquatic Acute 9' is no hazard class known here",
    "UNKNOWN_WORD classification.0.statements.0: 'EUH999' is no EUH statement known here",
    "UNKNOWN_WORD classification.0.statements.1: 'H314' is no EUH statement known here"
  ])
})
