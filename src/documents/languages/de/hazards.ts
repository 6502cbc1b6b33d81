/** A lot's hazards in German: what was found, on what it rests, what is open. */

import type { PictogramOmission } from '../../../hazards/label-elements.ts'
import type { HazardDecision } from '../../../judge/lot-hazards.ts'
import { de as label } from '../../label-words/de.ts'
import type { hazards as english } from '../en/hazards.ts'
import { date, list, number as num } from './numbers.ts'
import { className, conflict, forms, why } from './reasons.ts'
import { cited, source, wording } from './sources.ts'

const TRANSPORT =
  'Transport: Dieses Dokument bestimmt keine Einstufung; fragen Sie einen Gefahrgutbeauftragten.'

const topics: Readonly<Record<HazardDecision['about'], string>> = {
  oxidising: 'oxidierende Rückstände',
  metals: 'Korrosion gegenüber Metallen',
  flammable: 'Entzündbarkeit',
  'limit or ph': 'Konzentrationsgrenzwert und pH-Wert',
  filtrate: 'freie Säure und pH-Wert eines Filtrats',
  'missing data': 'fehlende Daten',
  declaration: 'die angegebene Einstufung',
  article: 'die Eigenschaft als Erzeugnis'
}

const omissions: Readonly<Record<PictogramOmission, string>> = {
  'GHS07 left out beside GHS06: Article 26(1)(b)':
    'GHS07 entfällt neben GHS06: Artikel 26 Absatz 1 Buchstabe b',
  'GHS07 left out for irritation beside GHS05: Article 26(1)(c)':
    'GHS07 entfällt für Reizung neben GHS05: Artikel 26 Absatz 1 Buchstabe c',
  'GHS07 left out beside GHS08 for sensitisation of the airways: Article 26(1)(d)':
    'GHS07 entfällt neben GHS08 für Sensibilisierung der Atemwege: Artikel 26 Absatz 1 Buchstabe d',
  'GHS07 kept for irritation, as GHS05 stands for metals alone: Article 26(1)(c) read by its purpose':
    'GHS07 bleibt für Reizung, da GHS05 allein für Metalle steht: Artikel 26 Absatz 1 Buchstabe c nach seinem Zweck gelesen'
}

const isPictogramOmission = (text: string): text is PictogramOmission =>
  Object.hasOwn(omissions, text)

const dusts = {
  dust: 'Kann in der Luft brennbare Staubkonzentrationen bilden.',
  pieces:
    'Entstehen beim Weiterverarbeiten, Handhaben oder auf andere Weise kleine Teilchen, können sie in der Luft brennbare Staubkonzentrationen bilden.'
}

export const hazards: typeof english = {
  className,
  pictograms: label.pictograms,
  cited,
  wording,
  editions: {
    clp: 'CLP (Europäische Union)',
    un: 'GHS der Vereinten Nationen, Revision 10',
    us: 'Hazard Communication Standard der OSHA (Vereinigte Staaten)'
  },
  aid: 'Eine Hilfe für die Handhabung, keine rechtsverbindliche Einstufung und kein Sicherheitsdatenblatt: Es entscheiden das Datenblatt des Lieferanten, Prüfdaten, örtliche Vorschriften und sachkundige Personen.',
  basis: (basis, chosen, aid) => `${basis}. ${chosen}${aid}`,
  chosen: (by, because) => `Sicherheitshinweise ausgewählt (${by}): ${because}. `,
  ofEdition: (names, isOpen) =>
    names.length > 0
      ? `${list(names.map(className))}${isOpen ? ', soweit bekannt' : ''}.`
      : isOpen
        ? 'Bisher keine Klasse; die Einstufung ist unvollständig.'
        : 'Nicht eingestuft.',
  why,
  conflict,
  omitted: text => {
    if (isPictogramOmission(text)) return `${omissions[text]}.`
    const [code, by] = text.match(/[A-Z]+\d+/gu) ?? []
    return `${code} entfällt, da in ${by} enthalten: Artikel 27.`
  },
  open: about => `Offen: Eine sachkundige Person muss entscheiden über: ${topics[about]}.`,
  unknown: (percent, form) =>
    `${num(String(percent))} % des Gemisches bestehen aus Bestandteilen unbekannter akuter Toxizität (${forms[form]}).`,
  noneComputed: clause =>
    `Es wird nichts berechnet: Folie ist ein Erzeugnis, außerhalb der Vorschriften für Stoffe und Gemische: ${source(clause.source)}.`,
  computed: (names, isOpen) =>
    names.length > 0
      ? `Für diese Charge berechnet: ${list(names.map(className))}${isOpen ? ', soweit bekannt' : ''}.`
      : isOpen
        ? 'Für diese Charge berechnet: bisher keine Klasse; die Einstufung ist unvollständig.'
        : 'Für diese Charge berechnet: nach CLP nicht eingestuft.',
  input: (title, value, U) => `${title}: ${value}${U === undefined ? '' : ` (U ${U})`}.`,
  freeAcid:
    'Freie Säure zählt als Schwefelsäure; zwischen den Schichten gebundene Säure ist nicht frei.',
  rest: (ec, clause) => `Der Rest zählt als Blähgraphit, EG ${ec}: ${cited(clause)}.`,
  decided: ({ on, by, because, about }, outcome) =>
    `Entschieden am ${date(on)} (${by}) über: ${topics[about]}${outcome === undefined ? '' : ` (${className(outcome)})`}: ${because}.`,
  phHolds: 'es gilt der pH-Wert',
  limitsHold: 'es gelten die Konzentrationsgrenzwerte',
  notHeld: names =>
    `Die eigene Einstufung des Herstellers enthält ${list(names.map(className))} nicht; die Kennzeichnung hier schon.`,
  beyond: names =>
    `Der Hersteller gibt über das Berechnete hinaus vorsorglich an: ${list(names.map(className))}.`,
  agreesOnNone: 'Der Hersteller gibt keine Klasse an, und keine ist berechnet.',
  agrees: 'Die eigene Einstufung des Herstellers enthält jede berechnete Klasse.',
  dust: ({ because, clause }, form) =>
    `Vereinigte Staaten, sinngemäß: ${label.signals.Warning}. ${dusts[form]} ${because === 'dust test positive' ? 'Staubprüfung positiv' : 'Durch keine Staubprüfung ausgeschlossen'}; ${cited(clause)}.`,
  article: ({ function: by, on, until }, statement, basis) =>
    `Erklärt am ${date(on)} (${by})${until === undefined ? '' : `, gültig bis ${date(until)}`}: ${statement}. Grundlage: ${basis}.`,
  noTransport: TRANSPORT,
  earlierTransport: until => `${TRANSPORT} Eine frühere Entscheidung galt bis ${date(until)}.`,
  transport: ({ function: by, on, until }, decision, basis) =>
    `Transport: ${decision}. Entschieden am ${date(on)} (${by}), gültig bis ${date(until)}, auf dieser Grundlage: ${basis}.`
}
