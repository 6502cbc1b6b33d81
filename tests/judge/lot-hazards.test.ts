/** What a lot's hazards are judged from: two figures of one filtrate, what went in, what a leach found. */

import { describe, expect, test } from 'vitest'
import { problemsOf, smallFiles, withChange, withFile } from '../records-on-disk.ts'

interface Lot {
  /** pH of the slurry. */
  readonly pH: string
  /** Titre of 10 g in 100 mL, of 0.1 mol/L: 122.4 mL are 6 % free acid. */
  readonly titre?: string
  readonly water?: string
  readonly composition?: string
  readonly residues?: string
  readonly tests?: string
  readonly decisions?: readonly string[]
}

const plain = smallFiles.map(({ path, text }) =>
  path.endsWith('FK-1.yaml')
    ? {
        path,
        text: text
          .replace('max: 0.20 %', 'max: 40 %')
          .replace(
            'limits:',
            'hazards: { classified: [not classified], fill: { P264: hands }, basis: our own }\nlimits:'
          )
      }
    : { path, text }
)
const meters = withFile(
  withFile(
    plain,
    'methods/TM-5.yaml',
    'id: TM-5\nedition: 1\nvalid-from: 2026-01-01\nquantity: slurry-ph\ntitle: pH\nconditions: 10 g in 100 mL\ninstruments: { ph: PH-1 }\nrepeatability: { s: 0.03, df: 12, from: 12 lots }\n'
  ),
  'instruments/PH-1.yaml',
  'id: PH-1\ntitle: pH meter\nresolution: 0.01\ncalibration: { against: buffers, on: 2026-01-13, due: 2027-01-13, tolerance: 0.02 }\n'
)

/** What keeps the lot from being let go. */
function openOf(lot: Lot): string[] {
  const { pH, titre = '0.20 mL', water = '\n    water: 100 mL', composition, residues } = lot
  const hazards = [
    ...(residues === undefined ? [] : [`  residues: [${residues}]`]),
    ...(lot.decisions
      ? [
          '  decisions:',
          ...lot.decisions.map(
            about =>
              `    - { about: ${about}, by: quality manager, on: 2026-02-06, because: looked into }`
          )
        ]
      : [])
  ]
  const block = hazards.length === 0 ? '' : `hazards:\n${hazards.join('\n')}\n`
  const batch = 'batches/EB-1.yaml'
  const files = [
    ['titre: 1.34 mL', `titre: ${titre}`],
    ['titre: 1.31 mL', `titre: ${titre}`],
    ['titrant: NA-1', `titrant: NA-1${water}`],
    [
      'status:',
      `  slurry-ph:\n    tested: 2026-02-05\n    method: TM-5\n    readings: [${pH}, ${pH}]\n${lot.tests ?? ''}${block}status:`
    ]
  ].reduce((all, [from, to]) => withChange(all, batch, from!, to!), meters)
  const told = problemsOf(
    composition === undefined
      ? files
      : withChange(
          files,
          'materials/SA-1.yaml',
          'expires:',
          `composition: [${composition}]\nexpires:`
        )
  )
  return told.flatMap(line =>
    line.startsWith('NOT_RELEASABLE') ? [line.replace(/^.*cannot be let go: /u, '')] : []
  )
}

describe('acid and pH of one filtrate', () => {
  test('that go together leave nothing open', () => {
    expect(openOf({ pH: '3.66' })).toEqual([])
  })

  // Less than 0.01 % in 10 g to 100 mL: less than 0.00102 mol/L, no pH below 2.7.
  test('contradict each other although next to no acid was found', () => {
    expect(openOf({ pH: '2.30', titre: '0.05 mL' }).join()).toContain(
      'so little acid was titrated that the slurry'
    )
  })

  test('of a leach nobody recorded the water of cannot be held together', () => {
    expect(openOf({ pH: '3.66', water: '' })).toEqual([
      'the water of the leach is not recorded, so that acid and pH cannot be held together'
    ])
    expect(openOf({ pH: '3.66', water: '', decisions: ['missing data'] })).toEqual([])
  })
})

// CLP Annex VI, Table 3, 016-020-00-8, against Annex I, 3.2.3.1.2.
test('limit and pH are both told with their clauses', () => {
  const told = openOf({ pH: '1.25', titre: '122.4 mL' }).join('\n')
  for (const part of ['Skin Irrit. 2', '016-020-00-8', 'Skin Corr. 1', 'pH 1.', '3.2.3.1.2'])
    expect(told).toContain(part)
})

describe('what went in', () => {
  const oxidising =
    'the lot may hold a residue of the oxidiser it was made with: test for it or justify why none is left'

  test.for([
    ['ammonium persulfate', [oxidising]],
    ['nitric acid', [oxidising]],
    ['sulfuric acid', []]
  ] as const)('an oxidiser counts whatever it was charged as: %s', ([substance, open]) => {
    const composition = `{ substance: ${substance}, fraction: 30 % }`
    expect(openOf({ pH: '3.66', composition })).toEqual(open)
    expect(openOf({ pH: '3.66', composition, decisions: ['oxidising'] })).toEqual([])
  })

  // CLP Annex VI, Table 3, 007-030-00-3: nitric acid corrodes from 5 % on, sulfuric from 15 %.
  test('a strong acid with limits of its own is asked about from 1 % of acid on', () => {
    const composition = '{ substance: nitric acid, fraction: 30 % }'
    const decisions = ['oxidising', 'metals', 'declaration', 'limit or ph, take: limits']
    const asked = /other than sulfuric/u
    const at = (titre: string, more: Partial<Lot> = {}) =>
      openOf({ pH: '1.25', titre, composition, decisions, ...more }).join()
    expect(at('122.4 mL')).toMatch(asked)
    expect(at('15.0 mL')).not.toMatch(asked)
    expect(at('122.4 mL', { residues: '{ substance: nitric acid, fraction: 0.5 % }' })).toBe('')
    expect(at('122.4 mL', { composition: '{ substance: sulfuric acid, fraction: 96 % }' })).toBe('')
  })
})

describe('what a leach found', () => {
  const leach = (what: string, found: string) =>
    `  ${what}:\n    tested: 2026-02-05\n    extract: 100 mL\n    readings:\n      - { mass: 20.0 g, concentration: ${found} mg/L }\n      - { mass: 20.0 g, concentration: ${found} mg/L }\n`
  const decisions = ['oxidising']

  // 400 mg/L · 0.1 L / 20 g = 0.2 % MnO4⁻, 0.266 % KMnO4; CLP Annex I, Table 4.1.2: 100 × 0.266 ≥ 25.
  test('permanganate counts by its classes', () => {
    const at = (found: string) =>
      openOf({ pH: '3.66', tests: leach('residual-permanganate', found), decisions }).join()
    expect(at('400')).toContain('computed as Aquatic Chronic 3')
    expect(at('300')).toBe('')
  })

  test('what the record names counts once', () => {
    const residues = '{ substance: potassium permanganate, fraction: 0.20 % }'
    const tests = leach('residual-permanganate', '300')
    expect(openOf({ pH: '3.66', tests, residues, decisions })).toEqual([])
  })

  test('nitrate is asked about though nobody charged an oxidiser', () => {
    const tests = leach('residual-nitrate', '20')
    expect(openOf({ pH: '3.66', tests }).join()).toContain('holds a residue of an oxidiser')
    expect(openOf({ pH: '3.66', tests, decisions })).toEqual([])
  })
})
