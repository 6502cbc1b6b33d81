/** The state of the workshop on a day: what waits, what is late, what is left. */

import { Decimal } from 'decimal.js'
import { lookOf } from '../judge/judge-lot.ts'
import type { JudgedLot } from '../judge/types.ts'
import { compareText } from '../problem.ts'
import { isSellable } from '../quality/status.ts'
import { titleInSentence } from '../quantities.ts'
import { monthsLater } from '../records/dates.ts'
import type { Content } from '../records/types.ts'
import { balanceOf } from '../trace/balance.ts'
import type { TraceGraph } from '../trace/graph.ts'
import type { BoardDocument, BoardPart, BoardRow } from './board-types.ts'
import type { IssuedRegister } from './issued.ts'
import { incomingPart } from './incoming.ts'
import { certificateUrl, lotUrl } from './lot.ts'
import { resultRow } from './result-row.ts'
import { massText, substanceParts } from './substances.ts'
import { upkeepParts } from './upkeep.ts'
import { dateText, kindTexts, listText } from './words.ts'

export interface BoardInputs {
  readonly content: Content
  readonly lots: readonly JudgedLot[]
  readonly register: IssuedRegister
  readonly graph: TraceGraph
  readonly asOf: string
}

const text = (title: string) => ({ title, numeric: false })
const number = (title: string) => ({ title, numeric: true })

/** Everything the producer looks at first. */
export function boardDocument(inputs: BoardInputs): BoardDocument {
  // Each read of a lot's rows works them out anew: once is enough for all parts.
  const lots = inputs.lots.map(lot => ({ ...lot }))
  const open = lots.filter(({ state }) => state === 'quarantine' || isSellable(state))
  return {
    parts: [
      quarantine(lots),
      testsMissing(open),
      nearLimits(open),
      instruments(inputs),
      certificates(inputs, lots),
      stock(inputs, lots),
      incomingPart(inputs.content),
      ...substanceParts(inputs),
      ...upkeepParts(inputs)
    ]
  }
}

const lotRow = ({ evaluated }: JudgedLot, cells: readonly string[], urgent = false): BoardRow => ({
  name: evaluated.lot,
  url: lotUrl(evaluated.lot),
  cells,
  ...(urgent ? { urgent } : {})
})

const made = ({ evaluated }: JudgedLot) => evaluated.entry.record.made

const missingIn = ({ rows }: JudgedLot) => rows.filter(({ limit, result }) => limit && !result)

function quarantine(lots: readonly JudgedLot[]): BoardPart {
  const waiting = lots.filter(({ state }) => state === 'quarantine')
  return {
    id: 'quarantine',
    title: 'In quarantine',
    about: 'Lots nobody has decided on yet.',
    columns: [
      text('Lot'),
      text('Product'),
      text('Grade'),
      text('Made'),
      text('Against its limits')
    ],
    rows: waiting.map(lot =>
      lotRow(lot, [kindTexts[lot.evaluated.kind], lot.grade.id, made(lot), lot.word])
    ),
    otherwise: 'No lot waits for a decision.'
  }
}

function testsMissing(lots: readonly JudgedLot[]): BoardPart {
  return {
    id: 'tests',
    title: 'Tests missing',
    about: 'Limits of the grade that nothing was measured for, and a look it asks for.',
    columns: [text('Lot'), text('Grade'), text('Not measured')],
    rows: lots.flatMap(lot => {
      const missing = [
        ...missingIn(lot).map(({ quantity }) => titleInSentence(quantity)),
        ...(lookOf(lot.evaluated, lot.grade) === 'not done' ? ['visual inspection'] : [])
      ]
      return missing.length === 0 ? [] : [lotRow(lot, [lot.grade.id, listText(missing)], true)]
    }),
    otherwise: 'Every limit has its measurement.'
  }
}

