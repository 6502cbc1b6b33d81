/** What the lots of a grade, taken together, say of one quantity: for the workshop alone. */

import { FEWEST_FOR_LIMITS, type WatchedProcess } from '../judge/watch.ts'
import {
  capability,
  FEW_FIGURES,
  type Index,
  type Indices,
  type Tolerance
} from '../quality/capability.ts'
import { lotVariance } from '../quality/lot-variance.ts'
import { measurementShare } from '../quality/measurement-share.ts'
import { andersonDarling } from '../quality/normality.ts'
import { FEWEST_FOR_MANY, generalisedExtremes, grubbs } from '../quality/outliers.ts'
import { lagOneAutocorrelation, sampleOf } from '../quality/sample.ts'
import { distributionFreeInterval, toleranceInterval } from '../quality/tolerance.ts'
import type { QuantityName } from '../quantities.ts'
import { probabilityFigure, significant, withUnit } from './figure.ts'
import type { Fact } from './types.ts'
import { LEAST_P, printedEnds } from './typical.ts'
import { atScatter } from './watch-chart.ts'
import { listText } from './words.ts'

interface FindingInputs {
  readonly quantity: QuantityName
  readonly unit: string
  readonly process: WatchedProcess
  readonly tolerance: Tolerance
  readonly limit: string
}

/** With fewer lots the limits are drawn and said to be provisional: common practice, no source. */
const FEW_FOR_LIMITS = 20

/** Every finding that the number of lots allows, and what it does not allow. */
export function findingsOf(inputs: FindingInputs): Fact[] {
  const { process } = inputs
  const values = process.figures.map(({ value }) => value)
  if (process.below > 0)
    return [
      {
        label: 'No statistics',
        text: `${process.below} of ${process.below + values.length} figures lie below their reporting limit and have no value to average.`
      }
    ]
  if (!process.chart)
    return [
      {
        label: 'No limits yet',
        text:
          values.length < FEWEST_FOR_LIMITS
            ? `Limits are drawn from ${FEWEST_FOR_LIMITS} lots on.`
            : 'The figures do not scatter.'
      }
    ]
  return [
    ...positionFacts(inputs, values),
    ...capabilityFacts(inputs, values),
    ...intervalFacts(inputs, values),
    outlierFact(process),
    shapeFact(values),
    ...scatterFacts(inputs)
  ]
}

function positionFacts({ process, unit }: FindingInputs, values: readonly number[]): Fact[] {
  const { centre, lower, upper, sigma } = process.chart!
  const { s } = sampleOf(values)
  const text = atScatter(values)
  const lag = lagOneAutocorrelation(values)
  const few =
    values.length < FEW_FOR_LIMITS
      ? ` Provisional: from ${values.length} lots, not 20 or more.`
      : ''
  const hang =
    Math.abs(lag) > 2 / Math.sqrt(values.length)
      ? 'neighbours hang together, so the limits are not to be trusted'
      : 'no more than chance gives'
  return [
    {
      label: 'Mean and scatter',
      text: `Mean ${withUnit(text(centre), unit)}; standard deviation ${withUnit(significant(s, 2).printed, unit)} over all, ${withUnit(significant(sigma, 2).printed, unit)} from neighbours.`
    },
    {
      label: 'Limits of the chart',
      text: `${withUnit(`${text(lower)} to ${text(upper)}`, unit)}: three standard deviations, from neighbours.${few}`
    },
    {
      label: 'Neighbours',
      text: `Autocorrelation ${significant(lag, 2).printed}: ${hang}.`
    }
  ]
}

