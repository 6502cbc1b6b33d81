/** Invented sites that strain the pages: many rows, every verdict and state, a workshop edition. */

import type {
  Figure,
  LotDocument,
  LotPage,
  ProcessDocument,
  ResultRow,
  SiteDocument,
  StatusText,
  Table,
  VerdictWord,
  Working
} from '../../src/documents/types.ts'
import { lotLists } from '../../src/documents/lot-lists.ts'
import { lotDocument, lotPage, siteDocument } from '../fixtures/documents.ts'
import { panelPages, panels, screening } from './sample-panels.ts'

const figure = (printed: string): Figure => ({ exact: printed.replace(/[^\d.]/gu, ''), printed })

/** Figures of unlike sizes: printed result, U, limit, unit, verdict, probability. */
const figures: readonly [string, string, string, string, VerdictWord, string][] = [
  ['262.1', '4.3', '≥ 250', 'mL/g', 'pass', '> 99.9'],
  ['0.118', '0.0083', '≤ 0.12', '%', 'conditional pass', '67.5'],
  ['36\u202f200', '1\u202f100', '≥ 30\u202f000', 'kPa', 'pass', '> 99.9'],
  ['1.022', '0.014', '0.95 to 1.05', 'g/cm³', 'pass', '99.7'],
  ['< 0.02', '0.004', '≤ 0.05', 'mg/kg', 'pass', '> 99.9'],
  ['−3.5', '0.9', '≥ −4', '°C', 'conditional pass', '86'],
  ['12', '3', '≤ 10', 'µΩ·m', 'conditional fail', '9.4'],
  ['7.25', '0.11', '≤ 5.0', '%', 'fail', '< 0.1']
]

const names = [
  'Expansion volume',
  'Free acidity as H₂SO₄',
  'Tensile strength',
  'Foil density'
].concat(['Leachable chloride', 'Onset of expansion', 'Resistivity along the sheet', 'Ash'])

function measuredRow(index: number): ResultRow {
  const [value, U, limit, unit, word, probability] = figures[index % figures.length]!
  const base = lotDocument.results[index % 2]!
  return {
    ...base,
    key: `property-${index}`,
    title: `${names[index % names.length]} ${index}`,
    unit: { printed: unit, ucum: '1' },
    value: figure(value),
    expandedUncertainty: figure(U),
    limit: { printed: limit, of: index % 3 === 0 ? 'every sheet' : 'lot mean' },
    verdict: {
      word,
      sentence: `${value} ${unit} with an uncertainty of ${U} ${unit} against ${limit} ${unit}`,
      probability: figure(probability)
    },
    spread: 'The sheets differ among each other by a standard deviation of 0.8 %.'
  }
}

const strayTable: Table = {
  caption: 'Inputs of reading 1',
  columns: [
    { title: 'Input', numeric: false },
    { title: 'Value', numeric: true },
    { title: 'Standard uncertainty', numeric: true },
    { title: 'Degrees of freedom', numeric: true },
    { title: 'Instrument', numeric: false }
  ],
  rows: [
    ['Mass', '0.502 g', '0.00031 g', 'unlimited', 'BAL-1, resolution 0.001 g'],
    ['Volume', '131 mL', '0.8 mL', '31', 'CYL-1, 250 mL, read at 23 °C'],
    ['Blank', '−0.05 mL', '0.02 mL', '2', 'BUR-2'],
    ['Temperature', '1\u202f023.5 °C', '2.5 °C', '50', 'TC-4']
  ]
}

const workingOf = (row: ResultRow): Working => ({
  ...lotDocument.workings[0]!,
  key: row.key,
  title: row.title,
  inputs: strayTable,
  outcome: `${row.value?.printed} ${row.unit.printed} ± ${row.expandedUncertainty?.printed} ${row.unit.printed} (k = 2.04, 31 degrees of freedom)`
})

