/** Categories, limits, statements and precautions of each edition; EUH statements of CLP alone. */

import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { classify, type Mixture } from '../../src/hazards/classify.ts'
import { classifyFlake } from '../../src/hazards/classify-lot.ts'
import { type Edition, nameIn, precautionsIn } from '../../src/hazards/editions.ts'
import clp from '../../src/hazards/clp-statements.json' with { type: 'json' }
import { editionText, languages, statementText } from '../../src/hazards/statements.ts'
import un from '../../src/hazards/un-statements.json' with { type: 'json' }
import us from '../../src/hazards/us-statements.json' with { type: 'json' }
import { findSubstance, type Substance } from '../../src/hazards/substances.ts'
import { example, said, solution } from './mixtures.ts'

const water = findSubstance('water')!
const namesIn = (edition: Edition, mixture: Mixture) =>
  classify({ ...mixture, edition }).classes.map(({ class: name }) => name)
const of = (substance: Substance, percent: number): Mixture => ({
  ingredients: [
    { substance, percent },
    { substance: water, percent: Number((100 - percent).toFixed(6)) }
  ]
})

test('the files have the shape their type says', () => {
  const text = z.string().min(4)
  const shape = (statements: z.ZodType) =>
    z.strictObject({
      edition: z.string(),
      short: z.string().max(30),
      sure: z.enum(['print', 'second hand', 'memory']),
      statements: z.record(z.string().regex(/^(?:H|EUH|P)\d{3}/u), statements)
    })
  const all = z.strictObject(Object.fromEntries(languages.map(language => [language, text])))
  expect(shape(all).safeParse(clp).error).toBeUndefined()
  for (const file of [un, us])
    expect(shape(z.strictObject({ en: text })).safeParse(file).error).toBeUndefined()
})

describe('acute toxicity', () => {
  // UN GHS, Table 3.1.1: category 5 up to 5000 mg/kg; 100 × 500/20 = 2500 mg/kg.
  const toxic = example('toxic', [], { ates: [{ form: 'oral', ate: 500, ...said }] })
  test.for([
    [25, ['Acute Tox. 4 oral'], ['Acute Tox. 4 oral']],
    [24.9, [], ['Acute Tox. 5 oral']],
    [10, [], ['Acute Tox. 5 oral']],
    [9.9, [], []]
  ] as const)('%d %% of ATE 500: CLP and US %j, UN %j', ([percent, clpNames, unNames]) => {
    expect(namesIn('clp', of(toxic, percent))).toEqual(clpNames)
    expect(namesIn('us', of(toxic, percent))).toEqual(clpNames)
    expect(namesIn('un', of(toxic, percent))).toEqual(unNames)
  })
  test('inhalation has no figures for category 5', () => {
    const inhaled = example('x', [], { ates: [{ form: 'vapour', ate: 21, ...said }] })
    expect(namesIn('un', of(inhaled, 100))).toEqual([])
  })
})

describe('skin', () => {
  // UN GHS, Table 3.2.3.
  const irritant = example('irritant', ['Skin Irrit. 2'])
  const mild = example('mild', ['Skin Irrit. 3'])
  const corrosive = example('corrosive', ['Skin Corr. 1B'])
  test.for([
    [irritant, 10, ['Skin Irrit. 2']],
    [irritant, 9.9, ['Skin Irrit. 3']],
    [irritant, 1, ['Skin Irrit. 3']],
    [irritant, 0.99, []],
    [mild, 10, ['Skin Irrit. 3']],
    [mild, 9.9, []]
  ] as const)('UN: $0.id at %d %%', ([substance, percent, names]) => {
    expect(namesIn('un', of(substance, percent))).toEqual(names)
    for (const edition of ['clp', 'us'] as const)
      expect(namesIn(edition, of(substance, percent))).toEqual(
        names.filter(name => name !== 'Skin Irrit. 3')
      )
  })
  test('a tenth of a corrosive’s limit for irritation', () => {
    expect(namesIn('un', of(corrosive, 0.1))).toContain('Skin Irrit. 3')
    expect(namesIn('un', of(corrosive, 0.09))).toEqual([])
  })
  test('a limit of its own is no limit for mild irritation', () => {
    expect(namesIn('un', { ingredients: solution('sulfuric acid', 4.9) })).toEqual([])
  })
})

