/** Coating panels as the workshop sees them; the public edition has none. */

import type { BoardPart } from './board-types.ts'
import type { Table } from './text-types.ts'
import type { ChartText } from './watch-types.ts'

/** A page to go to, by what it is about; named as charts ask for it. */
export interface PanelLink {
  readonly lot: string
  readonly url: string
}

/** What a lot's page tells of panels painted with it. */
export interface ScreeningText {
  /** What such a figure is not. */
  readonly warning: string
  /** Method, days, and how to read the figures. */
  readonly about: readonly string[]
  readonly table: Table
  /** The panels themselves, in the workshop edition alone. */
  readonly links: readonly PanelLink[]
}

/** All panels beside each other. */
export interface PanelsDocument {
  readonly warning: string
  /** How to read the comparison. */
  readonly reading: readonly string[]
  /** Coatings, then panels: of the film and char, and in the fire. */
  readonly parts: readonly BoardPart[]
  readonly charts: readonly ChartText[]
  readonly links: readonly PanelLink[]
}
