/** The lots a workshop makes: batches of flake, furnace runs, foil; and the certificates on them. */

import * as z from 'zod'
import {
  condition,
  date,
  fields,
  identifier,
  list,
  maybe,
  quantity,
  refuse,
  text,
  whole
} from '../fields.ts'
import { articleDecisions } from './article.ts'
import {
  instrumentsByRole,
  lotHazards,
  lotHead,
  lotTail,
  paperLanguages,
  stockCount,
  testHead,
  usedLot
} from './common.ts'
import { foilTestBlock } from './foil-tests.ts'
import { reportedResults } from './reported.ts'
import { sources } from './source.ts'
import { chargeRoles } from './recipe.ts'
import { retests } from './retest.ts'
import { flakeTestBlock } from './tests.ts'
import { visualInspection } from './visual.ts'

/** What a step does to the liquor, for the models of washing, neutralising and heat. */
export const stepActions = ['quench', 'filter', 'wash', 'neutralise', 'dry'] as const

/** What a logger or a watchful person read in the course of a step. */
const temperatureLog = (of: 'step temperature' | 'furnace log') =>
  list(fields({ at: text(), temperature: condition(of) }))

/** One step of the process, as it was done: what was set, what was seen, what was decided. */
const step = fields({
  what: text(),
  does: maybe(z.enum(stepActions)),
  /** Material lots of the charge that went in at this step. */
  adds: maybe(list(identifier())),
  /** Water added beside those. */
  water: maybe(quantity('g', 'above 0')),
  /** What was left when it had drained, wet. */
  cake: maybe(quantity('g', 'above 0')),
  at: maybe(text()),
  for: maybe(text()),
  mesh: maybe(text()),
  temperature: maybe(condition('step temperature')),
  log: maybe(temperatureLog('step temperature')),
  sources: maybe(sources()),
  ph: maybe(condition('step pH')),
  conductivity: maybe(condition('step conductivity')),
  check: maybe(text()),
  decision: maybe(text())
})

/** Something charged: weighed, or measured out by volume where its density is known. */
const chargeLine = fields({
  material: identifier(),
  as: z.enum(chargeRoles),
  /** Of the lot's containers, the one it was taken from. */
  container: maybe(identifier()),
  /** What was to be weighed in. */
  planned: maybe(quantity('g', 'above 0')),
  mass: maybe(quantity('g', 'above 0')),
  volume: maybe(quantity('mL', 'above 0')),
  /** Of what was measured out; room temperature where it is not said. */
  temperature: maybe(condition('charged temperature')),
  /** As the supplier states it or as measured, instead of the table's. */
  density: maybe(condition('charged density'))
}).superRefine(({ as, mass_g, volume_mL, temperature_C, density_g_per_cm3 }, context) => {
  if (!mass_g && !volume_mL)
    refuse(context, ['mass'], 'MISSING_FIELD', [
      'is missing: nothing says how much was charged',
      "add 'mass:', or 'volume:' of a solution"
    ])
  if (mass_g && volume_mL)
    refuse(context, ['volume'], 'INVALID_VALUE', [
      'stands beside a mass: what was charged is one of the two',
      'keep what was read on the day'
    ])
  if (volume_mL && as === 'graphite')
    refuse(context, ['volume'], 'INVALID_VALUE', [
      'is of graphite, whose volume does not tell its mass',
      "weigh it and write 'mass:'"
    ])
  if (!volume_mL && (temperature_C ?? density_g_per_cm3))
    refuse(context, [temperature_C ? 'temperature' : 'density'], 'INVALID_VALUE', [
      'belongs to a volume, and none is given',
      "add 'volume:', or take it out"
    ])
})

/** One run of the process that yields expandable flake, or a blend or rework of earlier lots. */
export const batchRecord = fields({
  ...lotHead,
  grade: identifier(),
  /** Vessel the charge reacted in. */
  vessel: maybe(identifier()),
  charge: maybe(list(chargeLine)),
  from: maybe(list(usedLot)),
  steps: maybe(list(step)),
  /** Review of a batch that was charged above its vessel's limit. */
  'over-limit': maybe(fields({ by: text(), on: date(), because: text() })),
  product: fields({ mass: quantity('g', 'above 0'), 'leachable-salt': maybe(quantity('%')) }),
  tests: maybe(flakeTestBlock),
  hazards: maybe(lotHazards),
  reported: maybe(reportedResults),
  retested: maybe(retests),
  ...lotTail
})

/** One furnace run: flake in, worms out. */
export const expansionRecord = fields({
  ...lotHead,
  from: list(usedLot),
  furnace: maybe(identifier()),
  temperature: condition('furnace temperature'),
  dwell: maybe(condition('dwell')),
  worms: fields({ mass: quantity('g', 'above 0'), volume: maybe(quantity('mL', 'above 0')) }),
  log: maybe(temperatureLog('furnace log')),
  sources: maybe(sources()),
  counted: maybe(list(stockCount))
})

/** Where thickness was read, in the order of the readings: from one corner, x along the length. */
const positions = list(fields({ x: quantity('mm', 'at least 0'), y: quantity('mm', 'at least 0') }))

const sheet = fields({
  id: text(),
  mass: quantity('g'),
  length: quantity('mm'),
  width: quantity('mm'),
  thickness: list(quantity('mm')),
  positions: maybe(positions)
})

/** How the direction of forming lies in a sheet or roll. */
export const formingDirections = ['along the length', 'across the length', 'not marked'] as const

/** Foil pressed or rolled from worms, sheet by sheet. */
export const foilRecord = fields({
  ...lotHead,
  grade: identifier(),
  from: list(usedLot),
  pressing: fields({
    how: z.enum(['pressed', 'rolled']),
    pressure: maybe(condition('pressing pressure')),
    passes: maybe(whole(1)),
    /** Of forming, as customers find it on the piece. */
    direction: maybe(z.enum(formingDirections)),
    notes: maybe(text())
  }),
  /** Against oxidation or corrosion: 'none', or what was added and how much. Public. */
  inhibitor: maybe(text()),
  saleable: maybe(quantity('g', 'above 0')),
  measured: maybe(
    fields({
      ...testHead,
      instruments: maybe(instrumentsByRole),
      /** Of sheets that name none of their own: one template for all. */
      positions: maybe(positions)
    })
  ),
  sheets: maybe(list(sheet)),
  tests: maybe(foilTestBlock),
  visual: maybe(visualInspection),
  hazards: maybe(articleDecisions),
  reported: maybe(reportedResults),
  retested: maybe(retests),
  ...lotTail
})

/**
 * Types of inspection document: declaration of compliance, test report, inspection certificate.
 *
 * Source: EN 10204:2004, table of types; from memory, not checked against the print.
 */
export const inspectionTypes = ['2.1', '2.2', '3.1'] as const
export type InspectionType = (typeof inspectionTypes)[number]

/** A certificate on a lot: that it exists, since when, and who answers for it. */
export const certificateRecord = fields({
  number: identifier(),
  revision: whole(1),
  lot: identifier(),
  issued: date(),
  signatory: text(),
  /** Without one it is a certificate of analysis. */
  type: maybe(z.enum(inspectionTypes)),
  /** The shipment whose order it declares compliance with: never public. */
  shipment: maybe(identifier()),
  reason: maybe(text()),
  /** Of the paper; English where nothing is said. */
  language: maybe(z.enum(paperLanguages))
})
