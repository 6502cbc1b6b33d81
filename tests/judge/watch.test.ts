/** A grade's figures lot by lot: what is kept, what is drawn, what is warned of. */

import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { describe, expect, test } from 'vitest'
import { evaluateContent } from '../../src/evaluate/evaluate.ts'
import { judgeLot } from '../../src/judge/judge-lot.ts'
import { checkProcesses, FEWEST_FOR_LIMITS, watchProcess } from '../../src/judge/watch.ts'
import { openWatch, watchedFigures, WINDOW, type WatchedFigure } from '../../src/judge/watched.ts'
import { formatProblem } from '../../src/problem.ts'
import { withSignals } from '../../src/pipeline.ts'
import { loadContent } from '../../src/records/content.ts'
import { demoFiles, judged } from '../records-on-disk.ts'

const file = { path: 'content/batches/EB-1.yaml', text: 'lot: EB-1\ntests:\n  ash: 1 %\n' }

/** The figure of the nth lot, made on the nth day. */
const figure = (n: number, value: number, more: Partial<WatchedFigure> = {}): WatchedFigure => ({
  lot: `EB-${String(n).padStart(4, '0')}`,
  made: `2026-${String(1 + Math.floor(n / 28)).padStart(2, '0')}-${String(1 + (n % 28)).padStart(2, '0')}`,
  grade: 'flake-50',
  soldAs: 'flake-50',
  quantity: 'ash_percent',
  value,
  u: 0.1,
  U: 0.2,
  isExternal: false,
  readings: [value],
  place: () => ({ file, field: ['tests', 'ash'], range: [19, 22] }),
  ...more
})

const figures = (values: readonly number[]) => values.map((value, index) => figure(index, value))

/** Up and down without a pattern. */
const steady = [5, 5.3, 4.8, 5.1, 5.4, 4.7, 4.9, 5.2, 5, 4.8]

/** What is kept of every lot of the demo, and whether its evaluated figures are still there. */
function watchedDemo() {
  const content = loadContent(demoFiles)
  const kept: WatchedFigure[] = []
  const figures: WeakRef<object>[] = []
  if (!content.ok) throw new Error('the demo has errors')
  evaluateContent(content.value, lot => {
    if (lot.kind === 'expansion') return
    kept.push(...watchedFigures(judgeLot(content.value, lot, '2026-12-31')))
    figures.push(...Object.values(lot.product).map(result => new WeakRef(result)))
  })
  return { kept, figures }
}

describe('what is kept', () => {
  test('of a lot lets its evaluated figures go, and still knows their places', async () => {
    setFlagsFromString('--expose-gc')
    const collectGarbage = runInNewContext('gc') as () => void
    const { kept, figures } = watchedDemo()
    expect(figures.length).toBeGreaterThan(50)
    // A weak reference holds on until the task that made it is over, and code that is being compiled
    // meanwhile to what it has last seen.
    const held = () => {
      collectGarbage()
      return figures.filter(figure => figure.deref() !== undefined).length
    }
    await expect.poll(held, { timeout: 20_000 }).toBe(0)
    expect(kept.map(({ place }) => place().range[1]).every(end => end > 0)).toBe(true)
  })

  test('lots come in order of date, then of number, whatever order they are read in', () => {
    const watch = openWatch()
    watch.add([figure(3, 1), figure(1, 2)])
    watch.add([figure(2, 3), figure(1, 4, { lot: 'EB-0000' })])
    const [series] = watch.series()
    expect(series!.figures.map(({ value }) => value)).toEqual([4, 2, 3, 1])
  })

  test('grades and quantities are apart, quantities in the order of their table', () => {
    const watch = openWatch()
    watch.add([
      figure(1, 1, { quantity: 'ash_percent' }),
      figure(1, 2, { quantity: 'expansionVolume_mL_per_g' }),
      figure(2, 3, { grade: 'flake-20' })
    ])
    expect(watch.series().map(({ grade, quantity }) => [grade, quantity])).toEqual([
      ['flake-20', 'ash_percent'],
      ['flake-50', 'expansionVolume_mL_per_g'],
      ['flake-50', 'ash_percent']
    ])
  })

  test.for([[WINDOW], [WINDOW + 1], [2 * WINDOW + 35]] as const)(
    'of %d lots the latest stay, the others are counted',
    ([count]) => {
      const watch = openWatch()
      // Latest first, so that keeping the first read would be told.
      for (let n = count - 1; n >= 0; n--) watch.add([figure(n, n)])
      const [series] = watch.series()
      expect(series!.figures.map(({ value }) => value)).toEqual(
        Array.from({ length: WINDOW }, (_, index) => count - WINDOW + index)
      )
      expect(series!.older).toBe(count - WINDOW)
    }
  )
})

