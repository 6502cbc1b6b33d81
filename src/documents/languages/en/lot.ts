/** A lot in English: what it is, how it stands, whether it meets its grade. */

import type { LotState } from '../../../quality/status.ts'
import type { DecisionRule } from '../../../quality/judge.ts'
import type { Count, DecisionText } from '../parts.ts'
import { date } from './numbers.ts'

const all = ({ total, grade }: Count): string =>
  `${total === 1 ? 'the only limit' : total === 2 ? 'both limits' : `all ${total} limits`} of ${grade}`

const some = ({ n, total, grade }: Count): string =>
  `${total === 1 ? 'the only limit' : `${n} of the ${total} limits`} of ${grade}`

export const lot = {
  kinds: {
    batch: 'expandable flake graphite',
    expansion: 'furnace run',
    foil: 'flexible graphite foil'
  },
  /** Texts across each page of what is not, or no longer, to be relied on. */
  marks: {
    preview: 'Preview, not issued',
    prepared: 'Prepared, not issued',
    calledBack: 'Do not use this lot'
  },
  /** What each decision rule does, in one sentence a customer can check. */
  rules: {
    simple:
      'Simple acceptance: a figure passes if it is within its limit. At the limit itself the risk of a wrong acceptance is up to 50 %.',
    rounded:
      'Simple acceptance by the rounding method: a figure is rounded to the last digit of its limit, ties to even, and passes if it is then within the limit.',
    guarded:
      'Guarded acceptance with guard band w = U: a figure passes if it is within its limit by at least its expanded uncertainty U. Within the limit by less is a conditional pass, outside it by no more than U a conditional fail. The risk of a wrong pass is at most about 2.5 % for each bound of the limit.'
  } satisfies Record<DecisionRule, string>,
  undecided: 'In quarantine: no decision on release has been taken.',
  states: {
    quarantine: ({ on, by }) => `In quarantine since ${date(on)}, by the ${by}.`,
    released: ({ on, by }) => `Released on ${date(on)} by the ${by}.`,
    rejected: ({ on, by }) => `Rejected on ${date(on)} by the ${by}.`,
    concession: ({ on, by }) =>
      `Released under concession on ${date(on)} by the ${by}, for a customer who accepted the deviation.`,
    withdrawn: ({ on, by, because }) =>
      `Withdrawn on ${date(on)} by the ${by}${because === undefined ? '' : `: ${because}`}.`,
    scrapped: ({ on, by }) => `Scrapped on ${date(on)} by the ${by}.`
  } satisfies Record<LotState, (decision: DecisionText) => string>,
  facts: {
    lot: 'Lot',
    product: 'Product',
    grade: 'Grade',
    made: 'Made',
    quantity: 'Quantity made',
    retest: 'Retest by',
    sampling: 'Sampling',
    cas: 'CAS number',
    article: 'Article',
    sheet: 'Safety data sheet',
    packing: 'Packing',
    storage: 'Storage'
  },
  gradeFact: (title: string, id: string, revision: number) =>
    `${title} (${id}), revision ${revision}`,
  notSettled: 'not settled: a competent person has to decide',
  gradeName: (id: string, revision: number) => `grade ${id}, revision ${revision}`,
  noLimit: (grade: string) => `There is no limit in ${grade} to judge it by.`,
  answers: {
    pass: count => `Meets ${all(count)}.`,
    'conditional pass': count =>
      `Within ${all(count)}, but ${count.titles} by less than the uncertainty.`,
    'conditional fail': count =>
      `Outside ${some(count)}, but by no more than the uncertainty: ${count.titles}.`,
    fail: count => `Does not meet ${some(count)}: ${count.titles}.`,
    'not decidable': count => `Cannot be decided against ${some(count)}: ${count.titles}.`,
    'not judged': count => `Measurements are missing for ${some(count)}: ${count.titles}.`
  } satisfies Record<string, (count: Count) => string>,
  alsoUndecided: (titles: string) => `Cannot be decided: ${titles}.`,
  alsoMissing: (titles: string) => `Not measured: ${titles}.`,
  uncalibrated: (name: string) => `${name}: not calibrated, not traceable.`,
  calibrated: (
    name: string,
    certificate: string,
    laboratory: string | undefined,
    on: string,
    due: string
  ) =>
    `${name}: calibration certificate ${certificate}${laboratory ? ` of ${laboratory}` : ''}, ${date(on)}, due again ${date(due)}.`,
  checked: (name: string, against: string | undefined, on: string, due: string) =>
    `${name}: checked in house${against === undefined ? '' : ` against ${against}`}, ${date(on)}, due again ${date(due)}, not traceable.`,
  standardised: (name: string, against: string, on: string, until: string) =>
    `${name}: standardised against ${against} on ${date(on)}, in use until ${date(until)}.`
}
