/** The typed records, and the whole content of a workshop. */

import type * as z from 'zod'
import type { FieldPath, Place, SourceFile } from '../problem.ts'
import type { complaintRecord } from './schemas/complaint.ts'
import type { gradeRecord } from './schemas/grade.ts'
import type { mappingRecord } from './schemas/mapping.ts'
import type { batchRecord, certificateRecord, expansionRecord, foilRecord } from './schemas/lots.ts'
import type { shipmentRecord } from './schemas/shipment.ts'
import type { panelRecord } from './schemas/panel.ts'
import type { translationsRecord } from './schemas/translations.ts'
import type { incidentRecord, wasteRecord } from './schemas/upkeep.ts'
import type {
  instrumentRecord,
  materialRecord,
  methodRecord,
  producerRecord,
  titrantRecord
} from './schemas/workshop.ts'

export type Producer = z.output<typeof producerRecord>
export type Instrument = z.output<typeof instrumentRecord>
export type Calibration = NonNullable<Instrument['calibration']>
export type Titrant = z.output<typeof titrantRecord>
export type Method = z.output<typeof methodRecord>
export type Material = z.output<typeof materialRecord>
export type Grade = z.output<typeof gradeRecord>
export type Container = NonNullable<Grade['containers']>[number]
export type Batch = z.output<typeof batchRecord>
export type Expansion = z.output<typeof expansionRecord>
export type Foil = z.output<typeof foilRecord>
export type Shipment = z.output<typeof shipmentRecord>
export type Complaint = z.output<typeof complaintRecord>
export type Waste = z.output<typeof wasteRecord>
export type Incident = z.output<typeof incidentRecord>
export type Panel = z.output<typeof panelRecord>
export type Mapping = z.output<typeof mappingRecord>
export type Translations = z.output<typeof translationsRecord>
export type CertificateOrder = z.output<typeof certificateRecord>

/** A record and where its fields stand. */
export interface Entry<Kind> {
  readonly record: Kind
  readonly file: SourceFile
  at(field: FieldPath): Place
  keyAt(field: FieldPath): Place
}

/** Records that figures rest on, valid. Versioned ones are listed oldest first. */
export interface Records {
  /** Not there where it could not be read, beside other broken records. */
  readonly producer?: Entry<Producer> | undefined
  readonly instruments: ReadonlyMap<string, Entry<Instrument>>
  readonly titrants: ReadonlyMap<string, Entry<Titrant>>
  readonly methods: ReadonlyMap<string, readonly Entry<Method>[]>
  readonly materials: ReadonlyMap<string, Entry<Material>>
  readonly grades: ReadonlyMap<string, readonly Entry<Grade>[]>
  readonly batches: ReadonlyMap<string, Entry<Batch>>
  readonly expansions: ReadonlyMap<string, Entry<Expansion>>
  readonly foils: ReadonlyMap<string, Entry<Foil>>
  readonly certificates: readonly Entry<CertificateOrder>[]
  readonly shipments: ReadonlyMap<string, Entry<Shipment>>
  readonly complaints: ReadonlyMap<string, Entry<Complaint>>
  readonly waste: ReadonlyMap<string, Entry<Waste>>
  readonly incidents: ReadonlyMap<string, Entry<Incident>>
  readonly panels: ReadonlyMap<string, Entry<Panel>>
  /** By language. */
  readonly translations: ReadonlyMap<string, Entry<Translations>>
  readonly drafts: readonly Draft[]
}

/** Everything in a content folder, valid. */
export interface Content extends Records {
  readonly producer: Entry<Producer>
}

/** A record not finished: listed in the workshop, never judged, published or in anyone's way. */
export interface Draft {
  readonly lot: string
  readonly path: string
  /** What still keeps it from being a record, as sentences. */
  readonly missing: readonly string[]
}
