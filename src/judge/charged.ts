/** What went into a batch, or into those it was blended from. */

import { findSubstance, type Substance } from '../hazards/substances.ts'
import type { Batch, Material, Records } from '../records/types.ts'

/** Materials charged, one a line of the charge. */
export const materialsOf = (content: Records, { charge = [], from = [] }: Batch): Material[] => [
  ...charge.flatMap(({ material }) => content.materials.get(material)?.record ?? []),
  ...from.flatMap(({ lot }) => {
    const part = content.batches.get(lot)
    return part ? materialsOf(content, part.record) : []
  })
]

/** Whether an oxidiser went in, by the charge's own word or by what its materials are made of. */
export const wasOxidised = (content: Records, batch: Batch): boolean =>
  isChargedAsOxidiser(content, batch) || holds(content, batch, isOxidiser)

const isChargedAsOxidiser = (content: Records, { charge = [], from = [] }: Batch): boolean =>
  charge.some(line => line.as === 'oxidiser') ||
  from.some(({ lot }) => {
    const part = content.batches.get(lot)
    return part !== undefined && isChargedAsOxidiser(content, part.record)
  })

/** Whether a strong acid other than sulfuric went in, which a titration counts with it. */
export const mayHoldOtherAcid = (content: Records, batch: Batch): boolean =>
  holds(
    content,
    batch,
    ({ id, traits }) =>
      id !== 'sulfuric-acid' && traits.some(({ trait }) => trait === 'strong acid')
  )

const holds = (content: Records, batch: Batch, is: (substance: Substance) => boolean): boolean =>
  materialsOf(content, batch).some(({ composition = [] }) =>
    composition.some(part => {
      const substance = findSubstance(part.substance)
      return substance !== undefined && is(substance)
    })
  )

const isOxidiser = ({ traits, classes }: Substance): boolean =>
  traits.some(({ trait }) => trait === 'oxidiser') ||
  classes.some(({ class: name }) => name.startsWith('Ox. '))
