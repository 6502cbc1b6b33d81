/** A sieve analysis: the stack, and what each of its sieves held in each run. */

import * as z from 'zod'
import { type Sieve, sieveNamed, sieves } from '../../metrology/sieves.ts'
import { quoted } from '../../problem.ts'
import { fields, list, maybe, quantity, refuse } from '../fields.ts'
import { testHead } from './common.ts'

/** A sieve by its aperture or number: '300 µm' or 'No. 50'. */
const sieve = () =>
  z
    .string()
    .transform((text, context): Sieve => {
      const known = sieveNamed(text)
      if (known) return known
      context.addIssue({
        code: 'custom',
        message: `is no sieve of ISO 3310-1 known here, got ${quoted(text)}`,
        params: { code: 'INVALID_VALUE', hint: hintFor(text) }
      })
      return z.NEVER
    })
    .meta({ description: 'aperture such as 300 µm, or number such as No. 50' })

/** Names that older lists give to sieves of today. */
const outdated: Readonly<Record<string, string>> = {
  '297': '300 µm',
  '177': '180 µm',
  '149': '150 µm',
  '74': '75 µm',
  '44': '45 µm'
}

function hintFor(text: string): string {
  const today = outdated[/\d+/u.exec(text)?.[0] ?? '']
  return today === undefined
    ? `write an aperture such as ${sieves.map(one => one.aperture_um).join(', ')} µm, or a number such as No. 50`
    : `today's standard has ${today} in its place`
}

/** Coarsest first, each once, and in every run one mass for each. */
export const sieveTest = fields({
  ...testHead,
  sieves: list(sieve()),
  'most-loss': maybe(quantity('%', 'from 0 to 100')),
  readings: list(
    fields({ charged: quantity('g'), retained: list(quantity('g')), pan: quantity('g') })
  )
}).superRefine(({ sieves: stack, readings }, context) => {
  for (const [index, one] of stack.entries())
    if (index > 0 && one.aperture_um >= stack[index - 1]!.aperture_um)
      refuse(context, ['sieves', index], 'INVALID_VALUE', [
        `${one.aperture_um} µm does not follow ${stack[index - 1]!.aperture_um} µm`,
        'list the stack from the coarsest sieve down, each once, with the masses in the same order'
      ])
  for (const [index, { retained_g }] of readings.entries())
    if (retained_g.length !== stack.length)
      refuse(context, ['readings', index, 'retained_g'], 'INVALID_VALUE', [
        `does not go with the stack: masses ${retained_g.length}, sieves ${stack.length}`,
        'write one mass for each sieve, 0 g where it held nothing; the pan stands by itself'
      ])
})
