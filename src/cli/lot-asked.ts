/** The lot a command was asked for: its chain of records, or which lot may have been meant. */

import type { SourceFile } from '../problem.ts'
import { lotNumbers, ownChain } from '../records/own-chain.ts'
import { nearestTo } from '../records/validate.ts'
import { Failure } from '../site/failure.ts'

/** @throws Failure where no readable record has that number */
export function chainAsked(files: readonly SourceFile[], lot: string): SourceFile[] {
  const chain = ownChain(files, lot)
  if (!chain)
    throw new Failure(`no record has the lot number ${lot}${meant(lot, lotNumbers(files))}`)
  return chain
}

/** '; did you mean EB-26-002?', where one of the names is alike enough. */
export function meant(asked: string, names: Iterable<string>): string {
  const name = nearestTo(asked, names)
  return name === undefined ? '' : `; did you mean ${name}?`
}
