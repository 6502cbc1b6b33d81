/** The workshop itself: who signs, what it measures with, by which methods, and what it buys. */

import * as z from 'zod'
import { units } from '../../metrology/units.ts'
import { acceptedUnits } from '../../metrology/written.ts'
import { quoted } from '../../problem.ts'
import { quantities, quantityOf } from '../../quantities.ts'
import {
  anyQuantity,
  date,
  fields,
  identifier,
  list,
  maybe,
  quantity,
  refuse,
  text,
  whole,
  yesNo
} from '../fields.ts'
import {
  hazardEditions,
  hazardLanguages,
  instrumentsByRole,
  labelRules,
  paperLanguages,
  quantityKeys,
  stockCount
} from './common.ts'
import { comparedWithSupplier } from './incoming.ts'
import { safetyDataSheet, supplierClassification } from './supplier-hazards.ts'

/** The most a vessel is charged with, by the workshop's own assessment. It binds plans and release. */
const chargeLimit = fields({
  vessel: identifier(),
  since: date(),
  until: maybe(date()),
  graphite: maybe(quantity('g', 'above 0')),
  acid: maybe(quantity('g', 'above 0')),
  oxidiser: maybe(quantity('g', 'above 0')),
  /** Graphite, acid and oxidiser together. */
  total: maybe(quantity('g', 'above 0')),
  /** Where the limit comes from: the document and its date. */
  assessment: text(),
  /** Role that answers for it. */
  by: text()
}).superRefine(({ since, until, ...limit }, context) => {
  if (until !== undefined && until < since)
    refuse(context, ['until'], 'DATE_ORDER', [
      `ends on ${until}, before it begins on ${since}`,
      'check the two dates'
    ])
  if (!limit.graphite_g && !limit.acid_g && !limit.oxidiser_g && !limit.total_g)
    refuse(context, [], 'MISSING_FIELD', [
      'this limit limits nothing',
      'write graphite, acid, oxidiser or total, as the assessment says'
    ])
})

/** Each once, and one at least. */
const siteLanguages = list(z.enum(paperLanguages)).superRefine((languages, context) => {
  for (const [index, language] of languages.entries())
    if (languages.indexOf(language) < index)
      refuse(context, [index], 'INVALID_VALUE', [
        `'${language}' stands here twice`,
        'name each language once'
      ])
})

/** One file: the maker as customers see it, and the people behind the roles. */
export const producerRecord = fields({
  name: text(),
  address: list(text()),
  email: text(),
  telephone: text(),
  site: maybe(z.url({ protocol: /^https?$/u })),
  paper: maybe(z.enum(['A4', 'Letter'])),
  /** Of the hazard block, the first for the label; CLP where nothing is said. */
  editions: maybe(list(z.enum(hazardEditions))),
  /** Of hazard statements, beside English. */
  languages: maybe(list(z.enum(hazardLanguages))),
  /** Labels of the lots' pages, and of shipments that ask for no others; European ones in English else. */
  labels: maybe(labelRules),
  /** The workshop's own: flake has to be below them before it is dried or heated. */
  'oxidiser-limits': maybe(
    fields({
      since: date(),
      nitrate: maybe(quantity('mg/kg', 'above 0')),
      permanganate: maybe(quantity('mg/kg', 'above 0')),
      manganese: maybe(quantity('mg/kg', 'above 0'))
    })
  ),
  'charge-limits': maybe(list(chargeLimit)),
  /** Room the furnace stands in, for the worst its gases could come to. */
  room: maybe(quantity('m³', 'above 0')),
  /** Revisions of the safety data sheets, each from the day it is in force; who has them is private. */
  'safety-data-sheets': maybe(
    list(
      fields({
        id: identifier(),
        revision: whole(1),
        'valid-from': date(),
        grades: list(identifier())
      })
    )
  ),
  /** What may be bought or sold of a substance in a calendar year before somebody has to be told. */
  'yearly-thresholds': maybe(
    list(fields({ substance: text(), mass: quantity('g', 'above 0'), because: text() }))
  ),
  /** Language the records' own texts are written in; English where nothing is said. */
  'written-in': maybe(z.enum(paperLanguages)),
  /** Languages of the public pages, the first at the site's root; that of the records where nothing is said. */
  'site-languages': maybe(siteLanguages),
  roles: list(
    fields({
      role: text(),
      name: text(),
      'independent-of-manufacturing': maybe(yesNo())
    })
  )
})

