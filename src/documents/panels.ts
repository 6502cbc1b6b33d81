/** Coating panels beside each other, by coating and one by one; in the workshop edition only. */

import { panelGroups, type PanelGroup } from '../evaluate/panel-groups.ts'
import type { EvaluatedPanel } from '../evaluate/types.ts'
import type { QuantityName } from '../quantities.ts'
import type { BoardPart, BoardRow } from './board-types.ts'
import { unitText } from './figure.ts'
import { meanText, scatterText, withU } from './panel-figures.ts'
import { notReached, PANEL_WARNING, panelKindTexts, panelUrl } from './panel.ts'
import { logCharts } from './panel-charts.ts'
import type { PanelsDocument } from './panel-types.ts'
import { listText } from './words.ts'

/** With fewer panels than this a coating's scatter is hardly known. */
const FEW = 3

/** Everything the workshop knows of its panels. */
export function panelsDocument(panels: readonly EvaluatedPanel[]): PanelsDocument {
  const groups = panelGroups(panels)
  const coated = panels.filter(({ entry }) => entry.record.kind !== 'blank')
  return {
    warning: PANEL_WARNING,
    reading: readingOf(groups),
    parts: [coatings(groups), fires(panels), films(coated), chars(coated)],
    charts: logCharts(panels, 'logs'),
    links: panels.map(({ number }) => ({ lot: number, url: panelUrl(number) }))
  }
}

function readingOf(groups: readonly PanelGroup[]): string[] {
  const few = groups.filter(({ panels }) => panels.length < FEW)
  return [
    'Films of unequal thickness compare by the time gained per millimetre, per film mass and per active mass; neither the plain times nor the expansion ratio do, for both depend on thickness.',
    'The loading stands for wet and dry apart: one gram of flake in ten of paint is 9.1 % of the wet paint, but 15 % of the film if 55 % of the paint is solids.',
    'Below a mean stands s, the scatter between panels of one coating, which is no part of U. Coatings whose means lie closer than that are not told apart by these panels.',
    ...(few.length > 0
      ? [
          `Fewer than ${FEW} panels: ${listText(few.map(({ code }) => code))}. Their scatter is hardly known.`
        ]
      : [])
  ]
}

const text = (title: string) => ({ title, numeric: false })
const short = (title: string) => ({ title, numeric: false, short: true })

/** A column of figures, by a short name and its unit. */
function column(quantity: Column) {
  const unit = unitText(quantity).printed
  return { title: `${shortTitles[quantity]}${unit ? `, ${unit}` : ''}`, numeric: true }
}

/** Seventeen figures side by side leave no room for their full titles, which stand on each panel's page. */
const shortTitles = {
  wetLoading_percent: 'Loading wet',
  dryLoading_percent: 'Loading dry',
  wetFilm_mm: 'Wet film',
  dryFilm_mm: 'Dry film',
  filmMass_g_per_m2: 'Film',
  activeMass_g_per_m2: 'Active',
  charHeight_mm: 'Char',
  charRatio: 'Char over film',
  charCeiling_mm: 'Ceiling',
  charEfficiency_percent: 'Efficiency',
  backsideTime_min: 'Time',
  timeGained_min: 'Gained',
  gainPerFilm_min_per_mm: 'Per film',
  gainPerFilmMass_sm2_per_g: 'Per film mass',
  gainPerActiveMass_sm2_per_g: 'Per active mass'
} as const satisfies Partial<Record<QuantityName, string>>

type Column = keyof typeof shortTitles

const inFilms: readonly Column[] = [
  'wetLoading_percent',
  'dryLoading_percent',
  'wetFilm_mm',
  'dryFilm_mm',
  'filmMass_g_per_m2',
  'activeMass_g_per_m2'
]

const inChars: readonly Column[] = [
  'dryFilm_mm',
  'charHeight_mm',
  'charRatio',
  'charCeiling_mm',
  'charEfficiency_percent'
]

