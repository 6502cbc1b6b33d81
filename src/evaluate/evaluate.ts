/** Every lot of a workshop to its figures, each lot after the lots it was made from. */

import { type Problem } from '../problem.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import { versionOn } from '../records/references.ts'
import type { Entry, Grade, Records } from '../records/types.ts'
import { type Bench, openBench, type Readers } from './bench.ts'
import { checkChain, checkFigures } from './chain.ts'
import { doubtFigures, findDoubts } from './doubts.ts'
import { checkCopies } from './copies.ts'
import { inMakingOrder } from './order.ts'
import { evaluatePanels } from './panels.ts'
import { batchModels, expansionModels, foilModels, type Surroundings } from './models.ts'
import { type Reports, checkReported, withReported } from './reported.ts'
import { yieldSoFar } from './process.ts'
import { checkPlausible } from './result.ts'
import type { EvaluatedContent, EvaluatedLot, Result, Results } from './types.ts'

export interface Evaluation<Kind extends Records> {
  /** Absent where lots are made from each other in a circle. */
  readonly evaluated?: EvaluatedContent<Kind>
  readonly problems: readonly Problem[]
}

/**
 * Evaluate every lot, and check the chain of lots as a whole.
 *
 * The figures of all lots at once would need several times the memory of their records. So what is
 * to be said of each is said while they are at hand; afterwards a lot works its figures out again
 * each time they are asked for, to the same values.
 *
 * @param see shown each lot after those it was made from: with its figures at hand, and as it is kept
 */
export function evaluateContent<Kind extends Records>(
  content: Kind,
  see: (lot: EvaluatedLot, kept: EvaluatedLot) => void = () => undefined
): Evaluation<Kind> {
  const order = inMakingOrder(content)
  if (!order.ok) return { problems: order.problems }
  const lots = new Map<string, EvaluatedLot>()
  const readers: Readers = new Map()
  let last: EvaluatedLot | undefined
  const found = { bench: [] as Problem[], figures: [] as Problem[], doubts: [] as Problem[] }
  for (const lot of order.value) {
    const work = () => {
      const bench = openBench(content, lot, entryOf(content, lot)!, readers)
      return { evaluated: evaluateLot(content, lot, bench, lots), problems: bench.problems }
    }
    const { evaluated, problems } = work()
    const kept = onDemand({ ...evaluated, ...yieldSoFar(evaluated, lots) }, () => {
      // A page asks for one lot's figures several times in a row.
      if (last?.lot !== lot) last = work().evaluated
      return last
    })
    lots.set(lot, kept)
    found.bench.push(...problems)
    found.figures.push(...checkFigures(evaluated))
    found.doubts.push(...doubtFigures(evaluated, { content, lots }))
    see(evaluated, kept)
  }
  const { panels, problems: ofPanels } = evaluatePanels(content, lots, readers)
  const problems = [
    ...found.bench,
    ...checkChain(content),
    ...found.figures,
    ...found.doubts,
    ...findDoubts(content),
    ...checkCopies(content),
    ...ofPanels
  ]
  return { evaluated: { content, lots, panels }, problems }
}

/** The same lot, which works out its figures whenever they are asked for and keeps none. */
const onDemand = (lot: EvaluatedLot, again: () => EvaluatedLot): EvaluatedLot =>
  Object.defineProperties(
    { ...lot },
    {
      product: { get: () => again().product, enumerable: true },
      process: { get: () => again().process, enumerable: true }
    }
  )

const entryOf = (content: Records, lot: string): Entry<unknown> | undefined =>
  content.batches.get(lot) ?? content.expansions.get(lot) ?? content.foils.get(lot)

function evaluateLot(
  content: Records,
  lot: string,
  bench: Bench,
  earlier: ReadonlyMap<string, EvaluatedLot>
): EvaluatedLot {
  const batch = content.batches.get(lot)
  const run = content.expansions.get(lot)
  const foil = content.foils.get(lot)
  const around = { methodOf: methodsOf(content, batch ?? foil), earlier }
  const head = { lot, overdue: bench.overdue }
  if (batch)
    return {
      kind: 'batch',
      entry: batch,
      ...head,
      ...runModels(bench, batchModels, batch.record, around, batch.record.reported)
    }
  if (run)
    return {
      kind: 'expansion',
      entry: run,
      ...head,
      ...runModels(bench, expansionModels, run.record, around)
    }
  return {
    kind: 'foil',
    entry: foil!,
    ...head,
    ...runModels(bench, foilModels, foil!.record, around, foil!.record.reported)
  }
}

/** The method a lot's grade names for a quantity, by the grade's revision when it was made. */
function methodsOf(
  content: Records,
  entry: Entry<{ grade: string; made: string }> | undefined
): Surroundings['methodOf'] {
  const grade =
    entry && versionOn(content.grades.get(entry.record.grade), entry.record.made)?.record
  const { limits = {}, measured = {} }: Partial<Pick<Grade, 'limits' | 'measured'>> = grade ?? {}
  return key =>
    (limits[key as keyof typeof limits] ?? measured[key as keyof typeof measured])?.method
}

type Table<Kind> = Partial<
  Record<string, (bench: Bench, record: Kind, around: Surroundings) => Result | undefined>
>

/** Run every model of a table, in its order. */
function runModels<Kind>(
  bench: Bench,
  models: Table<Kind>,
  record: Kind,
  around: Omit<Surroundings, 'sofar'>,
  reports: Reports = {}
): { product: Results; process: Results; instruments: string[] } {
  const sofar: Results = {}
  const sides: Record<'product' | 'process', Results> = { product: {}, process: {} }
  const surroundings = { ...around, sofar }
  checkReported(bench, Object.keys(models), reports)
  for (const [name, model] of Object.entries(models)) {
    const own = model?.(bench, record, surroundings)
    const result = withReported(bench, name as QuantityName, own, reports)
    if (!result) continue
    sofar[name as keyof Results] = result
    sides[quantities[name as keyof Results].side][name as keyof Results] = result
    checkPlausible(bench, result)
  }
  return { ...sides, instruments: [...bench.used].sort() }
}
