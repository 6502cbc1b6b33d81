/** Readings of a lot's sheets as its record has them. */

import type { QuantityName } from '../quantities.ts'
import type { Foil } from '../records/types.ts'
import type { Column, WrittenReadings } from './types.ts'

/** One sheet as recorded. */
export type Sheet = NonNullable<Foil['sheets']>[number]

/** Figures that no mass is in. */
const lengthsAlone: ReadonlySet<QuantityName> = new Set([
  'thickness_mm',
  'taperAlong_mm',
  'taperAcross_mm'
])

export function writtenSheets(sheets: readonly Sheet[], quantity: QuantityName): WrittenReadings {
  const withMass = !lengthsAlone.has(quantity)
  const withSize = quantity !== 'thickness_mm'
  const withThickness = quantity !== 'arealMass_g_per_m2'
  const columns: Column[] = ['Sheet']
  if (withMass) columns.push('Mass')
  if (withSize) columns.push('Length', 'Width')
  if (withThickness) columns.push('Thickness at each position')
  return {
    columns,
    rows: sheets.map(sheet => [
      sheet.id,
      ...(withMass ? [sheet.mass_g.written] : []),
      ...(withSize ? [sheet.length_mm.written, sheet.width_mm.written] : []),
      ...(withThickness ? [sheet.thickness_mm.map(({ written }) => written)] : [])
    ])
  }
}
