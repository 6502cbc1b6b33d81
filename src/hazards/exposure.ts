/**
 * Occupational exposure limits, each with its issuer and year: `exposure-limits.json`.
 *
 * A national limit may be lower, and holds where the work is done. Threshold limit values of the ACGIH
 * are not given here: ask for the current edition.
 */

import type { Clause } from './clauses.ts'
import type { Substance } from './substances.ts'
import file from './exposure-limits.json' with { type: 'json' }

/** What the mean is taken over: 'any time' where a limit marks danger at once. */
export type Over = '8 h' | '15 min' | 'ceiling' | 'any time'

export interface ExposureLimit extends Clause {
  readonly issuer: string
  /** Of the act or of the text it was read in. */
  readonly year: number
  readonly over: Over
  readonly ppm?: number
  readonly mg_per_m3?: number
  /** Million particles per cubic foot. */
  readonly mppcf?: number
  /** Fraction or form it is for. */
  readonly of?: string
}

/** Something in the air that has limits, and the substances that bring it there. */
export interface Agent {
  readonly id: string
  readonly name: string
  readonly substances: readonly string[]
  readonly limits: readonly ExposureLimit[]
}

// The file's shape is held by a schema in the tests.
export const agents = file.agents as readonly Agent[]

/** Whether the European Union has a limit of exposure for it. */
export const hasUnionLimit = ({ id }: Pick<Substance, 'id'>): boolean =>
  agents.some(
    ({ substances, limits }) =>
      substances.includes(id) && limits.some(({ issuer }) => issuer.startsWith('European Union'))
  )

/** '0.5 ppm (1.3 mg/m³)', and the fraction or form it is for, empty where it is for all. */
export function limitParts({ of = '', ...limit }: ExposureLimit): { value: string; of: string } {
  const [first = '', second] = [
    ...(limit.ppm === undefined ? [] : [`${limit.ppm} ppm`]),
    ...(limit.mg_per_m3 === undefined ? [] : [`${limit.mg_per_m3} mg/m³`]),
    ...(limit.mppcf === undefined ? [] : [`${limit.mppcf} million particles per cubic foot`])
  ]
  return { value: second === undefined ? first : `${first} (${second})`, of }
}

/** '0.5 ppm (1.3 mg/m³), 8 h: European Union, Directive (EU) 2017/164 (2017)'. */
export function limitText(limit: ExposureLimit): string {
  const { value, of } = limitParts(limit)
  const { issuer, year, over } = limit
  return `${value}${of === '' ? '' : `, ${of}`}, ${over}: ${issuer} (${year})`
}
