/** What the scripts of pages say, in German. */

import type { ScriptWords } from '../../../archive/words.ts'
import type { CheckPageWords, CheckWords } from '../../../register/words.ts'
import { tables } from './pages/tables.ts'

export const scripts: ScriptWords = {
  day: '{d}.{m}.{y}',
  sign: ',',
  lot: tables.lot,
  made: tables.made,
  grade: tables.grade,
  product: tables.product,
  meets: tables.meets,
  status: tables.status,
  keyFigures: tables.keyFigures,
  property: tables.property,
  nothing: tables.nothing,
  notMeasured: 'nicht gemessen',
  found: 'Gefundene Chargen',
  noneFound:
    'Keine Charge gefunden. Einen Filter weglassen oder einen kürzeren Teil der Nummer eingeben.',
  all: 'Alle {n} Chargen',
  some: '{n} von {all} Chargen',
  first: '{count}, als erste {lot}',
  more: '{n} weitere zeigen',
  compare: '{n} Chargen vergleichen',
  compareLot: '{lot} vergleichen',
  another: 'Zum Vergleichen eine weitere Charge auswählen',
  chooseNone: 'Keine',
  listFailed:
    'Die Liste der Chargen ließ sich nicht laden: Seite neu laden oder die einfachen Listen unten benutzen.',
  lowestFirst: '{title}, kleinste zuerst',
  highestFirst: '{title}, größte zuerst',
  atLeast: 'mindestens',
  atMost: 'höchstens',
  to: 'bis',
  field: '{title}, {end}',
  fieldIn: '{title}, {end}, in {unit}',
  addTwo: 'Mindestens zwei Chargen hinzufügen.',
  addAnother: 'Eine weitere Charge hinzufügen.',
  beside: 'Chargen nebeneinander',
  differ:
    '{n} Chargen nebeneinander. Werte, die sich von denen der Charge {lot} um mehr unterscheiden, als sie unsicher sind: {larger}.',
  takeAway: '{lot} wegnehmen',
  writeFirst: 'Zuerst die Nummer einer Charge eingeben.',
  notFound: 'Keine Charge gefunden für „{text}“.',
  isThere: '{lot} steht schon da.',
  most: 'Höchstens {n} Chargen stehen nebeneinander: Zuerst eine wegnehmen.',
  fetching: 'Die Liste der Chargen wird geladen …',
  figuresFailed: 'Die Werte ließen sich nicht laden: Seite neu laden.',
  limit: 'Grenzwert {limit}',
  comparedWith: 'Vergleichscharge',
  larger: 'mehr, als sie unsicher sind',
  'not larger': 'nicht mehr, als sie unsicher sind',
  unknown: 'nicht zu sagen',
  below: 'von einem der Werte ist nur bekannt, dass er unter einer Schranke liegt',
  unstated: 'für einen der Werte ist keine Messunsicherheit angegeben',
  methods: 'nach verschiedenen Verfahren gemessen',
  apart: 'als unabhängig angenommen, da ein Rechengang nicht veröffentlicht ist',
  nothingAsked: 'noch ist nichts gefragt',
  lotsThatAnswer: 'Chargen, die es erfüllen:',
  andMore: 'und {n} weitere',
  lotsFailed: 'Die Chargen ließen sich nicht laden: Seite neu laden oder die Tabellen lesen.',
  answers: {
    certified: 'durch garantierten Grenzwert erfüllt',
    typical: 'durch typische Werte erfüllt',
    'some lots': 'nur von einigen freigegebenen Chargen erfüllt',
    'not known': 'nicht bekannt',
    'not met': 'nicht erfüllt'
  },
  reasons: {
    certified: 'jede Charge wird nach einem Grenzwert bewertet, der darin liegt',
    typical: 'kein Grenzwert hält es ein, aber die typischen Werte',
    'some lots': 'weder Grenzwert noch typische Werte halten es ein, aber Werte einiger Chargen',
    'not known': 'keine freigegebene Charge hat ein Ergebnis mit Messunsicherheit',
    'not met':
      'weder der Grenzwert noch das Ergebnis einer freigegebenen Charge mit seiner Messunsicherheit liegt darin'
  },
  noSingle: 'keine einzelne freigegebene Charge erfüllt alles',
  noSingleKnown: 'von keiner einzelnen freigegebenen Charge ist bekannt, dass sie alles erfüllt',
  verdicts: tables.verdicts,
  states: tables.states
}

