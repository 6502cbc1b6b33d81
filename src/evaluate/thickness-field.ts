/** Thickness read at known places of a sheet: the field itself, and its taper both ways. */

import {
  fitPlane,
  type Plane,
  spansPlane,
  taper,
  taperAcrossBasis,
  taperAlongBasis
} from '../physics/thickness-field.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, read, type Session } from './bench.ts'
import type { MethodOf } from './flake.ts'
import { checkPositions, spotsOf } from './positions.ts'
import { openSheets, sheetsResult, thicknessOf, thicknessReadings } from './sheets.ts'
import type { Sheet } from './written-sheets.ts'
import type { Result, SheetField } from './types.ts'

const sides = {
  along: { quantity: 'taperAlong_mm', key: 'taper-along', basis: taperAlongBasis, side: 'length' },
  across: {
    quantity: 'taperAcross_mm',
    key: 'taper-across',
    basis: taperAcrossBasis,
    side: 'width'
  }
} as const

/** Rise of the thickness over the sheets whose readings tell a plane; nothing where none does. */
export function taperResult(
  bench: Bench,
  foil: Foil,
  methodOf: MethodOf,
  way: keyof typeof sides
): Result | undefined {
  if (way === 'along') checkPositions(bench, foil)
  const sheets = (foil.sheets ?? []).filter(sheet => spansPlane(spotsOf(foil, sheet) ?? []))
  if (sheets.length === 0) return undefined
  const { key, quantity, basis } = sides[way]
  const session = openSheets(bench, foil, key, methodOf)
  const model = (sheet: Sheet) => taperOf(session, sheet, planeOf(session, foil, sheet)!, way)
  return sheetsResult(session, foil, { quantity, basis }, model, sheets)
}

function planeOf(session: Session, foil: Foil, sheet: Sheet): Plane | undefined {
  const spots = spotsOf(foil, sheet)
  if (!spots || !spansPlane(spots)) return undefined
  return fitPlane(spots, thicknessReadings(session, sheet), thicknessOf(session, sheet))
}

const taperOf = (session: Session, sheet: Sheet, plane: Plane, way: keyof typeof sides) =>
  taper({
    slope_mm_per_m: plane[`${way}_mm_per_m`],
    side_mm: sideOf(session, sheet, sides[way].side)
  })

const sideOf = (session: Session, sheet: Sheet, side: 'length' | 'width') =>
  read(session, sheet[`${side}_mm`], 'mm', 'length', `sheet ${sheet.id} ${side}`)

/** One sheet's readings where they were taken; undefined where its record tells no places. */
export function sheetField(session: Session, foil: Foil, sheet: Sheet): SheetField | undefined {
  const spots = spotsOf(foil, sheet)
  if (!spots) return undefined
  const plane = planeOf(session, foil, sheet)
  return {
    label: `sheet ${sheet.id}`,
    length_mm: sheet.length_mm.value,
    width_mm: sheet.width_mm.value,
    length: sheet.length_mm.written,
    width: sheet.width_mm.written,
    readings: sheet.thickness_mm.map(({ value, decimal }, index) => ({
      ...spots[index]!,
      thickness_mm: value,
      decimal,
      ...(plane ? { above_mm: plane.above_mm[index]! } : {})
    })),
    ...(plane
      ? {
          along_mm: taperOf(session, sheet, plane, 'along'),
          across_mm: taperOf(session, sheet, plane, 'across')
        }
      : {})
  }
}
