/** A lot's hazards: computed from what was measured, beside what its grade declares. */

import { leastPH, predictedPH } from '../evaluate/filtrate.ts'
import { permanganateLeft_percent } from '../evaluate/oxidiser-left.ts'
import type { EvaluatedBatch, EvaluatedFoil, Result } from '../evaluate/types.ts'
import { type ClassName, isClassName } from '../hazards/classes.ts'
import {
  articleClassification,
  classifyFlake,
  type LotClassification,
  type LotEvidence,
  undecidedArticle
} from '../hazards/classify-lot.ts'
import { type Comparison, compareDeclared } from '../hazards/declared.ts'
import { sidesOf } from '../hazards/explain.ts'
import type { Ingredient, Uncertain } from '../hazards/mixture.ts'
import type { Answer } from '../hazards/tests-only.ts'
import { expand } from '../metrology/coverage.ts'
import type { Batch, Grade, Material, Records } from '../records/types.ts'
import { articleDoubts, type ArticleStatement, openStatement, statementOn } from './article.ts'
import { materialsOf, mayHoldOtherAcid, wasOxidised } from './charged.ts'
import { suppliedSubstance } from './supplier-lines.ts'

type BatchDecision = NonNullable<NonNullable<Batch['hazards']>['decisions']>[number]

export interface HazardDecision extends Omit<BatchDecision, 'about'> {
  readonly about: BatchDecision['about'] | 'article'
}

/** What keeps a lot from release until someone who may says why not. */
export interface OpenHazard {
  readonly about: HazardDecision['about']
  /** One sentence without a full stop. */
  readonly text: string
}

export interface LotHazards {
  readonly evidence: LotEvidence
  readonly classification: LotClassification
  readonly declared: readonly ClassName[]
  readonly comparison: Comparison
  /** Decisions taken by the day. */
  readonly decisions: readonly HazardDecision[]
  /** Not decided on by the day. */
  readonly open: readonly OpenHazard[]
  /** Of foil: the competent person's statement in force, whatever speaks against it. */
  readonly article?: ArticleStatement
}

/** Decisions recorded on a lot, in whatever order. */
export const decisionsOn = (lot: EvaluatedBatch | EvaluatedFoil): readonly HazardDecision[] =>
  lot.entry.record.hazards?.decisions ?? []

/** Classify a lot as of a day; undefined where its grade says nothing to hold it to. */
export function lotHazards(
  content: Records,
  lot: EvaluatedBatch | EvaluatedFoil,
  grade: Grade,
  day: string
): LotHazards | undefined {
  const decisions = decisionsOn(lot).filter(({ on }) => on <= day)
  if (lot.kind === 'foil') return foilHazards(lot, grade, decisions, day)
  if (!grade.hazards) return undefined
  const evidence = evidenceOf(content, lot, grade, decisions)
  const classification = classifyFlake(evidence)
  return against(grade, decisions, { evidence, classification }, [])
}

/** Foil is an article where someone competent says so, and nothing measured overturns it. */
function foilHazards(
  lot: EvaluatedFoil,
  grade: Grade,
  decisions: readonly HazardDecision[],
  day: string
): LotHazards | undefined {
  if (!grade.hazards && !grade.article) return undefined
  const doubts = articleDoubts(lot, grade, day)
  const isDecided = decisions.some(({ about }) => about === 'article')
  const classification = doubts.length === 0 || isDecided ? articleClassification : undecidedArticle
  const article = statementOn({ article: openStatement(grade) }, day)
  const found = { evidence: {}, classification, ...(article ? { article } : {}) }
  return against(
    grade,
    decisions,
    found,
    doubts.map(text => ({ about: 'article', text }))
  )
}

/** What was found of a lot beside what its grade declares. */
function against(
  { hazards }: Grade,
  decisions: readonly HazardDecision[],
  found: Pick<LotHazards, 'evidence' | 'classification' | 'article'>,
  doubts: readonly OpenHazard[]
): LotHazards {
  const declared = (hazards?.classified ?? []).filter(isClassName)
  const comparison = compareDeclared(declared, found.classification)
  const open = [
    ...openOf(found.classification, comparison, hazards?.classifiedBy !== undefined),
    ...doubts
  ]
  return {
    ...found,
    declared,
    comparison,
    decisions,
    open: open.filter(({ about }) => !decisions.some(decision => decision.about === about))
  }
}

