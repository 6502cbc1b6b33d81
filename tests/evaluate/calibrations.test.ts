import { expect, test } from 'vitest'
import { calibrationOn } from '../../src/records/references.ts'
import type { Calibration, Instrument } from '../../src/records/types.ts'
import { judgeContent } from '../../src/pipeline.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { budgetOf } from '../../src/metrology/estimate.ts'
import { evaluate, judged, smallFiles, withChange } from '../records-on-disk.ts'

const calibration = (on: string): Calibration =>
  ({ on, due: '2027-01-01', certificate: `C-${on}` }) as Calibration

const balance = {
  id: 'B-1',
  calibration: calibration('2026-06-01'),
  earlierCalibrations: [calibration('2025-06-01'), calibration('2024-06-01')]
} as unknown as Instrument

test.for([
  ['2026-06-01', '2026-06-01'],
  ['2026-05-31', '2025-06-01'],
  ['2024-06-01', '2024-06-01'],
  ['2023-01-01', '2024-06-01']
] as const)('a reading of %s was made under the calibration of %s', ([day, on]) => {
  expect(calibrationOn(balance, day)?.on).toBe(on)
})

test('an instrument without a calibration has none on any day', () => {
  expect(calibrationOn({ id: 'B-1' } as Instrument, '2026-01-01')).toBeUndefined()
})

/** The base's balance, recalibrated after the readings with ten times the uncertainty. */
const recalibrated = (earlier: string) =>
  withChange(smallFiles, 'instruments/BAL-1.yaml', 'calibration:', `${earlier}calibration:`)

test('a later calibration leaves earlier readings as they were, and their papers too', () => {
  const file = smallFiles.find(({ path }) => path.endsWith('instruments/BAL-1.yaml'))!
  const old = /calibration:\n((?: {2}.*\n)+)/u.exec(file.text)![1]!
  const moved = `earlier-calibrations:\n  -${old.slice(1).replace(/\n {2}(?=\S)/gu, '\n    ')}`
  const files = recalibrated(moved).map(one =>
    one.path === file.path
      ? {
          ...one,
          text: one.text.replace(
            /\ncalibration:\n(?: {2}.*\n)+/u,
            '\ncalibration:\n  certificate: LATER\n  on: 2026-12-01\n  due: 2027-12-01\n  tolerance: 1 g\n'
          )
        }
      : one
  )
  const found = judgeContent(files).problems.map(({ message }) => message)
  expect(found).toEqual(judged(smallFiles).problems.map(({ message }) => message))
  const textOf = (all: typeof files) =>
    JSON.stringify(
      buildDocuments(all, { edition: 'workshop' }).site!.lots.map(page => page.document.results)
    )
  expect(textOf(files)).toBe(textOf(smallFiles))
  expect(JSON.stringify(buildDocuments(files, { edition: 'workshop' }))).not.toContain('LATER')
})

test('a tolerance whose middle is likelier counts for less: a/√6 in place of a/√3', () => {
  const toleranceOf = (files: Parameters<typeof evaluate>[0]) => {
    const { estimate } = evaluate(files).lots.get('EB-1')!.product.expansionVolume_mL_per_g!
    return budgetOf(estimate).find(({ pool }) => pool === 'CYL-1 tolerance')!.u
  }
  const said = (distribution: string) =>
    withChange(
      smallFiles,
      'instruments/CYL-1.yaml',
      'tolerance: 1 mL',
      `tolerance: 1 mL, distribution: ${distribution}`
    )
  expect(toleranceOf(said('rectangular'))).toBe(toleranceOf(smallFiles))
  expect(toleranceOf(said('triangular'))).toBeCloseTo(toleranceOf(smallFiles) / Math.SQRT2, 10)
})
