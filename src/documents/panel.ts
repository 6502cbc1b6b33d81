/** The page of one coating panel; it exists in the workshop edition only. */

import { linesOf } from '../evaluate/panel-time.ts'
import type { EvaluatedPanel, Result } from '../evaluate/types.ts'
import type { Panel } from '../records/types.ts'
import { significant } from './figure.ts'
import { lotUrl } from './lot.ts'
import { logCharts } from './panel-charts.ts'
import type { PanelLink } from './panel-types.ts'
import { resultRow } from './result-row.ts'
import type { Fact, PanelDocument, Table } from './types.ts'
import { dateText, listText, unparted } from './words.ts'
import { workingOf } from './working.ts'

/** Said wherever a panel's figure stands. */
export const PANEL_WARNING =
  'Bench screening, not a fire rating. How long a coating protects is found by fire test laboratories accredited for it, on the element as built; local codes and competent people decide what is asked for.'

export const panelUrl = (number: string): string => `panels/${number}/`

export const panelKindTexts: Record<Panel['kind'], string> = {
  own: 'own coating',
  'bought-in': 'bought-in coating',
  blank: 'bare plate'
}

export interface PanelInputs {
  readonly panels: ReadonlyMap<string, EvaluatedPanel>
  /** Lots that have a page. */
  readonly hasPage: (lot: string) => boolean
}

/** How long the log ran, where it never came to the stated temperature. */
export function notReached({ entry: { record }, results }: EvaluatedPanel): string | undefined {
  const { until_C, log } = record
  if (!until_C || !log || results.backsideTime_min) return undefined
  const end = linesOf(record).at(-1)!
  return `not reached in ${significant(end.at_s / 60, 3).printed} min`
}

export function panelDocument(
  panel: EvaluatedPanel,
  { panels, hasPage }: PanelInputs
): PanelDocument {
  const { number, entry } = panel
  const { record } = entry
  const bare = (record.bare ?? []).flatMap(name => panels.get(name) ?? [])
  const log = logTable(record)
  const all: Result[] = Object.values(panel.results)
  const results = all.map(result =>
    resultRow({ quantity: result.quantity, result, scope: 'lot mean' }, 'simple')
  )
  return {
    number,
    url: panelUrl(number),
    dataUrl: `${panelUrl(number)}data.json`,
    title: `${record.code}: ${panelKindTexts[record.kind]}`,
    made: record.made,
    warning: PANEL_WARNING,
    notices: noticesOf(panel),
    facts: [...factsOf(panel), ...methodFacts(all)],
    links: linksOf(record, bare, hasPage),
    results,
    rows: results.map(({ method: _method, testedOn: _tested, ...row }) => row),
    workings: all.map(result => workingOf(result)),
    charts: logCharts([panel, ...bare], 'log-chart'),
    ...(log ? { log } : {})
  }
}

const linksOf = (
  { lot, number }: Panel,
  bare: readonly EvaluatedPanel[],
  hasPage: (lot: string) => boolean
): PanelLink[] => [
  { lot: number, url: panelUrl(number) },
  ...(lot !== undefined && hasPage(lot) ? [{ lot, url: lotUrl(lot) }] : []),
  ...bare.map(one => ({ lot: one.number, url: panelUrl(one.number) }))
]

function noticesOf(panel: EvaluatedPanel): string[] {
  const never = notReached(panel)
  const { until_C } = panel.entry.record
  return [
    ...(never ? [`${until_C!.written} at the back: ${never}.`] : []),
    ...panel.overdue.map(
      ({ instrument, due, used }) =>
        `${instrument} was read on ${dateText(used)}; its calibration was due on ${dateText(due)}.`
    )
  ]
}

function factsOf({ entry: { record }, instruments }: EvaluatedPanel): Fact[] {
  const { plate, bare } = record
  const optional = (label: string, text: string | undefined): Fact[] =>
    text === undefined ? [] : [{ label, text: unparted(text) }]
  return [
    { label: 'Made', text: dateText(record.made) },
    ...optional('Painted by', record.paintedBy),
    ...optional('Maker', record.maker),
    ...optional('Product', record.product),
    ...optional('Flake', record.lot),
    ...optional('Loading', loadingText(record)),
    {
      label: 'Plate',
      text: unparted(
        `${plate.what}; ${plate.length_mm.written} by ${plate.width_mm.written} by ${plate.thickness_mm.written}`
      )
    },
    ...optional('Heated on', record.tested && dateText(record.tested)),
    ...optional('Heated by', record.how),
    ...optional('Read by', record.by),
    ...optional('Until', record.until_C?.written),
    ...optional('Held against', bare && listText(bare)),
    ...optional('Instruments', instruments.length > 0 ? listText(instruments) : undefined),
    ...optional('Deviation', record.deviation),
    ...optional('Files', record.sources && listText(record.sources.map(({ file }) => file))),
    ...optional('Notes', record.notes)
  ]
}

/** One method serves all figures: it is told once. */
function methodFacts(results: readonly Result[]): Fact[] {
  const methods = new Set(results.flatMap(({ method }) => method ?? []))
  return [...methods].map(({ id, edition, title, conditions }) => ({
    label: 'Method',
    text: unparted(`${id}, edition ${edition}: ${title}; ${conditions}`)
  }))
}

/** As recorded, and of what. */
function loadingText({ loading }: Panel): string | undefined {
  if (!loading) return undefined
  const { wet_percent: wet, dry_percent: dry, flake_g, paint_g, used_g, potOf } = loading
  const told = wet
    ? `${wet.written} of the wet paint`
    : dry
      ? `${dry.written} of the dry film`
      : `${flake_g!.written} in ${paint_g!.written} of wet paint`
  if (potOf !== undefined) return `${told}, out of the pot of ${potOf}`
  return used_g ? `${told}; ${used_g.written} taken from the lot` : told
}

function logTable({ log }: Panel): Table | undefined {
  return (
    log && {
      caption: 'Log as recorded',
      columns: [
        { title: 'At', numeric: true },
        { title: 'Back of the plate', numeric: true }
      ],
      rows: log.map(({ at, temperature_C }) => [at, temperature_C.written])
    }
  )
}
