/** What only the workshop sees of a lot: charge, steps, yields, operators, notes. */

import type { EvaluatedContent, EvaluatedLot, Result, Results } from '../evaluate/types.ts'
import { overLimit, overLimitText } from '../evaluate/charge-limits.ts'
import { volumeText } from '../evaluate/charged.ts'
import type { Reports } from '../evaluate/reported.ts'
import { overdueUses } from '../judge/release.ts'
import type { JudgedLot } from '../judge/types.ts'
import { quantityOf, titleInSentence } from '../quantities.ts'
import type { ReportedRecord } from '../records/schemas/reported.ts'
import type { Batch, Content, Expansion, Foil } from '../records/types.ts'
import { expectedTable } from './expected.ts'
import { filledStagesTable } from './filled-stages.ts'
import { resultRow } from './result-row.ts'
import type { ChainLink, Fact, ProcessDocument, Table } from './types.ts'
import { dateText, listText } from './words.ts'
import { workingOf } from './working.ts'

/** Everything the workshop edition adds to a lot's page. */
export function processDocument(
  { content, lots }: EvaluatedContent,
  lot: EvaluatedLot,
  judged: JudgedLot | undefined,
  trace: readonly Table[]
): ProcessDocument {
  const results = resultsOf(lot.process)
  const charge = lot.kind === 'batch' ? chargeTable(content, lot.entry.record) : undefined
  const steps = lot.kind === 'batch' ? stepsTable(lot.entry.record) : undefined
  const expected = lot.kind === 'batch' ? expectedTable(lots, lot.entry.record) : undefined
  const filledStages = filledStagesTable(lot.process)
  return {
    facts: [...factsOf(lot), ...decisionFacts(judged)],
    ...(charge ? { charge } : {}),
    ...(steps ? { steps } : {}),
    ...(expected ? { expected } : {}),
    ...(filledStages ? { filledStages } : {}),
    results: results.map(result =>
      resultRow({ quantity: result.quantity, result, scope: 'lot mean' }, 'simple')
    ),
    workings: results.map(result => workingOf(result)),
    materials: lot.kind === 'batch' ? materialLinks(content, lot.entry.record) : [],
    trace,
    notices: [
      ...(lot.kind === 'batch' ? limitNotices(content, lot.entry.record) : []),
      ...(judged ? overdueUses(judged) : [])
    ]
  }
}

/** A batch above its documented limit, and how that was reviewed. */
function limitNotices(content: Content, batch: Batch): string[] {
  const over = overLimit(content, batch)
  if (!over) return []
  const { overLimit: review } = batch
  return [
    `Charged with ${overLimitText(over)}. ${
      review
        ? `Reviewed on ${dateText(review.on)} by the ${review.by}: ${review.because}.`
        : 'Held until it is reviewed.'
    }`
  ]
}

const resultsOf = (results: Results): Result[] => Object.values(results)

function factsOf(lot: EvaluatedLot): Fact[] {
  const { record } = lot.entry
  const optional = (label: string, text: string | undefined) =>
    text === undefined ? [] : [{ label, text }]
  return [
    ...optional('Made by', record.by),
    ...(lot.kind === 'batch' ? batchFacts(lot.entry.record) : []),
    ...(lot.kind === 'expansion' ? runFacts(lot.entry.record) : []),
    ...(lot.kind === 'foil' ? foilFacts(lot.entry.record) : []),
    ...('reported' in record ? reportFacts(record.reported ?? {}) : []),
    ...optional('Notes', record.notes)
  ]
}

/** Whose reports they are: customers read a name only where it may be public. */
const reportFacts = (reports: Reports): Fact[] =>
  Object.entries(reports).flatMap(([key, reported]) => {
    const quantity = quantityOf(key)
    return quantity && reported
      ? [
          {
            label: `Reported: ${titleInSentence(quantity)}`,
            text: `${whoseReport(reported)}, ${dateText(reported.date)}`
          }
        ]
      : []
  })

const whoseReport = ({ own, laboratory, report }: ReportedRecord) =>
  own ? `our own earlier record ${report}` : `report ${report} of ${laboratory}`

const usedText = (from: readonly { lot: string; mass_g: { written: string } }[]) =>
  listText(from.map(use => `${use.mass_g.written} of ${use.lot}`))

