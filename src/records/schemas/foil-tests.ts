/** What each test of pieces cut from a foil lot records. */

import { z } from 'zod'
import { fields, list, maybe, quantity } from '../fields.ts'
import { testHead } from './common.ts'
import { leachTest } from './leach.ts'

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
  }),
  'sheet-resistance': fields({
    ...testHead,
    spacing: quantity('mm'),
    /** Of a disc probed at its middle; left out on a sheet of 40 spacings and more. */
    diameter: maybe(quantity('mm')),
    readings: list(
      fields({ voltage: quantity('mV'), current: quantity('mA'), thickness: quantity('mm') })
    )
  }),
  'van-der-pauw-resistance': fields({
    ...testHead,
    readings: list(fields({ first: quantity('mΩ'), second: quantity('mΩ') }))
  }),
  'leachable-chloride': leachTest(),
  'leachable-fluoride': leachTest(),
  'oxidation-loss': fields({
    ...testHead,
    temperature: quantity('°C'),
    for: quantity('h', 'above 0'),
    readings: list(fields({ dry: quantity('g'), end: quantity('g') }))
  }),
  'strip-resistance': fields({
    ...testHead,
    direction: z.enum(directions),
    readings: list(
      fields({
        resistance: quantity('mΩ'),
        length: quantity('mm'),
        width: quantity('mm'),
        thickness: quantity('mm')
      })
    )
  })
} as const

export const foilTestBlock = fields(
  Object.fromEntries(Object.entries(foilTests).map(([key, schema]) => [key, maybe(schema)])) as {
    [Key in keyof typeof foilTests]: z.ZodOptional<(typeof foilTests)[Key]>
  }
)

export type FoilTests = z.output<typeof foilTestBlock>
