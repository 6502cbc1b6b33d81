/**
 * What a label carries for a classification: pictograms, signal word and hazard statements, after the
 * rules of precedence. What was left out, and why, is kept.
 *
 * Source: CLP Articles 20(3), 26 and 27.
 */

import {
  classEntry,
  classes,
  type ClassName,
  type Pictogram,
  placeOf,
  type SignalWord
} from './classes.ts'
import type { Finding } from './mixture.ts'
import type { Supplement } from './supplements.ts'

export interface StatementCode {
  readonly code: string
  /** Words for the gap the law leaves in it. */
  readonly fill?: string
}

export interface LabelElements {
  readonly pictograms: readonly Pictogram[]
  readonly signal?: SignalWord
  /** H and EUH statements. */
  readonly statements: readonly StatementCode[]
  /** What was left out, as sentences without a full stop. */
  readonly omitted: readonly Omission[]
}

/** What precedence leaves out, or keeps where it might seem to. */
export const pictogramOmissions = [
  'GHS07 left out beside GHS06: Article 26(1)(b)',
  'GHS07 left out for irritation beside GHS05: Article 26(1)(c)',
  'GHS07 left out beside GHS08 for sensitisation of the airways: Article 26(1)(d)',
  'GHS07 kept for irritation, as GHS05 stands for metals alone: Article 26(1)(c) read by its purpose'
] as const
export type PictogramOmission = (typeof pictogramOmissions)[number]
export type Omission = PictogramOmission | `${string} left out, said by ${string}: Article 27`

/** Label elements of the classes found, whatever their order. */
export function labelElements(
  found: readonly Pick<Finding, 'class' | 'statement' | 'fill'>[],
  supplements: readonly Pick<Supplement, 'code' | 'fill'>[] = []
): LabelElements {
  const sorted = [...found].sort((a, b) => placeOf(a.class) - placeOf(b.class))
  const names = sorted.map(({ class: name }) => name)
  const words = names.map(name => classEntry(name).signal)
  const signal = (['Danger', 'Warning'] as const).find(word => words.includes(word))
  const pictograms = pictogramsOf(names)
  const statements = statementsOf(sorted)
  return {
    pictograms: pictograms.kept,
    ...(signal ? { signal } : {}),
    statements: [
      ...statements.kept,
      ...supplements.map(({ code, fill }) => ({ code, ...(fill === undefined ? {} : { fill }) }))
    ],
    omitted: [...pictograms.omitted, ...statements.omitted]
  }
}

const irritations: readonly ClassName[] = ['Skin Irrit. 2', 'Eye Irrit. 2']

function pictogramsOf(names: readonly ClassName[]) {
  const [bySkull, byCorrosion, byAirways, kept07] = pictogramOmissions
  const bearers = (wanted: Pictogram) => names.filter(name => classEntry(name).pictogram === wanted)
  const all = [...new Set(names.flatMap(name => classEntry(name).pictogram ?? []))].sort()
  const corrodesTissue = bearers('GHS05').some(name => name !== 'Met. Corr. 1')
  const mild = bearers('GHS07')
  const but = (spared: readonly ClassName[]) => mild.every(name => spared.includes(name))
  const why =
    bearers('GHS06').length > 0
      ? bySkull
      : corrodesTissue && but(irritations)
        ? byCorrosion
        : names.includes('Resp. Sens. 1') && but([...irritations, 'Skin Sens. 1'])
          ? byAirways
          : undefined
  const drop = all.includes('GHS07') && why !== undefined
  const kept = all.filter(pictogram => !(drop && pictogram === 'GHS07'))
  const open =
    !corrodesTissue &&
    kept.includes('GHS05') &&
    kept.includes('GHS07') &&
    mild.some(name => irritations.includes(name))
      ? [kept07]
      : []
  return { kept, omitted: [...(drop ? [why] : []), ...open] }
}

/** Statements of which the first makes the others redundant: Article 27. */
const redundant: Readonly<Record<string, string>> = { H314: 'H318', H410: 'H400' }

/** Routes that one statement can name together. */
const together = [
  ['H300', 'H310', 'H330'],
  ['H301', 'H311', 'H331'],
  ['H302', 'H312', 'H332']
] as const

function statementsOf(sorted: readonly Pick<Finding, 'class' | 'statement' | 'fill'>[]) {
  const all = sorted.map(({ class: name, statement, fill }): StatementCode => ({
    code: statement ?? classes[name].statement,
    ...(fill === undefined ? {} : { fill })
  }))
  const codes = new Set(all.map(({ code }) => code))
  const dropped = Object.entries(redundant).filter(([by, code]) => codes.has(by) && codes.has(code))
  const kept = all.filter(
    ({ code }, index) =>
      !dropped.some(([, out]) => out === code) &&
      all.findIndex(other => other.code === code) === index
  )
  return {
    kept: combine(kept),
    omitted: dropped.map(([by, code]): Omission => `${code} left out, said by ${by}: Article 27`)
  }
}

/** 'H302' and 'H332' as 'H302+H332', where the first of them stood. */
function combine(statements: readonly StatementCode[]): StatementCode[] {
  const codes = statements.map(({ code }) => code)
  return statements.flatMap(statement => {
    const group = together.find(routes => routes.some(code => code === statement.code))
    const present = group?.filter(code => codes.includes(code)) ?? []
    if (present.length < 2) return [statement]
    return present[0] === statement.code ? [{ code: present.join('+') }] : []
  })
}