describe('what is drawn', () => {
  test('no limits with fewer than eight lots', () => {
    const few = figures(steady.slice(0, FEWEST_FOR_LIMITS - 1))
    expect(watchProcess({ figures: few })).not.toHaveProperty('chart')
    expect(watchProcess({ figures: figures(steady.slice(0, 8)) })).toHaveProperty('chart')
  })

  test('figures from elsewhere are counted and left out', () => {
    const all = [...figures(steady), figure(20, 99, { isExternal: true })]
    const found = watchProcess({ figures: all })
    expect(found).toMatchObject({ external: 1, below: 0, seen: [] })
    expect(found.figures).toHaveLength(10)
  })

  test('where one lies below the reporting limit, nothing is averaged', () => {
    const found = watchProcess({ figures: [...figures(steady), figure(20, 0, { below: 0.02 })] })
    expect(found).toMatchObject({ below: 1, seen: [] })
    expect(found).not.toHaveProperty('chart')
  })

  test('figures that never differ have no limits', () => {
    const found = watchProcess({ figures: figures(Array.from({ length: 9 }, () => 5)) })
    expect(found).not.toHaveProperty('chart')
  })

  test('an outlier is flagged and stays in the mean', () => {
    const found = watchProcess({ figures: figures([...steady, 60]) })
    expect(found.figures).toHaveLength(11)
    expect(found.chart!.centre).toBeCloseTo((steady.reduce((sum, x) => sum + x) + 60) / 11, 10)
  })
})

const warnings = (values: readonly number[]) =>
  checkProcesses([
    { grade: 'flake-50', quantity: 'ash_percent', figures: figures(values), older: 0 }
  ])

describe('what is warned of', () => {
  test('a steady process is not', () => {
    expect(warnings(steady)).toEqual([])
  })

  test('a figure beyond the limits, at its field', () => {
    const [problem] = warnings([...steady, ...steady, 9])
    expect(formatProblem(problem!)).toBe(
      [
        'content/batches/EB-1.yaml:3:3 PROCESS_SIGNAL (warning)',
        '  tests › ash: ash, dry basis of grade flake-50: 1 figure beyond 3 σ, among 21 lots',
        '',
        '  3 |   ash: 1 %',
        '    |   ^^^',
        "  hint: look for what changed with this lot: material, people, furnace, instrument; the chart is on the workshop edition's page of flake-50, under 'Lots over time'"
      ].join('\n')
    )
  })

  test('nine on one side are told with the first and the last', () => {
    const low = [5, 4.1, 4.8, 4.3, 4.9, 4.2, 4.6, 4, 4.7, 4.4, 4.9, 4.1]
    const high = [6.1, 5.8, 6.3, 5.9, 6, 5.7, 6.2, 5.8, 6.1]
    const said = warnings([...low, ...high]).map(({ message }) => message)
    expect(said.filter(text => text.includes('one side')).at(-1)).toContain(
      'from EB-0012 to EB-0020, among 21 lots'
    )
  })

  test('a slow shift that no figure shows by itself is told by the moving average', () => {
    const shifted = [...steady, ...steady, ...steady.map(value => value + 0.7)]
    const said = warnings(shifted).map(({ message }) => message)
    expect(said.join()).toContain('the moving average beyond its limits')
    expect(said.join()).not.toContain('beyond 3 σ')
  })

  test('patterns of the other tests are seen and not warned of', () => {
    const zigzag = Array.from({ length: 16 }, (_, index) => (index % 2 ? 5.5 : 4.5) + index / 1000)
    const { seen } = watchProcess({ figures: figures(zigzag) })
    expect(seen.map(({ says, warns }) => [says, warns])).toContainEqual([
      '14 figures in a row up and down by turns',
      false
    ])
    expect(warnings(zigzag)).toEqual([])
  })

  test('what lies twenty lots back is not warned of any more', () => {
    const later = [...steady, ...steady]
    expect(warnings([...steady, 9, ...later.slice(1)]).length).toBeGreaterThan(0)
    expect(warnings([...steady, 9, ...later])).toEqual([])
  })
})

test('the demo: warnings stand beside those on single records, and stop nothing', () => {
  const judgement = judged(demoFiles)
  const all = withSignals(judgement)
  const signals = all.filter(({ code }) => code === 'PROCESS_SIGNAL')
  expect(signals.map(({ file: { path }, field }) => [path, field.at(-1)])).toEqual([
    ['content/batches/EB-26-004.yaml', 'ash'],
    ['content/batches/EB-26-005.yaml', 'free-acid'],
    ['content/batches/EB-26-005.yaml', 'free-acid']
  ])
  expect(all).toHaveLength(judgement.problems.length + 3)
})
