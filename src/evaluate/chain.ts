/**
 * Checks over the chain of lots: dates in order, nothing used before it was there or beyond what
 * there was, masses that can balance.
 */

import { yieldCeilings_percent } from '../chemistry/intercalation.ts'
import { checkCharged } from './charged.ts'
import { checkStrengths } from './strength.ts'
import { checkComplaints, checkCounts } from './complaints.ts'
import { checkContainers } from './containers.ts'
import { checkStockContainers } from './stock-containers.ts'
import type { Use } from './use.ts'
import { allReturns, allUses, restockedBy, type Return, stockOf } from './uses.ts'
import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import type { Batch, Records, Entry, Foil } from '../records/types.ts'
import type { EvaluatedBatch, EvaluatedLot } from './types.ts'

/** Every fault in the chain that shows without figures. */
export function checkChain(content: Records): Problem[] {
  const uses = allUses(content)
  return [
    ...uses.flatMap(use => checkDate(content, use)),
    ...checkStrengths(content),
    ...checkCharged(content),
    ...checkAmounts(content, uses, allReturns(content)),
    ...checkContainers(content),
    ...checkStockContainers(content, uses),
    ...checkComplaints(content),
    ...checkCounts(content)
  ]
}

/** Every fault in it that a lot's figures show. */
export const checkFigures = (lot: EvaluatedLot): Problem[] => [
  ...checkTestDates(lot),
  ...checkBalance(lot)
]

function checkDate(content: Records, { purpose, lot, on, by, entry, field }: Use): Problem[] {
  const stock = stockOf(content, lot)
  if (!stock || purpose === 'tested') return []
  if (on < stock.since)
    return [
      problemAt(
        entry.at(field),
        'USED_BEFORE_MADE',
        `${by} used ${lot} on ${on}, before it was there on ${stock.since}`,
        'check the two dates'
      )
    ]
  // What has expired may be thrown away.
  if (purpose !== 'lost' && stock.until !== undefined && on > stock.until)
    return [
      problemAt(
        entry.at(field),
        'DATE_ORDER',
        `${by} used ${lot} on ${on}, after it expired on ${stock.until}`,
        'check the two dates; an expired material is retested and its date renewed first'
      )
    ]
  return []
}

/** Rounding of weighed amounts may add up to this part of what there was. */
const SLACK = 1e-9

/**
 * The use that overdraws a lot gets the problem: uses are counted in the order of their days. What
 * came back counts again from the day it was put back into stock.
 */
function checkAmounts(
  content: Records,
  uses: readonly Use[],
  returns: readonly Return[]
): Problem[] {
  const taken = new Map<string, number>()
  return [...uses]
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
    .flatMap(use => {
      const stock = stockOf(content, use.lot)
      if (!stock) return []
      const earlier = taken.get(use.lot) ?? 0
      const before = stock.mass_g + restockedBy(returns, use.lot, use.on) - earlier
      const after = before - use.mass_g
      taken.set(use.lot, earlier + use.mass_g)
      return after < -SLACK * stock.mass_g ? [overdrawn(use, before)] : []
    })
}

function overdrawn(use: Use, before: number): Problem {
  const had = grams(Math.max(0, before))
  return problemAt(
    use.entry.at(use.field),
    'OVERDRAWN',
    `${use.by} takes ${grams(use.mass_g)} of ${use.lot}, which has ${had} left`,
    'check the masses, and the lots they were taken from'
  )
}

const grams = (mass_g: number) => `${Number(mass_g.toPrecision(6))} g`

function checkTestDates({ entry, product }: EvaluatedLot): Problem[] {
  const { made } = entry.record
  const seen = new Set<string>()
  const early = Object.values(product).filter(({ tested = made }) => tested < made)
  return early.flatMap(({ tested, field }) => {
    const key = JSON.stringify(field)
    if (seen.has(key)) return []
    seen.add(key)
    const place =
      field[0] === 'sheets'
        ? ['measured', 'tested']
        : [...field, field[0] === 'reported' ? 'date' : 'tested']
    return [
      problemAt(
        entry.at(place),
        'DATE_ORDER',
        `was tested on ${tested}, before the lot was made on ${made}`,
        'check the two dates; readings of another lot may have been copied'
      )
    ]
  })
}

function checkBalance(lot: EvaluatedLot): Problem[] {
  if (lot.kind === 'batch') return [...checkYield(lot), ...checkParts(lot.entry)]
  if (lot.kind === 'foil') return checkSheets(lot.entry)
  return []
}

/**
 * A stage-1 compound is all the graphite can take up. Its formula is known as C24·HSO4·xH2SO4 with x
 * from 2 to 2.5: beyond the larger bound the masses cannot be right, between the two they may be.
 */
function checkYield({ entry, process }: EvaluatedBatch): Problem[] {
  const massYield = process.massYield_percent?.estimate.value
  const [ceiling, outermost] = yieldCeilings_percent as [number, number]
  if (massYield === undefined || massYield <= ceiling) return []
  const percent = (value: number) => `${Number(value.toPrecision(4))} %`
  const beyond = massYield > outermost
  return [
    problemAt(
      entry.at(['product', 'mass_g']),
      beyond ? 'IMPOSSIBLE_BALANCE' : 'HIGH_YIELD',
      `the mass yield comes to ${percent(massYield)}, above the stage-1 bound of ${percent(
        beyond ? outermost : ceiling
      )}${beyond ? '' : ` (x = 2), below that of ${percent(outermost)} (x = 2.5)`}`,
      'check the masses; the product may still be wet or hold salt'
    )
  ]
}

/** What dry flake may take up from air while it is mixed, washed or dried again: common practice, no source. */
const MOISTURE_percent = 5

/** A lot made of others alone weighs no more than they did. */
function checkParts(entry: Entry<Batch>): Problem[] {
  const { from, charge, product } = entry.record
  const parts = (from ?? []).reduce((sum, use) => sum + use.mass_g.value, 0)
  const made = product?.mass_g.value ?? 0
  if (!from || charge || made <= parts * (1 + MOISTURE_percent / 100)) return []
  return [
    problemAt(
      entry.at(['product', 'mass_g']),
      'IMPOSSIBLE_BALANCE',
      `the lot weighs ${grams(made)}, more than the ${grams(parts)} it was made from`,
      'check the masses; the product may still be wet'
    )
  ]
}

function checkSheets(entry: Entry<Foil>): Problem[] {
  const { sheets = [], from, saleable_g } = entry.record
  const worms = from.reduce((sum, use) => sum + use.mass_g.value, 0)
  const sheetMass = sheets.reduce((sum, sheet) => sum + sheet.mass_g.value, 0)
  const heavier = (mass_g: number, field: FieldPath, what: string) =>
    mass_g > worms * (1 + SLACK)
      ? [
          problemAt(
            entry.at(field),
            'IMPOSSIBLE_BALANCE',
            `${what} weigh ${grams(mass_g)}, more than the ${grams(worms)} of worms they were made from`,
            'check the masses; sheets from other worms belong to another lot'
          )
        ]
      : []
  return [
    ...heavier(sheetMass, ['sheets'], 'the sheets'),
    ...(saleable_g ? heavier(saleable_g.value, ['saleable_g'], 'the saleable pieces') : [])
  ]
}
