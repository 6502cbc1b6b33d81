/** What each test of pieces cut from a foil lot records. */

import { z } from 'zod'
import { fields, list, maybe, quantity } from '../fields.ts'
import { testHead } from './common.ts'

/** How a piece was cut: along the direction of rolling or pressing marks, or across it. */
export const directions = ['along', 'across'] as const

export const foilTests = {
  tensile: fields({
    ...testHead,
    readings: list(
      fields({
        direction: z.enum(directions),
        force: quantity('N'),
        width: quantity('mm'),
        thickness: quantity('mm')
      })
    )
  }),
  compression: fields({
    ...testHead,
    readings: list(
      fields({ preload: quantity('mm'), loaded: quantity('mm'), recovered: quantity('mm') })
    )
  })
} as const

export const foilTestBlock = fields(
  Object.fromEntries(Object.entries(foilTests).map(([key, schema]) => [key, maybe(schema)])) as {
    [Key in keyof typeof foilTests]: z.ZodOptional<(typeof foilTests)[Key]>
  }
)

export type FoilTests = z.output<typeof foilTestBlock>