function lotOf(changes: Partial<LotDocument>, certificates = lotPage.certificates): LotPage {
  const document: LotDocument = { ...lotDocument, ...changes }
  return {
    summary: {
      ...lotPage.summary,
      lot: document.lot,
      url: document.url,
      kind: document.kind,
      made: document.made,
      state: document.status.state,
      answer: document.answer
    },
    document,
    certificates,
    dataUrl: `${document.url}data.json`
  }
}

const manyRows = Array.from({ length: 40 }, (_, index) => measuredRow(index))

/** The largest lot page that is planned for: 40 quantities, each with its working. */
export const fullLot = lotOf({
  lot: 'GF-26-040',
  url: 'lots/GF-26-040/',
  kind: 'foil',
  made: '2026-06-02',
  results: [...manyRows, ...lotDocument.results.slice(3)],
  workings: manyRows.map(workingOf)
})

const plainRows = manyRows.filter(row => row.verdict?.word === 'pass').slice(0, 4)

/** Nothing but passes, and no optional part at all. */
const plainLot = lotOf(
  {
    lot: 'EB-25-007',
    url: 'lots/EB-25-007/',
    made: '2025-11-20',
    answer: { word: 'pass', sentence: 'Meets all 4 limits of grade flake-50.' },
    results: plainRows,
    workings: [],
    chain: [],
    traceability: [],
    cautions: [],
    papers: [],
    facts: [{ label: 'Made', text: '20 November 2025' }]
  },
  []
)

const withdrawnStatus: StatusText = {
  state: 'withdrawn',
  sentence: 'Withdrawn on 2 October 2026 by the quality manager.'
}

const withdrawnLot = lotOf({
  lot: 'EB-26-013-withdrawn-with-a-long-number',
  url: 'lots/EB-26-013-withdrawn-with-a-long-number/',
  made: '2026-02-03',
  status: withdrawnStatus,
  answer: { word: 'not judged', sentence: 'No figure is judged: the lot is withdrawn.' },
  notices: ['Withdrawn on 2 October 2026. Do not use; return what is left to the producer.']
})

/** A figure read off directly: a list of readings, nothing put in, a budget all the same. */
const directWorking: Working = {
  ...lotDocument.workings[0]!,
  key: 'thickness',
  title: 'Thickness',
  readings: {
    caption: 'As recorded',
    columns: [
      { title: 'Sheet', numeric: false },
      { title: 'Thickness at each position', numeric: true }
    ],
    rows: [['13-1', '0.503 mm, 0.504 mm, 0.506 mm, 0.503 mm, 0.502 mm, 0.501 mm']]
  },
  inputs: { ...strayTable, rows: [] }
}

const process: ProcessDocument = {
  trace: [],
  facts: [
    { label: 'Operator', text: 'shift B' },
    { label: 'Yield', text: '104.2 % ± 1.1 %' }
  ],
  charge: {
    caption: 'Charge',
    columns: [
      { title: 'Material', numeric: false },
      { title: 'As', numeric: false },
      { title: 'Mass', numeric: true }
    ],
    rows: [
      ['FG-26-003', 'graphite', '25.00 g'],
      ['SA-26-001', 'acid', '100.3 g']
    ]
  },
  steps: {
    caption: 'Steps as done',
    columns: [
      { title: 'Step', numeric: false },
      { title: 'Began', numeric: false },
      { title: 'Highest temperature', numeric: true }
    ],
    rows: [
      ['charge', '08:10', '31.5 °C'],
      ['wash', '10:40', '24 °C']
    ]
  },
  results: manyRows.slice(0, 2).map(({ limit: _limit, verdict: _verdict, ...row }) => row),
  workings: [workingOf(manyRows[0]!), directWorking],
  materials: [{ lot: 'FG-26-003', kind: 'natural flake', made: '3 January 2026' }],
  notices: ['Charge above the workshop’s own limit of 20 g.']
}

