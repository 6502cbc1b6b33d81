/** Foil that was looked at, from the demo's records to what its papers say of it. */

import { describe, expect, test } from 'vitest'
import { catalogues } from '../../src/documents/languages/index.ts'
import { english } from '../../src/documents/languages/tongue.ts'
import { certificateDocument } from '../../src/documents/certificate.ts'
import { lotDocument } from '../../src/documents/lot.ts'
import { viewLot } from '../../src/documents/lot-view.ts'
import {
  visualData,
  visualDataSchema,
  visualDemandData,
  visualDemandSchema
} from '../../src/documents/visual-data.ts'
import { percent, visualText, visualWorking } from '../../src/documents/visual.ts'
import { plainSpaces } from '../../src/documents/words.ts'
import { judgeLot } from '../../src/judge/judge-lot.ts'
import { judgeVisual } from '../../src/judge/visual.ts'
import { demoFiles, evaluate, problemsOf, withChange } from '../records-on-disk.ts'

const file = 'foils/FL-26-016.yaml'
const german = {
  ...catalogues.de,
  language: 'de',
  own: (text: string) => text,
  lacks: () => undefined
} as const

function foundIn(files = demoFiles, lot = 'FL-26-016') {
  const { entry } = evaluate(files).lots.get(lot)!
  const visual = 'pressing' in entry.record ? judgeVisual(entry.record) : undefined
  if (!visual) throw new Error(`${lot} was not looked at`)
  return visual
}

const changed = (...changes: readonly (readonly [from: string, to: string])[]) =>
  changes.reduce((files, [from, to]) => withChange(files, file, from, to), demoFiles)

/** What is told of a change, beyond what the demo is told anyway. */
const told = (...changes: readonly (readonly [string, string])[]) =>
  problemsOf(changed(...changes)).filter(line => !problemsOf(demoFiles).includes(line))

const demo = foundIn()

const visualHead = (day: string): string => `visual:\n  tested: ${day}\n`

describe('13 of 40 squares, one torn', () => {
  test('by the plan of letter D, taken to E', () => {
    expect(demo.plan).toMatchObject({
      letter: 'D',
      takenFrom: 'E',
      sampleSize: 13,
      acceptance: 1,
      isWhole: false
    })
    expect(demo.isAccepted).toBe(true)
  })

  test('with the odds of this very lot', () => {
    // Computed with scipy 1.17, hypergeom.cdf(1, 40, D, 13), binom.cdf(1, 13, 0.04), beta.ppf(0.9, 2, 12).
    const odds = new Map(demo.plan!.odds.map(one => [one.nonconforming, one.accepted]))
    expect([...odds.keys()]).toEqual([1, 2, 4, 8, 12, 20])
    expect(odds.get(1)).toBeCloseTo(1, 12)
    expect(odds.get(2)).toBeCloseTo(0.9, 9)
    expect(odds.get(4)).toBeCloseTo(0.6081081081081081, 9)
    expect(demo.plan!.acceptedAtAql).toBeCloseTo(0.9068104408480557, 9)
    expect(demo.plan!.acceptedOnceInTen).toBeCloseTo(0.2678357079703238, 9)
  })

  test('in English', () => {
    expect(visualText(demo, english)).toBe(
      '13 of 40 sheets looked at (ISO 2859-1, single sampling, normal inspection, level II, AQL 4.0 %, letter D, taken to E): 1 nonconforming (1 torn edge), 1 taken out; accepted up to 1, not from 2 on: accepted. Such a plan accepts 90.7 % of samples of a process at the AQL, and one in ten at 26.8 % nonconforming.'
    )
  })

  test('in German, with a decimal comma', () => {
    const text = visualText(demo, german)
    expect(text).toContain('13 von 40 Bögen besichtigt')
    expect(text).toContain('AQL 4,0 %')
    expect(text).toContain('1 fehlerhaft (1 Randriss), 1 aussortiert')
    expect(text).toContain('90,7 %')
  })

  test('and says where a number is from memory', () => {
    const rare = demo.plan!
    const small = { ...demo, plan: { ...rare, aql: '0.40' } } as const
    expect(visualText(small, english)).toContain('taken to E; acceptance number from memory)')
    expect(visualText(small, german)).toContain('; Annahmezahl aus dem Gedächtnis)')
    expect(visualWorking(small, english)!.source).toContain('from memory')
    expect(visualWorking(demo, english)!.source).toBe(
      'hypergeometric distribution; ISO 2859-1, single sampling, normal inspection, numbers as in MIL-STD-105E, table II-A'
    )
  })

  test('as a working with its formula as mathematics', () => {
    const working = visualWorking(demo, english)!
    expect(working.statements[0]!.maths).toBeDefined()
    expect(working.readings!.rows).toEqual([['torn edge', '1']])
    expect(working.inputs.rows).toContainEqual(['Letter', 'D → E'])
    expect(working.budget.rows[1]).toEqual(['2 of 40', '90.0 %'])
  })

  test('for programs', () => {
    const data = visualData(demo)
    expect(visualDataSchema.parse(data)).toEqual(data)
    expect(data).toMatchObject({ accepted: true, plan: { aqlPercent: 4, rejection: 2 } })
  })
})

