/** The hazard block of a grade: its codes with the law's own texts. */

import { statementEdition, statementText } from '../hazards/statements.ts'
import type { Grade } from '../records/types.ts'
import type { HazardText } from './types.ts'

/** Said beside every hazard block. */
const AID =
  'An aid for handling, not a legal classification and no safety data sheet: the supplier’s sheet and local rules decide.'

/** The block, for spreading into a document; nothing where the grade declares none. */
export function hazardText(hazards: Grade['hazards']): { hazards?: HazardText } {
  if (!hazards) return {}
  return {
    hazards: {
      ...(hazards.signal === undefined ? {} : { signal: hazards.signal }),
      statements: hazards.statements.flatMap(code => {
        const statement = statementText(code, 'en', hazards.fill?.[code])
        return statement.ok ? [{ code, text: statement.text }] : []
      }),
      basis: `${hazards.basis.replace(/\.$/u, '')}. ${AID}`,
      edition: statementEdition
    }
  }
}
