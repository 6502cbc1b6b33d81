/** What a lot's page says of itself to search engines, in German. */

import type { described as english } from '../en/described.ts'

export const described: typeof english = {
  figures: 'Werte für Programme',
  data: certificate => `${certificate}, Inhalt`,
  product: (grade, lot) => `${grade}, Charge ${lot}`,
  grade: (title, revision) => `${title}, Revision ${revision}`,
  typical: 'typisch für die Sorte, an dieser Charge nicht gemessen',
  method: (id, edition, title) => `${id}, Ausgabe ${edition}: ${title}`,
  uncertainty: k => `erweiterte Messunsicherheit U${k === undefined ? '' : `, k = ${k}`}`,
  limit: of => `Grenzwert für: ${of}`
}
