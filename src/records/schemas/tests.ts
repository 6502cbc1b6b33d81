/** What each test of a flake lot records. The key is the quantity it measures. */

import * as z from 'zod'
import { condition, fields, identifier, list, maybe, quantity, refuse } from '../fields.ts'
import { testHead } from './common.ts'
import { leachTest } from './leach.ts'
import { sieveTest } from './sieve.ts'

/** A dish weighed empty, with the sample, and again after heating. */
const weighing = fields({
  dish: quantity('g'),
  before: quantity('g'),
  after: quantity('g')
})

/** Sulfate of a sample, weighed as ignited barium sulfate. */
const precipitate = fields({ mass: quantity('g'), 'barium-sulfate': quantity('g') })

/** A vessel filled with flake. */
const filled = fields({ mass: quantity('g'), volume: quantity('mL') })

/** The state the sample went in with; as received where nothing is said. */
const sample = z.enum(['as received', 'dried'])

/** Furnace temperatures a figure is kept at: 600 °C stands for what a coating sees in fire. */
export const curveTemperatures_C = [400, 600, 800] as const

const expansionCurve = fields({
  ...testHead,
  readings: list(
    fields({ temperature: quantity('°C'), mass: quantity('g'), volume: quantity('mL') })
  )
}).superRefine(({ readings }, context) => {
  for (const [index, { temperature_C: at }] of readings.entries())
    if (!curveTemperatures_C.some(known => known === at.value))
      refuse(context, ['readings', index, 'temperature_C'], 'INVALID_VALUE', [
        `must be one of ${curveTemperatures_C.join(', ')} °C, got ${at.written}`,
        'write the temperature the furnace was set to; its own error is its calibration'
      ])
})

/** What is called the onset: figures by two of these are not comparable. */
export const onsetDefinitions = [
  'extrapolated onset of the height curve',
  'first movement seen',
  'lowest furnace step that gives 1.5 times the bed'
] as const

const onsetTest = fields({
  ...testHead,
  definition: z.enum(onsetDefinitions),
  'heating-rate': maybe(condition('heating rate')),
  readings: list(fields({ temperature: quantity('°C') }))
}).superRefine(({ definition, heatingRate_K_per_min: rate }, context) => {
  if (!rate && definition !== onsetDefinitions[2])
    refuse(context, ['heatingRate_K_per_min'], 'MISSING_FIELD', [
      'is missing: an onset met while heating depends on it',
      "add 'heating-rate:', such as 10 K/min"
    ])
})

export const flakeTests = {
  'expansion-volume': fields({
    ...testHead,
    'bulk-density': maybe(condition('loose density')),
    readings: list(fields({ mass: quantity('g'), volume: quantity('mL') }))
  }),
  'free-acid': fields({
    ...testHead,
    titrant: identifier(),
    water: maybe(condition('extract')),
    extract: maybe(condition('extract')),
    aliquot: maybe(condition('aliquot')),
    'end-point-ph': maybe(condition('end point')),
    blanks: list(quantity('mL')),
    readings: list(fields({ mass: quantity('g'), titre: quantity('mL') }))
  }),
  'slurry-ph': fields({ ...testHead, readings: list(quantity('1')) }),
  moisture: fields({ ...testHead, readings: list(weighing) }),
  volatile: fields({ ...testHead, sample: maybe(sample), readings: list(weighing) }),
  sulfur: fields({ ...testHead, blanks: maybe(list(quantity('g'))), readings: list(precipitate) }),
  'free-sulfate': fields({
    ...testHead,
    blanks: maybe(list(quantity('g'))),
    readings: list(precipitate)
  }),
  conductivity: fields({
    ...testHead,
    water: maybe(quantity('µS/cm')),
    readings: list(fields({ conductivity: quantity('µS/cm'), temperature: quantity('°C') }))
  }),
  onset: onsetTest,
  'residual-nitrate': leachTest(),
  'residual-permanganate': leachTest(),
  'residual-manganese': leachTest(),
  'expansion-curve': expansionCurve,
  'water-soak': fields({
    ...testHead,
    for: condition('soak time'),
    at: condition('soak temperature'),
    readings: list(filled)
  }),
  sieve: sieveTest,
  'bulk-density': fields({ ...testHead, readings: list(filled) }),
  'tapped-density': fields({ ...testHead, readings: list(filled) }),
  ash: fields({ ...testHead, sample: maybe(sample), readings: list(weighing) })
} as const

export const flakeTestBlock = fields(
  Object.fromEntries(Object.entries(flakeTests).map(([key, schema]) => [key, maybe(schema)])) as {
    [Key in keyof typeof flakeTests]: z.ZodOptional<(typeof flakeTests)[Key]>
  }
)

export type FlakeTests = z.output<typeof flakeTestBlock>
