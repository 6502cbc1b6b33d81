/** Cautions for exactly the materials that go into a charge, by what they are made of. */

import { type CautionBlock, cautionsFor } from '../hazards/cautions.ts'
import { suppliedSubstance } from '../judge/supplier-lines.ts'
import type { Material } from '../records/types.ts'

export const cautionsOf = (materials: readonly Material[]): CautionBlock =>
  cautionsFor(
    materials.map(material => ({
      name: material.title,
      ingredients: (material.composition ?? []).map(({ substance, fraction_percent }) => ({
        substance: suppliedSubstance(substance, [material]),
        percent: fraction_percent.value
      }))
    }))
  )
