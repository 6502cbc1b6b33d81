/** Cautions for a charge: exactly its substances, each sentence with its source. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { type CautionBlock, cautionsFor, type Charged } from '../../src/hazards/cautions.ts'
import file from '../../src/hazards/cautions.json' with { type: 'json' }
import { agents, limitText } from '../../src/hazards/exposure.ts'
import limitFile from '../../src/hazards/exposure-limits.json' with { type: 'json' }
import { findSubstance, substances, unknownSubstance } from '../../src/hazards/substances.ts'
import { example, solution } from './mixtures.ts'

const of = (name: string, percent = 100): Charged => ({
  name,
  ingredients: solution(name, percent)
})
const texts = (lines: readonly { text: string }[]) => lines.map(({ text }) => text).join('\n')

/** Everything a block says, one string a thing. */
const saidBy = (block: CautionBlock) => [
  ...[block.handling, block.gases, block.disposal].flat().map(({ text }) => text),
  ...block.incompatible.map(({ text, together }) => `${text} ${together}`),
  ...block.exposure.map(({ id }) => id),
  ...block.unknown
]

describe('the files', () => {
  const cited = { source: z.string().min(10), sure: z.enum(['print', 'second hand', 'memory']) }
  const group = z.enum(Object.keys(file.groups))
  const agent = z.enum(agents.map(({ id }) => id))
  const substance = z.enum(substances.map(({ id }) => id))
  const sentence = { text: z.string().regex(/^[A-Z].*[^.]$/u), ...cited }

  test('cautions have the shape their type says, and name groups and agents that exist', () => {
    const named = z.array(z.strictObject({ of: z.array(group).min(1), ...sentence }))
    const shape = z.strictObject({
      groups: z.record(
        z.string(),
        z.strictObject({
          traits: z.array(z.string()).optional(),
          substances: z.array(substance)
        })
      ),
      handling: named,
      incompatible: z.array(z.strictObject({ of: group, with: group, ...sentence })),
      gases: z.array(
        z.strictObject({
          agent,
          from: z.array(z.array(group).min(1)).min(1),
          ...sentence,
          source: z.string()
        })
      ),
      disposal: named
    })
    expect(shape.safeParse(file).error).toBeUndefined()
  })

  test('limits have the shape their type says, each with issuer, year and a value', () => {
    const positive = z.number().positive()
    const limit = z
      .strictObject({
        issuer: z.string().min(10),
        year: z.number().int().min(1970).max(2026),
        over: z.enum(['8 h', '15 min', 'ceiling', 'any time']),
        ppm: positive.optional(),
        mg_per_m3: positive.optional(),
        mppcf: positive.optional(),
        of: z.string().optional(),
        ...cited
      })
      .refine(({ ppm, mg_per_m3, mppcf }) => ppm ?? mg_per_m3 ?? mppcf)
    const shape = z.strictObject({
      agents: z.array(
        z.strictObject({
          id: z.string(),
          name: z.string(),
          substances: z.array(substance),
          limits: z.array(limit).min(1)
        })
      )
    })
    expect(shape.safeParse(limitFile).error).toBeUndefined()
    expect(new Set(agents.map(({ id }) => id)).size).toBe(agents.length)
  })

  test('a short-term limit lies above that of 8 h, and danger above both', () => {
    for (const { limits } of agents)
      for (const one of limits) {
        const value = one.ppm ?? one.mg_per_m3 ?? 0
        const above = limits.filter(
          other =>
            (other.ppm === undefined) === (one.ppm === undefined) &&
            one.mppcf === undefined &&
            (other.over === 'any time'
              ? one.over !== 'any time'
              : other.issuer === one.issuer && other.over === '15 min' && one.over === '8 h')
        )
        for (const other of above) expect(other.ppm ?? other.mg_per_m3).toBeGreaterThan(value)
      }
  })

  // 1 ppm is M/24.45 mg/m³ at 25 °C and M/24.04 at 20 °C, which directives of the European Union use.
  test.for([
    ['nitric-acid', 63.01],
    ['nitrogen-dioxide', 46.01],
    ['nitrogen-monoxide', 30.01],
    ['sulfur-dioxide', 64.06],
    ['ammonia', 17.03],
    ['hydrogen-peroxide', 34.01],
    ['carbon-dioxide', 44.01]
  ] as const)('%s: ppm and mg/m³ are one concentration', ([id, molarMass]) => {
    const both = agents
      .find(one => one.id === id)!
      .limits.flatMap(({ ppm, mg_per_m3: mass }) => (ppm && mass ? [mass / ppm] : []))
    expect(both.length).toBeGreaterThan(0)
    // Tables round to one or two digits; NIOSH prints 35 ppm of ammonia as 27 mg/m³, 10 % off.
    for (const ratio of both) expect(Math.abs(ratio / (molarMass / 24.2) - 1)).toBeLessThan(0.12)
  })
})

