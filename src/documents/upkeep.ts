/** Waste in store and gone, and incidents, on the page of the workshop's state. */

import type { Reading } from '../metrology/written.ts'
import { compareText } from '../problem.ts'
import type { Content, Entry, Incident, Waste } from '../records/types.ts'
import type { BoardPart } from './board-types.ts'
import { dateText, listText } from './words.ts'

interface UpkeepInputs {
  readonly content: Content
  readonly asOf: string
}

const text = (title: string) => ({ title, numeric: false })
const short = (title: string) => ({ title, numeric: false, short: true })

/** Who decides on such things; stands with every list of them. */
const LOCAL = 'Local law, permits and competent people decide what must be kept, told and to whom.'

const joined = (parts: readonly (string | undefined)[]) =>
  parts.filter(part => part !== undefined && part !== '').join(', ')

const named = (name: string, reading: Reading | undefined) =>
  reading && `${name} ${reading.written}`

/** '2 g of SA-26-02 lost' */
const lostText = ({ lost = [] }: Waste | Incident) =>
  joined(lost.map(({ lot, mass_g }) => `${mass_g.written} of ${lot} lost`))

const amountOf = ({ mass_g, volume_mL }: Waste) => joined([mass_g?.written, volume_mL?.written])

const foundIn = ({ ph, nitrate_mg_per_L, ammonium_mg_per_L, metals = [] }: Waste) =>
  joined([
    named('pH', ph),
    named('nitrate', nitrate_mg_per_L),
    named('ammonium', ammonium_mg_per_L),
    ...metals.map(({ metal, concentration_mg_per_L }) => named(metal, concentration_mg_per_L))
  ])

/** Where waste is on a day. */
function placeOf({ container, gone }: Waste, asOf: string): string {
  if (!gone || gone.on > asOf) return joined(['in store', container])
  return `${gone.on} to ${joined([gone.to, gone.under, gone.paper])}`
}

/** Records up to a day, the latest first. */
const latestFirst = <Kind extends Waste | Incident>(
  entries: ReadonlyMap<string, Entry<Kind>>,
  dayOf: (record: Kind) => string,
  asOf: string
): Kind[] =>
  [...entries.values()]
    .map(({ record }) => record)
    .filter(record => dayOf(record) <= asOf)
    .sort((a, b) => compareText(dayOf(b), dayOf(a)) || compareText(a.number, b.number))

function waste({ content, asOf }: UpkeepInputs): BoardPart {
  const records = latestFirst(content.waste, ({ collected }) => collected, asOf)
  return {
    id: 'waste',
    title: 'Waste',
    about: `What was collected, and where it went. ${LOCAL}`,
    columns: [
      short('Number'),
      text('What'),
      short('Collected'),
      short('Amount'),
      text('Found in it'),
      short('From lots'),
      text('Where')
    ],
    rows: records.map(record => ({
      name: record.number,
      cells: [
        joined([record.kind, record.what]),
        record.collected,
        joined([amountOf(record), lostText(record)]),
        foundIn(record),
        listText(record.lots ?? []),
        placeOf(record, asOf)
      ]
    })),
    otherwise: 'No waste is recorded.'
  }
}

const stateOf = ({ closed }: Incident, asOf: string) =>
  closed && closed.on <= asOf ? `closed on ${dateText(closed.on)}: ${closed.because}` : 'open'

function incidents({ content, asOf }: UpkeepInputs): BoardPart {
  const records = latestFirst(content.incidents, ({ happened }) => happened, asOf)
  return {
    id: 'incidents',
    title: 'Spills, exposures and near misses',
    about: `What happened, and whether somebody has closed it. ${LOCAL}`,
    columns: [
      short('Number'),
      text('What'),
      short('Day'),
      short('Lots'),
      text('Done'),
      text('State')
    ],
    rows: records.map(record => ({
      name: record.number,
      cells: [
        joined([record.kind, record.mass_g?.written, record.where, record.what, record.exposure]),
        joined([record.happened, record.at]),
        joined([listText(record.lots ?? []), lostText(record)]),
        joined([
          record.done,
          ...(record.told ?? []).map(({ who, on }) => `told to ${who} on ${dateText(on)}`)
        ]),
        stateOf(record, asOf)
      ],
      ...(stateOf(record, asOf) === 'open' ? { urgent: true } : {})
    })),
    otherwise: 'No incident is recorded.'
  }
}

/** What the workshop's state says of waste and incidents. */
export const upkeepParts = (inputs: UpkeepInputs): BoardPart[] => [waste(inputs), incidents(inputs)]
