/** Freezing what a customer's copy says, and reading it again: `CustomerCopy` once and for all. */

import * as z from 'zod'
import { canonicalText, type Json, readJson } from '../register/canonical.ts'
import { copyName } from '../register/copy-events.ts'
import { carriedData, certificateSchema, documentOf } from './frozen-schema.ts'
import type { CustomerCopy } from './shipment-types.ts'

const text = z.string()
const texts = z.array(text).readonly()

const tableSection = z.strictObject({
  heading: text,
  texts,
  table: z.strictObject({
    caption: text,
    columns: z.array(z.strictObject({ title: text, numeric: z.boolean() })).readonly(),
    rows: z.array(texts).readonly()
  })
})

const count = z.number().int().positive()

export const frozenCopySchema = z.strictObject({
  format: z.literal('lotfolio-copy'),
  formatVersion: z.literal(1),
  /** The certificate it is a copy of. */
  number: text,
  revision: count,
  shipment: text,
  /** Counts the copies for one shipment from 1. */
  copy: count,
  /** Known to whoever holds the copy, and to nobody else: its entry in the published list is sealed with it. */
  salt: text,
  /** Fingerprint of the certificate. */
  certificate: text,
  document: certificateSchema,
  limits: z.exactOptional(tableSection),
  /** The lot's public figures on the day of issue; carried, not read. */
  data: carriedData
})

export type FrozenCopy = z.output<typeof frozenCopySchema>

/** What ties a copy to its shipment and its place in the chain. */
export type CopyPlace = Pick<FrozenCopy, 'number' | 'revision' | 'shipment' | 'copy' | 'salt'>

/** What a copy says, as canonical JSON: the text that is hashed, sent and kept. */
export function freezeCopy(copy: CustomerCopy, place: CopyPlace): string {
  const { mark: _mark, ...document } = copy.document
  const frozen = frozenCopySchema.safeParse({
    format: 'lotfolio-copy',
    formatVersion: 1,
    ...place,
    certificate: copy.fingerprint,
    document,
    ...(copy.limits ? { limits: copy.limits } : {}),
    data: JSON.parse(copy.data) as Json
  })
  if (!frozen.success) throw new TypeError('freezeCopy requires the copy of an issued certificate')
  return canonicalText(frozen.data as Json)
}

/** What a frozen copy says; undefined where the text is none this version can read. */
export function readFrozenCopy(text: string): FrozenCopy | undefined {
  const json = readJson(text)
  const read = frozenCopySchema.safeParse(json.is === 'canonical' ? json.value : undefined)
  return read.success ? read.data : undefined
}

/** The copy as renderers take it. */
export const copyOfFrozen = (frozen: FrozenCopy): CustomerCopy => ({
  name: copyName(frozen),
  of: { number: frozen.number, revision: frozen.revision, shipment: frozen.shipment },
  document: documentOf(frozen.document),
  ...(frozen.limits ? { limits: frozen.limits } : {}),
  fingerprint: frozen.certificate,
  data: `${JSON.stringify(frozen.data, null, 2)}\n`
})