function evidenceOf(
  content: Records,
  lot: EvaluatedBatch,
  { hazards }: Grade,
  decisions: readonly HazardDecision[]
): LotEvidence {
  const { freeAcid_percent: acid, slurryPH, moisture_percent: moisture } = lot.product
  const predicted = predictedPH(lot)
  const least = leastPH(lot)
  const taken = decisions.findLast(({ take }) => take !== undefined)?.take
  const materials = materialsOf(content, lot.entry.record)
  return {
    acid: suppliedSubstance('sulfuric acid', materials),
    ...(acid ? { freeAcid_percent: { ...uncertain(acid), ...belowOf(acid) } } : {}),
    ...(slurryPH ? { slurryPH: uncertain(slurryPH) } : {}),
    ...(predicted === undefined ? {} : { predictedPH: predicted }),
    ...(least === undefined ? {} : { leastPH: least }),
    ...(acid && slurryPH && predicted === undefined && least === undefined
      ? { leachUnknown: true }
      : {}),
    ...(mayHoldOtherAcid(content, lot.entry.record) ? { otherAcidCharged: true } : {}),
    ...(moisture ? { moisture_percent: moisture.estimate.value } : {}),
    residues: residuesOf(lot, materials),
    oxidiserFound: isLeft(lot.process.residualNitrate_mg_per_kg),
    oxidiserCharged: wasOxidised(content, lot.entry.record),
    answers: decisions.flatMap(answerOf),
    ...(taken === undefined ? {} : { settled: taken === 'ph' ? 'pH' : 'limits' }),
    ...(hazards?.dust ? { dust: hazards.dust } : {})
  }
}

/** Residues as recorded, and the permanganate a leach found where the record names none. */
function residuesOf(lot: EvaluatedBatch, materials: readonly Material[]): Ingredient[] {
  const recorded = (lot.entry.record.hazards?.residues ?? []).map(
    ({ substance, fraction_percent }) => ({
      substance: suppliedSubstance(substance, materials),
      percent: fraction_percent.value,
      U: fraction_percent.resolution
    })
  )
  const left = permanganateLeft_percent(lot)
  const substance = suppliedSubstance('potassium permanganate', materials)
  return left === undefined || recorded.some(one => one.substance.id === substance.id)
    ? recorded
    : [...recorded, { substance, percent: left.value, U: left.U }]
}

/** Whether a test found more of it than its own uncertainty leaves open. */
const isLeft = (result: Result | undefined): boolean =>
  result !== undefined &&
  result.below === undefined &&
  result.estimate.value > expand(result.estimate).U

const uncertain = ({ estimate }: Result): Uncertain => ({
  value: estimate.value,
  U: expand(estimate).U
})

const belowOf = ({ below }: Result) => (below === undefined ? {} : { below })

function answerOf({ about, class: name, because }: HazardDecision): Answer[] {
  if (about !== 'oxidising' && about !== 'metals' && about !== 'flammable') return []
  return [
    { topic: about, because, ...(name !== undefined && isClassName(name) ? { class: name } : {}) }
  ]
}

/** @param isAnswered whether somebody answers for what is declared beyond what is computed */
function openOf(
  found: LotClassification,
  { missing, beyond }: Comparison,
  isAnswered: boolean
): OpenHazard[] {
  return [
    ...found.questions.map(({ topic, text }) => ({ about: topic, text: `the lot ${text}` })),
    ...found.gaps.map(text => ({ about: 'missing data' as const, text })),
    ...found.conflicts
      .filter(({ settled }) => !settled)
      .map(conflict => ({
        about: 'limit or ph' as const,
        text: sidesOf(conflict)
      })),
    ...(found.mismatch === undefined ? [] : [{ about: 'filtrate' as const, text: found.mismatch }]),
    ...(missing.length === 0
      ? []
      : [
          {
            about: 'declaration' as const,
            text: `it is computed as ${missing.join(', ')}, which its grade does not declare`
          }
        ]),
    ...(beyond.length === 0 || isAnswered
      ? []
      : [
          {
            about: 'declaration' as const,
            text: `its grade declares ${beyond.join(', ')}, beyond what is computed, and names nobody who answers for that ('classified-by:')`
          }
        ])
  ]
}
