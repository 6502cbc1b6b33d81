/** Compositions for tests. */

import type { ClassName } from '../../src/hazards/classes.ts'
import { classify, type Mixture } from '../../src/hazards/classify.ts'
import type { Ingredient } from '../../src/hazards/mixture.ts'
import { labelElements } from '../../src/hazards/label-elements.ts'
import {
  findSubstance,
  type LimitLine,
  type Substance,
  withSupplier
} from '../../src/hazards/substances.ts'

export const said = { source: 'the example', sure: 'print' } as const

/** 'sulfuric acid' at 96 %, the rest water. */
export function solution(name: string, percent: number, U = 0): Ingredient[] {
  return [
    { substance: findSubstance(name)!, percent, U },
    { substance: findSubstance('water')!, percent: Number((100 - percent).toFixed(6)) }
  ].filter(({ percent }) => percent > 0)
}

/** A substance made up for an example. */
export const example = (
  id: string,
  classes: readonly ClassName[],
  rest: Partial<Omit<Substance, 'limits'>> & {
    limits?: readonly Omit<LimitLine, 'source' | 'sure'>[]
  } = {}
): Substance => ({
  ...withSupplier(undefined, id, {}),
  ...rest,
  classes: classes.map(name => ({ class: name, ...said })),
  limits: (rest.limits ?? []).map(line => ({ ...line, ...said }))
})

/** The classes of a mixture, without the eye damage that follows from skin corrosion. */
export function classesOf(mixture: Mixture): string[] {
  const names = classify(mixture).classes.map(({ class: name }) => name)
  return names.filter(
    name => name !== 'Eye Dam. 1' || !names.some(one => one.startsWith('Skin Corr.'))
  )
}

/** 'GHS05 GHS07 · Danger · H314 H335' */
export function labelOf(mixture: Mixture): string {
  const { classes, supplements } = classify(mixture)
  const { pictograms, signal, statements } = labelElements(classes, supplements)
  const codes = statements.map(({ code }) => code)
  return [pictograms.join(' ') || '–', signal ?? '–', codes.join(' ') || '–'].join(' · ')
}
