/** What each test of pieces cut from a foil lot records. */

import * as z from 'zod'
import { condition, fields, list, maybe, quantity, refuse } from '../fields.ts'
import { testHead } from './common.ts'
import { leachTest } from './leach.ts'

/** How a piece was cut: along the direction of rolling or pressing marks, or across it. */
export const directions = ['along', 'across'] as const

/** Gases a leak is measured with, by the name records use; the formula gives the molar mass. */
export const leakGases = { nitrogen: 'N2', helium: 'He', methane: 'CH4' } as const

/** Stretch of the clamping bolt, before and after; load or stress is part of the figure. */
const creepTest = fields({
  ...testHead,
  load: maybe(condition('clamping load')),
  stress: maybe(condition('clamping stress')),
  temperature: condition('clamped temperature'),
  for: condition('clamped time'),
  readings: list(fields({ initial: quantity('mm'), final: quantity('mm') }))
}).superRefine(({ load_kN, stress_MPa }, context) => {
  if (!load_kN && !stress_MPa)
    refuse(context, ['load'], 'MISSING_FIELD', [
      'is missing: nothing says what the piece was clamped with',
      "add 'load:' or 'stress:'"
    ])
})

/** Pressure that a closed volume loses past a clamped ring; pressures are absolute. */
const leakTest = fields({
  ...testHead,
  gas: z.enum(Object.keys(leakGases) as [keyof typeof leakGases]),
  stress: condition('clamping stress'),
  volume: condition('gas volume'),
  /** Mean diameter of the ring: halfway between its inner and outer one. */
  diameter: condition('ring diameter'),
  readings: list(
    fields({
      'absolute-start': condition('gas pressure'),
      'absolute-end': condition('gas pressure'),
      'temperature-start': condition('gas temperature'),
      'temperature-end': condition('gas temperature'),
      time: condition('leak time')
    })
  )
})

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
    spacing: condition('probe spacing'),
    /** Of a disc probed at its middle; left out on a sheet of 40 spacings and more. */
    diameter: maybe(condition('disc diameter')),
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
    temperature: condition('oxidation temperature'),
    for: condition('oxidation time'),
    readings: list(fields({ dry: quantity('g'), end: quantity('g') }))
  }),
  'creep-relaxation': creepTest,
  'gas-leak': leakTest,
  'thermal-conductivity': fields({
    ...testHead,
    direction: z.enum(directions),
    at: condition('conduction temperature'),
    'heat-capacity': condition('heat capacity'),
    readings: list(fields({ diffusivity: quantity('mm²/s') }))
  }),
  /** One roll: its pieces from one splice to the next, in order, and its width at several places. */
  roll: fields({
    ...testHead,
    pieces: list(quantity('m', 'above 0')),
    widths: list(quantity('mm', 'above 0')),
    /** Foil of the roll, without its core. */
    mass: maybe(quantity('g', 'above 0'))
  }),
  'strip-resistance': fields({
    ...testHead,
    /** Temperature of an estimate of the thermal conductivity, where one is wanted. */
    'thermal-estimate-at': maybe(condition('conduction temperature')),
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
