/** How a grade is supplied: sizes, containers, packing, storage, and what is tested again. */

import { quantityOf } from '../quantities.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'
import type { GradeView } from './lot-view.ts'
import type { Fact } from './text-types.ts'
import { unparted } from './words.ts'

type Container = NonNullable<GradeView['containers']>[number]

export function supplyOf(grade: GradeView, tongue = english): Fact[] {
  const { sizes = [], containers = [], packing, storage, keep } = grade
  const { own, grade: words, lot } = tongue
  const said = (text: string | undefined) => text && own(text)
  return [
    ...fact(words.supply.sizes, sizes.map(own).join('; ')),
    ...fact(words.supply.soldIn, containers.map(one => containerText(one, tongue)).join('; ')),
    ...fact(lot.facts.packing, said(packing)),
    ...fact(lot.facts.storage, said(storage)),
    ...fact(words.supply.keep, keep && keepText(keep, tongue)),
    ...fact(words.supply.testedAgain, retestText(grade, tongue))
  ]
}

const fact = (label: string, text: string | undefined): Fact[] =>
  text ? [{ label, text: unparted(text) }] : []

const containerText = (
  { kind, capacity_L, holds_g }: Container,
  { grade: words, numbers: { number } }: Tongue
) => words.container(words.containers[kind], number(capacity_L.written), number(holds_g.written))

const keepText = (
  { dry, below_C }: NonNullable<GradeView['keep']>,
  { grade: words, numbers: { number } }: Tongue
): string =>
  [dry ? words.dry : '', below_C ? words.below(number(below_C.written)) : '']
    .filter(Boolean)
    .join(', ')

function retestText(
  { retestAfterMonths: months, retest = [] }: GradeView,
  tongue: Tongue
): string | undefined {
  if (!months) return undefined
  const names = retest.flatMap(key => {
    const quantity = quantityOf(key)
    return quantity ? [tongue.numbers.inSentence(wordsOf(tongue, quantity).title)] : []
  })
  return tongue.grade.retest(months, names)
}
