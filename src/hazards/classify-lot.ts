/**
 * The classification of a lot of expandable flake or of foil, from what was measured on it.
 *
 * Free acid is what leaches out and was titrated; what is bound between the layers is not free, and
 * belongs to the substance. The free acid counts as sulfuric acid, the moisture as water, residues as
 * found; the rest is the expandable graphite, whose joint registration concludes that it needs no
 * classification. Free acid and slurry pH belong to one filtrate and must go together.
 */

import { type Classification, classify } from './classify.ts'
import { clauses } from './clauses.ts'
import type { DustTest } from './dust.ts'
import type { Edition } from './editions.ts'
import { type Ingredient, shown, sumOf, type Uncertain } from './mixture.ts'
import { findSubstance, type Substance } from './substances.ts'
import type { Answer, Question } from './tests-only.ts'

/** What was measured of a lot; absent where it was not. */
export interface LotEvidence {
  /** What leachable acid counts as; sulfuric acid as listed here where nothing is said. */
  readonly acid?: Substance
  /** Leachable acid as H2SO4; `below` where all that is known is that it is less. */
  readonly freeAcid_percent?: Uncertain & { readonly below?: number }
  readonly slurryPH?: Uncertain
  /** pH that the titrated acid makes of the same slurry. */
  readonly predictedPH?: number
  /** The least pH that it can make, where all that is known of the acid is that it is less. */
  readonly leastPH?: number
  /** Whether acid and pH were measured, and not how much water the acid was leached with. */
  readonly leachUnknown?: boolean
  /** Whether a strong acid other than sulfuric went in, which the titration counts as sulfuric. */
  readonly otherAcidCharged?: boolean
  readonly moisture_percent?: number
  /** Residues found by analysis, such as an oxidiser's. */
  readonly residues?: readonly Ingredient[]
  /** Whether an oxidiser went into the process; which one is nobody else's business. */
  readonly oxidiserCharged?: boolean
  /** Whether a test of the lot found a residue of one that no class is computed from. */
  readonly oxidiserFound?: boolean
  readonly answers?: readonly Answer[]
  readonly settled?: 'limits' | 'pH'
  readonly dust?: DustTest
}

export interface LotClassification extends Classification {
  /** Why nothing is classified: an article is outside the law's scope. */
  readonly article?: string
  /** Set where titrated acid and measured pH cannot both be right. */
  readonly mismatch?: string
}

/** Two figures of one filtrate further apart than this contradict each other. */
export const PH_TOLERANCE = 0.5

const known = (name: string) => findSubstance(name)!

/** Classify a lot of expandable flake. */
export function classifyFlake(evidence: LotEvidence, edition: Edition = 'clp'): LotClassification {
  const { slurryPH, answers = [], settled } = evidence
  const found = classify({
    ingredients: composition(evidence),
    edition,
    registered: true,
    ...(slurryPH ? { pH: slurryPH } : {}),
    answers,
    ...(settled ? { settled } : {})
  })
  const gaps = [...missing(evidence), ...found.gaps]
  const questions = [...found.questions, ...oxidiserQuestion(evidence, found.questions)]
  const mismatch = mismatchOf(evidence)
  const open = gaps.length > 0 || questions.length > 0 || mismatch !== undefined
  return {
    ...found,
    gaps,
    questions,
    ...(mismatch === undefined ? {} : { mismatch }),
    state: open ? 'incomplete' : found.state
  }
}

/** Nothing is computed of foil where it is not settled that it is an article: never 'not classified'. */
export const undecidedArticle: LotClassification = {
  classes: [],
  supplements: [],
  questions: [],
  conflicts: [],
  gaps: [],
  unknown: [],
  state: 'incomplete'
}

/** Foil is an article, where someone competent says so: nothing is computed of it. */
export const articleClassification: LotClassification = {
  ...undecidedArticle,
  state: 'complete',
  article: `foil is an article, outside the rules for substances and mixtures: ${clauses.article.source}`
}

function composition({
  acid: substance = known('sulfuric acid'),
  freeAcid_percent: acid,
  moisture_percent: moisture = 0,
  residues = []
}: LotEvidence) {
  const value = acid?.below === undefined ? Math.max(0, acid?.value ?? 0) : 0
  const parts: Ingredient[] = [
    { substance, percent: value, U: acid?.below ?? acid?.U ?? 0 },
    { substance: known('water'), percent: Math.max(0, moisture) },
    ...residues
  ]
  const rest = sumOf([100, ...parts.map(({ percent }) => -percent)])
  return [...parts, { substance: known('expandable graphite'), percent: rest }]
}

/** From here on an acid other than sulfuric, with limits of its own, could make another class. */
const OTHER_ACID_PERCENT = 1

const missing = (evidence: LotEvidence): string[] => {
  const { freeAcid_percent: acid, slurryPH, leachUnknown = false } = evidence
  return [
    ...(acid ? [] : ['free acidity was not measured']),
    ...(slurryPH ? [] : ['the pH of the slurry was not measured']),
    ...(leachUnknown
      ? ['the water of the leach is not recorded, so that acid and pH cannot be held together']
      : []),
    ...(mayBeOtherAcid(evidence)
      ? [
          'a strong acid other than sulfuric was charged, and how much of the acid titrated it is was not recorded among the residues'
        ]
      : [])
  ]
}

function mayBeOtherAcid({
  otherAcidCharged = false,
  freeAcid_percent: acid,
  residues = []
}: LotEvidence): boolean {
  if (!otherAcidCharged || !acid) return false
  const most = acid.below ?? acid.value + acid.U
  const isTold = residues.some(({ substance }) =>
    substance.traits.some(({ trait }) => trait === 'strong acid')
  )
  return most >= OTHER_ACID_PERCENT && !isTold
}

/** An oxidiser went in, and nobody says whether any is left. */
function oxidiserQuestion(
  { oxidiserCharged = false, oxidiserFound = false, answers = [] }: LotEvidence,
  asked: readonly Question[]
): Question[] {
  const isSettled = [...answers, ...asked].some(({ topic }) => topic === 'oxidising')
  if (isSettled || !(oxidiserCharged || oxidiserFound)) return []
  const text = oxidiserFound
    ? 'holds a residue of an oxidiser by its own test: test whether it oxidises (UN O.1) or justify why not'
    : 'may hold a residue of the oxidiser it was made with: test for it or justify why none is left'
  return [{ topic: 'oxidising', text, clause: clauses.oxidisingSolid }]
}

/** The pH measured against the pH that the titrated acid makes. */
function mismatchOf({ slurryPH, predictedPH, leastPH }: LotEvidence): string | undefined {
  if (!slurryPH) return undefined
  const { value } = slurryPH
  const wrong = `${shown(value)} was measured: one of the two is wrong`
  if (predictedPH !== undefined && Math.abs(value - predictedPH) > PH_TOLERANCE)
    return `the acid titrated makes the slurry's pH about ${shown(predictedPH)}, and ${wrong}`
  return leastPH !== undefined && value < leastPH - PH_TOLERANCE
    ? `so little acid was titrated that the slurry's pH is ${shown(leastPH)} at least, and ${wrong}`
    : undefined
}
