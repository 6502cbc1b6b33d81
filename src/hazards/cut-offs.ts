/**
 * Classes that one ingredient alone brings into a mixture, from a concentration on: effects on genes,
 * cancer, reproduction, sensitisation, and on single organs.
 *
 * Source: CLP Annex I, Tables 3.4.5, 3.5.2, 3.6.2, 3.7.2, 3.8.3 and 3.9.4.
 */

import type { ClassName } from './classes.ts'
import { type Clause, clauses } from './clauses.ts'
import { type Finding, nameOf, type Point, reason, type Share, shown } from './mixture.ts'
import type { Saying } from './sayings.ts'
import { ownLimit } from './substances.ts'

interface CutOff {
  /** Class of the ingredient. */
  readonly of: ClassName
  /** Class of the mixture. */
  readonly gives: ClassName
  readonly from_percent: number
  readonly clause: Clause
}

const cut = (of: ClassName, from_percent: number, clause: Clause, gives = of): CutOff => ({
  of,
  gives,
  from_percent,
  clause
})

/** For each class of an ingredient, the most severe outcome first. */
const cutOffs: readonly CutOff[] = [
  cut('Resp. Sens. 1', 1, clauses.sensitising),
  cut('Skin Sens. 1', 1, clauses.sensitising),
  cut('Muta. 1B', 0.1, clauses.mutagenic),
  cut('Muta. 2', 1, clauses.mutagenic),
  cut('Carc. 1A', 0.1, clauses.carcinogenic),
  cut('Carc. 1B', 0.1, clauses.carcinogenic),
  cut('Carc. 2', 1, clauses.carcinogenic),
  cut('Repr. 1B', 0.3, clauses.reproductive),
  cut('Repr. 2', 3, clauses.reproductive),
  cut('STOT SE 1', 10, clauses.oneExposure),
  cut('STOT SE 1', 1, clauses.oneExposure, 'STOT SE 2'),
  cut('STOT SE 2', 10, clauses.oneExposure),
  cut('STOT RE 1', 10, clauses.repeatedExposure),
  cut('STOT RE 1', 1, clauses.repeatedExposure, 'STOT RE 2'),
  cut('STOT RE 2', 10, clauses.repeatedExposure)
]

/**
 * Of the two limits that the GHS leaves open, the United States took the lower, in %.
 *
 * Source: 29 CFR 1910.1200, Appendix A (from memory, not checked against the print); that STOT 1 makes
 * STOT 1 from 1 % on: OSHA's letter of interpretation of 4 March 2014.
 */
const lowerInUS: Partial<Record<ClassName, number>> = {
  'Resp. Sens. 1': 0.1,
  'Skin Sens. 1': 0.1,
  'Carc. 2': 0.1,
  'Repr. 1B': 0.1,
  'Repr. 2': 0.1,
  'STOT SE 1': 1,
  'STOT SE 2': 1,
  'STOT RE 1': 1,
  'STOT RE 2': 1
}

const inUS = cutOffs.map((cutOff): CutOff => {
  const lower = cutOff.of === cutOff.gives ? lowerInUS[cutOff.of] : undefined
  return lower === undefined
    ? cutOff
    : { ...cutOff, from_percent: lower, clause: clauses.lowerCutOffs }
})

/** Every class an ingredient alone brings in; the caller keeps the most severe of a family. */
export const classifyByCutOff = ({ shares, edition }: Point): Finding[] =>
  shares.flatMap(share =>
    (edition === 'us' ? inUS : cutOffs).flatMap(cutOff => findCutOff(share, cutOff))
  )

function findCutOff({ substance, percent }: Share, cutOff: CutOff): Finding[] {
  const line = substance.classes.find(({ class: name }) => name === cutOff.of)
  if (!line) return []
  const own = cutOff.of === cutOff.gives ? ownLimit(substance, [cutOff.gives]) : undefined
  const limit = own?.from_percent ?? cutOff.from_percent
  if (percent < limit) return []
  const said: Saying = {
    is: 'alone',
    name: nameOf(substance),
    class: cutOff.of,
    percent: shown(percent, limit),
    limit: shown(limit),
    own: own !== undefined
  }
  return [
    {
      class: cutOff.gives,
      ...(line.statement === undefined ? {} : { statement: line.statement }),
      ...(line.fill === undefined ? {} : { fill: line.fill }),
      reasons: [reason([{ substance, percent }], said, [cutOff.clause, own ?? line])]
    }
  ]
}