describe('water', () => {
  // UN ST/SG/AC.10/C.4/2012/25, example 4.1a: sums 0.1, 2.0 and 20 of acute, none reaches 25.
  const first = example('first', ['Aquatic Acute 1', 'Aquatic Chronic 1'], {
    mFactors: (['acute', 'chronic'] as const).map(kind => ({ kind, m: 10, ...said }))
  })
  const second = example('second', ['Aquatic Acute 2', 'Aquatic Chronic 2'])
  const fourth = example('fourth', ['Aquatic Chronic 4'])
  const mixed = (a: number, b: number, c: number): Mixture => ({
    ingredients: [
      { substance: first, percent: a },
      { substance: second, percent: b },
      { substance: fourth, percent: c },
      { substance: water, percent: 100 - a - b - c }
    ]
  })
  test('the example of the UN has no acute category', () => {
    expect(namesIn('un', mixed(0.01, 1, 25))).toEqual(['Aquatic Chronic 4'])
  })
  test.for([
    [mixed(2.5, 0, 0), 'Aquatic Acute 1'],
    [mixed(0.25, 0, 0), 'Aquatic Acute 2'],
    [mixed(0.24, 1, 0), 'Aquatic Acute 2'],
    [mixed(0.24, 0, 0), 'Aquatic Acute 3'],
    [mixed(0, 2.5, 0), 'Aquatic Acute 3']
  ] as const)('sums', ([mixture, name]) => {
    expect(namesIn('un', mixture)).toContain(name)
    expect(namesIn('us', mixture)).toEqual([])
    expect(namesIn('clp', mixture).includes('Aquatic Acute 1')).toBe(name === 'Aquatic Acute 1')
  })
  test('below every sum none', () => {
    expect(namesIn('un', mixed(0, 2.4, 0)).filter(name => /Acute/u.test(name))).toEqual([])
  })
})

describe('cut-offs of the United States', () => {
  test.for([
    ['Repr. 2', 3, 0.1],
    ['Repr. 1B', 0.3, 0.1],
    ['Carc. 2', 1, 0.1],
    ['Skin Sens. 1', 1, 0.1],
    ['Resp. Sens. 1', 1, 0.1],
    ['STOT SE 2', 10, 1],
    ['STOT RE 2', 10, 1]
  ] as const)('%s from %d %% on by CLP, from %d %% in the United States', ([name, own, low]) => {
    const one = example('x', [name])
    const below = (limit: number) => of(one, Number((limit * 0.99).toFixed(6)))
    for (const edition of ['clp', 'un'] as const) {
      expect(namesIn(edition, of(one, own))).toEqual([name])
      expect(namesIn(edition, below(own))).toEqual([])
    }
    expect(namesIn('us', of(one, low))).toEqual([name])
    expect(namesIn('us', below(low))).toEqual([])
  })
  test('the lower limit stands in place of the other: one reason, above both', () => {
    const mixture: Mixture = { ...of(example('x', ['Carc. 2']), 5), edition: 'us' }
    const [found] = classify(mixture).classes
    expect(found!.reasons.map(({ text }) => text)).toEqual(['x (Carc. 2) 5 %, limit 0.1 %'])
  })
  // OSHA, letter of interpretation of 4 March 2014.
  test('1 % of STOT 1 makes STOT 1', () => {
    for (const name of ['STOT SE 1', 'STOT RE 1'] as const) {
      expect(namesIn('us', of(example('x', [name]), 1))).toEqual([name])
      expect(namesIn('clp', of(example('x', [name]), 1))).toEqual([name.replace('1', '2')])
    }
  })
})

// Revision 10 gave up P201, P202 and P310 to P315; the United States keep them.
test.for([
  [['P201', 'P202'], ['Repr. 2'], ['P203']],
  [['P310'], ['Skin Sens. 1'], ['P316']],
  [
    ['P337+P313', 'P305+P351+P338', 'P264'],
    ['Eye Irrit. 2'],
    ['P337+P317', 'P305+P351+P338', 'P264+P265']
  ],
  [['P305+P351+P338', 'P303+P361+P353'], ['Skin Corr. 1A'], ['P305+P354+P338', 'P302+P361+P354']],
  [['P308+P313'], ['Carc. 2'], ['P318']],
  [['P280'], ['Skin Irrit. 2'], ['P280']]
] as const)('%j for %j is %j in the UN’s revision 10', ([codes, names, inUN]) => {
  expect(precautionsIn('un', codes, names)).toEqual(inUN)
  expect(precautionsIn('us', codes, names)).toEqual(codes)
  expect(precautionsIn('clp', codes, names)).toEqual(codes)
})

test('the United States have no precautions for water', () => {
  expect(precautionsIn('us', ['P273', 'P280', 'P391'], [])).toEqual(['P280'])
})

