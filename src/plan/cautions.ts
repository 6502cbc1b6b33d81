/** Cautions for exactly the materials that go into a charge, by what they are made of. */

import { type CautionBlock, cautionsFor } from '../hazards/cautions.ts'
import { suppliedSubstance } from '../judge/supplier-lines.ts'
import { strengthOf } from '../evaluate/strength.ts'
import type { Material } from '../records/types.ts'

export const cautionsOf = (materials: readonly Material[]): CautionBlock =>
  cautionsFor(
    materials.map(material => ({
      name: material.title,
      ingredients: (material.composition ?? []).map(part => ({
        substance: suppliedSubstance(part.substance, [material]),
        percent: strengthOf(material.lot, part).percent.value
      }))
    }))
  )