describe('a lot is not accepted', () => {
  test('with one more than the plan takes, and cannot be released', () => {
    const more = [['nonconforming: 1', 'nonconforming: 2']] as const
    expect(foundIn(changed(...more)).isAccepted).toBe(false)
    expect(visualText(foundIn(changed(...more)), english)).toContain('not from 2 on: not accepted.')
    expect(told(...more)).toEqual([
      'NOT_RELEASABLE status.0.is: cannot be released: 2 of 13 units looked at do not conform, and the plan accepts 1'
    ])
  })

  test('that was seen whole, until what does not conform is out', () => {
    const whole = [
      ['inspected: 13', 'inspected: 40'],
      ['nonconforming: 1', 'nonconforming: 3']
    ] as const
    expect(told(...whole)).toEqual([
      'NOT_RELEASABLE status.0.is: cannot be released: 2 units that do not conform were left in the lot'
    ])
    const sorted = foundIn(changed(...whole, ['taken-out: 1', 'taken-out: 3']))
    expect(sorted).toMatchObject({ isAccepted: true })
    expect(sorted.plan).toBeUndefined()
    expect(visualWorking(sorted, english)).toBeUndefined()
    expect(visualText(sorted, english)).toBe(
      'All of 40 sheets looked at: 3 nonconforming (1 torn edge), 3 taken out; accepted.'
    )
  })
})

describe('a lot is not let go', () => {
  const { tested } = demo

  test('before it was looked at', () => {
    expect(told([visualHead(tested), visualHead('2026-11-26')])).toEqual([
      expect.stringMatching(
        /^DATE_ORDER status\.0\.on: was let go on .*, before its last test on 2026-11-26$/u
      )
    ])
  })

  test('on a look whose own check was out of bounds', () => {
    const checks = '  checks:\n    - { what: light table, found: too dim, within: no }\n'
    expect(told([visualHead(tested), visualHead(tested) + checks])).toEqual([
      `NOT_RELEASABLE status.0.is: cannot be released: the check of the light table was out of bounds on ${tested}`
    ])
  })
})

describe('the size of the lot goes with what the record has of it', () => {
  const ofRoll = (from: string, to: string) =>
    problemsOf(withChange(demoFiles, 'foils/FL-26-015.yaml', from, to)).filter(
      line => !problemsOf(demoFiles).includes(line)
    )

  test('of a roll in metres', () => {
    expect(ofRoll('lot-size: 2\n  inspected: 2', 'lot-size: 20\n  inspected: 20')).toEqual([
      'INVALID_VALUE visual.lot-size: is 20 metres, and the roll is 1.49 m long'
    ])
    expect(ofRoll('lot-size: 2\n  inspected: 2', 'lot-size: 1\n  inspected: 1')).toEqual([])
    expect(ofRoll('pieces: [0.912 m, 0.578 m]', 'pieces: [0.912 m, 2.378 m]')).toContain(
      'INVALID_VALUE visual.lot-size: is 2 metres, and the roll is 3.29 m long'
    )
  })

  test('of sheets, of which more were measured', () => {
    expect(told(['lot-size: 40', 'lot-size: 2'], ['inspected: 13', 'inspected: 2'])).toEqual([
      'INVALID_VALUE visual.lot-size: is 2 sheets, and the record has 3 of them'
    ])
  })

  test.for([
    ['lot-size: 40', 'lot-size: 60', 'is 60 sheets, where 25.33 g saleable are 40 of the sheets'],
    ['lot-size: 40', 'lot-size: 30', 'is 30 sheets, where 25.33 g saleable are 40 of the sheets'],
    ['saleable: 25.33 g', 'saleable: 12.50 g', 'is 40 sheets, where 12.50 g saleable are 19.7 of']
  ] as const)('of sheets by their mass: %s → %s', ([from, to, said]) => {
    const [line, ...others] = told([from, to]).filter(one => one.startsWith('CONTRADICTION'))
    expect(others).toEqual([])
    expect(line).toContain(`CONTRADICTION visual.lot-size: ${said}`)
  })

  test.for([['saleable: 25.33 g', 'saleable: 24.10 g']] as const)(
    'but a few pieces may be missing: %s → %s',
    change => expect(told(change)).toEqual([])
  )
})

