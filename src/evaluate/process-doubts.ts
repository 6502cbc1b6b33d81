/** Things done in a batch that should not be done so: told as warnings, the record stands. */

import { bases, isBase } from '../chemistry/neutralisation.ts'
import { expand } from '../metrology/coverage.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { Batch, Entry, Material, Records } from '../records/types.ts'
import { partsOf, unsaidOf } from './composition.ts'
import { hottest, temperatureBefore } from './liquor-results.ts'
import type { EvaluatedBatch } from './types.ts'

/** Every doubt about how a batch was done that its record alone raises. */
export const doubtProcess = (content: Records, entry: Entry<Batch>): Problem[] => [
  ...doubtOrder(content, entry),
  ...doubtMixture(content, entry),
  ...doubtStrength(content, entry)
]

const materialsOf = ({ materials }: Records, { charge = [] }: Batch): Material[] =>
  charge.flatMap(({ material }) => materials.get(material)?.record ?? [])

/** A neutraliser before the quench meets concentrated acid. */
function doubtOrder(content: Records, entry: Entry<Batch>): Problem[] {
  const { steps = [] } = entry.record
  const neutralisers = materialsOf(content, entry.record)
    .filter(({ kind }) => kind === 'neutraliser')
    .map(({ lot }) => lot)
  const quench = steps.findIndex(({ does, what }) => does === 'quench' || /\bquench/iu.test(what))
  const first = steps.findIndex(
    ({ does, adds = [], what }) =>
      does === 'neutralise' ||
      adds.some(lot => neutralisers.includes(lot)) ||
      /\bneutrali[sz]/iu.test(what)
  )
  if (quench < 0 || first < 0 || first >= quench) return []
  return [
    problemAt(
      entry.at(['steps', first, 'what']),
      'STEP_ORDER',
      'the neutraliser went in before the quench: concentrated acid and base react violently',
      'quench first; if it was done in this order, say under notes what happened'
    )
  ]
}

const holds = (materials: readonly Material[], pattern: RegExp) =>
  materials.find(material => partsOf(material).some(({ name }) => pattern.test(name)))

/** Ammonium with a strong base frees ammonia; nitrate with ammonium makes an energetic salt. */
function doubtMixture(content: Records, entry: Entry<Batch>): Problem[] {
  const all = materialsOf(content, entry.record)
  const ammonium = holds(all, /^ammonium /u)
  const strong = all.find(material =>
    partsOf(material).some(({ name }) => isBase(name) && bases[name].frees)
  )
  const nitrate = holds(all, /(?<!ammonium )nitrate$|^nitric acid/u)
  const ammonia = holds(all, /^ammoni(?:a|um)\b/u)
  return [
    ...(ammonium && strong
      ? [
          mixture(
            entry,
            strong.lot,
            `${strong.lot} is a strong base, and ${ammonium.lot} holds ammonium: together they free ammonia`,
            'use hydrogen carbonate instead; work under extraction'
          )
        ]
      : []),
    ...(nitrate && ammonia
      ? [
          mixture(
            entry,
            ammonia.lot,
            `${ammonia.lot} brings ammonium and ${nitrate.lot} nitrate: their liquor dries up to ammonium nitrate`,
            'never let that liquor dry up or get hot; ask competent people how to dispose of it'
          )
        ]
      : [])
  ]
}

const mixture = (entry: Entry<Batch>, lot: string, message: string, hint: string): Problem => {
  const index = (entry.record.charge ?? []).findIndex(({ material }) => material === lot)
  return problemAt(entry.at(['charge', index, 'material']), 'INCOMPATIBLE', message, hint)
}

function doubtStrength({ materials }: Records, entry: Entry<Batch>): Problem[] {
  return (entry.record.charge ?? []).flatMap(({ material }, index) => {
    const record = materials.get(material)?.record
    const unsaid = record && unsaidOf(record)
    return unsaid && !unsaid.isMistake
      ? [
          problemAt(
            entry.at(['charge', index, 'material']),
            'UNSAID_STRENGTH',
            `${unsaid.why}: no demand is computed`,
            unsaid.hint
          )
        ]
      : []
  })
}

/** A quench that got hotter than dilution explains: something else gave heat. */
export function doubtHeat({ entry, process }: EvaluatedBatch): Problem[] {
  const { steps = [] } = entry.record
  const rise = process.dilutionRise_K?.estimate
  const index = steps.findIndex(({ does }) => does === 'quench')
  const [from, to] = [temperatureBefore(entry.record, index), hottest(steps[index])]
  if (!rise || from === undefined || to === undefined) return []
  const most = from + rise.value + expand(rise).U
  return to <= most
    ? []
    : [
        problemAt(
          entry.at(['steps', index]),
          'HOTTER_THAN_DILUTION',
          `the quench got to ${to} °C, above the ${Number(most.toPrecision(3))} °C that the heat of dilution explains`,
          'check the temperatures and masses; oxidiser left over may have gone on reacting'
        )
      ]
}
