/** Results and verdicts in English. */

import { PRODUCER, UNNAMED } from '../../../evaluate/measurers.ts'
import type { Remark, Report } from '../../../evaluate/types.ts'
import type { Scope } from '../../../judge/types.ts'
import type { DecisionRule, VerdictWord } from '../../../quality/judge.ts'
import { counted, date } from './numbers.ts'

const nouns: Record<Scope, string> = {
  'lot mean': 'lot mean',
  'every sheet': 'sheet',
  'every reading': 'reading'
}

type Measurer = typeof UNNAMED | typeof PRODUCER

/** How a figure stands to its limit; `limit` with its unit. */
function standing(word: VerdictWord, limit: string, rule: DecisionRule): string {
  const rounded = rule === 'rounded' ? ', once rounded to its last digit' : ''
  const phrases: Record<VerdictWord, string> = {
    pass: `within the limit of ${limit}${rule === 'guarded' ? ' by at least U' : rounded}`,
    'conditional pass': `within the limit of ${limit}, but by less than U`,
    'conditional fail': `outside the limit of ${limit}, but by no more than U`,
    fail: `outside the limit of ${limit}${rule === 'guarded' ? ' by more than U' : rounded}`,
    'not decidable': `not decidable against the limit of ${limit}`
  }
  return `is ${phrases[word]}`
}

function remark(said: Remark): string {
  switch (said.is) {
    case 'soaked':
      return `Soaked for ${said.time} in water at ${said.at}.`
    case 'held':
      return `Held ${said.time} at ${said.at}.`
    case 'defined':
      return `Defined as: ${said.as}${said.rate === undefined ? '' : `, heated at ${said.rate}`}.`
    case 'cut':
      return `Strips cut ${said.direction} the direction of forming.`
    case 'clamped':
      return `Clamped with ${said.with}, held ${said.time} at ${said.at}.`
    case 'leaked':
      return `Gas: ${said.gas}, from ${said.pressure} absolute, ring under ${said.stress}, at ${said.at}.`
    case 'heat flowed':
      return `Measured ${said.direction} the direction of forming, at ${said.at}.`
    case 'heat estimated':
      return `Estimated for ${said.at} from the conductivity of strips cut ${said.direction} the direction of forming; no heat was measured.`
    case 'spliced':
      return said.at.length === 0
        ? 'In one piece, without a splice.'
        : `${counted(said.at.length, 'splice')}, at ${said.at.join(', ')}; longest piece ${said.longest}.`
    case 'from report':
      return `From the external result for sulfur: ${said.by}, report ${said.number}.`
    case 'process':
      return said.text
  }
}

/** Whose result it is, in one sentence. */
function report(said: Report): string {
  const { by, number, date: day, method, scope, withoutUncertainty, isOwn } = said
  const parts = [
    isOwn
      ? `Own earlier result: measured by ${by}, taken over without its readings from record ${number} of ${date(day)}`
      : `External result: measured by ${by}, report ${number} of ${date(day)}`,
    method && `method as reported: ${method}`,
    scope && `scope: ${scope}`,
    withoutUncertainty && `no uncertainty is stated: ${withoutUncertainty}`
  ]
  return `${parts.filter(part => part).join('; ')}.`
}

export const results = {
  /** What a limit holds for. */
  scopes: {
    'lot mean': 'lot mean',
    'every sheet': 'every sheet',
    'every reading': 'every reading'
  } satisfies Record<Scope, string>,
  between: (min: string, max: string) => `${min} to ${max}`,
  /** 'sheet 3, position 2' or 'reading 2', as evaluation names it. */
  place: (label: string) => label,
  whose: (count: number, scope: Scope, place: string) =>
    `Of ${counted(count, nouns[scope])}, ${place} decides: `,
  standing,
  verdict: (figure: string, stands: string) => `${figure} ${stands}.`,
  below: (figure: string, limit: string) =>
    `The figure lies below ${figure}; the limit is ${limit}.`,
  unlimited: 'unlimited',
  overPositions: (n: number, min: string, max: string, range: string) =>
    `Over ${n} positions: from ${min} to ${max}, a range of ${range} % of the mean.`,
  betweenSheets: (n: number, s: string, min: string, max: string) =>
    `Between ${n} sheets: s = ${s}, from ${min} to ${max}.`,
  remark,
  report,
  /** Who measured it, where no name is told. */
  measurers: { [UNNAMED]: UNNAMED, [PRODUCER]: PRODUCER } as Readonly<Record<Measurer, string>>,
  noUncertainty: 'no uncertainty stated',
  /** What an outside laboratory, or an earlier record, gives beside our own figure. */
  beside: (figure: string, { by, number, date: day, isOwn }: Report) =>
    isOwn
      ? `${figure} stands beside it in the producer's own earlier record ${number} of ${date(day)}.`
      : `${figure} was reported beside it by ${by}, report ${number} of ${date(day)}.`,
  reportedOfLot: (figure: string, isOwn: boolean, limit: string, scope: Scope) =>
    `${figure} was ${isOwn ? 'recorded' : 'reported'} for the lot; the limit of ${limit} holds for ${scope}.`,
  reported: (figure: string, isOwn: boolean, stands: string) =>
    `${figure}, as ${isOwn ? 'recorded' : 'reported'}, ${stands}.`
}