/** How sure an instrument's reading is: one of these, in the instrument's unit or as % of reading. */
const calibration = fields({
  certificate: maybe(text()),
  laboratory: maybe(text()),
  against: maybe(text()),
  on: date(),
  due: date(),
  'expanded-uncertainty': maybe(anyQuantity()),
  'coverage-factor': maybe(quantity('1', 'at least 1')),
  tolerance: maybe(anyQuantity()),
  /** How errors lie within the tolerance: evenly where nothing is said, or likelier near none. */
  distribution: maybe(z.enum(['rectangular', 'triangular']))
}).superRefine((calibration, context) => {
  const { on, due, expandedUncertainty, coverageFactor, tolerance, distribution } = calibration
  if (distribution && !tolerance)
    refuse(context, ['distribution'], 'INVALID_VALUE', [
      'says how errors lie within a tolerance, and there is none',
      "add 'tolerance:', or take it out"
    ])
  if (due <= on)
    refuse(context, ['due'], 'DATE_ORDER', [
      `is due on ${due}, which is not after the calibration on ${on}`,
      'check the two dates'
    ])
  if (!expandedUncertainty && !tolerance)
    refuse(context, [], 'MISSING_FIELD', [
      'this calibration says nothing of how sure it is',
      'write expanded-uncertainty and coverage-factor, or tolerance'
    ])
  if (expandedUncertainty && !coverageFactor)
    refuse(context, ['coverageFactor'], 'MISSING_FIELD', [
      'is missing: the expanded uncertainty beside it needs it',
      'add coverage-factor: 2, or as the certificate says'
    ])
})

/** A balance, a burette, a micrometer: what a reading's uncertainty comes from. */
export const instrumentRecord = fields({
  id: identifier(),
  title: text(),
  resolution: anyQuantity(),
  calibration: maybe(calibration),
  /** Calibrations before the present one: readings of their time keep them. */
  'earlier-calibrations': maybe(list(calibration))
}).superRefine(({ resolution, calibration, earlierCalibrations = [] }, context) => {
  const { dimension } = units[resolution.unit]
  const all: [(string | number)[], typeof calibration][] = [
    [['calibration'], calibration],
    ...earlierCalibrations.map((earlier, index): [(string | number)[], typeof earlier] => [
      ['earlierCalibrations', index],
      earlier
    ])
  ]
  for (const [path, one] of all)
    for (const name of ['expandedUncertainty', 'tolerance'] as const) {
      const given = one?.[name]
      if (!given || given.unit === '%' || units[given.unit].dimension === dimension) continue
      refuse(context, [...path, name], 'WRONG_DIMENSION', [
        `${quoted(given.unit)} is a unit of ${units[given.unit].dimension}, not of ${dimension}, which the instrument reads`,
        `write it in ${acceptedUnits(resolution.unit)}, or in % of the reading`
      ])
    }
})

/** A standard solution, by its standardisation. */
export const titrantRecord = fields({
  id: identifier(),
  title: text(),
  concentration: quantity('mol/L', 'above 0'),
  'expanded-uncertainty': quantity('mol/L', 'above 0'),
  'coverage-factor': quantity('1', 'at least 1'),
  against: text(),
  standardised: date(),
  expires: date()
}).superRefine(({ standardised, expires }, context) => {
  if (expires < standardised)
    refuse(context, ['expires'], 'DATE_ORDER', [
      `expires on ${expires}, before it was standardised on ${standardised}`,
      'check the two dates'
    ])
})

/** How a quantity is measured here. An edition is never edited: a new one is a new file. */
export const methodRecord = fields({
  id: identifier(),
  edition: whole(1),
  'valid-from': date(),
  quantity: z.enum(quantityKeys),
  title: text(),
  conditions: text(),
  reference: maybe(text()),
  instruments: maybe(instrumentsByRole),
  /** Of one reading, in the unit of the quantity: where that is %, in its own per cents. */
  repeatability: maybe(fields({ s: anyQuantity(), df: whole(1), from: text() })),
  /** Of one reading, in % of the result. */
  'relative-repeatability': maybe(
    fields({ s: quantity('%', 'above 0'), df: whole(1), from: text() })
  )
}).superRefine(({ quantity: key, repeatability, relativeRepeatability }, context) => {
  const { unit } = quantities[quantityOf(key)!]
  if (repeatability && relativeRepeatability)
    refuse(context, ['relativeRepeatability'], 'INVALID_VALUE', [
      'stands beside repeatability: a method has one of the two',
      `keep 'repeatability' if s is in ${acceptedUnits(unit)}, 'relative-repeatability' if s is in % of the result`
    ])
  const given = repeatability?.s
  if (!given || given.unit === '%' || units[given.unit].dimension === units[unit].dimension) return
  refuse(context, ['repeatability', 's'], 'WRONG_DIMENSION', [
    `${quoted(given.unit)} is a unit of ${units[given.unit].dimension}, not of ${units[unit].dimension}, which ${key} is`,
    `write it in ${acceptedUnits(unit)}, or in % of the result under 'relative-repeatability'`
  ])
})

