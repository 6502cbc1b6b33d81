/** Coating panels for the pages' tests: every column, one that never got so hot, names close together. */

import type { PanelsDocument, ScreeningText } from '../../src/documents/panel-types.ts'
import type { PanelDocument, ResultRow, Working } from '../../src/documents/types.ts'
import { drawLogChart } from '../../src/figures/log-chart.ts'

const warning = 'Bench screening, not a fire rating. Accredited laboratories find those.'

const chart = (id: string) => ({
  id,
  title: 'Temperature at the back of the plate',
  summary: 'PN-26-03 to 519 °C in 17.6 min. The pale curve is the gas in a furnace.',
  drawing: drawLogChart({
    curves: [
      {
        name: 'PN-26-01',
        role: 'log-bare',
        points: [
          [0, 20],
          [3.2, 510]
        ]
      },
      {
        name: 'PN-26-03',
        role: 'log-own',
        points: [
          [0, 20],
          [8, 380],
          [17.6, 519]
        ]
      },
      {
        name: 'PN-26-10',
        role: 'log-other',
        points: [
          [0, 20],
          [17.5, 447]
        ]
      },
      {
        name: 'ISO 834, furnace',
        role: 'log-standard',
        points: [
          [0, 20],
          [17.6, 762]
        ]
      }
    ],
    level: { value: 500, name: 'stated 500 °C' },
    names: { x: 'minutes since heating began', y: '°C' }
  })
})

const links = [
  { lot: 'PN-26-03', url: 'panels/PN-26-03/' },
  { lot: 'EB-26-041', url: 'lots/EB-26-041/' },
  { lot: 'PN-26-01', url: 'panels/PN-26-01/' }
]

const number = (title: string) => ({ title, numeric: true })
const short = (title: string) => ({ title, numeric: false, short: true })

export const panels: PanelsDocument = {
  warning,
  reading: ['Films of unequal thickness compare by the time gained per millimetre.'],
  parts: [
    {
      id: 'coatings',
      title: 'By coating',
      about: 'Means over the panels of a coating, with s between panels.',
      columns: [
        short('Coating'),
        { title: 'What it is', numeric: false },
        short('Flake'),
        number('Panels'),
        short('To'),
        number('Dry film, mm'),
        number('Active, g/m²'),
        number('Gained, min'),
        number('Per film, min/mm'),
        number('Per film mass, s·m²/g'),
        number('Per active mass, s·m²/g')
      ],
      rows: [
        {
          name: 'S1',
          cells: [
            'own coating',
            'EB-26-041',
            '3',
            '500 °C',
            '0.619 (s 0.043)',
            '120.5 (s 6.7)',
            '12.52 (s 0.89)',
            '20.22 (s 0.21)',
            '0.958 (s 0.015)',
            '6.23 (s 0.10)'
          ]
        },
        {
          name: 'T7',
          cells: ['bought-in coating', '', '1', '500 °C', '', '', '13.58 ± 0.28', '', '', '']
        }
      ],
      otherwise: 'No panel is recorded.'
    },
    {
      id: 'fires',
      title: 'Over the burner',
      about: 'Time until the back of each panel was as hot as stated.',
      columns: [short('Panel'), short('Coating'), short('To'), number('Time, min')],
      rows: [
        {
          name: 'PN-26-03',
          url: 'panels/PN-26-03/',
          cells: ['S1', '500 °C', '15.69 ± 0.29']
        },
        {
          name: 'PN-26-10',

          cells: ['T7', '500 °C', 'not reached in 14.0 min']
        }
      ],
      otherwise: 'No panel is recorded.'
    },
    {
      id: 'films',
      title: 'Films',
      about: 'What lay on each panel.',
      columns: [],
      rows: [],
      otherwise: 'No coated panel is recorded.'
    }
  ],
  charts: [chart('logs')],
  links
}

/** A panel with everything, and a bare one with as little as there can be. */
export const panelPages = (
  results: readonly ResultRow[],
  workings: readonly Working[]
): PanelDocument[] => {
  const bare: PanelDocument = {
    number: 'PN-26-01',
    url: 'panels/PN-26-01/',
    dataUrl: 'panels/PN-26-01/data.json',
    title: 'BARE: bare plate',
    made: '2026-03-14',
    warning,
    notices: [],
    facts: [{ label: 'Made', text: '14 March 2026' }],
    links: links.slice(2),
    results: [],
    rows: [],
    workings: [],
    charts: []
  }
  return [
    bare,
    {
      ...bare,
      number: 'PN-26-03',
      url: 'panels/PN-26-03/',
      dataUrl: 'panels/PN-26-03/data.json',
      title: 'S1: own coating',
      notices: ['500 °C at the back: not reached in 14.0 min.'],
      facts: [
        ...bare.facts,
        { label: 'Heated by', text: 'one laboratory burner, 60 mm below the face' },
        { label: 'Files', text: 'a-name-of-a-file-as-long-as-loggers-make-them-2026-03-14.csv' }
      ],
      links,
      results,
      rows: results,
      workings,
      charts: [chart('log-chart')],
      log: {
        caption: 'Log as recorded',
        columns: [number('At'), number('Back of the plate')],
        rows: [
          ['0 s', '19.1 °C'],
          ['15 s', '51.1 °C']
        ]
      }
    }
  ]
}

export const screening = (edition: 'public' | 'workshop'): ScreeningText => ({
  warning,
  about: ['Steel panels painted with this flake.', 'Method TM-40, edition 1: Coated panel.'],
  table: {
    caption: 'Coatings with this flake',
    columns: [
      { title: 'Panels', numeric: false },
      number('Active mass per area, g/m²'),
      number('Time gained per active mass, s·m²/g')
    ],
    rows: [['3 panels', '120.5 (s 6.7)', '6.23 (s 0.10)']]
  },
  links: edition === 'workshop' ? links : []
})
