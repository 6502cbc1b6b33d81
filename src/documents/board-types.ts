/** The state of the workshop at a glance; the public edition has none. */

export interface BoardRow {
  /** What the row is about: a lot, an instrument, a certificate, a substance. */
  readonly name: string
  /** Its page, where it has one. */
  readonly url?: string
  readonly cells: readonly string[]
  /** Something has to be done about it. */
  readonly urgent?: boolean
}

export interface BoardColumn {
  readonly title: string
  readonly numeric: boolean
  /** Days, lots, amounts: too short to be parted at a hyphen or a space. */
  readonly short?: boolean
}

export interface BoardPart {
  readonly id: string
  readonly title: string
  /** What it lists and what to do about it, in a sentence. */
  readonly about: string
  readonly columns: readonly BoardColumn[]
  readonly rows: readonly BoardRow[]
  /** Said where there are no rows. */
  readonly otherwise: string
}

export interface BoardDocument {
  readonly parts: readonly BoardPart[]
}
