/**
 * What a grade may open of the coating panels of a lot: the allow-list.
 *
 * Means of own coatings with this flake, and nothing that tells the paint, its maker or the panel: neither
 * loading, film, solids, codes and numbers, nor anything of coatings that were bought in.
 */

import { panelGroups, type PanelGroup } from '../evaluate/panel-groups.ts'
import type { EvaluatedPanel } from '../evaluate/types.ts'
import type { QuantityName } from '../quantities.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { unitText } from './figure.ts'
import { meanText, scatterText } from './panel-figures.ts'
import { panelUrl } from './panel.ts'
import type { PanelLink, ScreeningText } from './panel-types.ts'
import type { Table } from './text-types.ts'
import { unparted } from './words.ts'

/** The figures that speak of the flake, whatever it was painted on with. */
const open = [
  'activeMass_g_per_m2',
  'charCeiling_mm',
  'charEfficiency_percent',
  'timeGained_min',
  'gainPerActiveMass_sm2_per_g'
] as const satisfies readonly QuantityName[]

type Open = (typeof open)[number]

/** Whose panels, and what of them is told. */
export interface ScreeningInputs {
  readonly panels: ReadonlyMap<string, EvaluatedPanel>
  readonly lot: string
  readonly asOf: string
  /** The workshop finds the panels themselves from there. */
  readonly edition: 'public' | 'workshop'
  /** English where nothing is said. */
  readonly tongue?: Tongue
}

/** The panels of a lot, as far as an edition may tell; nothing where none was heated by that day. */
export function screeningText(inputs: ScreeningInputs): ScreeningText | undefined {
  const { lot, asOf, edition, tongue = english } = inputs
  const own = [...inputs.panels.values()].filter(
    ({ entry: { record } }) =>
      record.kind === 'own' && record.lot === lot && (record.tested ?? '9') <= asOf
  )
  const groups = panelGroups(own)
  if (groups.length === 0) return undefined
  return {
    warning: tongue.series.panels.warning,
    about: aboutOf(own, tongue),
    table: tableOf(groups, tongue),
    links: edition === 'workshop' ? own.map(linkOf) : []
  }
}

const linkOf = ({ number }: EvaluatedPanel): PanelLink => ({ lot: number, url: panelUrl(number) })

/** Method, days and temperature: a figure means nothing without them. */
function aboutOf(
  panels: readonly EvaluatedPanel[],
  { series: { panels: words }, own, numbers }: Tongue
): string[] {
  const methods = new Set(panels.flatMap(({ results }) => results.backsideTime_min?.method ?? []))
  const days = panels.flatMap(({ entry }) => entry.record.tested ?? []).sort()
  const until = new Set(panels.flatMap(({ entry }) => entry.record.until_C?.written ?? []))
  return [
    words.heated(days[0]!, days.at(-1)!, [...until].map(numbers.number)),
    ...[...methods].map(({ id, edition, title, conditions }) =>
      unparted(words.method(id, edition, own(title), own(conditions)))
    ),
    words.means
  ]
}

function tableOf(groups: readonly PanelGroup[], { series, numbers }: Tongue): Table {
  const { panels: words } = series
  const shown = (text: string): string => numbers.number(text) || words.none
  return {
    caption: words.caption,
    columns: [
      { title: words.column, numeric: false },
      ...open.map(quantity => ({ title: titleOf(quantity, words.titles), numeric: true }))
    ],
    rows: groups.flatMap(group => [
      [
        words.panels(group.panels.length),
        ...open.map(quantity => shown(meanText(group.figure(quantity))))
      ],
      [words.between, ...open.map(quantity => shown(scatterText(group.figure(quantity))))]
    ])
  }
}

const titleOf = (quantity: Open, titles: Readonly<Record<Open, string>>): string => {
  const unit = unitText(quantity).printed
  return `${titles[quantity]}${unit ? `, ${unit}` : ''}`
}
