/** Sheets of a foil lot to its figures: each sheet by itself, then the mean over the sheets. */

import type { Estimate } from '../metrology/estimate.ts'
import { meanOfReadings } from '../metrology/readings.ts'
import {
  arealMass,
  arealMassBasis,
  foilDensity,
  foilDensityBasis
} from '../physics/foil-density.ts'
import { porosity, porosityBasis } from '../physics/porosity.ts'
import type { Foil } from '../records/types.ts'
import { meanBases } from './bases.ts'
import { type Bench, read, report, type Session } from './bench.ts'
import type { MethodOf } from './flake.ts'
import type { Account } from './result.ts'
import { openSheets, sheetsResult, thicknessOf, thicknessReadings } from './sheets.ts'
import type { Sheet } from './written-sheets.ts'
import { sheetField } from './thickness-field.ts'
import type { Result, Results } from './types.ts'

/** Mean thickness of one sheet; its positions scatter because the sheet does. */
function sheetThickness(session: Session, sheet: Sheet): Estimate {
  const positions = thicknessReadings(session, sheet)
  if (positions.length === 1) warnSinglePosition(session, sheet.id)
  return meanOfReadings(positions, thicknessOf(session, sheet))
}

/** One position says nothing of the field; told once a sheet, though several figures need it. */
function warnSinglePosition({ bench }: Session, sheet: string): void {
  const message = `sheet ${sheet} has its thickness from one position: its scatter is not in the uncertainty`
  if (!bench.problems.some(problem => problem.message === message))
    report(bench, ['sheets'], 'SINGLE_READING', [message, 'measure five positions or more'])
}

const sheetSize = (session: Session, sheet: Sheet) => ({
  mass_g: read(session, sheet.mass_g, 'g', 'mass', `sheet ${sheet.id} mass`),
  length_mm: read(session, sheet.length_mm, 'mm', 'length', `sheet ${sheet.id} length`),
  width_mm: read(session, sheet.width_mm, 'mm', 'length', `sheet ${sheet.id} width`)
})

export function thicknessResult(bench: Bench, foil: Foil, methodOf: MethodOf): Result | undefined {
  const session = openSheets(bench, foil, 'thickness', methodOf)
  const account: Account = {
    quantity: 'thickness_mm',
    basis: meanBases.thickness
  }
  const result = sheetsResult(session, foil, account, sheet => {
    const thickness = sheetThickness(session, sheet)
    return { ...thickness, inputs: [] }
  })
  return result && { ...result, trace: () => ({ ...result.trace(), ...fieldPart(session, foil) }) }
}

/** Where readings have places, they are drawn at them. */
function fieldPart(session: Session, foil: Foil) {
  const field = (foil.sheets ?? []).flatMap(sheet => sheetField(session, foil, sheet) ?? [])
  return field.length > 0 ? { field } : {}
}

export function arealMassResult(bench: Bench, foil: Foil, methodOf: MethodOf): Result | undefined {
  const session = openSheets(bench, foil, 'areal-mass', methodOf)
  return sheetsResult(
    session,
    foil,
    { quantity: 'arealMass_g_per_m2', basis: arealMassBasis },
    sheet => arealMass(sheetSize(session, sheet))
  )
}

export function foilDensityResult(
  bench: Bench,
  foil: Foil,
  methodOf: MethodOf
): Result | undefined {
  const session = openSheets(bench, foil, 'foil-density', methodOf)
  return sheetsResult(
    session,
    foil,
    { quantity: 'foilDensity_g_per_cm3', basis: foilDensityBasis },
    sheet =>
      foilDensity({
        ...sheetSize(session, sheet),
        thickness_mm: sheetThickness(session, sheet)
      })
  )
}

export function porosityResult(
  bench: Bench,
  foil: Foil,
  methodOf: MethodOf,
  sofar: Results
): Result | undefined {
  const densities = sofar.foilDensity_g_per_cm3?.each ?? []
  if (densities.length === 0) return undefined
  const session = openSheets(bench, foil, 'porosity', methodOf)
  return sheetsResult(
    session,
    foil,
    { quantity: 'porosity_percent', basis: porosityBasis },
    (_, index) => porosity({ foilDensity_g_per_cm3: densities[index]!.estimate })
  )
}
