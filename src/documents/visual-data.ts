/** What looking at foil came to, for programs. */

import * as z from 'zod'
import type { VisualVerdict } from '../judge/visual.ts'
import type { StandingDemand } from '../judge/visual-demand.ts'
import { exactText } from '../metrology/rounding.ts'

const count = z.number().int()

export const visualDataSchema = z.strictObject({
  tested: z.string(),
  unit: z.enum(['sheet', 'metre']),
  lotSize: count,
  inspected: count,
  nonconforming: count,
  takenOut: count,
  defects: z.array(z.strictObject({ kind: z.string(), count })),
  plan: z
    .strictObject({
      level: z.string(),
      aqlPercent: z.number(),
      letter: z.string(),
      takenFrom: z.string().describe('letter whose sample and numbers hold'),
      sampleSize: count,
      acceptance: count,
      rejection: count,
      acceptedAtAql: z.number().describe('probability, of a process that yields the AQL'),
      acceptedOnceInTen: z.number().describe('fraction nonconforming accepted one time in ten')
    })
    .nullable()
    .describe('ISO 2859-1, single sampling, normal inspection; null where the whole lot was seen'),
  accepted: z.boolean()
})

export const visualDemandSchema = z.strictObject({
  whole: z.boolean(),
  level: z.string().nullable(),
  aqlPercent: z.number().nullable(),
  standing: z.enum(['met', 'not done', 'too lenient', 'not accepted'])
})

/** What a grade asks to be looked at, and how a lot stands to it. */
export const visualDemandData = ({ demand: { aql, level = 'II' }, standing }: StandingDemand) => ({
  whole: aql === undefined,
  level: aql === undefined ? null : level,
  aqlPercent: aql === undefined ? null : Number(aql),
  standing
})

/** The same for programs. */
export const visualData = (found: VisualVerdict) => ({
  tested: found.tested,
  unit: found.unit,
  lotSize: found.lotSize,
  inspected: found.inspected,
  nonconforming: found.nonconforming,
  takenOut: found.takenOut,
  defects: found.defects.map(({ kind, count }) => ({ kind, count })),
  plan: found.plan
    ? {
        level: found.plan.level,
        aqlPercent: Number(found.plan.aql),
        letter: found.plan.letter,
        takenFrom: found.plan.takenFrom,
        sampleSize: found.plan.sampleSize,
        acceptance: found.plan.acceptance,
        rejection: found.plan.rejection,
        acceptedAtAql: Number(exactText(found.plan.acceptedAtAql)),
        acceptedOnceInTen: Number(exactText(found.plan.acceptedOnceInTen))
      }
    : null,
  accepted: found.isAccepted
})
