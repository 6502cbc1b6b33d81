/** What a supplier's safety data sheet says of the substances in a delivery. */

import * as z from 'zod'
import { date, fields, list, maybe, quantity, refuse, text, yesNo } from '../fields.ts'

/** The sheet as its supplier names it; customers never see its reference. */
export const safetyDataSheet = fields({ reference: text(), revision: text(), date: date() })

/** How an inhaled class or estimate was found; only these have a scale of their own. */
export const inhaledForms = ['gas', 'vapour', 'mist'] as const

/** Traits that no class says: what no arithmetic of sums covers. */
export const supplierTraits = ['strong acid', 'strong base', 'oxidiser'] as const

const classLine = fields({
  class: text(),
  form: maybe(z.enum(inhaledForms)),
  /** The organ a statement leaves open. */
  organ: maybe(text())
}).superRefine(({ class: name, form }, context) => {
  const isInhaled = /^Acute Tox\. \d inhalation$/u.test(name)
  if (isInhaled === (form !== undefined)) return
  refuse(context, isInhaled ? [] : ['form'], isInhaled ? 'MISSING_FIELD' : 'INVALID_VALUE', [
    isInhaled
      ? "a class of inhalation needs 'form'"
      : "'form' belongs to acute toxicity by inhalation alone",
    isInhaled ? `write 'form:' with ${inhaledForms.join(', ')}` : 'take it out'
  ])
})

const limitLine = fields({
  class: text(),
  from: quantity('%', 'from 0 to 100'),
  below: maybe(quantity('%', 'from 0 to 100'))
}).superRefine(({ from_percent: from, below_percent: below }, context) => {
  if (!below || below.value > from.value) return
  refuse(context, ['below_percent'], 'INVALID_VALUE', [
    `must be above from, got ${below.written} against ${from.written}`,
    'check the two'
  ])
})

/** Estimates of acute toxicity by how it is taken up; gases by volume. */
const estimates = fields({
  oral: maybe(quantity('mg/kg', 'above 0')),
  dermal: maybe(quantity('mg/kg', 'above 0')),
  'gas-ppm': maybe(quantity('1', 'above 0')),
  vapour: maybe(quantity('mg/L', 'above 0')),
  mist: maybe(quantity('mg/L', 'above 0'))
})

/** M-factors are 1, 10, 100 and so on: CLP Annex I, Table 4.1.3 (from memory). */
const mFactor = () =>
  quantity('1', 'at least 1').superRefine(({ value, written }, context) => {
    if (/^10*$/u.test(String(value))) return
    refuse(context, [], 'INVALID_VALUE', [
      `an M-factor is 1, 10, 100 or a further power of ten, got ${written}`,
      'check the sheet'
    ])
  })

/** A substance's classification by its supplier: classes, or that there are none. */
export const supplierClassification = fields({
  substance: text(),
  classes: maybe(list(classLine)),
  'not-classified': maybe(yesNo()),
  limits: maybe(list(limitLine)),
  ate: maybe(estimates),
  'm-acute': maybe(mFactor()),
  'm-chronic': maybe(mFactor()),
  /** EUH statements. */
  statements: maybe(list(text())),
  traits: maybe(list(z.enum(supplierTraits)))
}).superRefine(({ classes, notClassified, substance, ...rest }, context) => {
  const says = Object.values(rest).some(part => part !== undefined)
  if (notClassified && classes)
    refuse(context, ['notClassified'], 'INVALID_VALUE', [
      'stands beside classes',
      'write the classes, or this alone'
    ])
  if (classes || notClassified || says) return
  refuse(context, [], 'MISSING_FIELD', [
    `nothing is said of ${substance}`,
    "write what its sheet says, or 'not-classified: yes'"
  ])
})
