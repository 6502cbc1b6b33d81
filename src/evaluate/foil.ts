/** Sheets of a foil lot to its figures: each sheet by itself, then the mean over the sheets. */

import type { Computed, Estimate } from '../metrology/estimate.ts'
import { meanOf, meanOfReadings } from '../metrology/readings.ts'
import {
  arealMass,
  arealMassBasis,
  foilDensity,
  foilDensityBasis
} from '../physics/foil-density.ts'
import { porosity, porosityBasis } from '../physics/porosity.ts'
import type { QuantityName } from '../quantities.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, openSession, read, report, type Session } from './bench.ts'
import { instrumentsFor, type MethodOf } from './flake.ts'
import { type Account, attempt } from './result.ts'
import type { Result, Results } from './types.ts'

type Sheet = NonNullable<Foil['sheets']>[number]

/** What one sheet's record yields. */
interface SheetFigure {
  readonly sheet: Sheet
  readonly computed: Computed
}

const roleOf = {
  mass_g: 'mass',
  length_mm: 'length',
  width_mm: 'length',
  thickness_mm: 'thickness'
} as const

/** Readings of the sheets, by the method they name if it is one of `key`, else the grade's. */
function openSheets(bench: Bench, foil: Foil, key: string, methodOf: MethodOf): Session {
  const { measured, made, instruments } = foil
  const named = bench.content.methods.get(measured?.method ?? '') ?? []
  const own = named.some(({ record }) => record.quantity === key) ? measured?.method : undefined
  return openSession(bench, measured?.tested ?? made, ['sheets'], own ?? methodOf(key), {
    ...instruments,
    ...measured?.instruments
  })
}

/** Mean thickness of one sheet; its positions scatter because the sheet does. */
function sheetThickness(session: Session, sheet: Sheet): Estimate {
  const what = `sheet ${sheet.id} thickness`
  const positions = sheet.thickness_mm.map((reading, index) =>
    read(session, reading, 'mm', 'thickness', `${what}, position ${index + 1}`)
  )
  if (positions.length === 1) warnSinglePosition(session, sheet.id)
  return meanOfReadings(positions, `${session.bench.lot} ${what}`)
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
    basis: { formula: 't = mean of the positions', source: 'definition of the mean' }
  }
  return sheetsResult(session, foil, account, sheet => {
    const thickness = sheetThickness(session, sheet)
    return { ...thickness, inputs: [] }
  })
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

/**
 * Mean over the sheets measured. Their scatter is the product's, not the measurement's: it is
 * reported beside the mean and is no part of its uncertainty.
 */
function sheetsResult(
  session: Session,
  foil: Foil,
  account: Account,
  model: (sheet: Sheet, index: number) => Computed
): Result | undefined {
  const sheets = foil.sheets ?? []
  const figures = sheets.map((sheet, index): SheetFigure | undefined => {
    const computed = attempt(session.bench, ['sheets', index], () => model(sheet, index))
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
      notes: [
        'The scatter between sheets is reported beside the mean; the uncertainty is that of measuring these sheets.'
      ]
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

function writtenSheets(sheets: readonly Sheet[], quantity: QuantityName) {
  const withSize = quantity !== 'thickness_mm'
  const withThickness = quantity !== 'arealMass_g_per_m2'
  return {
    columns: [
      'Sheet',
      ...(withSize ? ['Mass', 'Length', 'Width'] : []),
      ...(withThickness ? ['Thickness at each position'] : [])
    ],
    rows: sheets.map(sheet => [
      sheet.id,
      ...(withSize ? [sheet.mass_g.written, sheet.length_mm.written, sheet.width_mm.written] : []),
      ...(withThickness ? [sheet.thickness_mm.map(({ written }) => written).join(', ')] : [])
    ])
  }
}