test.for([
  ['un', 'H272', undefined, 'May intensify fire; oxidizer'],
  ['clp', 'H272', undefined, 'May intensify fire; oxidiser.'],
  ['un', 'P264', undefined, 'Wash hands thoroughly after handling.'],
  ['un', 'P264', 'forearms', 'Wash hands [and forearms] thoroughly after handling.'],
  ['us', 'P260', undefined, 'Do not breathe dust/fume/gas/mist/vapors/spray.'],
  ['us', 'P310', undefined, 'Immediately call a poison center/doctor.'],
  ['clp', 'P103', undefined, 'Read carefully and follow all instructions.'],
  [
    'clp',
    'P280',
    undefined,
    'Wear protective gloves/protective clothing/eye protection/face protection/hearing protection.'
  ],
  [
    'clp',
    'P280',
    'an apron',
    'Wear protective gloves/protective clothing/eye protection/face protection/hearing protection/an apron.'
  ]
] as const)('%s, %s filled with %s', ([edition, code, fill, text]) => {
  expect(statementText(code, 'en', fill, edition)).toEqual({ ok: true, text })
})

test('P280 in German has the protection of ears', () => {
  expect(statementText('P280', 'de')).toEqual({
    ok: true,
    text: 'Schutzhandschuhe/Schutzkleidung/Augenschutz/Gesichtsschutz/Gehörschutz tragen.'
  })
})

test('what an edition does not print is told, never blank', () => {
  expect(statementText('P310', 'en', undefined, 'un')).toEqual({
    ok: false,
    reason: 'unknown code'
  })
  expect(statementText('H319', 'de', undefined, 'un')).toEqual({
    ok: false,
    reason: 'not in this language'
  })
  expect(editionText('us')).toContain('from memory')
  expect(editionText('un')).toContain('second hand')
  expect(editionText('clp')).not.toContain('memory')
  expect(nameIn('un', 'Eye Irrit. 2')).toBe('Eye Irrit. 2A')
  expect(nameIn('clp', 'Eye Irrit. 2')).toBe('Eye Irrit. 2')
})

describe('EUH208 and EUH210', () => {
  const euh = (mixture: Mixture) =>
    classify(mixture).supplements.map(({ code, fill }) => [code, fill].filter(Boolean).join(' '))
  const sensitiser = example('sensitiser', ['Skin Sens. 1'])

  // CLP Annex II, 2.8: from a tenth of the limit on, and not where the mixture is a sensitiser itself.
  test('a sensitiser from a tenth of its limit on', () => {
    expect(euh(of(sensitiser, 0.09))).toEqual([])
    expect(euh(of(sensitiser, 0.1))).toEqual(['EUH208 sensitiser', 'EUH210'])
    expect(euh(of(sensitiser, 0.99))).toEqual(['EUH208 sensitiser', 'EUH210'])
    expect(euh(of(sensitiser, 1))).toEqual([])
    const own = example('own', ['Skin Sens. 1'], {
      limits: [{ class: 'Skin Sens. 1', from_percent: 0.1 }]
    })
    expect(euh(of(own, 0.01))).toEqual(['EUH208 own'])
  })

  test('several are named together', () => {
    const other = example('other', ['Resp. Sens. 1'])
    const ingredients = [
      { substance: sensitiser, percent: 0.5 },
      { substance: other, percent: 0.5 },
      { substance: water, percent: 99 }
    ]
    expect(euh({ ingredients })).toContain('EUH208 other, sensitiser')
  })

  // CLP Annex II, 2.10: 1 % of anything hazardous, 0.1 % of what is worse, a Union limit of exposure.
  test('a sheet on request, where nothing is classified', () => {
    expect(euh(of(example('irritant', ['Skin Irrit. 2']), 1))).toEqual(['EUH210'])
    expect(euh(of(example('irritant', ['Skin Irrit. 2']), 0.99))).toEqual([])
    expect(euh(of(example('x', ['Repr. 2']), 0.1))).toEqual(['EUH210'])
    expect(euh(of(example('x', ['Repr. 2']), 0.09))).toEqual([])
    expect(euh({ ingredients: solution('sulfuric acid', 0.5) })).toEqual(['EUH210'])
    expect(euh({ ingredients: solution('sodium hydroxide', 0.4) })).toEqual([])
    expect(euh({ ingredients: solution('sulfuric acid', 6) })).toEqual([])
  })

  test('flake is a registered substance: a rest of its own acid below 1 % belongs to it', () => {
    const flake = (value: number) =>
      classifyFlake({ freeAcid_percent: { value, U: 0 }, slurryPH: { value: 3, U: 0 } }).supplements
    expect(flake(0.5)).toEqual([])
    expect(flake(1).map(({ code }) => code)).toEqual(['EUH210'])
  })

  test('are CLP’s alone', () => {
    expect(classify({ ...of(sensitiser, 0.1), edition: 'un' }).supplements).toEqual([])
  })
})
