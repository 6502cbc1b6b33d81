/** A lot's hazards: computed from what was measured, beside what its grade declares. */

import { predictedPH } from '../evaluate/filtrate.ts'
import type { EvaluatedBatch, EvaluatedFoil, Result } from '../evaluate/types.ts'
import { type ClassName, isClassName } from '../hazards/classes.ts'
import {
  articleClassification,
  classifyFlake,
  type LotClassification,
  type LotEvidence
} from '../hazards/classify-lot.ts'
import { type Comparison, compareDeclared } from '../hazards/declared.ts'
import type { Uncertain } from '../hazards/mixture.ts'
import type { Answer } from '../hazards/tests-only.ts'
import { expand } from '../metrology/coverage.ts'
import type { Batch, Grade, Material, Records } from '../records/types.ts'
import { suppliedSubstance } from './supplier-lines.ts'

export type HazardDecision = NonNullable<NonNullable<Batch['hazards']>['decisions']>[number]

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
}

/** Classify a lot as of a day; undefined where its grade declares nothing to hold it to. */
export function lotHazards(
  content: Records,
  lot: EvaluatedBatch | EvaluatedFoil,
  grade: Grade,
  day: string
): LotHazards | undefined {
  if (!grade.hazards) return undefined
  const declared = grade.hazards.classified.filter(isClassName)
  const all = lot.kind === 'batch' ? (lot.entry.record.hazards?.decisions ?? []) : []
  const decisions = all.filter(({ on }) => on <= day)
  const evidence = lot.kind === 'batch' ? evidenceOf(content, lot, grade, decisions) : {}
  const classification = lot.kind === 'batch' ? classifyFlake(evidence) : articleClassification
  const comparison = compareDeclared(declared, classification)
  const open = openOf(classification, comparison)
  return {
    evidence,
    classification,
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
  const taken = decisions.findLast(({ take }) => take !== undefined)?.take
  const materials = materialsOf(content, lot.entry.record)
  return {
    acid: suppliedSubstance('sulfuric acid', materials),
    ...(acid ? { freeAcid_percent: { ...uncertain(acid), ...belowOf(acid) } } : {}),
    ...(slurryPH ? { slurryPH: uncertain(slurryPH) } : {}),
    ...(predicted === undefined ? {} : { predictedPH: predicted }),
    ...(moisture ? { moisture_percent: moisture.estimate.value } : {}),
    residues: (lot.entry.record.hazards?.residues ?? []).map(({ substance, fraction_percent }) => ({
      substance: suppliedSubstance(substance, materials),
      percent: fraction_percent.value,
      U: fraction_percent.resolution
    })),
    oxidiserCharged: wasOxidised(content, lot.entry.record),
    answers: decisions.flatMap(answerOf),
    ...(taken === undefined ? {} : { settled: taken === 'ph' ? 'pH' : 'limits' }),
    ...(hazards?.dust ? { dust: hazards.dust } : {})
  }
}

const uncertain = ({ estimate }: Result): Uncertain => ({
  value: estimate.value,
  U: expand(estimate).U
})

const belowOf = ({ below }: Result) => (below === undefined ? {} : { below })

/** What went into a batch, or into those it was blended from. */
const materialsOf = (content: Records, { charge = [], from = [] }: Batch): Material[] => [
  ...charge.flatMap(({ material }) => content.materials.get(material)?.record ?? []),
  ...from.flatMap(({ lot }) => {
    const part = content.batches.get(lot)
    return part ? materialsOf(content, part.record) : []
  })
]

/** Whether an oxidiser went into a batch, or into one it was blended from. */
const wasOxidised = (content: Records, { charge = [], from = [] }: Batch): boolean =>
  charge.some(line => line.as === 'oxidiser') ||
  from.some(({ lot }) => {
    const part = content.batches.get(lot)
    return part !== undefined && wasOxidised(content, part.record)
  })

function answerOf({ about, class: name, because }: HazardDecision): Answer[] {
  if (about !== 'oxidising' && about !== 'metals' && about !== 'flammable') return []
  return [
    { topic: about, because, ...(name !== undefined && isClassName(name) ? { class: name } : {}) }
  ]
}

function openOf(found: LotClassification, { missing }: Comparison): OpenHazard[] {
  return [
    ...found.questions.map(({ topic, text }) => ({ about: topic, text: `the lot ${text}` })),
    ...found.gaps.map(text => ({ about: 'missing data' as const, text })),
    ...found.conflicts
      .filter(({ settled }) => !settled)
      .map(() => ({
        about: 'limit or ph' as const,
        text: 'concentration limit and pH rule give different classes for the skin'
      })),
    ...(found.mismatch === undefined ? [] : [{ about: 'filtrate' as const, text: found.mismatch }]),
    ...(missing.length === 0
      ? []
      : [
          {
            about: 'declaration' as const,
            text: `it is computed as ${missing.join(', ')}, which its grade does not declare`
          }
        ])
  ]
}
