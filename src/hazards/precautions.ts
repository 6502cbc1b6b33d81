/**
 * Precautionary statements: the sets of each class, and the choice of at most six.
 *
 * Source: CLP Article 28; sets from the tables of label elements in Annex I (from memory, not checked
 * against the print). The order of choice is the project's own: what prevents and saves first.
 */

import { type ClassName, classEntry } from './classes.ts'

/** More need a reason: Article 28(3). */
export const MOST_STATEMENTS = 6

const corrosive = [
  'P260',
  'P264',
  'P280',
  'P301+P330+P331',
  'P303+P361+P353',
  'P363',
  'P304+P340',
  'P310',
  'P305+P351+P338',
  'P405',
  'P501'
]
const oxidising = ['P210', 'P220', 'P280', 'P370+P378', 'P501']
const oxidising1 = [
  'P210',
  'P220',
  'P280',
  'P283',
  'P306+P360',
  'P371+P380+P375',
  'P370+P378',
  'P420',
  'P501'
]
const inhaled = ['P261', 'P271', 'P304+P340']
const longTerm = ['P201', 'P202', 'P280', 'P308+P313', 'P405', 'P501']
const aquatic = ['P273', 'P391', 'P501']

/** By family; a class of its own where its set differs from the family's. */
const sets: Readonly<Record<string, readonly string[]>> = {
  'flammable gas': ['P210', 'P403'],
  'flammable liquid': [
    'P210',
    'P233',
    'P240',
    'P280',
    'P303+P361+P353',
    'P370+P378',
    'P403+P235',
    'P501'
  ],
  'oxidising gas': ['P220', 'P370+P376', 'P403'],
  'oxidising liquid': oxidising,
  'Ox. Liq. 1': oxidising1,
  'oxidising solid': oxidising,
  'Ox. Sol. 1': oxidising1,
  'gas under pressure': ['P410+P403'],
  metals: ['P234', 'P390', 'P406'],
  'acute oral': ['P264', 'P270', 'P301+P310', 'P330', 'P405', 'P501'],
  'Acute Tox. 5 oral': ['P301+P312'],
  'Acute Tox. 5 dermal': ['P302+P317'],
  'Acute Tox. 5 inhalation': ['P304+P317'],
  'Acute Tox. 4 oral': ['P264', 'P270', 'P301+P312', 'P330', 'P501'],
  'acute dermal': ['P280', 'P302+P352', 'P312', 'P361+P364', 'P405', 'P501'],
  'Acute Tox. 4 dermal': ['P280', 'P302+P352', 'P312', 'P362+P364', 'P501'],
  'acute inhalation': ['P260', 'P271', 'P284', 'P304+P340', 'P310', 'P403+P233', 'P405', 'P501'],
  'Acute Tox. 3 inhalation': [...inhaled, 'P311', 'P403+P233', 'P405', 'P501'],
  'Acute Tox. 4 inhalation': [...inhaled, 'P312'],
  skin: corrosive,
  'Skin Irrit. 2': ['P264', 'P280', 'P302+P352', 'P332+P313', 'P362+P364'],
  'Skin Irrit. 3': ['P332+P313'],
  eye: ['P280', 'P305+P351+P338', 'P310'],
  'Eye Irrit. 2': ['P264', 'P280', 'P305+P351+P338', 'P337+P313'],
  'respiratory sensitisation': ['P261', 'P284', 'P304+P340', 'P501'],
  'skin sensitisation': ['P261', 'P280', 'P302+P352', 'P333+P313', 'P362+P364', 'P501'],
  mutagenic: longTerm,
  carcinogenic: longTerm,
  reproductive: longTerm,
  'one exposure': ['P260', 'P264', 'P270', 'P308+P311', 'P405', 'P501'],
  airways: [...inhaled, 'P312', 'P403+P233', 'P405', 'P501'],
  narcotic: [...inhaled, 'P312', 'P403+P233', 'P405', 'P501'],
  'repeated exposure': ['P260', 'P264', 'P270', 'P314', 'P501'],
  'aquatic acute': aquatic,
  'aquatic chronic': aquatic,
  'Aquatic Acute 2': ['P273', 'P501'],
  'Aquatic Acute 3': ['P273', 'P501'],
  'Aquatic Chronic 3': ['P273', 'P501'],
  'Aquatic Chronic 4': ['P273', 'P501']
}

/** The whole set of a class. */
export const precautionsOf = (name: ClassName): readonly string[] =>
  sets[name] ?? sets[classEntry(name).family] ?? []

/** Most wanted first; codes not listed come after, as their classes bring them. */
const wanted = [
  'P280',
  'P305+P351+P338',
  'P303+P361+P353',
  'P310',
  'P260',
  'P304+P340',
  'P210',
  'P220',
  'P201',
  'P308+P313',
  'P273',
  'P391',
  'P301+P330+P331',
  'P301+P310',
  'P302+P352',
  'P261',
  'P301+P312',
  'P337+P313',
  'P332+P313',
  'P333+P313',
  'P234',
  'P390'
] as const

/** Statements that make others redundant: Article 28(1). */
const says: Readonly<Record<string, readonly string[]>> = {
  P310: ['P311', 'P312', 'P314', 'P301+P312', 'P332+P313', 'P337+P313', 'P333+P313'],
  'P303+P361+P353': ['P302+P352', 'P362+P364', 'P361+P364', 'P363'],
  P260: ['P261'],
  'P301+P330+P331': ['P330', 'P301+P310'],
  P210: [],
  P201: ['P202']
}

/** What the product needs beyond its classes. */
export interface Audience {
  /** Sold to the general public: one statement on disposal must stand on the label. */
  readonly public?: boolean
  /** Codes the producer chose instead, with the reason. */
  readonly chosen?: readonly string[]
}

/** Statements for the label, at most six unless the producer chose others. */
export function choosePrecautions(names: readonly ClassName[], audience: Audience = {}): string[] {
  if (audience.chosen) return [...audience.chosen]
  const all = [...new Set(names.flatMap(precautionsOf))]
  const ruledOut = new Set(all.flatMap(code => says[code] ?? []))
  const left = all.filter(code => !ruledOut.has(code))
  const ranked = [
    ...wanted.filter(code => left.includes(code)),
    ...left.filter(code => !wanted.some(other => other === code) && code !== 'P501')
  ]
  const disposal = audience.public && names.length > 0 ? ['P501'] : []
  return [...ranked.slice(0, MOST_STATEMENTS - disposal.length), ...disposal].sort(byNumber)
}

/** P101 before P260 before P301+P310. */
const byNumber = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
