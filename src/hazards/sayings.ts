/**
 * Why a class applies, as parts a sentence is made of: names and figures, which any language can word.
 * English stands here, where the rules are; other languages word the same parts for their papers.
 */

import type { ClassName } from './classes.ts'
import type { Form } from './substances.ts'

/** An ingredient by its first English name, and its share in %, as shown. */
interface Part {
  readonly name: string
  readonly percent: string
}

/** An ingredient against its limit in %; `own` where the limit is the ingredient's. */
export interface LimitedPart extends Part {
  readonly limit: string
  readonly own: boolean
}

export type Saying =
  /** By a sum of shares of limits; `sum` of several ingredients. */
  | { readonly is: 'sum'; readonly parts: readonly LimitedPart[]; readonly sum?: string }
  | {
      readonly is: 'toxicity'
      readonly parts: readonly (Part & { readonly ate: string })[]
      readonly unit: string
      readonly form: Form
      readonly mixture: string
      readonly most: string
      /** Part of the mixture in %, of unknown toxicity, that was left out. */
      readonly unknown?: string
    }
  | {
      readonly is: 'weighed'
      readonly parts: readonly (Part & { readonly weight?: string })[]
      readonly sum: string
      readonly limit: string
    }
  | ({ readonly is: 'alone'; readonly class: ClassName } & LimitedPart)
  | { readonly is: 'follows'; readonly from: ClassName }
  | { readonly is: 'as such'; readonly name: string }
  | { readonly is: 'band'; readonly part: LimitedPart }
  | {
      readonly is: 'extreme pH'
      readonly pH: string
      readonly limit: string
      readonly side: 'low' | 'high'
    }
  /** What somebody recorded, in the words of the record. */
  | { readonly is: 'recorded'; readonly because: string }

const limited = ({ name, percent, limit, own }: LimitedPart): string =>
  `${name} ${percent} %, ${own ? 'its own limit' : 'limit'} ${limit} %`

type Of<Kind extends Saying['is']> = Extract<Saying, { is: Kind }>

const sum = ({ parts, sum: together }: Of<'sum'>): string =>
  together === undefined
    ? parts.map(limited).join('; ')
    : `${parts.map(limited).join('; ')}; shares of their limits together ${together}, limit 1`

function toxicity({ parts, unit, form, mixture, most, unknown }: Of<'toxicity'>): string {
  const all = parts.map(({ name, percent, ate }) => `${name} ${percent} % of ATE ${ate} ${unit}`)
  const less = unknown === undefined ? '' : `, ${unknown} % of unknown toxicity left out`
  return `${all.join('; ')}: ATEmix ${mixture} ${unit} (${form}), at most ${most}${less}`
}

function weighed({ parts, sum: total, limit }: Of<'weighed'>): string {
  const all = parts.map(
    ({ name, percent, weight }) =>
      `${weight === undefined ? '' : `${weight} × `}${name} ${percent} %`
  )
  return `${all.join(' + ')} = ${total} %, limit ${limit} %`
}

/** One sentence without a full stop, figures included. */
export function inEnglish(said: Saying): string {
  switch (said.is) {
    case 'sum':
      return sum(said)
    case 'toxicity':
      return toxicity(said)
    case 'weighed':
      return weighed(said)
    case 'alone':
      return limited({ ...said, name: `${said.name} (${said.class})` })
    case 'follows':
      return `follows from ${said.from}`
    case 'as such':
      return `${said.name} as such`
    case 'band':
      return limited(said.part)
    case 'extreme pH':
      return `pH ${said.pH}, at or ${said.side === 'low' ? 'below' : 'above'} ${said.limit}`
    case 'recorded':
      return said.because
  }
}
