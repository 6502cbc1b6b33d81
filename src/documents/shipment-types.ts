/** What goes with goods that were sent, worded and rounded once. Private throughout. */

import type { PaperLanguage } from '../records/schemas/common.ts'
import type { LabelDocument } from './label-types.ts'
import type { CertificateDocument, Fact, ProducerText, Table } from './types.ts'

/** A heading with its sentences. */
export interface TextSection {
  readonly heading: string
  readonly texts: readonly string[]
}

/** A heading with a table, and what is to be said of it. */
export interface TableSection extends TextSection {
  readonly table: Table
}

/** What was packed into what: one a shipment. */
export interface PackingList {
  readonly title: string
  /** Of the shipment. */
  readonly number: string
  readonly dated: string
  readonly language: PaperLanguage
  readonly paper: 'A4' | 'Letter'
  readonly producer: ProducerText
  readonly facts: readonly Fact[]
  readonly containers: TableSection
  readonly sections: readonly TextSection[]
}

/** A certificate as its customer gets it: with order, quantity, and the name of who signed. */
export interface CustomerCopy {
  /** File name without its ending: 'CT-26-022-r1-SH-26-07'. */
  readonly name: string
  /** What it is a copy of, and for whom. */
  readonly of: {
    readonly number: string
    readonly revision: number
    readonly shipment: string
  }
  readonly document: CertificateDocument
  /** The customer's own limits and the verdicts on them. */
  readonly limits?: TableSection
  /** Of the certificate it is a copy of: what the public page shows. */
  readonly fingerprint: string
  /** The lot's public figures on the day of issue, as a data file. */
  readonly data: string
}

/** Everything that goes with one shipment. */
export interface ShipmentPack {
  readonly packingList: PackingList
  /** One a container that its grade names a package for, by the container's number. */
  readonly labels: ReadonlyMap<string, LabelDocument>
  readonly copies: readonly CustomerCopy[]
}
