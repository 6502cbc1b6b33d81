/** What becomes of each field of a record when the next one is begun from it. */

import type { Kind } from './kinds.ts'

/** Kinds of record one can start anew. */
export const draftKinds = {
  batch: 'batches',
  expansion: 'expansions',
  foil: 'foils',
  material: 'materials',
  instrument: 'instruments',
  grade: 'grades',
  shipment: 'shipments',
  certificate: 'certificates',
  complaint: 'complaints',
  waste: 'waste',
  incident: 'incidents',
  panel: 'panels',
  titrant: 'titrants',
  method: 'methods',
  mapping: 'mappings'
} as const satisfies Record<string, Kind>

export type DraftKind = keyof typeof draftKinds

/** Field that names a record of each kind. */
export const numberFields = {
  batch: 'lot',
  expansion: 'lot',
  foil: 'lot',
  material: 'lot',
  instrument: 'id',
  grade: 'id',
  shipment: 'number',
  certificate: 'number',
  complaint: 'number',
  waste: 'number',
  incident: 'number',
  panel: 'number',
  titrant: 'id',
  method: 'id',
  mapping: 'id'
} as const satisfies Record<DraftKind, string>

/** Kinds whose records may stand unfinished. */
export const mayBeDraft: ReadonlySet<DraftKind> = new Set(['batch', 'expansion', 'foil'])

/** Kinds that say how things are done: a new one says what changes, the rest stays as it stood. */
export const keptWhole: ReadonlySet<DraftKind> = new Set(['grade', 'method', 'mapping'])

/** Fields that describe how things are done, and so stay for the next lot. */
const kept = new Set([
  'grade',
  'vessel',
  'does',
  'adds',
  'as',
  'material',
  'method',
  'instruments',
  'furnace',
  'how',
  'plan',
  'increments',
  'what',
  'title',
  'kind',
  'supplier',
  'substance',
  'end-point-ph',
  'sieves',
  'direction',
  'definition',
  'heating-rate',
  'most-loss',
  'resolution',
  'against',
  'laboratory',
  'coverage-factor',
  'signatory'
])

/** Fields of a lot's later life, which a new one has not had. */
const dropped = new Set([
  'status',
  'as-found',
  'regraded',
  'counted',
  'notes',
  'deviation',
  'over-limit',
  'checks',
  'log',
  'reason',
  'reported',
  'retested',
  'accepted',
  'hazards',
  'safety-data-sheets',
  'transport',
  'sources',
  'earlier-calibrations'
])

type Fate = 'stays' | 'goes' | 'blank'

/** What holds for one kind alone. */
const ofKind: Partial<Record<DraftKind, Readonly<Record<string, Fate>>>> = {
  // A supplier's sheet has its revision and date looked up anew; its classes are those of the product.
  material: { classification: 'stays', reference: 'stays' },
  instrument: { distribution: 'stays' },
  // The next customer has wishes of their own; the workshop packs as it did.
  shipment: {
    limits: 'goes',
    'decision-rule': 'goes',
    'customer-part': 'goes',
    origin: 'stays',
    'tariff-code': 'stays',
    'emergency-telephone': 'stays',
    'keep-dry': 'stays',
    'store-below': 'stays'
  },
  // Waste mostly goes the way it went before.
  waste: { lost: 'goes', to: 'stays', under: 'stays', metal: 'stays' },
  incident: { lost: 'goes', what: 'blank', told: 'goes', closed: 'goes', kind: 'blank' },
  // The next panel is mostly of the same paint, on the same plates, over the same flame.
  panel: {
    code: 'stays',
    maker: 'stays',
    product: 'stays',
    solids: 'stays',
    stated: 'stays',
    within: 'stays',
    from: 'stays',
    until: 'stays',
    bare: 'stays',
    start: 'goes'
  },
  complaint: { reported: 'blank', told: 'goes', returned: 'goes', decision: 'goes' }
}

/** What becomes of a field, at whatever depth. */
export function fateOf(kind: DraftKind, field: string): Fate {
  const own = ofKind[kind]?.[field]
  if (own) return own
  if (keptWhole.has(kind) || kept.has(field)) return 'stays'
  return dropped.has(field) ? 'goes' : 'blank'
}