/** What incoming lots can be: decides where their mass counts in a balance. */
export const materialKinds = [
  'graphite',
  'acid',
  'oxidiser',
  'neutraliser',
  'expandable graphite',
  'other'
] as const

/** One substance of what came in: its part as the label states it, or the density that tells it. */
const ingredient = fields({
  substance: text(),
  fraction: maybe(quantity('%', 'from 0 to 100')),
  /** Of the solution, where nothing else is known of its strength. */
  density: maybe(quantity('g/cm³', 'above 0')),
  /** At which that density was read. */
  temperature: maybe(quantity('°C')),
  /** Which of two is meant where an acid's density belongs to two strengths. */
  side: maybe(z.enum(['weaker', 'stronger'])),
  /** What per cents of ammonia water are of: the label says, or its maker. */
  as: maybe(z.enum(['NH3', 'NH4OH']))
}).superRefine(({ fraction_percent, density_g_per_cm3, temperature_C, side }, context) => {
  const refused = (field: string, message: string, hint: string) =>
    refuse(context, [field], 'INVALID_VALUE', [message, hint])
  if (!fraction_percent && !density_g_per_cm3)
    refuse(context, ['fraction'], 'MISSING_FIELD', [
      'is missing: nothing says how much of it there is',
      "add 'fraction:' in %, or 'density:' of a solution of which nothing else is known"
    ])
  if (fraction_percent && density_g_per_cm3)
    refused(
      'density',
      'stands beside a fraction: the strength is known by one of the two',
      "keep 'fraction:', and write the density under 'supplier-values'"
    )
  if (density_g_per_cm3 && !temperature_C)
    refuse(context, ['temperature'], 'MISSING_FIELD', [
      'is missing: a density tells no strength without it',
      "add 'temperature:' of the solution, as it was read"
    ])
  if (!density_g_per_cm3 && (temperature_C ?? side))
    refused(
      temperature_C ? 'temperature' : 'side',
      'belongs to a density, and none is given',
      "add 'density:', or take it out"
    )
})

/** An incoming lot. Private: suppliers and their values never reach customers. */
export const materialRecord = fields({
  lot: identifier(),
  title: text(),
  kind: z.enum(materialKinds),
  supplier: text(),
  'supplier-lot': maybe(text()),
  received: date(),
  quantity: quantity('g', 'above 0'),
  /** What it came in, where stock is kept by the container. */
  containers: maybe(
    list(
      fields({
        number: identifier(),
        net: quantity('g', 'above 0'),
        counted: maybe(list(stockCount)),
        notes: maybe(text())
      })
    )
  ),
  expires: maybe(date()),
  moisture: maybe(quantity('%', 'from 0 to 100')),
  composition: maybe(list(ingredient)),
  'supplier-values': maybe(list(fields({ what: text(), value: text() }))),
  /** Figures of the supplier that the workshop holds its own against. */
  compared: maybe(comparedWithSupplier),
  /** Where its supplier's classification is from. */
  'safety-data-sheet': maybe(safetyDataSheet),
  classification: maybe(list(supplierClassification)),
  counted: maybe(list(stockCount)),
  notes: maybe(text())
}).superRefine((material, context) => {
  const { received, expires, classification = [], composition = [] } = material
  if (expires !== undefined && expires < received)
    refuse(context, ['expires'], 'DATE_ORDER', [
      `expires on ${expires}, before it was received on ${received}`,
      'check the two dates'
    ])
  if (classification.length > 0 && !material.safetyDataSheet)
    refuse(context, ['safetyDataSheet'], 'MISSING_FIELD', [
      'is missing: a classification needs the sheet it is from',
      "add 'safety-data-sheet: { reference: …, revision: …, date: … }'"
    ])
  for (const [index, { substance }] of classification.entries()) {
    const named = composition.map(part => part.substance)
    const twice = classification.findIndex(other => other.substance === substance) < index
    if (named.includes(substance) && !twice) continue
    refuse(context, ['classification', index, 'substance'], 'INVALID_VALUE', [
      twice
        ? `classifies ${quoted(substance)} a second time`
        : `classifies ${quoted(substance)}, which is not in the composition`,
      twice ? 'put both into one' : 'list it under composition, by the same name'
    ])
  }
})
