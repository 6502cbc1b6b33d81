/** Figures of some of a lot's sheets. */

import { expect, test } from 'vitest'
import { judgeContent } from '../../src/pipeline.ts'
import { withFile } from '../records/workshop.ts'

const four = '[0.501 mm, 0.497 mm, 0.503 mm, 0.500 mm]'
const foil = `lot: FL-1
grade: FF-1
made: 2026-02-12
instruments: { mass: BAL-1 }
from:
  - { lot: XR-1, mass: 20.00 g }
pressing: { how: pressed, pressure: 9 MPa }
measured: { tested: 2026-02-13, instruments: { length: MIC-1, thickness: MIC-1 } }
sheets:
  - { id: a, mass: 5.010 g, length: 100.02 mm, width: 100.05 mm, thickness: ${four} }
  - id: b
    mass: 4.985 g
    length: 0.00 mm
    width: 100.01 mm
    thickness: ${four}
    positions: [{ x: 0 mm, y: 10 mm }, { x: 0 mm, y: 90 mm }, { x: 9 mm, y: 10 mm }, { x: 9 mm, y: 90 mm }]
`

test('a fault of one is told at that sheet, whichever sheets the figure is of', () => {
  const { problems } = judgeContent(withFile('foils/FL-1.yaml', foil))
  const places = problems.map(({ field }) => field.slice(0, 2).join(' '))
  expect(places.length).toBeGreaterThan(1)
  expect(new Set(places)).toEqual(new Set(['sheets 1']))
})
