/** The kinds of record: which folder holds them, their schema, and the field that names one. */

import type * as z from 'zod'
import type { SourceFile } from '../problem.ts'
import { complaintRecord } from './schemas/complaint.ts'
import { gradeRecord } from './schemas/grade.ts'
import { batchRecord, certificateRecord, expansionRecord, foilRecord } from './schemas/lots.ts'
import { mappingRecord } from './schemas/mapping.ts'
import { panelRecord } from './schemas/panel.ts'
import { shipmentRecord } from './schemas/shipment.ts'
import { incidentRecord, wasteRecord } from './schemas/upkeep.ts'
import { translationsRecord } from './schemas/translations.ts'
import {
  instrumentRecord,
  materialRecord,
  methodRecord,
  producerRecord,
  titrantRecord
} from './schemas/workshop.ts'

export const schemas = {
  producer: producerRecord,
  instruments: instrumentRecord,
  titrants: titrantRecord,
  methods: methodRecord,
  materials: materialRecord,
  grades: gradeRecord,
  batches: batchRecord,
  expansions: expansionRecord,
  foils: foilRecord,
  certificates: certificateRecord,
  shipments: shipmentRecord,
  complaints: complaintRecord,
  waste: wasteRecord,
  incidents: incidentRecord,
  panels: panelRecord,
  mappings: mappingRecord,
  translations: translationsRecord
} as const satisfies Record<string, z.ZodType>

export type Kind = keyof typeof schemas
/** Kinds whose records draw their numbers from one stock: a lot number means one thing in a workshop. */
export const lotKinds: readonly Kind[] = ['materials', 'batches', 'expansions', 'foils']

export type RecordOf<Name extends Kind> = z.output<(typeof schemas)[Name]>

/** What each kind is called in a sentence. */
export const kindNames: Record<Kind, string> = {
  producer: 'producer',
  instruments: 'instrument',
  titrants: 'titrant',
  methods: 'method',
  materials: 'material lot',
  grades: 'grade',
  batches: 'batch',
  expansions: 'furnace run',
  foils: 'foil lot',
  certificates: 'certificate',
  shipments: 'shipment',
  complaints: 'complaint',
  waste: 'waste',
  incidents: 'incident',
  panels: 'coating panel',
  mappings: 'mapping',
  translations: 'translation'
}

/** The kind of record a file holds: by its folder, or by its name for the producer's. */
export function kindOf({ path }: SourceFile): Kind | undefined {
  const steps = path.split('/')
  const name = steps.pop() ?? ''
  if (/^producer\.ya?ml$/u.test(name)) return 'producer'
  return steps
    .reverse()
    .find((step): step is Kind => step !== 'producer' && Object.hasOwn(schemas, step))
}
