/** Coating panels: which record gives which figure, and which panels may be held against each other. */

import { describe, expect, test } from 'vitest'
import { budgetOf, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { panelGroups } from '../../src/evaluate/panel-groups.ts'
import { linesOf } from '../../src/evaluate/panel-time.ts'
import type { SourceFile } from '../../src/problem.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { demoFiles, evaluate, problemsOf, smallFiles, withFile } from '../records-on-disk.ts'
import { asPrinted } from '../metrology/as-printed.ts'

const logger =
  'id: TL-9\ntitle: Logger\nresolution: 0.1 °C\ncalibration: { against: ice and steam, on: 2026-01-05, due: 2028-01-05, tolerance: 2 °C }\n'
const gauge =
  'id: CG-9\ntitle: Coating gauge\nresolution: 0.001 mm\ncalibration: { against: shims, on: 2026-01-05, due: 2028-01-05, tolerance: 2 % }\n'

const plate = 'plate: { what: mild steel, length: 100.0 mm, width: 100.0 mm, thickness: 3.0 mm }\n'
const head = 'made: 2026-02-10\ntested: 2026-02-12\nhow: a burner\n'
const tools = 'instruments: { mass: BAL-1, length: MIC-1, thickness: CG-9, temperature: TL-9 }\n'

/** A log that heats evenly, a line each half minute. */
const log = (perLine: number, lines = 30) =>
  `log:\n${Array.from({ length: lines }, (_, i) => `  - { at: ${30 * i} s, temperature: ${(20 + perLine * i).toFixed(1)} °C }\n`).join('')}`

const bare = (number: string, more = '') =>
  `number: ${number}\nkind: blank\ncode: BARE\n${head}${plate}${tools}${log(80, 15)}${more}`

const coat =
  'lot: EB-1\nloading: { wet: 9.09 % }\nsolids: { stated: 55 % }\nmass: { plate: 235.00 g, coated: 241.75 g }\ndry-film: { readings: [0.500 mm, 0.500 mm] }\nchar: { readings: [12.5 mm, 12.5 mm] }\n'

const coated = (number: string, changes: readonly (readonly [string, string])[] = []) =>
  changes.reduce(
    (text, [from, to]) => {
      if (!text.includes(from)) throw new Error(`no ${from}`)
      return text.replace(from, to)
    },
    `number: ${number}\nkind: own\ncode: P1\n${head}${coat}${plate}${tools}until: 500 °C\nbare: [PN-1, PN-2]\n${log(24)}`
  )

const workshop = (...panels: readonly string[]): SourceFile[] =>
  [
    ['instruments/TL-9.yaml', logger],
    ['instruments/CG-9.yaml', gauge],
    ...panels.map(text => [`panels/${/number: (\S+)/u.exec(text)![1]}.yaml`, text])
  ].reduce((files, [path, text]) => withFile(files, path!, text!), smallFiles)

const both = [bare('PN-1'), bare('PN-2')]

const figuresOf = (files: readonly SourceFile[], number: string) =>
  evaluate(files).panels.get(number)!.results

const printed = (files: readonly SourceFile[], figures: Partial<Record<QuantityName, string>>) => {
  const results = figuresOf(files, 'PN-3')
  return Object.fromEntries(
    Object.entries(figures).map(([name, text]) => {
      const result = results[name as QuantityName]
      return [name, result && asPrinted(result.estimate.value, text)]
    })
  )
}

describe('a coated panel', () => {
  test('has every figure, each by its formula', () => {
    // By hand: 20 °C + 24 °C a line is 500 °C at line 20, 600 s; bare ones 80 °C a line, at 180 s.
    const figures = {
      paintSolids_percent: '55.0',
      wetLoading_percent: '9.09',
      dryLoading_percent: '15.4',
      dryFilm_mm: '0.500',
      filmMass_g_per_m2: '675.0',
      filmDensity_g_per_cm3: '1.350',
      activeMass_g_per_m2: '103.8',
      charHeight_mm: '12.5',
      charRatio: '25.00',
      backsideTime_min: '10.000',
      timeGained_min: '7.000',
      gainPerFilm_min_per_mm: '14.00',
      gainPerFilmMass_sm2_per_g: '0.622',
      gainPerActiveMass_sm2_per_g: '4.045'
    } as const
    expect(printed(workshop(...both, coated('PN-3')), figures)).toEqual(figures)
  })

  test('takes its ceiling from the expansion volume of its flake, at 600 °C where that is known', () => {
    const files = workshop(...both, coated('PN-3'))
    const { lots, panels } = evaluate(files)
    const own = lots.get('EB-1')!.product.expansionVolume_mL_per_g!
    const { charCeiling_mm: ceiling, activeMass_g_per_m2: active } = panels.get('PN-3')!.results
    const expected = (own.estimate.value * active!.estimate.value) / 1000
    expect(ceiling!.estimate.value).toBeCloseTo(expected, 9)
    expect(ceiling!.remark).toMatchObject({
      text: expect.stringContaining('not what a coating sees') as string
    })
    const demo = evaluate(demoFiles)
    const at600 = demo.lots.get('EB-26-015')!.product.expansionAt600_mL_per_g!
    const third = demo.panels.get('PN-26-03')!.results
    expect(third.charCeiling_mm!.estimate.value).toBeCloseTo(
      (at600.estimate.value * third.activeMass_g_per_m2!.estimate.value) / 1000,
      9
    )
    const said = { text: expect.stringContaining('at 600 °C') as string }
    expect(third.charCeiling_mm!.remark).toMatchObject(said)
    expect(third.charEfficiency_percent!.remark).toMatchObject(said)
  })

  test.for([
    ['flake weighed into paint', '{ wet: 9.09 % }', '{ flake: 1.000 g, paint: 10.000 g }'],
    ['of the dry film', '{ wet: 9.09 % }', '{ dry: 15.38 % }']
  ] as const)('has wet and dry loading, told as %s', ([, from, to]) => {
    const files = workshop(...both, coated('PN-3', [[from, to]]))
    const figures = { wetLoading_percent: '9.1', dryLoading_percent: '15.4' } as const
    expect(printed(files, figures)).toEqual(figures)
  })

  test('has solids dried here, and its film by a stated density', () => {
    const files = workshop(
      ...both,
      coated('PN-3', [
        ['{ stated: 55 % }', '{ readings: [{ dish: 2.000 g, before: 4.000 g, after: 3.000 g }] }'],
        ['mass: { plate: 235.00 g, coated: 241.75 g }', 'film-density: 1.20 g/cm³']
      ])
    )
    const figures = {
      paintSolids_percent: '50.0',
      filmMass_g_per_m2: '600.0',
      activeMass_g_per_m2: '100.0'
    } as const
    expect(printed(files, figures)).toEqual(figures)
    // Put in, so it is no finding.
    expect(figuresOf(files, 'PN-3').filmDensity_g_per_cm3).toBeUndefined()
  })

  test('of unknown flake has times, and neither active mass nor ceiling', () => {
    const text = coated('PN-3', [
      ['kind: own', 'kind: bought-in'],
      ['lot: EB-1\nloading: { wet: 9.09 % }\nsolids: { stated: 55 % }\n', '']
    ])
    const results = figuresOf(workshop(...both, text), 'PN-3')
    expect(results.gainPerFilmMass_sm2_per_g).toBeDefined()
    for (const name of ['activeMass_g_per_m2', 'charCeiling_mm', 'gainPerActiveMass_sm2_per_g'])
      expect(results[name as QuantityName]).toBeUndefined()
  })
})

describe('what a figure rests on', () => {
  const resultsWith = (...changes: (readonly [string, string])[]) =>
    figuresOf(workshop(...both, coated('PN-3', changes)), 'PN-3')

  test('a film is weighed over length times width, each weighing with its own step', () => {
    const { filmMass_g_per_m2: film } = resultsWith(
      ['length: 100.0 mm, width: 100.0 mm', 'length: 100.0 mm, width: 50.0 mm'],
      ['char: { readings: [12.5 mm, 12.5 mm] }\n', '']
    )
    expect(asPrinted(film!.estimate.value, '1350.0')).toBe('1350.0')
    const steps = [...film!.estimate.terms.keys()].filter(name => / plate$/u.test(name))
    expect(steps).toEqual([
      expect.stringContaining('PN-3 bare plate') as string,
      expect.stringContaining('PN-3 coated plate') as string
    ])
  })

  test('stated solids are as sure as they say, or as one step of their last digit', () => {
    const uOf = (solids: string) =>
      uncertaintyOf(resultsWith(['{ stated: 55 % }', solids]).paintSolids_percent!.estimate)
    expect(uOf('{ stated: 55 %, within: 2 % }')).toBeCloseTo(2 / Math.sqrt(3), 9)
    expect(uOf('{ stated: 55.0 % }')).toBeCloseTo(0.1 / Math.sqrt(3), 9)
  })

  test('a loading stated of the dry film does not rest on the solids', () => {
    const { dryLoading_percent: dry, wetLoading_percent: wet } = resultsWith([
      '{ wet: 9.09 % }',
      '{ dry: 15.4 % }'
    ])
    expect([...dry!.estimate.terms.keys()]).toEqual(['PN-3 loading as stated'])
    expect([...wet!.estimate.terms.keys()]).toContain('P1 solids as stated')
  })

  test('a part read on its own instrument is read on that', () => {
    const { dryFilm_mm: film } = resultsWith([
      'dry-film: { readings',
      'dry-film: { instruments: { thickness: MIC-1 }, readings'
    ])
    const names = [...film!.estimate.terms.keys()].join()
    expect(names).toContain('MIC-1')
    expect(names).not.toContain('CG-9')
  })

  test('a time rests on the two lines around it, each to half a step', () => {
    const bent =
      'log:\n  - { at: 0 s, temperature: 20.0 °C }\n  - { at: 30 s, temperature: 400.0 °C }\n  - { at: 90 s, temperature: 480.0 °C }\n  - { at: 120 s, temperature: 530.0 °C }\n'
    const { backsideTime_min: time } = resultsWith([log(24), bent])
    // By hand: 20 °C of 50 °C into the 30 s after 90 s is 102 s.
    expect(time!.estimate.value).toBeCloseTo(1.7, 9)
    const moment = time!.estimate.terms.get('moments as written: PN-3 line 4')!
    expect(moment.u).toBeCloseTo((0.4 * (0.5 / Math.sqrt(3))) / 60, 9)
  })
})

describe('the start of heating', () => {
  test('is the first line of the log, or as stated and as surely', () => {
    const late = coated('PN-3', [
      ['until: 500 °C', 'until: 500 °C\nstart: { at: 60 s, within: 6 s }']
    ])
    const files = workshop(...both, late)
    const time = figuresOf(files, 'PN-3').backsideTime_min!.estimate
    expect(time.value).toBeCloseTo(9, 9)
    expect(time.terms.get('PN-3 start of heating')!.u).toBeCloseTo(-6 / 60 / Math.sqrt(3), 6)
    expect(linesOf(evaluate(files).content.panels.get('PN-3')!.record)[0]!.at_s).toBe(-60)
  })

  test('may be told by the clock, past midnight too', () => {
    const clock = (seconds: number) =>
      [Math.floor(seconds / 3600) % 24, Math.floor(seconds / 60) % 60, seconds % 60]
        .map(part => String(part).padStart(2, '0'))
        .join(':')
    const moved = coated('PN-3').replace(/at: (\d+) s/gu, (_, at) => {
      return `at: ${clock(86_100 + Number(at))}`
    })
    expect(moved).toContain('at: 00:00:00')
    const files = workshop(...both, moved)
    expect(figuresOf(files, 'PN-3').backsideTime_min!.estimate.value).toBeCloseTo(10, 9)
    const [first, second] = linesOf(evaluate(files).content.panels.get('PN-3')!.record)
    expect([first!.at_s, second!.at_s]).toEqual([0, 30])
  })
})

describe('a log that never gets so hot', () => {
  test('gives no time, and nothing that rests on one', () => {
    const cool = coated('PN-3', [['until: 500 °C', 'until: 720 °C']])
    const files = workshop(...both, cool)
    const results = figuresOf(files, 'PN-3')
    expect(results.backsideTime_min).toBeUndefined()
    expect(results.timeGained_min).toBeUndefined()
    expect(results.charRatio).toBeDefined()
    expect(problemsOf(files).filter(line => line.includes('PN-'))).toEqual([])
  })

  test('is told where it is that of the bare panel', () => {
    const short = bare('PN-2').replace(log(80, 15), log(80, 5))
    const files = workshop(bare('PN-1'), short, coated('PN-3'))
    expect(figuresOf(files, 'PN-3').timeGained_min).toBeUndefined()
    expect(problemsOf(files)).toContain(
      'OUT_OF_DOMAIN bare.1: PN-2 has no time to 500 °C: its log does not rise through it'
    )
  })

  test('is told where it was so hot from the first line', () => {
    const hot = coated('PN-3', [['until: 500 °C', 'until: 15 °C']])
    expect(problemsOf(workshop(...both, hot))).toEqual(
      expect.arrayContaining([
        'OUT_OF_DOMAIN log.0.temperature: must be below the stated 15 °C, got 20.0 °C'
      ])
    )
  })
})

describe('a time gained', () => {
  const gainedOf = (files: readonly SourceFile[]) => figuresOf(files, 'PN-3').timeGained_min!

  test('has the scatter of its bare panels in its uncertainty, with their degrees of freedom', () => {
    const slow = bare('PN-2').replace(log(80, 15), log(60))
    const [even, uneven] = [bare('PN-2'), slow].map(second =>
      gainedOf(workshop(bare('PN-1'), second, coated('PN-3')))
    )
    // Bare: 3 min and 4 min; half their difference is the uncertainty of their mean.
    expect(uneven!.estimate.value).toBeCloseTo(6.5, 9)
    const scatter = budgetOf(uneven!.estimate).find(({ kind }) => kind === 'A')!
    expect([scatter.u, scatter.df]).toEqual([expect.closeTo(0.5, 6), 1])
    expect(budgetOf(even!.estimate).filter(({ kind }) => kind === 'A')).toEqual([])
  })

  test('is to the temperature stated for the coated panel, whatever the bare one was heated to', () => {
    const hotter = bare('PN-2', 'until: 660 °C\n')
    const gained = gainedOf(workshop(bare('PN-1'), hotter, coated('PN-3')))
    expect(gained.estimate.value).toBeCloseTo(7, 9)
  })

  test('says where one bare panel stands alone', () => {
    const one = coated('PN-3', [['bare: [PN-1, PN-2]', 'bare: [PN-1]']])
    const { notes } = gainedOf(workshop(...both, one)).trace()
    expect(notes.join(' ')).toContain('PN-1, alone')
  })

  test('loses what thermocouple errors both panels share, as far as both heat alike', () => {
    const files = workshop(...both, coated('PN-3'))
    const { backsideTime_min: time, timeGained_min: gained } = figuresOf(files, 'PN-3')
    const shared = (result: typeof time) =>
      Math.abs(result!.estimate.terms.get('TL-9 tolerance')!.u)
    // 24 °C and 80 °C a line: by as much less as the bare plate's own share.
    expect(shared(gained) / shared(time)).toBeCloseTo(1 - 24 / 80, 4)
  })

  test.for([
    ['thickness: 3.0 mm', 'thickness: 2.0 mm', 'thickness of the plate 2.0 mm against 3.0 mm'],
    ['what: mild steel', 'what: stainless', 'plate stainless against mild steel'],
    ['how: a burner', 'how: two burners', 'heating two burners against a burner']
  ] as const)('is doubted where the bare panel differs: %s, %s', ([from, to, said]) => {
    const other = bare('PN-2').replace(from, to)
    const told = problemsOf(workshop(bare('PN-1'), other, coated('PN-3')))
    expect(told.filter(line => line.startsWith('UNLIKE_PANELS'))).toEqual([
      `UNLIKE_PANELS bare.1: PN-2 differs from this panel: ${said}`
    ])
  })
})

describe('one reading that is off among its like is told of', () => {
  const scattered = (files: readonly SourceFile[]) =>
    problemsOf(files).filter(line => line.startsWith('SCATTERED_READINGS'))

  test.for([
    ['dry-film: { readings: [0.500 mm, 0.500 mm] }', '0.500 mm', '0.0000005 mm', 'dryFilm'],
    ['char: { readings: [12.5 mm, 12.5 mm] }', '12.5 mm', '125 mm', 'char'],
    ['char: { readings: [12.5 mm, 12.5 mm] }', '12.5 mm', '0.0125 mm', 'char']
  ] as const)('%s: %s → %s', ([readings, from, to, part]) => {
    const off = coated('PN-3', [
      [readings, readings.replace(` ${from}`, ` ${from}, ${from}, ${from}, ${to}`)]
    ])
    const told = scattered(workshop(...both, off))
    expect(told).toHaveLength(1)
    expect(told[0]!.replaceAll('-', '').toLowerCase()).toContain(` ${part.toLowerCase()}.readings`)
  })

  test('but not that a char is higher here than there', () => {
    const rough = coated('PN-3', [['[12.5 mm, 12.5 mm]', '[8.0 mm, 12.5 mm, 17.0 mm]']])
    expect(scattered(workshop(...both, rough))).toEqual([])
  })

  test.for([
    ['at: 300 s, temperature: 260.0 °C', 'at: 300 s, temperature: 0.00026 °C'],
    ['at: 300 s, temperature: 260.0 °C', 'at: 300 s, temperature: 900.0 °C']
  ] as const)('in a log: %s → %s', ([from, to]) => {
    const told = scattered(workshop(...both, coated('PN-3', [[from, to]])))
    expect(told).toEqual([
      `SCATTERED_READINGS log.10.temperature: is ${to.split('ture: ')[1]} between 236.0 °C and 284.0 °C`
    ])
  })

  test('but not that a log is read seldom', () => {
    const seldom = coated('PN-3', [
      [
        log(24),
        'log:\n  - { at: 0 s, temperature: 20.0 °C }\n  - { at: 300 s, temperature: 800.0 °C }\n  - { at: 900 s, temperature: 740.0 °C }\n'
      ]
    ])
    expect(scattered(workshop(...both, seldom))).toEqual([])
  })
})

test('a figure no panel can have is told of', () => {
  const flat = coated('PN-3', [
    ['char: { readings: [12.5 mm, 12.5 mm] }', 'char: { readings: [125 mm, 125 mm] }']
  ])
  const told = problemsOf(workshop(...both, flat)).filter(line => line.startsWith('IMPLAUSIBLE'))
  expect(told.map(line => line.split(':')[0])).toEqual([
    'IMPLAUSIBLE char',
    'IMPLAUSIBLE char',
    'IMPLAUSIBLE char'
  ])
  expect(told.join('\n')).toContain('efficiency of expansion comes to')
})

test('an instrument past its date is told of', () => {
  const files = workshop(...both, coated('PN-3')).map(file =>
    file.path.endsWith('TL-9.yaml')
      ? { ...file, text: file.text.replace('2028-01-05', '2026-02-01') }
      : file
  )
  const told = problemsOf(files).filter(line => line.includes('TL-9 was read on'))
  expect(new Set(told.map(line => line.split(':')[1]))).toEqual(
    new Set([' TL-9 was read on 2026-02-12; its calibration was due on 2026-02-01'])
  )
})

test('every figure is filed under its own name', () => {
  for (const [name, result] of Object.entries(figuresOf(workshop(...both, coated('PN-3')), 'PN-3')))
    expect(result.quantity).toBe(name)
})

describe('panels of one coating', () => {
  const panels = [...evaluate(demoFiles).panels.values()]

  test('stand together, whatever their order, and others apart', () => {
    const codes = (all: typeof panels) => panelGroups(all).map(group => group.code)
    expect(codes(panels)).toEqual(['BARE', 'S1', 'S2', 'T7'])
    expect(codes(panels.toReversed())).toEqual(codes(panels))
    const means = (all: typeof panels) =>
      panelGroups(all).map(group => group.figure('timeGained_min')?.mean.value.toFixed(9))
    expect(means(panels.toReversed())).toEqual(means(panels))
  })

  test('heated to unlike temperatures stand apart', () => {
    const hotter = coated('PN-4', [['until: 500 °C', 'until: 550 °C']])
    const files = workshop(...both, coated('PN-3'), hotter)
    const groups = panelGroups([...evaluate(files).panels.values()])
    expect(groups.map(group => [group.code, group.panels.length])).toEqual([
      ['BARE', 2],
      ['P1', 1],
      ['P1', 1]
    ])
  })

  test('have the mean and scatter of those that have the figure', () => {
    const [, first, , bought] = panelGroups(panels)
    const times = ['PN-26-03', 'PN-26-04', 'PN-26-05'].map(
      number => panels.find(one => one.number === number)!.results.timeGained_min!.estimate.value
    )
    const mean = times.reduce((sum, time) => sum + time, 0) / 3
    const found = first!.figure('timeGained_min')!
    expect(found.mean.value).toBeCloseTo(mean, 12)
    const squares = times.reduce((sum, time) => sum + (time - mean) ** 2, 0)
    expect(found.s).toBeCloseTo(Math.sqrt(squares / 2), 9)
    // One of the bought-in panels never came so far: a single figure has no scatter.
    expect(bought!.figure('timeGained_min')).toMatchObject({ n: 1 })
    expect(bought!.figure('timeGained_min')!.s).toBeUndefined()
    expect(bought!.figure('charCeiling_mm')).toBeUndefined()
  })

  test('keep in their mean what they share: bare panels and thermocouple', () => {
    const group = panelGroups(panels).find(({ code }) => code === 'S1')!
    const single = uncertaintyOf(group.panels[0]!.results.timeGained_min!.estimate)
    const together = uncertaintyOf(group.figure('timeGained_min')!.mean)
    expect(together).toBeGreaterThan(single / Math.sqrt(3))
    expect(together).toBeLessThan(single)
  })
})