// Directives 2009/161/EU and (EU) 2017/164; NIOSH, documentation for IDLH values, May 1994, and its
// profile of nitrogen dioxide of 2017.
test.for([
  [
    'sulfuric-acid',
    '0.05 mg/m³, thoracic fraction, 8 h: European Union, Directive 2009/161/EU (2009)'
  ],
  ['sulfur-dioxide', '0.5 ppm (1.3 mg/m³), 8 h: European Union, Directive (EU) 2017/164 (2017)'],
  ['sulfur-dioxide', '1 ppm (2.7 mg/m³), 15 min: European Union, Directive (EU) 2017/164 (2017)'],
  ['sulfur-dioxide', '5 ppm (13 mg/m³), 8 h: OSHA, 29 CFR 1910.1000 Table Z-1 (1994)'],
  ['nitric-acid', '2 ppm (5 mg/m³), 8 h: NIOSH, recommended limit (1994)'],
  ['nitric-acid', '25 ppm, any time: NIOSH, immediately dangerous to life or health (1994)'],
  ['nitrogen-dioxide', '5 ppm (9 mg/m³), ceiling: OSHA, 29 CFR 1910.1000 Table Z-1 (1994)'],
  [
    'nitrogen-dioxide',
    '13 ppm (24 mg/m³), any time: NIOSH, immediately dangerous to life or health (2017)'
  ],
  ['ammonia', '25 ppm (18 mg/m³), 8 h: NIOSH, recommended limit (1994)'],
  ['hydrogen-peroxide', '1 ppm (1.4 mg/m³), 8 h: OSHA, 29 CFR 1910.1000 Table Z-1 (1994)'],
  [
    'graphite',
    '15 million particles per cubic foot, natural graphite, 8 h: OSHA, 29 CFR 1910.1000 Table Z-3 (1994)'
  ],
  ['graphite', '2.5 mg/m³, natural graphite, respirable dust, 8 h: NIOSH, recommended limit (1994)']
] as const)('%s: %s', ([id, text]) => {
  expect(agents.find(one => one.id === id)!.limits.map(limitText)).toContain(text)
})

