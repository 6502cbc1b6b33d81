/** What the figures of a foil lot's sheets share: their readings, their mean, their working. */

import type { Computed, Estimate } from '../metrology/estimate.ts'
import { meanOf } from '../metrology/readings.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, openSession, read, type Session } from './bench.ts'
import { instrumentsFor, type MethodOf } from './flake.ts'
import { type Account, attempt } from './result.ts'
import type { Result } from './types.ts'
import { type Sheet, writtenSheets } from './written-sheets.ts'

/** What one sheet's record yields. */
interface SheetFigure {
  readonly sheet: Sheet
  readonly computed: Computed
}

const roleOf = {
  mass_g: 'mass',
  length_mm: 'length',
  width_mm: 'length',
  thickness_mm: 'thickness',
  side_mm: 'length'
} as const

/** Readings of the sheets, by the method they name if it is one of `key`, else the grade's. */
export function openSheets(bench: Bench, foil: Foil, key: string, methodOf: MethodOf): Session {
  const { measured, made, instruments } = foil
  const named = bench.content.methods.get(measured?.method ?? '') ?? []
  const own = named.some(({ record }) => record.quantity === key) ? measured?.method : undefined
  return openSession(bench, measured?.tested ?? made, ['sheets'], own ?? methodOf(key), {
    ...instruments,
    ...measured?.instruments
  })
}

/** What the positions of a sheet are readings of. */
export const thicknessOf = ({ bench: { lot } }: Session, { id }: Sheet) => ({
  name: `${lot} sheet ${id} thickness`,
  of: { lot, sheet: id }
})

/** Thickness at each position of a sheet. */
export const thicknessReadings = (session: Session, sheet: Sheet): Estimate[] =>
  sheet.thickness_mm.map((reading, index) =>
    read(session, reading, 'mm', 'thickness', `sheet ${sheet.id} thickness, position ${index + 1}`)
  )

/**
 * Mean over the sheets measured. Their scatter is the product's, not the measurement's: it is
 * reported beside the mean and is no part of its uncertainty.
 *
 * @param sheets of the lot, those the figure is of: all where nothing is said
 */
export function sheetsResult(
  session: Session,
  foil: Foil,
  account: Account,
  model: (sheet: Sheet, index: number) => Computed,
  sheets: readonly Sheet[] = foil.sheets ?? []
): Result | undefined {
  const figures = sheets.map((sheet, index): SheetFigure | undefined => {
    const place = ['sheets', foil.sheets!.indexOf(sheet)]
    const computed = attempt(session.bench, place, () => model(sheet, index))
    return computed && { sheet, computed }
  })
  const known = figures.filter(figure => figure !== undefined)
  if (known.length === 0 || known.length < sheets.length) return undefined
  const { method } = session
  return {
    quantity: account.quantity,
    estimate: meanOf(known.map(({ computed }) => computed)),
    n: known.length,
    ...(method ? { method } : {}),
    tested: session.day,
    ...(foil.measured?.deviation === undefined ? {} : { deviation: foil.measured.deviation }),
    each: known.map(({ sheet, computed }) => ({ label: `sheet ${sheet.id}`, estimate: computed })),
    readings: account.quantity === 'thickness_mm' ? positionsOf(session, foil) : [],
    field: ['sheets'],
    trace: () => ({
      ...account.basis,
      readings: writtenSheets(sheets, account.quantity),
      inputs: known[0]!.computed.inputs,
      inputsOf: `sheet ${known[0]!.sheet.id}`,
      instrumentOf: instrumentsFor(session, roleOf),
      notes: [{ is: 'scatter between sheets' }]
    })
  }
}

const positionsOf = (session: Session, foil: Foil) =>
  (foil.sheets ?? []).flatMap(sheet =>
    sheet.thickness_mm.map((reading, index) => {
      const label = `sheet ${sheet.id}, position ${index + 1}`
      return { label, estimate: read(session, reading, 'mm', 'thickness', label) }
    })
  )
