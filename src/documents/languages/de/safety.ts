/** What a datasheet says of hazards beyond the label, in German. */

import type { safety as english } from '../en/safety.ts'
import { hazards } from './hazards.ts'
import { cautions } from './cautions.ts'
import { certainty } from './sources.ts'

export const safety: typeof english = {
  disclaimer:
    'Was hier zu Gefahren steht, entstand aus den Aufzeichnungen und der Zusammensetzung, die der Hersteller eingegeben hat, nach den Einstufungsregeln und dem Wortlaut der Hinweise, die daneben genannt sind. Es ist eine Hilfe, keine rechtsverbindliche Einstufung, kein Sicherheitsdatenblatt, keine Genehmigung, keine technische Auslegung und keine Beförderungserklärung. Einstufung, Kennzeichnung, Begrenzung der Exposition, Lüftung, Brand- und Explosionsschutz, Abfall und Beförderung müssen dem Recht und den Regelwerken folgen, die dort gelten, wo das Material hergestellt, befördert, verwendet und entsorgt wird, und von sachkundigen, wo vorgeschrieben zugelassenen Personen entschieden werden, etwa einer Fachkraft für Arbeitssicherheit, einer Gefahrgutbeauftragten, einer Arbeitshygienikerin, einem Ingenieur, einem Giftinformationszentrum oder der örtlichen Behörde. Als berechnet bezeichnete Werte stammen aus Rechnungen, nicht aus Prüfungen; wo Prüfdaten vorliegen, gehen diese vor. Für Vollständigkeit wird keine Gewähr übernommen.',
  exposureNote:
    'Ein nationaler Grenzwert kann niedriger sein und gilt dort, wo gearbeitet wird. Die Schwellenwerte der ACGIH sind hier nicht angegeben: Bitte die geltende Ausgabe heranziehen.',
  headings: {
    article: 'Erzeugnis',
    handling: 'Handhabung',
    dust: 'Staub',
    incompatible: 'Nie zusammenbringen mit',
    gases: 'Gase, die entstehen können',
    waste: 'Abfall',
    carriage: 'Beförderung'
  },
  exposure: {
    caption: 'Grenzwerte am Arbeitsplatz',
    columns: ['Stoff', 'Grenzwert', 'Bezug', 'Herausgeber und Jahr'],
    over: {
      '8 h': '8 h',
      '15 min': '15 min',
      ceiling: 'Spitzenwert',
      'any time': 'jederzeit'
    }
  },
  excluded: 'Eine Staubprüfung hat brennbaren Staub ausgeschlossen.',
  dust: said => hazards.dust(said, said.text.startsWith('If') ? 'pieces' : 'dust'),
  noClass:
    'In der Europäischen Union gibt es keine solche Klasse; die Explosionsgrenzen dieses Staubes sind hier nicht bekannt.',
  ofData: text => (Object.hasOwn(cautions, text) ? cautions[text] : undefined),
  certainty
}
