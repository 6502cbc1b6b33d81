/**
 * What a grade may open of the coating panels of a lot: the allow-list.
 *
 * Means of own coatings with this flake, and nothing that tells the paint, its maker or the panel: neither
 * loading, film, solids, codes and numbers, nor anything of coatings that were bought in.
 */

import { panelGroups, type PanelGroup } from '../evaluate/panel-groups.ts'
import type { EvaluatedPanel } from '../evaluate/types.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import { unitText } from './figure.ts'
import { meanText, scatterText } from './panel-figures.ts'
import { PANEL_WARNING, panelUrl } from './panel.ts'
import type { PanelLink, ScreeningText } from './panel-types.ts'
import type { Table } from './text-types.ts'
import { counted, dateText, listText, unparted } from './words.ts'

/** The figures that speak of the flake, whatever it was painted on with. */
const open = [
  'activeMass_g_per_m2',
  'charCeiling_mm',
  'charEfficiency_percent',
  'timeGained_min',
  'gainPerActiveMass_sm2_per_g'
] as const satisfies readonly QuantityName[]

/** Whose panels, and what of them is told. */
export interface ScreeningInputs {
  readonly panels: ReadonlyMap<string, EvaluatedPanel>
  readonly lot: string
  readonly asOf: string
  /** The workshop finds the panels themselves from there. */
  readonly edition: 'public' | 'workshop'
}

/** The panels of a lot, as far as an edition may tell; nothing where none was heated by that day. */
export function screeningText(inputs: ScreeningInputs): ScreeningText | undefined {
  const { lot, asOf, edition } = inputs
  const own = [...inputs.panels.values()].filter(
    ({ entry: { record } }) =>
      record.kind === 'own' && record.lot === lot && (record.tested ?? '9') <= asOf
  )
  const groups = panelGroups(own)
  if (groups.length === 0) return undefined
  return {
    warning: PANEL_WARNING,
    about: aboutOf(own),
    table: tableOf(groups),
    links: edition === 'workshop' ? own.map(linkOf) : []
  }
}

const linkOf = ({ number }: EvaluatedPanel): PanelLink => ({ lot: number, url: panelUrl(number) })

/** Method, days and temperature: a figure means nothing without them. */
function aboutOf(panels: readonly EvaluatedPanel[]): string[] {
  const methods = new Set(panels.flatMap(({ results }) => results.backsideTime_min?.method ?? []))
  const days = panels.flatMap(({ entry }) => entry.record.tested ?? []).sort()
  const until = new Set(panels.flatMap(({ entry }) => entry.record.until_C?.written ?? []))
  return [
    `Steel panels painted with this flake and heated from ${dateText(days[0]!)} to ${dateText(days.at(-1)!)}, until their backs were at ${listText([...until])}.`,
    ...[...methods].map(({ id, edition, title, conditions }) =>
      unparted(`Method ${id}, edition ${edition}: ${title}; ${conditions}.`)
    ),
    'Means over the panels of one coating with U at about 95 %, and the scatter s between them. Active is the flake alone; the ceiling is the height it could fill by its own expansion volume.'
  ]
}

function tableOf(groups: readonly PanelGroup[]): Table {
  return {
    caption: 'Coatings with this flake',
    columns: [
      { title: 'Panels', numeric: false },
      ...open.map(quantity => ({ title: titleOf(quantity), numeric: true }))
    ],
    rows: groups.flatMap(group => [
      [
        counted(group.panels.length, 'panel'),
        ...open.map(quantity => shown(meanText(group.figure(quantity))))
      ],
      ['s between them', ...open.map(quantity => shown(scatterText(group.figure(quantity))))]
    ])
  }
}

const shown = (text: string): string => text || 'none'

const titleOf = (quantity: QuantityName): string => {
  const unit = unitText(quantity).printed
  return `${quantities[quantity].title}${unit ? `, ${unit}` : ''}`
}
