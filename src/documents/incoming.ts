/** Suppliers' figures and the workshop's own side by side. Private throughout. */

import { sideBySide, type SideBySide } from '../evaluate/incoming.ts'
import { quantities } from '../quantities.ts'
import type { Material, Records } from '../records/types.ts'
import type { BoardPart, BoardRow } from './board-types.ts'

const column = (title: string, numeric = false) => ({ title, numeric })

/** The part of the board on incoming lots; those that disagree are urgent. */
export const incomingPart = ({ materials }: Records): BoardPart => ({
  id: 'incoming',
  title: 'Incoming lots against their suppliers',
  about:
    'What a supplier states beside what was found here; they disagree where they lie further apart than the own uncertainty and the last digit stated.',
  columns: [
    column('Lot'),
    column('Supplier'),
    column('Quantity'),
    column('Stated', true),
    column('Found here', true),
    column('Standing')
  ],
  rows: [...materials.values()].flatMap(({ record }) =>
    sideBySide(record).map(one => rowOf(record, one))
  ),
  otherwise: 'No incoming lot was held against its supplier.'
})

function rowOf({ lot, supplier }: Material, { quantity, compared, differs }: SideBySide): BoardRow {
  const { stated, own, expandedUncertainty: U, on } = compared
  const found = own ? `${own.written}${U ? ` ± ${U.written}` : ''}` : ''
  const standing = differs === undefined ? 'not tested here' : differs ? 'disagree' : 'agree'
  return {
    name: lot,
    cells: [
      supplier,
      quantities[quantity].title,
      stated.written,
      found,
      on === undefined ? standing : `${standing}, ${on}`
    ],
    ...(differs ? { urgent: true } : {})
  }
}
