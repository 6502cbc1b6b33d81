/** Readings of a lot's sheets as its record has them. */

import type { QuantityName } from '../quantities.ts'
import type { Foil } from '../records/types.ts'

/** One sheet as recorded. */
export type Sheet = NonNullable<Foil['sheets']>[number]

/** Figures that no mass is in. */
const lengthsAlone: ReadonlySet<QuantityName> = new Set([
  'thickness_mm',
  'taperAlong_mm',
  'taperAcross_mm'
])

export function writtenSheets(sheets: readonly Sheet[], quantity: QuantityName) {
  const withMass = !lengthsAlone.has(quantity)
  const withSize = quantity !== 'thickness_mm'
  const withThickness = quantity !== 'arealMass_g_per_m2'
  return {
    columns: [
      'Sheet',
      ...(withMass ? ['Mass'] : []),
      ...(withSize ? ['Length', 'Width'] : []),
      ...(withThickness ? ['Thickness at each position'] : [])
    ],
    rows: sheets.map(sheet => [
      sheet.id,
      ...(withMass ? [sheet.mass_g.written] : []),
      ...(withSize ? [sheet.length_mm.written, sheet.width_mm.written] : []),
      ...(withThickness ? [sheet.thickness_mm.map(({ written }) => written).join(', ')] : [])
    ])
  }
}