const REWRITTEN =
  'Das Register wurde umgeschrieben, seit der Nachweis entnommen wurde, oder der Nachweis gehört zu einem anderen Register.'

export const checks: CheckWords = {
  match:
    'Das Dokument ist {number} Revision {revision} zur Charge {lot}: {source} nennt seinen Fingerabdruck {print} in Zeile {line}, eingetragen am {date}.',
  superseded: 'Es wurde am {date} durch Revision {revision} ersetzt: „{reason}“',
  newest: 'Die neueste ist Revision {revision} vom {date}.',
  newestWithdrawn: 'Revision {revision} wurde am {date} zurückgezogen: „{reason}“',
  withdrawn: 'Es wurde am {date} zurückgezogen: „{reason}“',
  voided: 'Das Dokument wurde als {number} Revision {revision} am {date} aufgegeben: „{reason}“',
  altered:
    'Das Dokument nennt sich {number} Revision {revision}, aber sein Fingerabdruck {print} ist nicht {issued}, den {source} in Zeile {line} nennt: Mindestens ein Byte wurde verändert.',
  stranger:
    'Den Fingerabdruck {print} dieses Dokuments nennt {source} in keiner Zeile, und auch keine Nummer und Revision, die es angibt.',
  notJson: 'Das Dokument ist kein JSON: Seine Datei wurde beschädigt oder ist eine andere.',
  notCanonical:
    'Das Dokument ist nicht in kanonischem JSON geschrieben, wie es jedes ausgestellte ist.',
  sameContent:
    'Was es aussagt, ist unverändert {number} Revision {revision}: Nur Leerzeichen, Reihenfolge oder Schreibung seines Textes sind anders.',
  unsigned: 'Kein Schlüssel des Registers hat signiert, was es aussagt.',
  signed: 'Signiert am {date} mit Schlüssel {key}, eingetragen am {added}.',
  signedRetired:
    'Signiert am {date} mit Schlüssel {key}, eingetragen am {added}, außer Gebrauch seit {retired}: „{reason}“',
  signatureGood: 'Die Signatur stimmt.',
  signatureBad: 'Die Signatur ist nicht die dieses Schlüssels über dieses Dokument.',
  signatureUnchecked: 'Die Signatur wurde hier nicht geprüft: Dieser Browser kennt Ed25519 nicht.',
  pdfSame: 'Die PDF-Datei ist Byte für Byte die am {date} gezeichnete.',
  pdfSigned:
    'Die Datei selbst trägt eine Signatur mit einem Zertifikat nach X.509: Ob diesem zu trauen ist, beurteilt das PDF-Programm; hier wurde es nicht angesehen.',
  pdfOther:
    'Die Daten in der PDF-Datei sind echt, aber die PDF-Datei selbst ist nicht die am {date} gezeichnete: Ihr Fingerabdruck ist {print}, nicht {drawn}. Ihre Seiten können anderes sagen als ihre Daten.',
  pdfByProof:
    'Die Daten in der PDF-Datei sind echt. Ihre Seiten ließen sich nicht vergleichen: Ein Nachweis in einer PDF-Datei kann diese selbst nicht nennen, und die Seiten können anderes sagen. Bitte mit dem Register vergleichen.',
  pdfUnnamed:
    'Die Daten in der PDF-Datei sind echt, aber das Register nennt keine PDF-Datei dazu: Ihre Seiten können anderes sagen.',
  copyNoList:
    'Dies ist die Kundenausfertigung eines Zertifikats. Sie lässt sich nur mit dem Register und der Liste der Ausfertigungen des Herstellers vergleichen; eines von beiden fehlt oder ist beschädigt.',
  copyOtherList:
    'Dies ist die Kundenausfertigung eines Zertifikats. Die Liste der Ausfertigungen wurde nicht mit diesem Register veröffentlicht oder wurde verändert: Sie nennt eine andere Wurzel. Beide gleichzeitig von der Website des Herstellers nehmen.',
  copyPdfChanged:
    'Die PDF-Datei ist nicht die versandte: An ihren Seiten oder Dateien wurde mindestens ein Byte verändert.',
  copyMatch:
    'Das Dokument ist die Kundenausfertigung von {number} Revision {revision} zur Lieferung {shipment}: Die Liste des Herstellers hat einen Eintrag zu ihrem Fingerabdruck {print}.',
  copyReplaced: 'Eine andere Ausfertigung ist an ihre Stelle getreten.',
  copyAltered:
    'Das Dokument nennt sich Kundenausfertigung von {number} Revision {revision} zur Lieferung {shipment}, und eine solche wurde versandt, aber die Liste des Herstellers hat keinen Eintrag zu ihrem Fingerabdruck {print}: Mindestens ein Byte wurde verändert.',
  copyUnknown:
    'Das Dokument nennt sich Kundenausfertigung von {number} Revision {revision} zur Lieferung {shipment}, aber die Liste des Herstellers hat keinen Eintrag dazu: Sie wurde nicht versandt oder wurde verändert.',
  copyOfNone: 'Das Register nennt kein Zertifikat, dessen Ausfertigung das Dokument sein könnte.',
  copyOf:
    'Das Zertifikat ist {number} Revision {revision} zur Charge {lot}, eingetragen am {date} mit dem Fingerabdruck {print}.',
  noHashing:
    'Es wurde nichts verglichen: Dieser Browser berechnet Fingerabdrücke nur auf Seiten, die über https kommen.',
  registerDamaged: 'Das Register ist beschädigt und belegt nichts.',
  nothingSound: 'Es gab nichts Unversehrtes, womit das Dokument zu vergleichen wäre.',
  onlyProof:
    'Der Nachweis reicht bis {date}: Was später eingetragen wurde, eine Berichtigung oder ein Rückzug, ist hier nicht bekannt. Bitte mit dem Register des Herstellers vergleichen.',
  proofDamaged: 'Der Nachweis wurde verändert oder ist keiner.',
  proofOther: 'Der Nachweis gehört zu {number} Revision {revision} und nicht zu diesem Dokument.',
  lineChanged: `Zeile {line} des Registers ist nicht die im Nachweis: ${REWRITTEN}`,
  olderCopy:
    'Der Nachweis wurde einem Register von {n} Zeilen entnommen, dieses hat {has}: Es ist eine ältere Kopie, oder Zeilen an seinem Ende fehlen.',
  stillBegins:
    'Das Register beginnt noch immer mit den {n} Zeilen, denen der Nachweis entnommen wurde.',
  beginsOtherwise: `Der Anfang des Registers, {n} Zeilen, ist nicht der des Nachweises: ${REWRITTEN}`,
  empty: 'Die Datei ist leer.',
  neither: 'Die Datei ist weder PDF noch JSON.',
  noData:
    'Die PDF-Datei enthält keine Zertifikatsdaten: eine Vorschau, eine gedruckte oder eingescannte Kopie oder eine Datei von anderswo.'
}

export const checkPage: CheckPageWords = {
  answers: {
    genuine: 'Echt',
    superseded: 'Ersetzt',
    withdrawn: 'Zurückgezogen',
    altered: 'Verändert',
    unknown: 'Unbekannt'
  },
  comparing: 'Wird verglichen …',
  failed: 'Das Register dieser Website ließ sich nicht laden: Seite neu laden.',
  terms: { 'the register': 'das Register', 'the proof': 'der Nachweis' }
}