describe('a grade that asks for a look', () => {
  const grade = 'grades/foil-070-r2.yaml'
  const none = (files = demoFiles) => {
    const text = files.find(({ path }) => path.endsWith(file))!.text
    const from = text.indexOf('visual:')
    return withChange(files, file, text.slice(from, text.indexOf('sampling:')), '')
  }
  const asking = (what: string) =>
    withChange(demoFiles, grade, 'visual: { level: II, aql: 4.0 }', `visual: ${what}`)
  const viewOf = (files: typeof demoFiles, tongue = english) => {
    const { content, lots } = evaluate(files)
    const foil = lots.get('FL-26-016')!
    if (foil.kind !== 'foil') throw new Error('no foil')
    return viewLot(content, judgeLot(content, foil, '2026-11-20'), [], tongue)
  }
  const answer = (files: typeof demoFiles) => {
    const view = viewOf(files)
    const page = lotDocument(view, new Set(['results']), [])
    const text = page.facts.find(({ label }) => label === 'Visual inspection')?.text
    const fact = plainSpaces(text ?? '')
    return { word: page.answer.word, sentence: page.answer.sentence, fact, page }
  }
  const refusals = (files: typeof demoFiles) =>
    problemsOf(files).filter(line => line.startsWith('NOT_RELEASABLE'))

  test('is met by one at least as strict', () => {
    for (const what of ['{ level: I, aql: 4.0 }', '{ aql: 6.5 }', '{ aql: 4.0 }']) {
      expect(refusals(asking(what))).toEqual([])
      expect(answer(asking(what)).word).toBe('pass')
    }
    const { sentence, fact } = answer(demoFiles)
    expect(sentence).toBe(
      'Meets both limits of grade foil-070, revision 2. The visual inspection it asks for was accepted.'
    )
    expect(fact).toContain('Its grade asks for it: level II, AQL 4.0 %.')
  })

  test('keeps a lot from release where nobody looked', () => {
    expect(refusals(none())).toEqual([
      'NOT_RELEASABLE status.0.is: cannot be released: grade foil-070 asks for a visual inspection (level II, AQL 4.0 %), which was not done'
    ])
    const { word, sentence, fact, page } = answer(none())
    expect(word).toBe('not judged')
    expect(sentence).toContain('The visual inspection it asks for was not done.')
    expect(fact).toBe('Not done; its grade asks for it: level II, AQL 4.0 %.')
    expect(page.visualDemand).toMatchObject({ standing: 'not done' })
  })

  test.for(['{ aql: 2.5 }', '{ level: III, aql: 4.0 }', '{ whole: yes }'])(
    'keeps a lot from release where the plan was more lenient than %s',
    what => {
      expect(refusals(asking(what))).toEqual([
        expect.stringMatching(
          /asks for a visual inspection of .*, and it was of level II, AQL 4\.0 %$/u
        )
      ])
      expect(answer(asking(what)).word).toBe('not judged')
      expect(answer(asking(what)).sentence).toContain('by a plan that lets more through')
    }
  )

  test('is not met by a look that is not accepted', () => {
    const { word, sentence } = answer(changed(['nonconforming: 1', 'nonconforming: 2']))
    expect(word).toBe('fail')
    expect(sentence).toContain('The visual inspection it asks for was not accepted.')
  })

  test('says so on its certificate, in German too, and for programs', () => {
    const { producer } = evaluate(none()).content
    const paper = certificateDocument(viewOf(none(), german), producer!.record, undefined, {
      paper: 'A4'
    })
    expect(JSON.stringify(paper)).toContain('Die verlangte Sichtprüfung fehlt.')
    expect(plainSpaces(JSON.stringify(paper))).toContain(
      'die Sorte verlangt sie: Niveau II, AQL 4,0 %.'
    )
    const demand = { demand: { aql: '4.0' }, standing: 'not done' } as const
    const data = visualDemandData(demand)
    expect(visualDemandSchema.parse(data)).toEqual(data)
    expect(data).toMatchObject({ whole: false, level: 'II', aqlPercent: 4 })
  })

  test.for([
    ['{ level: II }', 'MISSING_FIELD visual.aql: is missing: nothing says how much'],
    ['{ whole: yes, aql: 2.5 }', 'INVALID_VALUE visual.aql: is of a plan, beside the whole lot']
  ] as const)('says what: %s', ([what, problem]) => {
    expect(problemsOf(asking(what)).join('\n')).toContain(problem)
  })

  test('is a grade of foil', () => {
    const flake = withChange(
      demoFiles,
      'grades/flake-250-r3.yaml',
      'limits:\n',
      'visual: { whole: yes }\nlimits:\n'
    )
    expect(problemsOf(flake).join('\n')).toContain(
      'INVALID_VALUE visual: is of sheets and rolls, and this grade is flake'
    )
  })
})

