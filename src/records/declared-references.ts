/** Who declares something of a grade: a role that the producer has. */

import { type Problem, problemAt, quoted } from '../problem.ts'
import type { Entry, Grade, Records } from './types.ts'
import { suggestion } from './validate.ts'

/** Declarations by roles nobody has; none are told where the producer's record has problems of its own. */
export function declaredReferences({ grades, producer }: Records): Problem[] {
  if (!producer) return []
  const roles = producer.record.roles.map(({ role }) => role)
  return [...grades.values()].flat().flatMap(entry => faultsIn(entry, roles))
}

function faultsIn(entry: Entry<Grade>, roles: readonly string[]): Problem[] {
  const { origin, substancesOfConcern, others = [] } = entry.record.declared ?? {}
  const named = [
    { path: ['origin'], by: origin?.by },
    { path: ['substancesOfConcern'], by: substancesOfConcern?.by },
    ...others.map(({ by }, index) => ({ path: ['others', index], by }))
  ]
  return named.flatMap(({ path, by }) =>
    by === undefined || roles.includes(by)
      ? []
      : [
          problemAt(
            entry.at(['declared', ...path, 'by']),
            'UNKNOWN_REFERENCE',
            `there is no role of the producer ${quoted(by)}`,
            suggestion(by, roles, 'each role recorded')
          )
        ]
  )
}