describe('a charge', () => {
  test('of acid, peroxide and graphite', () => {
    const block = cautionsFor([
      of('graphite'),
      of('sulfuric acid', 96),
      of('hydrogen peroxide', 30),
      of('water')
    ])
    expect(block.reagents.map(({ name, signal }) => [name, signal])).toEqual([
      ['graphite', undefined],
      ['sulfuric acid', 'Danger'],
      ['hydrogen peroxide', 'Danger'],
      ['water', undefined]
    ])
    expect(block.reagents[1]).toMatchObject({
      pictograms: ['GHS05'],
      statements: [{ code: 'H314' }],
      classes: ['Skin Corr. 1A', 'Eye Dam. 1']
    })
    expect(texts(block.handling)).toContain('never water into acid')
    expect(texts(block.handling)).toContain('never scale a charge up by proportion')
    expect(texts(block.gases)).toContain('Sulfur dioxide when the flake is heated')
    expect(texts(block.gases)).not.toMatch(/nitrogen|ammonia/iu)
    expect(block.exposure.map(({ id }) => id)).toEqual([
      'sulfuric-acid',
      'sulfur-dioxide',
      'hydrogen-peroxide',
      'graphite'
    ])
    expect(texts(block.disposal)).toContain('Wash water is acid')
    expect(texts(block.disposal)).not.toContain('manganese')
    expect(block.unknown).toEqual([])
  })

  test('of permanganate warns of the heptoxide and of manganese in the wash water', () => {
    const block = cautionsFor([of('sulfuric acid', 96), of('potassium permanganate')])
    expect(texts(block.handling)).toContain('dimanganese heptoxide')
    expect(texts(block.disposal)).toContain('manganese')
    expect(block.exposure.map(({ id }) => id)).toContain('manganese')
  })

  test('of an ammonium salt warns of strong base, and more so with one', () => {
    const alone = cautionsFor([of('ammonium nitrate')])
    const salt = (block: CautionBlock) =>
      block.incompatible.find(({ text }) => text.startsWith('Never ammonium salts'))
    expect(salt(alone)?.together).toBe(false)
    expect(alone.gases.map(({ gas }) => gas)).not.toContain('ammonia')
    const both = cautionsFor([of('ammonium nitrate'), of('sodium hydroxide', 10)])
    expect(salt(both)?.together).toBe(true)
    expect(both.gases.map(({ gas }) => gas)).toContain('ammonia')
    expect(salt(cautionsFor([of('potassium nitrate')]))).toBeUndefined()
  })

  test('of nitric acid names both oxides of nitrogen, and that symptoms come late', () => {
    const block = cautionsFor([of('nitric acid', 65)])
    expect(block.gases.map(({ gas }) => gas)).toEqual(['nitrogen dioxide', 'nitrogen monoxide'])
    expect(texts(block.handling)).toContain('delayed')
  })

  test('of flake to be expanded', () => {
    const block = cautionsFor([of('expandable graphite')])
    expect(texts(block.gases)).toContain('0.653 g')
    expect(texts(block.handling)).toContain('a closed vessel bursts')
    expect(texts(block.handling)).not.toContain('water into acid')
  })

  // M(SO2)/M(H2SO4) of the equation in the sentence.
  test('grams of sulfur dioxide', () => {
    expect((64.064 / 98.078).toFixed(3)).toBe('0.653')
  })

  test('an acid by a supplier’s word is one', () => {
    const acid = example('etching agent', ['Skin Corr. 1B'], {
      traits: [{ trait: 'strong acid', source: 'supplier’s sheet', sure: 'print' }]
    })
    const block = cautionsFor([{ name: 'x', ingredients: [{ substance: acid, percent: 100 }] }])
    expect(texts(block.handling)).toContain('never water into acid')
  })

  test('what nothing is known of is named', () => {
    const block = cautionsFor([
      {
        name: 'Blue liquid',
        ingredients: [{ substance: unknownSubstance('vrimmel'), percent: 40 }]
      }
    ])
    expect(block.unknown).toEqual(['vrimmel'])
    expect(block.reagents[0]?.gaps).toEqual([
      'nothing is known of vrimmel (40 %)',
      '60 % of the composition is not accounted for'
    ])
    expect(cautionsFor([{ name: 'Jar', ingredients: [] }]).reagents[0]?.gaps).toEqual([
      '100 % of the composition is not accounted for'
    ])
  })

  test('what is listed at 0 % is not there', () => {
    const ingredients = [{ substance: findSubstance('sulfuric acid')!, percent: 0 }]
    expect(saidBy(cautionsFor([{ name: 'x', ingredients }]))).toEqual([])
  })

  test('water says nothing', () => {
    expect(saidBy(cautionsFor([of('water')]))).toEqual([])
    expect(saidBy(cautionsFor([]))).toEqual([])
  })
})

describe('any charge', () => {
  const charges = fc.uniqueArray(fc.constantFrom(...substances), { maxLength: 6 }).map(picked =>
    picked.map((substance): Charged => ({
      name: substance.id,
      ingredients: [{ substance, percent: 50 }]
    }))
  )

  test('order makes no difference; another substance takes no sentence away', () => {
    fc.assert(
      fc.property(charges, fc.constantFrom(...substances), (charge, substance) => {
        const said = saidBy(cautionsFor(charge)).sort()
        expect(saidBy(cautionsFor([...charge].reverse())).sort()).toEqual(said)
        const more = saidBy(
          cautionsFor([...charge, { name: 'more', ingredients: [{ substance, percent: 1 }] }])
        )
        // 'false' becomes 'true' where the other side comes in.
        const base = (text: string) => text.replace(/ (?:true|false)$/u, '')
        expect(more.map(base)).toEqual(expect.arrayContaining(said.map(base)))
      })
    )
  })

  test('every agent told is of the charge, or of a gas told', () => {
    fc.assert(
      fc.property(charges, charge => {
        const { exposure, gases } = cautionsFor(charge)
        const ids = charge.map(({ name }) => name)
        for (const { name, substances: from } of exposure)
          expect(from.some(id => ids.includes(id)) || gases.some(({ gas }) => gas === name)).toBe(
            true
          )
      })
    )
  })
})
