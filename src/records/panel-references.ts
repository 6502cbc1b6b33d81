/** What a panel names: its flake, bare panels, method and instruments. */

import { type FieldPath, type Problem, problemAt, quoted } from '../problem.ts'
import { quantityOf, testOf } from '../quantities.ts'
import type { Entry, Panel, Records } from './types.ts'
import { suggestion } from './validate.ts'

const isOfPanels = (key: string): boolean => {
  const quantity = quantityOf(key)
  return quantity !== undefined && testOf(quantity) === 'panel'
}

/** @param unread names whose records could not be read: their own problems say so */
export function panelReferences(content: Records, unread: ReadonlySet<string>): Problem[] {
  return [...content.panels.values()].flatMap(entry => [
    ...namesIn(content, entry.record).flatMap(({ field, name, known, what }) =>
      known.has(name) || unread.has(name)
        ? []
        : [
            problemAt(
              entry.at(field),
              'UNKNOWN_REFERENCE',
              `there is no ${what} ${quoted(name)}`,
              suggestion(name, [...known], `each ${what} recorded`)
            )
          ]
    ),
    ...methodOf(content, entry),
    ...flakeOf(content, entry)
  ])
}

interface Named {
  readonly field: FieldPath
  readonly name: string
  readonly known: ReadonlySet<string>
  readonly what: string
}

function namesIn(content: Records, panel: Panel): Named[] {
  const { lot, bare = [], method } = panel
  const potOf = panel.loading?.potOf
  const blanks = [...content.panels.values()].filter(({ record }) => record.kind === 'blank')
  const blankNumbers = new Set(blanks.map(({ record }) => record.number))
  const methods = new Set(content.methods.keys())
  return [
    ...(lot === undefined
      ? []
      : [{ field: ['lot'], name: lot, known: flakes(content), what: 'lot of flake' }]),
    ...(method === undefined
      ? []
      : [{ field: ['method'], name: method, known: methods, what: 'method' }]),
    ...(potOf === undefined
      ? []
      : [{ field: ['loading', 'potOf'], name: potOf, known: pots(content, panel), what: 'pot' }]),
    ...bare.map((name, index) => ({
      field: ['bare', index],
      name,
      known: blankNumbers,
      what: 'blank panel'
    })),
    ...instrumentsIn(content, panel)
  ]
}

/** Other panels whose record weighs the same flake in. */
const pots = ({ panels }: Records, { number, lot }: Panel): ReadonlySet<string> =>
  new Set(
    [...panels.values()]
      .map(({ record }) => record)
      .filter(other => other.number !== number && other.lot === lot && !other.loading?.potOf)
      .map(other => other.number)
  )

/** Own batches, and flake bought ready to expand. */
const flakes = ({ batches, materials }: Records): ReadonlySet<string> =>
  new Set([
    ...batches.keys(),
    ...[...materials.values()]
      .filter(({ record }) => record.kind === 'expandable graphite')
      .map(({ record }) => record.lot)
  ])

function instrumentsIn({ instruments }: Records, panel: Panel): Named[] {
  const known = new Set(instruments.keys())
  const { solids, wetFilm, dryFilm, char } = panel
  const groups = [['', panel] as const, ...Object.entries({ solids, wetFilm, dryFilm, char })]
  return groups.flatMap(([group, part]) =>
    Object.entries(part?.instruments ?? {}).map(([role, name]) => ({
      field: [...(group === '' ? [] : [group]), 'instruments', role],
      name,
      known,
      what: 'instrument'
    }))
  )
}

/** One method serves all that a panel gives. */
function methodOf({ methods }: Records, entry: Entry<Panel>): Problem[] {
  const { method = '' } = entry.record
  const [first] = methods.get(method) ?? []
  if (!first || isOfPanels(first.record.quantity)) return []
  return [
    problemAt(
      entry.at(['method']),
      'UNKNOWN_REFERENCE',
      `method ${method} measures ${first.record.quantity}, which no panel gives`,
      'name a method of one of its figures, such as backside-time'
    )
  ]
}

/** Flake cannot be stirred in before it is there. */
function flakeOf({ batches, materials }: Records, { record, at }: Entry<Panel>): Problem[] {
  const { lot = '', made } = record
  const since = batches.get(lot)?.record.made ?? materials.get(lot)?.record.received
  if (since === undefined || since <= made) return []
  return [
    problemAt(
      at(['lot']),
      'USED_BEFORE_MADE',
      `${lot} is of ${since}, later than this panel of ${made}`,
      'check the two dates'
    )
  ]
}
