/** Words that tables and lists of any page share, in German. */

import type { tables as english } from '../../en/pages/tables.ts'
import { paper } from '../paper.ts'

export const tables: typeof english = {
  verdicts: paper.verdicts,
  states: {
    quarantine: 'in Quarantäne',
    released: 'freigegeben',
    rejected: 'zurückgewiesen',
    concession: 'Sonderfreigabe',
    withdrawn: 'zurückgerufen',
    scrapped: 'verschrottet',
    'in process': 'in Arbeit'
  },
  nothing: 'keine Angabe',
  lot: 'Charge',
  lots: 'Chargen',
  made: 'Hergestellt',
  grade: 'Sorte',
  product: 'Produkt',
  meets: 'Entspricht sie ihrer Sorte?',
  status: 'Status',
  keyFigures: 'Wichtigste Werte',
  counted: n => (n === 1 ? 'Charge' : 'Chargen'),
  revision: 'Revision',
  validFrom: 'Gültig ab',
  unit: 'Einheit',
  property: 'Eigenschaft',
  limit: 'Grenzwert',
  method: 'Verfahren',
  methodAndConditions: 'Verfahren und Bedingungen',
  edition: 'Ausgabe',
  deviation: 'Abweichung:',
  noLimit: 'kein Grenzwert',
  notStated: 'keine Angabe'
}
