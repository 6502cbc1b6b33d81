/** The records of a workshop just set up: enough to build, nothing invented about the maker. */

import { Document, isScalar, stringify, visit } from 'yaml'
import { editorSchemas } from './editor-schema.ts'
import { once } from './once.ts'
import { placeholders } from './placeholders.ts'

/** What setting up asks. */
export interface StarterAnswers {
  readonly name: string
  /** Lines of the postal address. */
  readonly address: readonly string[]
  readonly email: string
  readonly telephone: string
  readonly paper: 'A4' | 'Letter'
  /** Who signs: a role, and the name behind it, which stays private. */
  readonly role: string
  readonly person: string
  /** Day the first method and grade are valid from, YYYY-MM-DD. */
  readonly from: string
}

/** Files of the new content folder by path, editor schemas among them. */
export function starterWorkshop(answers: StarterAnswers): ReadonlyMap<string, string> {
  const records: [string, string, object][] = [
    ['producer.yaml', 'producer', producer(answers)],
    ['instruments/BAL-1.yaml', 'instrument', balance()],
    ['instruments/CYL-1.yaml', 'instrument', cylinder()],
    ['methods/TM-01-e1.yaml', 'method', method(answers)],
    ['grades/flake-1-r1.yaml', 'grade', grade(answers)],
    ['materials/GR-1.yaml', 'material', material(answers)],
    ['batches/EB-1.yaml', 'batch', batch(answers)]
  ]
  return new Map([
    ...records.map(([path, kind, record]): [string, string] => [
      path,
      recordText(path, kind, record, answers)
    ]),
    ...schemaFiles()
  ])
}

/** The editor schemas as files, made once: they take a while. */
const schemaFiles = once(() =>
  [...editorSchemas()].map(
    ([name, schema]) => [`schemas/${name}`, `${JSON.stringify(schema, null, 1)}\n`] as const
  )
)

function recordText(path: string, kind: string, record: object, answers: StarterAnswers): string {
  const up = path.includes('/') ? '../' : ''
  return [
    `# yaml-language-server: $schema=${up}schemas/${kind}.json`,
    ...(comments[kind] ?? []).map(line => `# ${line}`),
    `${kind === 'batch' ? blanksApart(yamlText(record)) : yamlText(record)}${calibrationToFill[path]?.(answers) ?? ''}`
  ].join('\n')
}

/** The record with each group of plain values, such as a reading, on one line. */
function yamlText(record: object): string {
  const document = new Document(record)
  visit(document, {
    Map(_key, node, above) {
      if (above.length > 1 && node.items.every(({ value }) => isScalar(value))) node.flow = true
    }
  })
  return document.toString({ lineWidth: 0, nullStr: '', flowCollectionPadding: true })
}

/** Room to write in: `{ mass: , volume: }`. The batch holds no answer this could change. */
const blanksApart = (text: string) => text.replace(/:(?=,)/gu, ': ')

const comments: Readonly<Record<string, readonly string[]>> = {
  producer: [
    'Address, e-mail and telephone stand on every paper; names behind the roles never do.'
  ],
  instrument: ['Write the resolution of your own instrument.'],
  method: [
    'Describe your own procedure: mass, vessel, furnace temperature, time, how it is read.',
    'It is printed on certificates. A change later is a new file with edition 2.'
  ],
  grade: [
    'Set your own limits and say what the grade is for.',
    'A change later is a new file with revision 2.'
  ],
  material: [
    'One file for each incoming lot: write who delivered it and how much.',
    'Never published.'
  ],
  batch: [
    'Fill in what was done and read, digits and units as on the instrument,',
    "then take out 'draft: yes'. Leave out what was not done."
  ]
}

const producer = ({ name, address, email, telephone, paper, role, person }: StarterAnswers) => ({
  name,
  address,
  email,
  telephone,
  paper,
  roles: [{ role, name: person }]
})

/** The year after, on the same day; a leap day goes back to the 28th. */
const yearLater = (day: string) =>
  `${Number(day.slice(0, 4)) + 1}${day.slice(4).replace('-02-29', '-02-28')}`

const balance = () => ({ id: 'BAL-1', title: 'Balance', resolution: '0.001 g' })

const cylinder = () => ({
  id: 'CYL-1',
  title: 'Graduated cylinder, 250 mL',
  resolution: '1 mL'
})

/** A calibration as a comment: one that nobody has made must not stand on a certificate. */
const calibrationNote =
  (against: string, tolerance: string) =>
  ({ from }: StarterAnswers): string =>
    [
      '# Write its calibration as here, without the #. Until then a warning says that it has none.',
      ...stringify({
        calibration: { against, on: from, due: yearLater(from), tolerance }
      })
        .trimEnd()
        .split('\n')
        .map(line => `# ${line}`),
      ''
    ].join('\n')

const calibrationToFill: Readonly<Record<string, (answers: StarterAnswers) => string>> = {
  'instruments/BAL-1.yaml': calibrationNote('check weight', '0.002 g'),
  'instruments/CYL-1.yaml': calibrationNote('its class mark', '2 mL')
}

const method = ({ from }: StarterAnswers) => ({
  id: 'TM-01',
  edition: 1,
  'valid-from': from,
  quantity: 'expansion-volume',
  title: 'Expansion volume',
  conditions: placeholders.conditions,
  instruments: { mass: 'BAL-1', volume: 'CYL-1' }
})

const grade = ({ from }: StarterAnswers) => ({
  id: 'flake-1',
  revision: 1,
  'valid-from': from,
  title: 'Expandable flake',
  kind: 'flake',
  description: placeholders.description,
  'decision-rule': 'simple',
  limits: { 'expansion-volume': { min: '200 mL/g', method: 'TM-01' } },
  public: ['results', 'working', 'chain', 'sampling'],
  cautions: [
    'Gives off acid fumes and a large volume of gas when heated: work under extraction, never in a closed vessel.',
    'Graphite dust conducts electricity: keep it out of equipment.',
    'Local codes and competent people decide how such work is done.'
  ]
})

const material = ({ from }: StarterAnswers) => ({
  lot: 'GR-1',
  title: 'Natural flake graphite',
  kind: 'graphite',
  supplier: placeholders.supplier,
  received: from,
  quantity: '1 kg'
})

const batch = ({ from }: StarterAnswers) => ({
  lot: 'EB-1',
  grade: 'flake-1',
  made: from,
  draft: 'yes',
  instruments: { mass: 'BAL-1' },
  charge: [{ material: 'GR-1', as: 'graphite', mass: null }],
  product: { mass: null },
  tests: {
    'expansion-volume': {
      tested: null,
      readings: [
        { mass: null, volume: null },
        { mass: null, volume: null },
        { mass: null, volume: null }
      ]
    }
  }
})