test('nothing is looked at before it was made', () => {
  expect(told([visualHead(demo.tested), visualHead('2026-01-02')])).toEqual([
    expect.stringMatching(
      /^DATE_ORDER visual\.tested: was looked at on 2026-01-02, before the lot was made on /u
    )
  ])
})

describe('a record', () => {
  test.for([
    [
      'inspected: 13',
      'inspected: 8',
      'INVALID_VALUE visual.inspected: is 8, where level II and an AQL of 4.0 % ask for 13 of 40 (letter D, taken to E)'
    ],
    [
      'inspected: 13',
      'inspected: 20',
      'INVALID_VALUE visual.inspected: is 20, where level II and an AQL of 4.0 % ask for 13 of 40 (letter D, taken to E)'
    ],
    [
      'inspected: 13',
      'inspected: 41',
      'INVALID_VALUE visual.inspected: must be at most the size of the lot (40), got 41'
    ],
    [
      'nonconforming: 1',
      'nonconforming: 14',
      'INVALID_VALUE visual.nonconforming: must be at most what was inspected (13), got 14'
    ],
    [
      'taken-out: 1',
      'taken-out: 2',
      'INVALID_VALUE visual.taken-out: must be at most what does not conform (1), got 2'
    ],
    [
      '  aql: 4.0\n',
      '',
      'MISSING_FIELD visual.aql: is missing: a part of the lot was looked at, and nothing says how much of it had to be'
    ]
  ] as const)('%s → %s', ([from, to, problem]) => {
    expect(told([from, to])).toContain(problem)
  })

  test('without a level is of level II', () => {
    expect(foundIn(changed(['  level: II\n', ''])).plan).toEqual(demo.plan)
  })
})

test('a roll is counted in metres', () => {
  expect(visualText(foundIn(demoFiles, 'FL-26-015'), english)).toBe(
    'All of 2 metres looked at: none nonconforming; accepted.'
  )
  expect(visualText(foundIn(demoFiles, 'FL-26-015'), german)).toBe(
    'Alle 2 Meter besichtigt: keine Einheit fehlerhaft; angenommen.'
  )
})

test.for([
  [0, '0 %'],
  [1e-12, '0 %'],
  [0.0004, '< 0.1 %'],
  [0.0333, '3.3 %'],
  [0.26823, '26.8 %'],
  [0.9996, '> 99.9 %'],
  [1 - 1e-12, '100 %'],
  [1, '100 %']
] as const)('%f: %s', ([fraction, printed]) => {
  expect(percent(fraction)).toBe(printed)
})
