/** The workshop itself: who signs, what it measures with, by which methods, and what it buys. */

import { z } from 'zod'
import {
  anyQuantity,
  date,
  fields,
  identifier,
  list,
  maybe,
  quantity,
  text,
  whole,
  yesNo
} from '../fields.ts'
import { instrumentsByRole, quantityKeys } from './common.ts'

/** One file: the maker as customers see it, and the people behind the roles. */
export const producerRecord = fields({
  name: text(),
  address: list(text()),
  email: text(),
  telephone: text(),
  site: maybe(z.url({ protocol: /^https?$/u })),
  paper: maybe(z.enum(['A4', 'Letter'])),
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
  'coverage-factor': maybe(quantity('1')),
  tolerance: maybe(anyQuantity())
}).superRefine((calibration, context) => {
  const refuse = (field: string, message: string, hint: string) =>
    context.addIssue({
      code: 'custom',
      path: [field],
      message,
      params: { code: 'INVALID_VALUE', hint }
    })
  if (calibration.due <= calibration.on)
    refuse('due', `must be after ${calibration.on}, when it was calibrated`, 'check the two dates')
  const { expandedUncertainty, coverageFactor, tolerance } = calibration
  if (!expandedUncertainty && !tolerance)
    refuse(
      'on',
      'this calibration says nothing of how sure it is',
      'write expanded-uncertainty and coverage-factor, or tolerance'
    )
  if (coverageFactor && !(coverageFactor.value >= 1))
    refuse('coverageFactor', `must be at least 1, got ${coverageFactor.written}`, 'usually 2')
  if (expandedUncertainty && !coverageFactor)
    refuse(
      'expandedUncertainty',
      'has no coverage factor beside it',
      'add coverage-factor: 2, or as the certificate says'
    )
})

/** A balance, a burette, a micrometer: what a reading's uncertainty comes from. */
export const instrumentRecord = fields({
  id: identifier(),
  title: text(),
  resolution: anyQuantity(),
  calibration: maybe(calibration)
})

/** A standard solution, by its standardisation. */
export const titrantRecord = fields({
  id: identifier(),
  title: text(),
  concentration: quantity('mol/L'),
  'expanded-uncertainty': quantity('mol/L'),
  'coverage-factor': quantity('1'),
  against: text(),
  standardised: date(),
  expires: date()
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
  repeatability: maybe(fields({ s: anyQuantity(), df: whole(1), from: text() }))
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

/** An incoming lot. Private: suppliers and their values never reach customers. */
export const materialRecord = fields({
  lot: identifier(),
  title: text(),
  kind: z.enum(materialKinds),
  supplier: text(),
  'supplier-lot': maybe(text()),
  received: date(),
  quantity: quantity('g'),
  expires: maybe(date()),
  moisture: maybe(quantity('%')),
  composition: maybe(list(fields({ substance: text(), fraction: quantity('%') }))),
  'supplier-values': maybe(list(fields({ what: text(), value: text() }))),
  notes: maybe(text())
})