function batchFacts({ product, from, tests, vessel }: Batch): Fact[] {
  const testers = [...new Set(Object.values(tests ?? {}).flatMap(test => test?.by ?? []))]
  return [
    { label: 'Product', text: product.mass_g.written },
    ...(vessel === undefined ? [] : [{ label: 'Vessel', text: vessel }]),
    ...(from ? [{ label: 'Made from', text: usedText(from) }] : []),
    ...(testers.length > 0 ? [{ label: 'Tested by', text: listText(testers) }] : [])
  ]
}

const runFacts = ({ from, temperature_C, dwell_s, worms, furnace }: Expansion): Fact[] => [
  { label: 'Put in', text: usedText(from) },
  {
    label: 'Furnace',
    text: [furnace, temperature_C.written, dwell_s?.written].filter(Boolean).join(', ')
  },
  {
    label: 'Worms out',
    text: [worms.mass_g.written, worms.volume_mL?.written].filter(Boolean).join(', ')
  }
]

const foilFacts = ({ from, pressing }: Foil): Fact[] => [
  { label: 'Made from', text: usedText(from) },
  {
    label: 'Forming',
    text: [
      pressing.how,
      pressing.pressure_MPa?.written,
      pressing.passes === undefined ? undefined : `${pressing.passes} passes`,
      pressing.notes
    ]
      .filter(Boolean)
      .join(', ')
  }
]

/** Every decision with what the public does not see of it. */
function decisionFacts(judged: JudgedLot | undefined): Fact[] {
  return (judged?.evaluated.entry.record.status ?? []).map(decision => ({
    label: `Decision of ${dateText(decision.on)}`,
    text: [
      `${decision.is}, by the ${decision.by}`,
      decision.because,
      decision.customer === undefined ? undefined : `customer ${decision.customer}`,
      decision.quantity_g?.written,
      decision.until === undefined ? undefined : `until ${dateText(decision.until)}`
    ]
      .filter(Boolean)
      .join('; ')
  }))
}

function chargeTable(content: Content, { charge }: Batch): Table | undefined {
  if (!charge) return undefined
  return {
    caption: 'Charge',
    columns: [
      { title: 'Material lot', numeric: false },
      { title: 'As', numeric: false },
      { title: 'Mass', numeric: true }
    ],
    rows: charge.map(line => [
      lotAndContainer(line),
      line.as,
      line.mass_g?.written ?? volumeText(content, line)
    ])
  }
}

const lotAndContainer = ({ material, container }: NonNullable<Batch['charge']>[number]) =>
  container === undefined ? material : `${material}, ${container}`

function stepsTable({ steps }: Batch): Table | undefined {
  if (!steps) return undefined
  return {
    caption: 'Steps',
    columns: [
      { title: 'Step', numeric: false },
      { title: 'At', numeric: false },
      { title: 'For', numeric: false },
      { title: 'Temperature', numeric: true },
      { title: 'pH, conductivity', numeric: true },
      { title: 'Added and drained', numeric: false },
      { title: 'Decision', numeric: false }
    ],
    rows: steps.map(step => [
      [step.what, step.mesh, step.check].filter(Boolean).join('; '),
      step.at ?? '',
      step.for ?? '',
      [
        step.temperature_C?.written,
        ...(step.log ?? []).map(({ at, temperature_C }) => `${at}: ${temperature_C.written}`)
      ]
        .filter(Boolean)
        .join(', '),
      [step.ph?.written, step.conductivity_uS_per_cm?.written].filter(Boolean).join(', '),
      [
        ...(step.adds ?? []),
        step.water_g && `${step.water_g.written} of water`,
        step.cake_g && `cake ${step.cake_g.written}`
      ]
        .filter(Boolean)
        .join(', '),
      step.decision ?? ''
    ])
  }
}

const materialLinks = (content: Content, { charge }: Batch): ChainLink[] =>
  (charge ?? []).flatMap(({ material }) => {
    const record = content.materials.get(material)?.record
    return record
      ? [
          {
            lot: material,
            kind: `${record.title}, from ${record.supplier}`,
            made: dateText(record.received)
          }
        ]
      : []
  })
