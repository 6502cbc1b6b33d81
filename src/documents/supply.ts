/** How a grade is supplied: sizes, containers, packing, storage, and what is tested again. */

import { quantityOf, titleInSentence } from '../quantities.ts'
import type { GradeView } from './lot-view.ts'
import type { Fact } from './text-types.ts'
import { counted, listText, unparted } from './words.ts'

type Container = NonNullable<GradeView['containers']>[number]

export function supplyOf(grade: GradeView): Fact[] {
  const { sizes = [], containers = [], packing, storage, keep } = grade
  return [
    ...fact('Sizes', sizes.join('; ')),
    ...fact('Sold in', containers.map(containerText).join('; ')),
    ...fact('Packing', packing),
    ...fact('Storage', storage),
    ...fact('Keep', keep && keepText(keep)),
    ...fact('Tested again', retestText(grade))
  ]
}

const fact = (label: string, text: string | undefined): Fact[] =>
  text ? [{ label, text: unparted(text) }] : []

const containerText = ({ kind, capacity_L, holds_g }: Container) =>
  `${kind} of ${capacity_L.written} with ${holds_g.written}`

const keepText = ({ dry, below_C }: NonNullable<GradeView['keep']>): string =>
  [dry ? 'dry' : '', below_C ? `below ${below_C.written}` : ''].filter(Boolean).join(', ')

function retestText({ retestAfterMonths: months, retest = [] }: GradeView): string | undefined {
  if (!months) return undefined
  const names = retest.flatMap(key => {
    const quantity = quantityOf(key)
    return quantity ? [titleInSentence(quantity)] : []
  })
  return `after ${counted(months, 'month')}${names.length > 0 ? `: ${listText(names)}` : ''}`
}
