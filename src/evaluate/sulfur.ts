/** Sulfur and sulfate of a flake lot, and how they go with what the graphite took up. */

import {
  acidEquivalent,
  acidEquivalentBasis,
  asBariumSulfate,
  explainedBasis,
  freeSulfateBasis,
  sulfurBasis,
  sulfurExplained
} from '../chemistry/barium-sulfate.ts'
import { type Estimate, exact } from '../metrology/estimate.ts'
import { meanOfReadings } from '../metrology/readings.ts'
import type { Reading } from '../metrology/written.ts'
import type { Batch } from '../records/types.ts'
import { type Bench, openSession, read, type Session } from './bench.ts'
import { blockResult, openBlock } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import { estimateOf, singleResult } from './result.ts'
import { openStep } from './steps.ts'
import type { Result, Results } from './types.ts'

const species = {
  sulfur_percent: { block: 'sulfur', key: 'sulfur', of: 'S', basis: sulfurBasis },
  freeSulfate_percent: {
    block: 'freeSulfate',
    key: 'free-sulfate',
    of: 'SO4',
    basis: freeSulfateBasis
  }
} as const

/** Total sulfur and free sulfate are weighed alike; what was dissolved is all that differs. */
export function sulfateResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  quantity: keyof typeof species
): Result | undefined {
  const { block, key, of, basis } = species[quantity]
  const test = tests?.[block]
  if (!test) return undefined
  const session = openBlock(bench, test, block, key, methodOf)
  const blank_g = meanBlank(session, key, test.blanks_g ?? [])
  return blockResult(
    bench,
    methodOf,
    test,
    {
      quantity,
      basis,
      block,
      columns: ['Mass', 'BaSO₄'],
      written: ({ mass_g, bariumSulfate_g }) => [mass_g.written, bariumSulfate_g.written],
      roles: { mass_g: 'mass', precipitate_g: 'mass', blank_g: 'mass' },
      notes: [
        test.blanks_g
          ? { is: 'blanks', written: test.blanks_g.map(({ written }) => written) }
          : { is: 'no blank weighed' }
      ]
    },
    (take, { mass_g, bariumSulfate_g }) =>
      asBariumSulfate(
        {
          mass_g: take(mass_g, 'g', 'mass', 'mass'),
          precipitate_g: take(bariumSulfate_g, 'g', 'mass', 'precipitate'),
          blank_g
        },
        of
      )
  )
}

/** Mean of the precipitates weighed without a sample, 0 g where there were none. */
function meanBlank(session: Session, key: string, readings: readonly Reading[]): Estimate {
  const { lot } = session.bench
  const blanks = readings.map((blank, index) =>
    read(session, blank, 'g', 'mass', `${key}, blank ${index + 1}`)
  )
  const of = { lot, blanks: true, quantity: key } as const
  return blanks.length === 0
    ? exact(0)
    : meanOfReadings(blanks, { name: `${lot} ${key} blanks`, of })
}

/** The lot's sulfur as sulfuric acid, whoever measured it. */
export function acidEquivalentResult(
  bench: Bench,
  _: Batch,
  methodOf: MethodOf,
  { sulfur_percent: sulfur }: Results
): Result | undefined {
  if (!sulfur) return undefined
  const { report } = sulfur
  const day = sulfur.tested ?? ''
  const session = openSession(bench, day, sulfur.field, methodOf('acid-equivalent'), undefined)
  const result = singleResult(
    session,
    { quantity: 'acidEquivalent_percent', basis: acidEquivalentBasis },
    () => acidEquivalent({ sulfur_percent: sulfur.estimate })
  )
  if (!result) return undefined
  const below =
    sulfur.below === undefined
      ? undefined
      : acidEquivalent({ sulfur_percent: exact(sulfur.below) }).value
  return {
    ...result,
    n: sulfur.n,
    ...(report ? { remark: { is: 'from report', by: report.by, number: report.number } } : {}),
    ...(below === undefined ? {} : { below })
  }
}

/** A check on both: sulfur cannot stand for more than was taken up. */
export function sulfurExplainedResult(
  bench: Bench,
  batch: Batch,
  sofar: Results
): Result | undefined {
  const acid = sofar.acidEquivalent_percent
  const lossCeiling_percent = estimateOf(sofar, 'lossCeiling_percent')
  if (!acid || acid.below !== undefined || !lossCeiling_percent) return undefined
  const moisture_percent = estimateOf(sofar, 'moisture_percent') ?? exact(0)
  return singleResult(
    openStep(bench, batch, 'product'),
    { quantity: 'sulfurExplained_percent', basis: explainedBasis },
    () =>
      sulfurExplained({
        acidEquivalent_percent: acid.estimate,
        moisture_percent,
        lossCeiling_percent
      })
  )
}