function capabilityFacts({ tolerance, limit }: FindingInputs, values: readonly number[]): Fact[] {
  if (tolerance.min === undefined && tolerance.max === undefined) return []
  const found = capability(values, tolerance)
  if (!found) return []
  const few = found.isFew
    ? ` Fewer than ${FEW_FIGURES} lots: the intervals say how little the indices are worth.`
    : ''
  const fact = (label: string, [wide, near]: readonly [string, string], part: Indices): Fact => ({
    label,
    text: `${[...(part.width ? [indexText(wide, part.width)] : []), indexText(near, part.nearest)].join('; ')}, with 95 % confidence, of lot means against ${limit}.${few}`
  })
  return [
    fact('Capability', ['Cp', 'Cpk'], found.within),
    fact('Performance', ['Pp', 'Ppk'], found.overall)
  ]
}

const indexText = (name: string, { value, lower, upper }: Index) =>
  `${name} ${significant(value, 3).printed} (${significant(lower, 2).printed} to ${significant(upper, 2).printed})`

function intervalFacts({ quantity, unit }: FindingInputs, values: readonly number[]): Fact[] {
  const normal = printedEnds(toleranceInterval(values), values, quantity)
  const found = distributionFreeInterval(values)
  const free = printedEnds(found, values, quantity)
  const part = probabilityFigure(found.held).printed
  return [
    {
      label: 'Tolerance interval, normal',
      text: `${withUnit(`${normal.lower.printed} to ${normal.upper.printed}`, unit)} holds 95 % of lots with 95 % confidence, if their shape is normal.`
    },
    {
      label: 'The same, any shape',
      text: `${withUnit(`${free.lower.printed} to ${free.upper.printed}`, unit)} holds ${part} % of lots with 95 % confidence.`
    }
  ]
}

/** Most outliers looked for among many. */
const MOST_OUTLIERS = 5

/** A flag and nothing more: the figure stays in every other finding. */
function outlierFact({ figures }: WatchedProcess): Fact {
  const values = figures.map(({ value }) => value)
  const many = values.length >= FEWEST_FOR_MANY
  const extremes = many ? generalisedExtremes(values, MOST_OUTLIERS) : [grubbs(values)]
  const out = extremes.filter(one => one !== undefined).filter(({ isOutlier }) => isOutlier)
  const test = many ? 'generalised extreme deviate test' : 'Grubbs test'
  return {
    label: 'Outliers',
    text:
      out.length === 0
        ? `None flagged (${test}, 5 %).`
        : `${listText(out.map(({ index }) => figures[index]!.lot))} flagged (${test}, 5 %): look into it. It stays in every figure here.`
  }
}

function shapeFact(values: readonly number[]): Fact {
  const found = andersonDarling(values)!
  const says = found.p < LEAST_P ? 'the figures are not normal' : 'nothing speaks against normal'
  return {
    label: 'Shape',
    text: `Anderson–Darling A² = ${significant(found.corrected, 2).printed}, p ${chance(found.p)}: ${says}.`
  }
}

function scatterFacts({ process, unit, tolerance }: FindingInputs): Fact[] {
  const lots = lotVariance(process.figures.map(({ readings }) => readings))
  const { min, max } = tolerance
  const width = min === undefined || max === undefined ? undefined : max - min
  const share = measurementShare(process.figures, width)
  const round = (value: number) => withUnit(significant(value, 2).printed, unit)
  const percent = (part: number) => `${probabilityFigure(part).printed} %`
  return [
    ...(lots
      ? [
          {
            label: 'Between and within lots',
            text: `Standard deviation ${round(lots.betweenSigma)} between lots, ${round(lots.withinSigma)} between readings of one lot; F = ${significant(lots.F, 3).printed}, p ${chance(lots.p)}.`
          }
        ]
      : []),
    ...(share
      ? [
          {
            label: 'Measurement',
            text: `Standard uncertainty ${round(share.u)}: at most ${percent(share.ofScatter)} of the variance seen${share.ofTolerance === undefined ? '' : `; six of it fill ${percent(share.ofTolerance)} of the room between the limits`}.`
          }
        ]
      : [])
  ]
}

/** '= 4.2 %', '< 0.1 %'. */
function chance(p: number): string {
  const { printed } = probabilityFigure(p)
  return `${/^[<>]/u.test(printed) ? '' : '= '}${printed} %`
}
