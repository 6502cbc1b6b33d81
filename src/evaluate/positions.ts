/** Where on a sheet its thickness was read. */

import type { Spot } from '../physics/thickness-field.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, report } from './bench.ts'
import type { Sheet } from './written-sheets.ts'

/** Places of a sheet's readings: its own, or the lot's template; none unless each reading has one. */
export function spotsOf({ measured }: Foil, sheet: Sheet): Spot[] | undefined {
  const positions = sheet.positions ?? measured?.positions
  if (positions?.length !== sheet.thickness_mm.length) return undefined
  return positions.map(({ x_mm, y_mm }) => ({ x_mm: x_mm.value, y_mm: y_mm.value }))
}

/** Told once a lot: as many places as readings, each on its sheet. */
export function checkPositions(bench: Bench, foil: Foil): void {
  for (const [index, sheet] of (foil.sheets ?? []).entries()) {
    const positions = sheet.positions ?? foil.measured?.positions
    if (!positions) continue
    const field = sheet.positions
      ? ['sheets', index, 'positions']
      : ['sheets', index, 'thickness_mm']
    const count = sheet.thickness_mm.length
    if (positions.length !== count)
      report(bench, field, 'INVALID_VALUE', [
        `sheet ${sheet.id} has ${counted(count, 'reading')} of thickness at ${counted(positions.length, 'position')}`,
        "give each reading its place, in the same order, or leave 'positions' out"
      ])
    for (const [place, { x_mm, y_mm }] of positions.entries())
      if (x_mm.value > sheet.length_mm.value || y_mm.value > sheet.width_mm.value)
        report(bench, sheet.positions ? [...field, place] : field, 'INVALID_VALUE', [
          `position ${place + 1} (${x_mm.written}, ${y_mm.written}) lies beyond sheet ${sheet.id} of ${sheet.length_mm.written} by ${sheet.width_mm.written}`,
          'x runs along the length and y along the width, both from one corner'
        ])
  }
}

const counted = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`
