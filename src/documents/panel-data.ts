/** A panel's figures for programs: the content of its data.json, in the workshop edition only. */

import * as z from 'zod'
import { quantitiesByKey, quantityData } from './lot-data.ts'
import type { PanelDocument } from './types.ts'

/** Raised when a field is added, changes its meaning or goes: the schema allows no others. */
export const PANEL_DATA_VERSION = 1

export const panelDataSchema = z.strictObject({
  format: z.literal('lotfolio-panel-data'),
  formatVersion: z.literal(PANEL_DATA_VERSION),
  edition: z.literal('workshop'),
  panel: z.string(),
  made: z.string(),
  warning: z.string().describe('what these figures are not'),
  quantities: z.record(z.string(), quantityData)
})

export type PanelData = z.output<typeof panelDataSchema>

export const panelDataOf = ({ number, made, warning, results }: PanelDocument): PanelData => ({
  format: 'lotfolio-panel-data',
  formatVersion: PANEL_DATA_VERSION,
  edition: 'workshop',
  panel: number,
  made,
  warning,
  quantities: quantitiesByKey(results)
})

/** The text of a data file. */
export const panelDataText = (panel: PanelDocument): string =>
  `${JSON.stringify(panelDataOf(panel), null, 2)}\n`