const limits = manyRows.slice(0, 6).map(({ key, title, limit, unit, method }) => ({
  key,
  title,
  limit: limit!,
  unit,
  method: method!
}))

const observed = [
  ['262.1', '284.8', 'normal'] as const,
  ['0.0027', '0.012', 'distribution-free'] as const
].map(([lower, upper, kind], index) => ({
  key: `property-${index}`,
  title: `${names[index]}, devolatilised basis`,
  unit: { printed: 'mL/g', ucum: '1' },
  lower: figure(lower),
  upper: figure(upper),
  printed: `${lower} to ${upper}`,
  n: 8,
  period: '20 January 2026 to 13 October 2026',
  kind,
  coverage: figure('52'),
  confidence: figure('95'),
  sentence: 'At least 52 % of lots lie there.'
}))

const siteOf = (lots: readonly LotPage[], changes: Partial<SiteDocument> = {}): SiteDocument => ({
  ...siteDocument,
  summaries: lots.map(lot => lot.summary),
  ...lotLists(lots.map(lot => lot.summary)),
  lots,
  grades: [
    { ...siteDocument.grades[0]!, measured: limits, observed, lots: lots.map(lot => lot.summary) }
  ],
  ...changes
})

const { grade: _, hazards: __, ...ungraded } = lotDocument

/** A furnace run: no grade, no result of its own, no certificate. */
const run: LotPage = {
  summary: {
    ...lotPage.summary,
    lot: 'XR-26-01',
    url: 'lots/XR-26-01/',
    kind: 'furnace run',
    grade: '',
    state: 'in process',
    answer: { word: 'not judged', sentence: 'A furnace run has no limits to meet.' },
    key: []
  },
  document: {
    ...ungraded,
    lot: 'XR-26-01',
    url: 'lots/XR-26-01/',
    kind: 'furnace run',
    status: { state: 'in process', sentence: 'Kept in the workshop.' },
    answer: { word: 'not judged', sentence: 'A furnace run has no limits to meet.' },
    results: [],
    workings: [],
    papers: [],
    decisionRule: ''
  },
  process: { ...process, expected: strayTable },
  certificates: [],
  dataUrl: 'lots/XR-26-01/data.json'
}

/** A public site with several lots in several states. */
export const publicSite = siteOf([
  { ...lotPage, document: { ...lotDocument, screening: screening('public') } },
  fullLot,
  plainLot,
  withdrawnLot
])

const screenedLot: LotPage = {
  ...lotPage,
  document: { ...lotDocument, screening: screening('workshop') },
  process
}

/** Some of the lots as the workshop sees them. */
export const workshopSite = siteOf([screenedLot, plainLot, run], {
  edition: 'workshop',
  panels: [panels],
  panelPages: panelPages(process.results, process.workings),
  boards: [
    {
      parts: [
        {
          id: 'quarantine',
          title: 'In quarantine',
          about: 'Lots nobody has decided on yet.',
          columns: [
            { title: 'Lot', numeric: false },
            { title: 'Grade', numeric: false },
            { title: 'In stock', numeric: true }
          ],
          rows: [
            { name: 'EB-26-041', url: 'lots/EB-26-041/', cells: ['flake-50', '1.250 kg'] },
            {
              name: 'BAL-1',
              cells: ['a name of an instrument as long as they come', '3 g'],
              urgent: true
            }
          ],
          otherwise: 'No lot waits.'
        },
        {
          id: 'tests',
          title: 'Tests missing',
          about: 'Limits of the grade that nothing was measured for.',
          columns: [],
          rows: [],
          otherwise: 'Every limit has its measurement.'
        }
      ]
    }
  ],
  drafts: [{ lot: 'EB-26-050', missing: ['charge › 2 › mass: is missing', 'product: is missing'] }]
})

/** A site before anything was published. */
export const emptySite: SiteDocument = {
  ...siteDocument,
  summaries: [],
  ...lotLists([]),
  lots: [],
  grades: [],
  choice: [],
  drafts: []
}
