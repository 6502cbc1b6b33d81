/** Plans from the demo's own recipe, limits and stock, against figures worked by hand. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { planDocument } from '../../src/documents/plan.ts'
import { planText } from '../../src/documents/plan-text.ts'
import { planCharge } from '../../src/plan/plan.ts'
import type { Plan, PlanRequest } from '../../src/plan/types.ts'
import { plannedDraft } from '../../src/records/planned-draft.ts'
import { parseRecord } from '../../src/records/document.ts'
import { demoFiles, evaluate, withChange, withFile } from '../records-on-disk.ts'

const demo = evaluate(demoFiles)
const usual: PlanRequest = {
  grade: 'flake-250',
  wish: { graphite_g: 100 },
  vessel: 'V-2',
  day: '2026-11-10'
}

function planned(request: Partial<PlanRequest> = {}, content = demo): Plan {
  const result = planCharge(content, { ...usual, ...request })
  if (!result.ok) throw new Error(result.reasons.join('\n'))
  return result.plan
}

function refused(request: Partial<PlanRequest> = {}, content = demo): string {
  const result = planCharge(content, { ...usual, ...request })
  if (result.ok) throw new Error('a plan was made')
  return result.reasons.join('\n')
}

const changed = (path: string, from: string, to: string, files = demoFiles) =>
  withChange(files, path, from, to)

const recipe = 'grades/flake-250-r3.yaml'

describe('100 g of graphite in V-2', () => {
  const { parts, masses, yields, product_g, heats, washing, neutralising, gas, waste } = planned()

  test('takes the recipe’s ratios', () => {
    const rows = parts.map(({ role, mass_g, takings }) => [
      role,
      mass_g,
      takings.map(t => t.material.lot)
    ])
    expect(rows).toEqual([
      ['graphite', 100, ['GR-26-01']],
      ['acid', 302, ['SA-26-01']],
      ['oxidiser', 19.6, ['OX-26-02']],
      ['water', 1070, ['DW-26-01']]
    ])
    expect(masses.total).toBeCloseTo(421.6, 9)
  })

  test('volumes from densities: 302 g of 96 % acid at 1.8355, 19.6 g of 30 % peroxide at 1.1126', () => {
    expect(parts[1]!.volume_mL!.value).toBeCloseTo(302 / 1.8355, 6)
    expect(parts[2]!.volume_mL!.value).toBeCloseTo(19.6 / 1.1126, 6)
    expect(parts[3]!.volume_mL).toBeUndefined()
  })

  test('yield of the workshop’s own batches, by hand', () => {
    const values = [...demo.lots.values()].flatMap(lot =>
      lot.kind === 'batch' && lot.entry.record.grade === 'flake-250' && lot.entry.record.charge
        ? [
            (100 * lot.entry.record.product.mass_g.value) /
              lot.entry.record.charge[0]!.mass_g!.value
          ]
        : []
    )
    expect(yields.n).toBe(values.length)
    const mean = values.reduce((a, b) => a + b) / values.length
    expect(yields.mean_percent).toBeCloseTo(mean, 9)
    const s = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1))
    // t of 8 degrees of freedom, 97.5 %: 2.3060 (tables).
    expect(values).toHaveLength(9)
    expect(yields.next!.high_percent - mean).toBeCloseTo(2.306 * s * Math.sqrt(1 + 1 / 9), 3)
    expect(product_g!.expected).toBeCloseTo(mean, 9)
  })

  test('heats: 289.92 g of acid, 25.8 g of own water, 1070 g of water', () => {
    // 2.9562 mol; r from 0.4846 to 20.58; Zeleznik Q 15.2 and 74.95 kJ/mol; 1391.6 g at 3.49 J/(g·K).
    expect(heats!.dilution_kJ.value / (2.9562 * (74.95 - 15.3))).toBeCloseTo(1, 2)
    expect(heats!.dilutionRise_K.value / (heats!.dilution_kJ.value / (1.3916 * 3.49))).toBeCloseTo(
      1,
      2
    )
    expect(heats!.worstRise_K).toBeGreaterThan(2.5 * heats!.dilutionRise_K.value)
  })

  test('washing and neutralising by hand', () => {
    const held = (289.92 * 250) / (302 + 19.6 + 1070)
    expect(neutralising!.all_g.value).toBeCloseTo((289.92 / 98.072) * 2 * (84.006 / 0.99), 3)
    expect(neutralising!.drained_g!.value).toBeCloseTo((held / 98.072) * 2 * (84.006 / 0.99), 3)
    // Each wash leaves a quarter: 750 g onto 250 g.
    const target = (0.03 / 100) * product_g!.expected
    const n = Math.ceil(Math.log(held / target) / Math.log(4))
    expect(washing!.washes).toBe(n)
    expect(washing!.acidLeft_g).toBeCloseTo(held / 4 ** n, 9)
    expect(waste.liquor_g).toBeCloseTo(1391.6 - 250, 9)
    expect(waste.washWater_g).toBeCloseTo(750 * n, 9)
  })

  test('gas from the largest loss there was, in the room of 85 m³', () => {
    const losses = [...demo.lots.values()].flatMap(lot =>
      lot.kind === 'expansion' ? [lot.process.lossOnExpansion_percent!.estimate.value] : []
    )
    expect(gas!.loss_percent).toBe(Math.max(...losses))
    const lost = (product_g!.expected * gas!.loss_percent) / 100
    expect(gas!.sulfurDioxide_g.value).toBeCloseTo((lost * 64.058) / 98.072, 6)
    expect(gas!.inRoom_mg_per_m3!.value).toBeCloseTo((lost * 64.058 * 1000) / 98.072 / 85, 4)
  })
})

describe('what is asked for', () => {
  test('a mass of product comes from the mean yield', () => {
    const plan = planned({ wish: { product_g: 150 } })
    expect(plan.product_g!.expected).toBeCloseTo(150, 9)
    expect(plan.graphite_g).toBeCloseTo(15000 / plan.yields.mean_percent!, 9)
  })

  test('what a lot has left, of graphite or of the acid', () => {
    expect(planned({ wish: { useUp: 'GR-26-01' } }).graphite_g).toBeCloseTo(199.93, 1)
    const left = planned().parts[2]!.takings[0]!.left_g
    expect(refused({ wish: { useUp: 'OX-26-02' } })).toContain('above 220 g')
    const small = evaluate(changed(recipe, 'per-gram: 0.196', 'per-gram: 2.5'))
    expect(refused({ wish: { useUp: 'OX-26-02' } }, small)).toContain(
      `oxidiser ${Number(left.toPrecision(6))} g, above 50 g`
    )
  })

  test.for([
    [{ wish: { useUp: 'XX-1' } }, 'there is no material lot XX-1'],
    [{ wish: { useUp: 'BE-26-01' } }, 'BE-26-01 is nothing that the recipe of flake-250 asks for'],
    [
      { wish: { useUp: 'OX-26-01' } },
      'OX-26-01 has nothing left, or may not be used on 2026-11-10'
    ],
    [{ wish: { useUp: 'NB-26-01' } }, 'the recipe gives no ratio for NB-26-01'],
    [{ grade: 'flake-9' }, 'there is no grade flake-9'],
    [{ grade: 'flake-250', day: '2025-01-01' }, 'has no revision valid on 2025-01-01'],
    [{ grade: 'flake-200' }, 'has no recipe: write your own ratios'],
    [{ vessel: 'V-9' }, 'vessel V-9 has no documented limit in force on 2026-11-10'],
    [{ day: '2027-01-15' }, 'hydrogen peroxide, 30 % are needed, and usable lots have 0 g left']
  ] as const)('%o is refused', ([request, says]) => {
    expect(refused(request)).toContain(says)
  })
})

describe('the producer’s own limit', () => {
  test('refuses beyond it, whatever part exceeds it', () => {
    expect(refused({ vessel: 'V-1', wish: { graphite_g: 110.1 } })).toBe(
      'graphite 110.1 g, above 110 g, the documented limit of vessel V-1 (RA-26-04 Thwimblecote, 24 August 2026)'
    )
    expect(planned({ vessel: 'V-1', wish: { graphite_g: 110 } }).graphite_g).toBe(110)
    const lower = evaluate(changed('producer.yaml', 'total: 500 g', 'total: 421 g'))
    expect(refused({ vessel: 'V-1' }, lower)).toContain('total 421.6 g, above 421 g')
  })

  test('refuses without it, and while nobody says which vessel', () => {
    const { vessel, ...open } = usual
    expect(vessel).toBe('V-2')
    const result = planCharge(demo, open)
    expect(result).toEqual({
      ok: false,
      reasons: ['the vessel is not named: give --vessel with one of V-1, V-2']
    })
    const unlimited = evaluate(
      demoFiles.map(file =>
        file.path === 'content/producer.yaml'
          ? { ...file, text: file.text.replace(/charge-limits:[^]*(?=room:)/u, '') }
          : file
      )
    )
    expect(refused({}, unlimited)).toContain('has no documented limit')
    const without = planCharge(unlimited, open)
    expect(without.ok ? '' : without.reasons[0]).toContain('no charge limit is documented')
  })

  test('holds whatever is asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 400, noNaN: true }), graphite_g => {
        const result = planCharge(demo, { ...usual, wish: { graphite_g } })
        if (!result.ok) return
        const { masses } = result.plan
        expect(masses.graphite).toBeLessThanOrEqual(220)
        expect(masses.acid).toBeLessThanOrEqual(680)
        expect(masses.oxidiser).toBeLessThanOrEqual(50)
        expect(masses.total).toBeLessThanOrEqual(950)
      }),
      { numRuns: 8 }
    )
  })
})

describe('lots', () => {
  const two = (received: string, expires = '2028-12-31') =>
    evaluate(
      withFile(
        demoFiles,
        'materials/SA-26-09.yaml',
        `lot: SA-26-09
title: Sulfuric acid, 96 %
kind: acid
supplier: Vlottertang Acids
received: ${received}
quantity: 100 g
expires: ${expires}
composition:
  - { substance: sulphuric acid, fraction: 96.4 % }
  - { substance: water, fraction: 3.6 % }
`
      )
    )
  const acidOf = (plan: Plan) =>
    plan.parts[1]!.takings.map(({ material, mass_g }) => [material.lot, Math.round(mass_g)])

  test('oldest first, then the next', () => {
    expect(acidOf(planned({}, two('2026-01-02')))).toEqual([
      ['SA-26-09', 100],
      ['SA-26-01', 202]
    ])
    expect(acidOf(planned({}, two('2026-08-01')))).toEqual([['SA-26-01', 302]])
  })

  test('not one that expired, or that has not come yet', () => {
    expect(acidOf(planned({}, two('2026-01-02', '2026-11-09')))).toEqual([['SA-26-01', 302]])
    expect(acidOf(planned({}, two('2026-11-11')))).toEqual([['SA-26-01', 302]])
  })

  test('of the recipe’s strength alone: none is recomputed', () => {
    const other = evaluate(changed(recipe, 'strength: 96 %', 'strength: 93 %'))
    expect(refused({}, other)).toContain('sulfuric acid, 93 % are needed, and usable lots have 0 g')
  })

  test('water is never drawn from acid or oxidiser, though both hold some', () => {
    const dry = evaluate(changed('materials/DW-26-01.yaml', 'substance: water', 'substance: brine'))
    expect(refused({}, dry)).toContain('g of water are needed, and usable lots have 0 g left')
  })

  test('a lot that two parts ask for has to hold both', () => {
    const twice = evaluate(
      changed(
        recipe,
        '  washing:',
        '    - { as: acid, substance: sulfuric acid, strength: 96 %, per-gram: 3.5 }\n  washing:'
      )
    )
    const roomy = evaluate(
      changed(
        'producer.yaml',
        'acid: 680 g\n    oxidiser: 50 g\n    total: 950 g',
        'acid: 9999 g',
        changed(
          recipe,
          '  washing:',
          '    - { as: acid, substance: sulfuric acid, strength: 96 %, per-gram: 9 }\n  washing:'
        )
      )
    )
    expect(planned({}, twice).parts.filter(({ role }) => role === 'acid')).toHaveLength(2)
    expect(refused({ wish: { graphite_g: 150 } }, roomy)).toContain(
      'two parts of the recipe ask for more of SA-26-01'
    )
  })
})

describe('ammonia', () => {
  const recipeOf = (composition: string) =>
    evaluate(
      withFile(
        changed(
          recipe,
          'substance: sodium hydrogen carbonate, strength: 99 %',
          'substance: ammonia, strength: 10 %, per-gram: 0.1'
        ),
        'materials/NH-26-01.yaml',
        `lot: NH-26-01
title: Ammonia water, 10 %
kind: neutraliser
supplier: Hexmurrow Reagents
received: 2026-02-01
quantity: 1000 g
composition:
  - { ${composition} }
  - { substance: water, fraction: 90 % }
`
      )
    )
  const unsaid = recipeOf('substance: ammonia, fraction: 10 %')

  test('of unsaid strength is refused until it is said', () => {
    expect(refused({}, unsaid)).toContain('counted as NH3 or as NH4OH, which is 0.486 of it')
    const nh3 = planned({ ammonia: 'NH3' }, unsaid).neutralising!.all_g.value
    const nh4oh = planned({ ammonia: 'NH4OH' }, unsaid).neutralising!.all_g.value
    expect(nh4oh / nh3).toBeCloseTo(35.046 / 17.031, 9)
    expect(nh3).toBeCloseTo(((2 * 289.92) / 98.072) * 170.31, 2)
  })

  test('that the record settles needs no word, and heeds none', () => {
    const said = recipeOf('substance: ammonia, fraction: 10 %, as: NH3')
    const all = planned({}, said).neutralising!.all_g.value
    expect(planned({ ammonia: 'NH4OH' }, said).neutralising!.all_g.value).toBe(all)
  })
  test('called ammonium hydroxide is counted as NH4OH, whatever the option says', () => {
    const named = recipeOf('substance: ammonium hydroxide, fraction: 10 %')
    const all = planned({ ammonia: 'NH4OH' }, unsaid).neutralising!.all_g.value
    expect(planned({}, named).neutralising!.all_g.value).toBe(all)
    expect(planned({ ammonia: 'NH3' }, named).neutralising!.all_g.value).toBe(all)
  })
})

describe('in words', () => {
  const document = planDocument(planned())
  const text = planText(document)

  test('every heat figure says what is not in it, and nothing is called safe', () => {
    const heats = document.figures.filter(({ label }) => /heat|rise/iu.test(label))
    expect(heats.length).toBeGreaterThanOrEqual(5)
    for (const { note } of heats)
      expect(note).toContain('the heat of the reaction itself is not included')
    expect(text.replace(/No figure here says that a charge is safe/gu, '')).not.toMatch(
      /\bsafe\b/iu
    )
    expect(text).toContain('not scaled by proportion')
    expect(text).toContain('Local codes and competent persons decide')
  })

  test('cautions are of what goes in, the neutraliser included, and of nothing else', () => {
    const of = (heading: string) =>
      document.cautions.find(one => one.heading === heading)!.texts.join('\n')
    expect(of('Reagents')).toContain('Sulfuric acid, 96 %: Danger. H314')
    expect(of('Reagents')).toContain('Sodium hydrogen carbonate')
    expect(of('Reagents')).not.toContain('permanganate')
    expect(of('In this charge together')).toContain('foam with carbon dioxide')
    expect(of('Limits of exposure')).toContain('sulfur dioxide')
  })

  test('no line is wider than a terminal, but for the table', () => {
    const lines = text.split('\n').filter(line => !/^ {2}\w+ {2,}\w.* {2}/u.test(line))
    expect(Math.max(...lines.map(line => line.length))).toBeLessThanOrEqual(96)
    expect(text).not.toMatch(/undefined|NaN|Infinity/u)
  })

  test('its draft reads back to the same amounts, and is a batch but for its blanks', () => {
    const charge = document.lines.map(({ lot, as, mass }) => ({
      material: lot,
      as,
      planned: mass.printed
    }))
    const draft = plannedDraft({
      lot: 'EB-26-099',
      grade: 'flake-250',
      made: document.day,
      vessel: 'V-2',
      charge
    })
    const file = { path: 'content/batches/EB-26-099.yaml', text: draft }
    const parsed = parseRecord(file)
    expect(parsed.ok && (parsed.value.data as { charge: unknown }).charge).toEqual(
      charge.map(line => ({ ...line, planned: `${line.planned} g` }))
    )
    const { content } = evaluate([...demoFiles, file])
    const { missing } = content.drafts.find(({ lot }) => lot === 'EB-26-099')!
    expect(missing.every(text => /: is missing|: is blank|mass/u.test(text))).toBe(true)
  })
})
