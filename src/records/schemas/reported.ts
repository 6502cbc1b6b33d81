/**
 * Results without their readings: what an outside laboratory reported of a lot, or what the workshop's
 * own records from before say of it.
 */

import * as z from 'zod'
import type { Reading } from '../../metrology/written.ts'
import type { UnitName } from '../../metrology/units.ts'
import { amount, date, fields, identifier, maybe, refuse, text, yesNo } from '../fields.ts'
import { perQuantity } from './per-quantity.ts'
import { sha256 } from './source.ts'

interface Stated {
  readonly value?: Reading | undefined
  readonly lessThan?: Reading | undefined
  readonly expandedUncertainty?: Reading | undefined
  readonly coverageFactor?: Reading | undefined
  readonly withoutUncertainty?: string | undefined
}

interface Measurer {
  readonly laboratory?: string | undefined
  readonly namePublic?: boolean | undefined
  readonly own?: boolean | undefined
}

/** A report gives a value or 'less than', and with a value U and its k, or why there is none. */
function checkStated(stated: Stated, context: z.RefinementCtx): void {
  const { value, lessThan, expandedUncertainty, coverageFactor, withoutUncertainty } = stated
  const missing = (field: string[], message: string, hint: string) =>
    refuse(context, field, 'MISSING_FIELD', [message, hint])
  const surplus = (field: string, message: string, hint: string) =>
    refuse(context, [field], 'INVALID_VALUE', [message, hint])
  if (!value && !lessThan)
    missing([], 'this reported result has no figure', "write 'value:', or 'less-than:'")
  if (value && lessThan)
    surplus('lessThan', 'stands beside a value', 'keep what the report gives: one of the two')
  if (value && !expandedUncertainty && withoutUncertainty === undefined)
    missing(
      ['expandedUncertainty'],
      'is missing, and so is the reason why there is none',
      "write expanded-uncertainty and coverage-factor, or 'without-uncertainty:' with the reason"
    )
  if (expandedUncertainty && withoutUncertainty !== undefined)
    surplus('withoutUncertainty', 'stands beside an expanded uncertainty', 'keep one of the two')
  if (expandedUncertainty && !coverageFactor)
    missing(
      ['coverageFactor'],
      'is missing: the expanded uncertainty beside it needs it',
      'add coverage-factor: 2, or as the report says'
    )
  if (lessThan && !value && (expandedUncertainty ?? withoutUncertainty) !== undefined)
    surplus('lessThan', 'needs no uncertainty: it is a bound, not a figure', 'take the other out')
}

/** Measured by one laboratory, or here. */
function checkMeasurer({ laboratory, namePublic, own }: Measurer, context: z.RefinementCtx): void {
  if (!own && laboratory === undefined)
    refuse(context, ['laboratory'], 'MISSING_FIELD', [
      'is missing: nothing says who measured this',
      "name it, or write 'own: yes' where the workshop measured it before these records"
    ])
  for (const [field, value] of Object.entries({ laboratory, namePublic }))
    if (own && value !== undefined)
      refuse(context, [field], 'INVALID_VALUE', [
        "stands beside 'own: yes', which says that the workshop measured it",
        'keep one of the two'
      ])
}

const reportedIn = (unit: UnitName) =>
  fields({
    value: maybe(amount(unit)),
    'less-than': maybe(amount(unit, 'above 0')),
    'expanded-uncertainty': maybe(amount(unit, 'above 0')),
    'coverage-factor': maybe(amount('1', 'at least 1')),
    'without-uncertainty': maybe(text()),
    /** Who measured it; or `own: yes`, where the workshop did, before these records began. */
    laboratory: maybe(text()),
    own: maybe(yesNo()),
    /** The laboratory agreed to be named; without it customers read 'an external laboratory'. */
    'name-public': maybe(yesNo()),
    /** The document it stands in: the laboratory's report, or the workshop's own old list. */
    report: identifier(),
    date: date(),
    method: maybe(text()),
    scope: maybe(text()),
    'file-sha256': maybe(sha256())
  }).superRefine((reported, context) => {
    checkStated(reported, context)
    checkMeasurer(reported, context)
  })

/** One optional report for every quantity, by its key. */
export const reportedResults = perQuantity(reportedIn)

export type ReportedResults = z.output<typeof reportedResults>
export type ReportedRecord = z.output<ReturnType<typeof reportedIn>>
