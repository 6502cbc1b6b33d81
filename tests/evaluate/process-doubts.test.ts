/** Things that should not be done so, and charges above their limit. */

import { describe, expect, test } from 'vitest'
import { problemsOf, smallFiles, withChange, withFile } from '../records-on-disk.ts'

const batch = (from: string, to: string, files = smallFiles) =>
  withChange(files, 'batches/EB-1.yaml', from, to)

const material = (lot: string, kind: string, substance: string, rest = '') => `lot: ${lot}
title: ${lot}
kind: ${kind}
supplier: Quorl Acids
received: 2026-01-10
quantity: 5000 g
composition:
  - { substance: ${substance}, fraction: 90 %${rest} }
`

const told = (code: string, files: typeof smallFiles) =>
  problemsOf(files).filter(line => line.startsWith(code))

const charged = (oxidiser: string, neutraliser: string, files = smallFiles) =>
  [
    ['OX-1', 'oxidiser', oxidiser, ''],
    ['NB-1', 'neutraliser', neutraliser, ', as: NH3']
  ].reduce(
    (all, [lot, kind, substance, as]) =>
      withFile(
        batch('steps:', `  - { material: ${lot}, as: ${kind}, mass: 10.00 g }\nsteps:`, all),
        `materials/${lot}.yaml`,
        material(lot!, kind!, substance!, substance === 'ammonia' ? as : '')
      ),
    files
  )

describe('substances that should not meet', () => {
  test.for([
    ['ammonium nitrate', 'sodium hydroxide', 'NB-1 is a strong base, and OX-1 holds ammonium'],
    ['ammonium persulfate', 'calcium hydroxide', 'NB-1 is a strong base'],
    ['ammonium persulfate', 'sodium carbonate', 'NB-1 is a strong base'],
    ['sodium nitrate', 'ammonia', 'NB-1 brings ammonium and OX-1 nitrate'],
    ['nitric acid', 'ammonia', 'NB-1 brings ammonium and OX-1 nitrate']
  ] as const)('%s and %s', ([oxidiser, neutraliser, says]) => {
    expect(told('INCOMPATIBLE', charged(oxidiser, neutraliser)).join()).toContain(says)
  })

  test.for([
    ['hydrogen peroxide', 'sodium hydroxide'],
    ['potassium permanganate', 'ammonia'],
    ['sodium nitrate', 'sodium hydrogen carbonate'],
    ['ammonium persulfate', 'calcium carbonate'],
    ['ammonium persulfate', 'sodium hydrogen carbonate']
  ] as const)('%s and %s say nothing', ([oxidiser, neutraliser]) => {
    expect(told('INCOMPATIBLE', charged(oxidiser, neutraliser))).toEqual([])
  })
})

describe('the order of steps', () => {
  const steps = (...lines: string[]) =>
    batch(
      '  - { what: dried',
      `${lines.map(line => `  - { ${line} }\n`).join('')}  - { what: dried`,
      charged('hydrogen peroxide', 'sodium hydrogen carbonate')
    )

  test.for([
    ['by what they do', 'what: soda, does: neutralise', 'what: into ice, does: quench'],
    ['by what they add', 'what: soda, adds: [NB-1]', 'what: into ice, does: quench'],
    ['by their words', 'what: neutralised', 'what: quenched into water']
  ] as const)('a neutraliser before the quench is told, %s', ([, first, second]) => {
    expect(told('STEP_ORDER', steps(first, second))).toEqual([
      'STEP_ORDER steps.1.what: the neutraliser went in before the quench: concentrated acid and base react violently'
    ])
    expect(told('STEP_ORDER', steps(second, first))).toEqual([])
  })

  test('quenched and neutralised in one step is taken at its word', () => {
    expect(told('STEP_ORDER', steps('what: quenched and neutralised'))).toEqual([])
  })

  test('a step adds only what the charge lists', () => {
    expect(told('UNKNOWN_REFERENCE', steps('what: soda, adds: [NB-2]'))).toEqual([
      "UNKNOWN_REFERENCE steps.1.adds.0: there is no line of the charge with 'NB-2'"
    ])
  })
})

describe('a quench hotter than dilution explains', () => {
  const quenched = (temperature: string) =>
    batch(
      '  - { what: dried',
      `  - { what: into ice, does: quench, water: 1000 g, temperature: ${temperature} }\n  - { what: dried`,
      withChange(
        smallFiles,
        'materials/SA-1.yaml',
        'quantity: 2000 g',
        `quantity: 2000 g
composition:
  - { substance: sulfuric acid, fraction: 93 % }
  - { substance: water, fraction: 7 % }`
      )
    )

  test.for([
    ['47 °C', 0],
    ['65 °C', 1]
  ] as const)('from 8 °C to %s', ([temperature, times]) => {
    expect(told('HOTTER_THAN_DILUTION', quenched(temperature))).toHaveLength(times)
  })
})