const gains: readonly Column[] = [
  'timeGained_min',
  'gainPerFilm_min_per_mm',
  'gainPerFilmMass_sm2_per_g',
  'gainPerActiveMass_sm2_per_g'
]

const ofCoatings: readonly Column[] = ['dryFilm_mm', 'activeMass_g_per_m2', ...gains]

const kindOf = ({ entry }: EvaluatedPanel) => panelKindTexts[entry.record.kind]
const untilOf = ({ entry }: EvaluatedPanel) => entry.record.until_C?.written ?? ''

function coatings(groups: readonly PanelGroup[]): BoardPart {
  return {
    id: 'coatings',
    title: 'By coating',
    about:
      'Means over the panels of a coating with U, how surely these were measured, and below them s, their scatter. The fair figures stand last.',
    columns: [
      short('Coating'),
      text('What it is'),
      short('Flake'),
      { title: 'Panels', numeric: true },
      short('To'),
      ...ofCoatings.map(column)
    ],
    rows: groups.flatMap(group => [meanRow(group), ...scatterRows(group)]),
    otherwise: 'No panel is recorded.'
  }
}

const meanRow = (group: PanelGroup): BoardRow => ({
  name: group.code,
  cells: [
    kindOf(group.panels[0]!),
    listText([...new Set(group.panels.flatMap(({ entry }) => entry.record.lot ?? []))]),
    String(group.panels.length),
    untilOf(group.panels[0]!),
    ...ofCoatings.map(quantity => meanText(group.figure(quantity)))
  ]
})

/** The scatter below a mean, where any figure has one. */
function scatterRows(group: PanelGroup): BoardRow[] {
  const texts = ofCoatings.map(quantity => scatterText(group.figure(quantity)))
  if (texts.every(text => text === '')) return []
  return [{ name: `${group.code}, s`, cells: ['between its panels', '', '', '', ...texts] }]
}

const figureIn = ({ results }: EvaluatedPanel, quantity: QuantityName): string => {
  const result = results[quantity]
  return result ? withU(result.estimate) : ''
}

const figuresIn = (panel: EvaluatedPanel, columns: readonly Column[]): string[] =>
  columns.map(quantity => figureIn(panel, quantity))

const rowOf = (panel: EvaluatedPanel, cells: readonly string[]): BoardRow => ({
  name: panel.number,
  url: panelUrl(panel.number),
  cells: [panel.entry.record.code, ...cells]
})

const films = (panels: readonly EvaluatedPanel[]): BoardPart => ({
  id: 'films',
  title: 'Films',
  about: 'What lay on each panel, with U at about 95 %. Active is the flake alone.',
  columns: [short('Panel'), short('Coating'), short('Flake'), ...inFilms.map(column)],
  rows: panels.map(panel =>
    rowOf(panel, [panel.entry.record.lot ?? '', ...figuresIn(panel, inFilms)])
  ),
  otherwise: 'No coated panel is recorded.'
})

const chars = (panels: readonly EvaluatedPanel[]): BoardPart => ({
  id: 'chars',
  title: 'Chars',
  about: 'How far each film rose, beside what its flake could have filled: the ceiling.',
  columns: [short('Panel'), short('Coating'), ...inChars.map(column)],
  rows: panels.map(panel => rowOf(panel, figuresIn(panel, inChars))),
  otherwise: 'No coated panel is recorded.'
})

const fires = (panels: readonly EvaluatedPanel[]): BoardPart => ({
  id: 'fires',
  title: 'Over the burner',
  about: 'Time until the back of each panel was as hot as stated, and what its film added to that.',
  columns: [
    short('Panel'),
    short('Coating'),
    short('To'),
    column('backsideTime_min'),
    ...gains.map(column)
  ],
  rows: panels.map(panel =>
    rowOf(panel, [
      untilOf(panel),
      figureIn(panel, 'backsideTime_min') || (notReached(panel) ?? ''),
      ...figuresIn(panel, gains)
    ])
  ),
  otherwise: 'No panel is recorded.'
})
