/** The substances known here, as data: `substances.json`, one source to every line. */

import { classEntry, type ClassName } from './classes.ts'
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
export type SupplierLines = Pick<
  Substance,
  'classes' | 'limits' | 'ates' | 'mFactors' | 'traits' | 'statements'
>

/**
 * A substance with its supplier's lines. A harmonised classification stays: the supplier adds to it,
 * but sets no limits for families of classes the law speaks of itself. Any other gives way, while what
 * no class says (that it oxidises, say) stays beside the supplier's word.
 *
 * Source: CLP Articles 4(3) and 10(4): harmonised classes and their limits bind, others are the
 * supplier's to judge (from memory, not checked against the print).
 */
export function withSupplier(
  known: Substance | undefined,
  name: string,
  lines: Partial<SupplierLines>
): Substance {
  const own = { ...blank(name), ...lines }
  const traits = [...(known?.traits ?? []), ...own.traits, ...own.classes.flatMap(traitOf)]
  if (!known) return { ...own, traits }
  if (known.basis !== 'harmonised') return { ...known, ...lines, traits, basis: 'supplier' }
  return {
    ...known,
    classes: [...known.classes, ...own.classes],
    limits: [...known.limits, ...own.limits.filter(line => !isHarmonised(known, line.class))],
    ates: [...known.ates, ...own.ates],
    mFactors: [...known.mFactors, ...own.mFactors],
    traits,
    statements: [...known.statements, ...own.statements]
  }
}

/** Whether the law itself gives a substance a class of this family, or a limit for one. */
export const isHarmonised = ({ basis, classes, limits }: Substance, name: ClassName): boolean =>
  basis === 'harmonised' &&
  [...classes, ...limits].some(line => classEntry(line.class).family === classEntry(name).family)

/** What else a mixture has to be asked about, where an ingredient has such a class. */
function traitOf({ class: name, source, sure }: ClassLine): Substance['traits'][number][] {
  const [kind] = name.split('.')
  if (kind === 'Ox') return [{ trait: 'oxidiser', source, sure }]
  if (kind === 'Flam') return [{ trait: 'flammable', source, sure }]
  return kind === 'Met' ? [{ trait: 'corrosive to metals', from_percent: 1, source, sure }] : []
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