const limited = (limits: string, files = smallFiles) =>
  withChange(files, 'producer.yaml', 'roles:', `charge-limits:\n${limits}\nroles:`)

const V1 = (rest: string) =>
  `  - { vessel: V-1, since: 2026-01-01, assessment: RA-1, by: quality manager, ${rest} }`

const inV1 = (rest: string) =>
  limited(V1(rest), batch('made: 2026-02-02', 'made: 2026-02-02\nvessel: V-1'))

describe('a charge of 100 g of graphite and 300 g of acid', () => {
  test.for([
    ['graphite: 100 g', []],
    ['graphite: 99.99 g', ['graphite 100 g, above 99.99 g']],
    ['acid: 299 g', ['acid 300 g, above 299 g']],
    ['total: 399 g', ['total 400 g, above 399 g']],
    ['oxidiser: 1 g', []],
    ['graphite: 90 g, total: 500 g', ['graphite 100 g, above 90 g']],
    ['graphite: 90 g, acid: 200 g', ['graphite 100 g, above 90 g; acid 300 g, above 200 g']]
  ] as const)('against %s', ([limit, texts]) => {
    expect(told('CHARGE_LIMIT', inV1(limit))).toEqual(
      texts.map(
        text =>
          `CHARGE_LIMIT charge: was charged with ${text}: the documented limit of vessel V-1 (RA-1); the lot is held`
      )
    )
  })

  test('is held from release until a role has reviewed it', () => {
    const over = inV1('graphite: 90 g')
    expect(told('NOT_RELEASABLE', over)).toEqual([
      'NOT_RELEASABLE status.0.is: cannot be let go: it was charged with graphite 100 g, above 90 g: the documented limit of vessel V-1 (RA-1), and nobody has reviewed that by 2026-02-06'
    ])
    const reviewed = (on: string, by = 'quality manager') =>
      batch(
        'product:',
        `over-limit: { by: ${by}, on: ${on}, because: cooled well }\nproduct:`,
        over
      )
    expect(problemsOf(reviewed('2026-02-05'))).toEqual([])
    expect(told('NOT_RELEASABLE', reviewed('2026-02-07'))).toHaveLength(1)
    expect(told('UNKNOWN_REFERENCE', reviewed('2026-02-05', 'nobody'))).toHaveLength(1)
  })

  test('is held to the limit in force on its day', () => {
    const later = `${V1('graphite: 90 g').replace('2026-01-01', '2026-02-03')}`
    const ended = V1('graphite: 90 g, until: 2026-02-01')
    const files = batch('made: 2026-02-02', 'made: 2026-02-02\nvessel: V-1')
    expect(problemsOf(limited(later, files))).toEqual([])
    expect(problemsOf(limited(ended, files))).toEqual([])
  })

  test('with an oxidiser has to name a vessel that has a limit, once limits are in force', () => {
    const oxidised = charged('hydrogen peroxide', 'sodium hydrogen carbonate')
    const limits = V1('graphite: 200 g')
    expect(told('CHARGE_LIMIT', oxidised)).toEqual([])
    expect(told('CHARGE_LIMIT', limited(limits, oxidised)).join()).toContain(
      'does not name the vessel it was made in'
    )
    const other = batch('made: 2026-02-02', 'made: 2026-02-02\nvessel: V-9', oxidised)
    expect(told('CHARGE_LIMIT', limited(limits, other)).join()).toContain(
      'vessel V-9 has no documented limit in force on 2026-02-02'
    )
  })
})

describe('a limit that says nothing, or ends before it begins', () => {
  test.for([
    ['until: 2026-06-01', 'MISSING_FIELD charge-limits.0: this limit limits nothing'],
    ['graphite: 1 g, until: 2025-06-01', 'DATE_ORDER charge-limits.0.until: ends on 2025-06-01']
  ] as const)('%s', ([rest, says]) => {
    expect(problemsOf(limited(V1(rest))).join('\n')).toContain(says)
  })

  test('is answered for by a role', () => {
    const files = limited(V1('graphite: 200 g').replace('quality manager', 'nobody'))
    expect(told('UNKNOWN_REFERENCE', files)).toHaveLength(1)
  })
})
