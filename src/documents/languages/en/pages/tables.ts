/** Words that tables and lists of any page share, in English. */

import type { LotState } from '../../../../quality/status.ts'
import type { Answer } from '../../../list-types.ts'
import { paper } from '../paper.ts'

export const tables = {
  verdicts: paper.verdicts satisfies Record<Answer['word'], string>,
  states: {
    quarantine: 'quarantine',
    released: 'released',
    rejected: 'rejected',
    concession: 'concession',
    withdrawn: 'withdrawn',
    scrapped: 'scrapped',
    'in process': 'in process'
  } satisfies Record<LotState | 'in process', string>,
  /** Said of an empty cell. */
  nothing: 'none',
  lot: 'Lot',
  lots: 'Lots',
  made: 'Made',
  grade: 'Grade',
  product: 'Product',
  meets: 'Meets its grade?',
  status: 'Status',
  keyFigures: 'Key figures',
  counted: (n: number) => `${n === 1 ? 'lot' : 'lots'}`,
  revision: 'Revision',
  validFrom: 'Valid from',
  unit: 'Unit',
  property: 'Property',
  limit: 'Limit',
  method: 'Method',
  methodAndConditions: 'Method and conditions',
  edition: 'edition',
  deviation: 'Deviation:',
  noLimit: 'no limit',
  notStated: 'not stated'
}