function nearLimits(lots: readonly JudgedLot[]): BoardPart {
  return {
    id: 'guard-band',
    title: 'Within the uncertainty of a limit',
    about:
      'Figures nearer to their limit than their uncertainty: further readings may settle them.',
    columns: [text('Lot'), text('State'), text('Verdict'), text('Figure')],
    rows: lots.flatMap(lot =>
      lot.rows
        .filter(({ verdict }) => verdict?.word.startsWith('conditional'))
        .map(row => {
          const { verdict, title } = resultRow(row, lot.rule)
          return lotRow(lot, [lot.state, verdict!.word, `${title}: ${verdict!.sentence}`])
        })
    ),
    otherwise: 'No figure lies so near to its limit.'
  }
}

/** Calibrations due within so many months are told of. */
const SOON_months = 2

function instruments({ content, asOf }: BoardInputs): BoardPart {
  const soon = monthsLater(asOf, SOON_months)
  const due = [...content.instruments.values()]
    .flatMap(({ record: { id, title, calibration } }) =>
      calibration && calibration.due <= soon ? [{ id, title, due: calibration.due }] : []
    )
    .sort((a, b) => compareText(a.due, b.due) || compareText(a.id, b.id))
  return {
    id: 'instruments',
    title: 'Calibrations',
    about: `Overdue, or due by ${dateText(soon)}.`,
    columns: [text('Instrument'), text('What it is'), text('Due'), text('State')],
    rows: due.map(one => ({
      name: one.id,
      cells: [one.title, one.due, one.due < asOf ? 'overdue' : 'due soon'],
      ...(one.due < asOf ? { urgent: true } : {})
    })),
    otherwise: 'No calibration is overdue, and none is due soon.'
  }
}

function certificates(
  { content, register, asOf }: BoardInputs,
  lots: readonly JudgedLot[]
): BoardPart {
  const states = new Map(lots.map(lot => [lot.evaluated.lot, lot.state]))
  const standing = register.issued.filter(({ state }) => state === 'current')
  const called = standing.flatMap(({ revision }) => {
    const state = states.get(revision.lot)
    return state !== undefined && !isSellable(state)
      ? [certificateRow(revision, `stands on a lot that is ${state}: withdraw it`)]
      : []
  })
  const issued = new Set(
    register.issued.map(({ revision }) => `${revision.number} ${revision.revision}`)
  )
  const ordered = content.certificates
    .map(({ record }) => record)
    .filter(order => order.issued <= asOf && !issued.has(`${order.number} ${order.revision}`))
    .map(order => certificateRow(order, 'ordered, not issued yet'))
  const having = new Set(standing.map(({ revision }) => revision.lot))
  const without = lots
    .filter(lot => lot.state === 'released' && !having.has(lot.evaluated.lot))
    .map(lot => lotRow(lot, [lot.evaluated.lot, 'released without a certificate']))
  return {
    id: 'certificates',
    title: 'Certificates to see to',
    about: 'A certificate whose records now say otherwise stops every check, and is told of there.',
    columns: [text('Certificate or lot'), text('Lot'), text('What there is to do')],
    rows: [...called, ...ordered, ...without],
    otherwise: 'Every released lot has its certificate, and none is to be withdrawn.'
  }
}

const certificateRow = (
  { number, revision, lot }: { number: string; revision: number; lot: string },
  what: string
): BoardRow => ({
  name: `${number}, revision ${revision}`,
  ...(what.startsWith('stands') ? { url: certificateUrl(number), urgent: true } : {}),
  cells: [lot, what]
})

function stock({ graph }: BoardInputs, lots: readonly JudgedLot[]): BoardPart {
  const rows = lots.flatMap(lot => {
    const traced = graph.lots.get(lot.evaluated.lot)
    if (!traced || !isSellable(lot.state)) return []
    const { inStock_g, shipped_g, counted } = balanceOf(graph, traced)
    const cells = [
      lot.grade.id,
      lot.state,
      massText(inStock_g),
      massText(shipped_g),
      counted ?? 'by the records'
    ]
    return inStock_g.greaterThan(new Decimal(0)) ? [lotRow(lot, cells)] : []
  })
  return {
    id: 'stock',
    title: 'Stock left for sale',
    about: 'Lots that may be sold, with what the records and counts leave of them.',
    columns: [
      text('Lot'),
      text('Grade'),
      text('State'),
      number('In stock'),
      number('With customers'),
      text('Counted')
    ],
    rows,
    otherwise: 'Nothing that may be sold is left.'
  }
}
