/** The substances known here, as data: `substances.json`, one source to every line. */

import type { ClassName } from './classes.ts'
import type { Clause } from './clauses.ts'
import file from './substances.json' with { type: 'json' }

/** How a substance is taken up: each has its own scale of acute toxicity. */
export type Form = 'oral' | 'dermal' | 'gas' | 'vapour' | 'mist'

export type Trait =
  | 'strong acid'
  | 'strong base'
  | 'corrosive to metals'
  | 'oxidiser'
  | 'flammable'
  | 'combustible dust'

export interface ClassLine extends Clause {
  readonly class: ClassName
  /** Form of an inhalation class. */
  readonly form?: Form
  /** A closer statement than the class's own: H361d for Repr. 2. */
  readonly statement?: string
  /** The organ a statement leaves open. */
  readonly fill?: string
  /** The mark * of Annex VI: own data may only make it stricter. */
  readonly minimum?: boolean
}

/** A concentration limit of the substance's own, in % by mass. */
export interface LimitLine extends Clause {
  readonly class: ClassName
  readonly from_percent: number
  readonly below_percent?: number
}

export interface Substance {
  readonly id: string
  readonly names: readonly string[]
  readonly formula?: string
  readonly cas: string
  readonly ec: string
  readonly index?: string
  /** Where its classification comes from. */
  readonly basis: 'harmonised' | 'registration' | 'self' | 'not classified' | 'supplier'
  /** 'gas', 'at most 70 %': the state the entry is for. */
  readonly state?: string
  /** Concentrations the entry is for, where it is not for all. */
  readonly least_percent?: number
  readonly most_percent?: number
  readonly identity: Clause
  readonly classes: readonly ClassLine[]
  readonly limits: readonly LimitLine[]
  /** Acute toxicity estimates: mg/kg, ppmV for gases, mg/L. */
  readonly ates: readonly (Clause & { readonly form: Form; readonly ate: number })[]
  readonly mFactors: readonly (Clause & {
    readonly kind: 'acute' | 'chronic'
    readonly m: number
  })[]
  /** What no arithmetic covers, from which concentration on it is asked about. */
  readonly traits: readonly (Clause & { readonly trait: Trait; readonly from_percent?: number })[]
  readonly statements: readonly (Clause & { readonly code: string })[]
  readonly notes: readonly (Clause & { readonly note: string })[]
  /** Forms for which nobody knows how toxic it is. */
  readonly unknownForms?: readonly Form[]
}

// The file's shape is held by a schema in the tests.
export const substances = file.substances as unknown as readonly Substance[]

const byName = new Map(
  substances.flatMap(one => [...one.names, one.id].map(name => [name.toLowerCase(), one] as const))
)

/**
 * The substance a record names, by one of its names or its CAS number, whole and in any case.
 *
 * Never by a part of the name: tubes of carbon are listed with 'synthetic graphite' in theirs.
 */
export const findSubstance = (name: string): Substance | undefined =>
  byName.get(name.trim().toLowerCase()) ?? substances.find(({ cas }) => cas === name.trim())

/** A substance of which nothing is known but its name. */
export const unknownSubstance = (name: string): Substance => ({
  ...blank(name),
  unknownForms: ['oral', 'dermal', 'gas', 'vapour', 'mist']
})

/** What a supplier's sheet says of a substance, beside what is known here. */
export type SupplierLines = Partial<
  Pick<Substance, 'classes' | 'limits' | 'ates' | 'mFactors' | 'traits' | 'statements'>
>

/**
 * A substance with its supplier's lines. A harmonised classification stays: the supplier adds to it,
 * or replaces an M-factor or acute toxicity estimate that is stricter. Anything else gives way.
 *
 * Source: CLP Article 4(3): harmonised classes bind, others are the supplier's to judge.
 */
export function withSupplier(
  known: Substance | undefined,
  name: string,
  lines: SupplierLines
): Substance {
  const own = { ...blank(name), ...lines }
  if (!known) return own
  if (known.basis !== 'harmonised') return { ...known, ...lines, basis: 'supplier' }
  return {
    ...known,
    classes: [...known.classes, ...own.classes],
    limits: [...known.limits, ...own.limits],
    ates: [...known.ates, ...own.ates],
    mFactors: [...known.mFactors, ...own.mFactors],
    traits: [...known.traits, ...own.traits],
    statements: [...known.statements, ...own.statements]
  }
}

const blank = (name: string): Substance => ({
  id: name.trim().toLowerCase(),
  names: [name.trim()],
  cas: '',
  ec: '',
  basis: 'supplier',
  identity: { source: 'as named in the record', sure: 'print' },
  classes: [],
  limits: [],
  ates: [],
  mFactors: [],
  traits: [],
  statements: [],
  notes: []
})

/** Whether anything about its hazards is known. */
export const isKnown = ({ unknownForms, classes }: Substance): boolean =>
  (unknownForms?.length ?? 0) < 5 || classes.length > 0

/** Whether any rule of classification has something to go by; dust is told of apart from them. */
export const mayTell = (one: Substance): boolean =>
  [one.classes, one.limits, one.ates, one.mFactors, one.statements, one.unknownForms ?? []].some(
    lines => lines.length > 0
  ) || one.traits.some(({ trait }) => trait !== 'combustible dust')

export const hasClass = ({ classes }: Substance, wanted: readonly ClassName[]): boolean =>
  classes.some(line => wanted.includes(line.class))

/** Its least limit of its own for any of the wanted classes. */
export const ownLimit = (
  { limits }: Substance,
  wanted: readonly ClassName[]
): LimitLine | undefined =>
  limits
    .filter(line => wanted.includes(line.class))
    .reduce<LimitLine | undefined>(
      (least, line) => (least && least.from_percent <= line.from_percent ? least : line),
      undefined
    )
