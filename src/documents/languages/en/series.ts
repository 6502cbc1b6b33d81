/** Figures of many lots, in English: what is typical, how they run, where one stands among others. */

import { counted, date, list } from './numbers.ts'

type Shape = 'normal' | 'distribution-free'

export const series = {
  /** First and last day; one day where both are the same. */
  period: (first: string, last: string) =>
    first === last ? date(first) : `${date(first)} to ${date(last)}`,
  lots: (n: number) => counted(n, 'lot'),
  typical: (said: {
    readonly coverage: string
    readonly confidence: string
    readonly ends: string
    readonly n: number
    readonly period: string
    readonly kind: Shape
  }) =>
    `At least ${said.coverage} % of lots lie from ${said.ends}, ` +
    `with ${said.confidence} % confidence: from ${counted(said.n, 'lot')} made ${said.period}, ${shapes[said.kind]}.`,
  /** Of the public page. */
  population:
    'Lots of this grade that were let go, and no others. Where the grade sets limits, they decided which lots these are: no interval here then takes their figures as normal.',
  reading: [
    'Intervals are of figures as measured: they hold what measuring adds.'
  ] as readonly string[],
  made: (n: number, period: string) => `${counted(n, 'lot')} made ${period}`,
  older: (n: number) => `${counted(n, 'older lot')} no longer looked at`,
  external: (n: number) =>
    `${counted(n, 'figure')} reported without readings left out of the charts`,
  below: (n: number) => `${counted(n, 'figure')} below the reporting limit`,
  withoutReadings: 'reported without readings',
  minimum: (value: string) => `minimum ${value}`,
  maximum: (value: string) => `maximum ${value}`,
  inOrder: (n: number, least: string, greatest: string) =>
    `${counted(n, 'lot')} in order of date, each with its expanded uncertainty; least ${least}, greatest ${greatest}.`,
  lines: (names: readonly string[]) => `Lines: ${names.join(', ')}.`,
  tooFar: (names: readonly string[]) =>
    `Too far off to be drawn: the grade's ${names.join(' and ')}.`,
  againstDensity: (property: string) => `${property} against density`,
  lotByLot: (title: string) => `${title}, lot by lot`,
  scatter: (own: number, others: number, densities: string, values: string) =>
    `${counted(own, 'lot')} of this grade as dots${others > 0 ? ` and, as rings, ${counted(others, 'lot')} of other grades of foil` : ''}, each with its expanded uncertainties. Densities ${densities}, values ${values}.`,
  beside: (n: number, isLatest: boolean, period: string) =>
    `Beside ${isLatest ? 'the latest ' : ''}${counted(n, 'other lot')} of the grade, made ${period}: the dot is this lot with its uncertainty, each tick another lot, each tall stroke a limit near by. ` +
    'Lots count as above or below where they differ by more than both are uncertain.',
  notTold: (n: number) => `not told apart from any of ${n}`,
  place: (above: number, below: number, same: number, n: number) => {
    const parts = [
      above > 0 ? `above ${above}` : '',
      below > 0 ? `below ${below}` : '',
      same > 0 ? `not told apart from ${same}` : ''
    ]
    return `${parts.filter(Boolean).join(', ')} of ${n}`
  },
  released: (n: number) => (n === 0 ? 'no lot released' : `${counted(n, 'lot')} released`),
  stocked: (released: string, n: number) => `${released}, ${n === 0 ? 'none' : n} in stock`,
  inStock: 'in stock',
  /** Thickness over the sheets. */
  curves: {
    sieve: {
      title: 'Sieve curve',
      x: 'aperture in µm',
      y: 'passing in % by mass',
      summary: (n: number, least: string, greatest: string) =>
        `What passes each of ${n} sieves from ${least} µm to ${greatest} µm, 100 % less what it and coarser ones retain, with the expanded uncertainties; straight between sieves. The figures stand among the results.`
    },
    expansion: {
      title: 'Expansion over temperature',
      x: 'furnace in °C',
      y: 'expansion volume in mL/g',
      summary: (n: number, least: string, greatest: string) =>
        `Expansion volume at ${n} furnace temperatures from ${least} °C to ${greatest} °C, with the expanded uncertainties; straight between them. The figures stand among the results.`
    }
  },
  field: {
    legend: (least: string, greatest: string) =>
      `The fuller a dot, the thicker the sheet there: from ${least}, open, to ${greatest}, full; each has its figure beside it. x runs along the length and y along the width, both from the lower left corner.`,
    length: (text: string) => `length ${text}`,
    width: (text: string) => `width ${text}`,
    readings: (n: number, mean: string, min: string, max: string, range: string) =>
      `${counted(n, 'reading')}: mean ${mean}, from ${min} to ${max}, range ${range}.`,
    taper: (along: string, across: string) =>
      `Taper along the length ${along}, across the width ${across}.`,
    noTaper: 'Too few places, or all on one line: no taper can be told.'
  },
  /** Panels painted with a lot, as far as its grade opens them. */
  panels: {
    warning:
      'Bench screening, not a fire rating. How long a coating protects is found by fire test laboratories accredited for it, on the element as built; local codes and competent people decide what is asked for.',
    heated: (from: string, to: string, until: readonly string[]) =>
      `Steel panels painted with this flake and heated from ${date(from)} to ${date(to)}, until their backs were at ${list(until)}.`,
    method: (id: string, edition: number | string, title: string, conditions: string) =>
      `Method ${id}, edition ${edition}: ${title}; ${conditions}.`,
    means:
      'Means over the panels of one coating with U at about 95 %, and the scatter s between them. Active is the flake alone; the ceiling is the height it could fill by its own expansion volume.',
    caption: 'Coatings with this flake',
    column: 'Panels',
    panels: (n: number) => counted(n, 'panel'),
    /** Titles of what is opened, by the quantity's name. */
    titles: {
      activeMass_g_per_m2: 'Active mass per area',
      charCeiling_mm: 'Ceiling of the char height',
      charEfficiency_percent: 'Efficiency of expansion',
      timeGained_min: 'Time gained over a bare panel',
      gainPerActiveMass_sm2_per_g: 'Time gained per active mass'
    },
    between: 's between them',
    none: 'none'
  }
}

const shapes: Record<Shape, string> = {
  normal: 'the figures taken as normal',
  'distribution-free': 'no shape assumed'
}
