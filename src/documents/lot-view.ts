/**
 * What the public may know of a lot: the allow-list.
 *
 * Public documents are built from LotViews and GradeViews, so a field that is not copied here by name
 * cannot reach a customer.
 */

import type { Result } from '../evaluate/types.ts'
import { type ArticleStatement, openStatement } from '../judge/article.ts'
import type { LotHazards } from '../judge/lot-hazards.ts'
import type { JudgedLot, JudgedRow } from '../judge/types.ts'
import type { DecisionRule } from '../quality/judge.ts'
import { isSellable, type LotState, wasLetGo } from '../quality/status.ts'
import { judgeVisual, type VisualVerdict } from '../judge/visual.ts'
import { lookOf } from '../judge/judge-lot.ts'
import type { DemandStanding } from '../judge/visual-demand.ts'
import type { ServiceReport } from '../records/schemas/service.ts'
import type { Content, Foil, Grade, Producer } from '../records/types.ts'
import { flakeMade, foilMade, type QuantityMade } from './quantity-made.ts'
import { traceabilityOf } from './traceability.ts'
import type { ChainLink, StatusText } from './types.ts'
import { type kindTexts, stateText } from './words.ts'
import type { ServiceParts } from './languages/parts.ts'
import { english, type Tongue } from './languages/tongue.ts'

/** The grade's own statements, which the producer makes to everyone. */
const openGradeFields = [
  'id',
  'revision',
  'validFrom',
  'title',
  'kind',
  'description',
  'sizes',
  'declared',
  'decisionRule',
  'limits',
  'measured',
  'visual',
  'typical',
  'notMeasured',
  'public',
  'packing',
  'storage',
  'containers',
  'keep',
  'retestAfterMonths',
  'retest',
  'casNumber',
  'safetyDataSheet',
  'hazards',
  'cautions'
] as const satisfies readonly (keyof Grade)[]

type OpenGrade = Pick<Grade, (typeof openGradeFields)[number]>

interface OpenService {
  readonly fireSafe: ServiceParts | undefined
  readonly oxygen: ServiceParts | undefined
}

export interface GradeView extends OpenGrade {
  readonly article?: ArticleStatement | undefined
  readonly service?: OpenService | undefined
}

type Papers = Pick<Producer, 'editions' | 'languages'>

/** A lot as every edition may show it, in one language. */
export interface LotView {
  readonly tongue: Tongue
  readonly lot: string
  readonly kind: keyof typeof kindTexts
  readonly made: string
  readonly grade: GradeView
  readonly rule: DecisionRule
  /** The day it is shown as of. */
  readonly asOf: string
  readonly rows: readonly JudgedRow[]
  readonly word: JudgedLot['word']
  readonly state: LotState
  readonly status: StatusText
  /** It was let go once, and the state it is in says that it should not be used. */
  readonly calledBack: boolean
  /** Of a lot of foil nobody weighed it is not known. */
  readonly quantity?: QuantityMade
  readonly sampling?: { readonly plan?: string; readonly increments?: string; readonly on?: string }
  readonly chain: readonly ChainLink[]
  readonly traceability: readonly string[]
  readonly hazards?: LotHazards
  /** Of foil alone. */
  readonly foil?: {
    readonly direction?: Direction
    readonly inhibitor?: string
    readonly visual?: VisualVerdict
    /** To the look its grade asks for. */
    readonly look?: DemandStanding
  }
}

type Sampling = NonNullable<Foil['sampling']>
type Direction = NonNullable<Foil['pressing']['direction']>

/** Copy what may be public, field by field. */
export function viewLot(
  content: Content,
  lot: JudgedLot,
  chain: readonly ChainLink[],
  tongue = english
): LotView {
  const { evaluated, grade, rule, rows, word, state, decision } = lot
  const { made, sampling } = evaluated.entry.record
  const quantity =
    evaluated.kind === 'foil' ? foilMade(evaluated.entry.record) : flakeMade(evaluated.entry.record)
  return {
    tongue,
    lot: evaluated.lot,
    kind: evaluated.kind,
    made,
    grade: viewGrade(grade, content.producer.record),
    rule,
    asOf: lot.asOf,
    rows,
    word,
    state,
    status: {
      state,
      sentence: stateText(
        state,
        decision && { on: decision.on, by: decision.by, because: decision.because },
        tongue
      )
    },
    calledBack:
      decision !== undefined &&
      !isSellable(state) &&
      wasLetGo(evaluated.entry.record.status ?? [], decision.on),
    ...(quantity ? { quantity } : {}),
    ...(sampling ? { sampling: openSampling(sampling) } : {}),
    chain,
    traceability: traceabilityOf(content, resultsOf(rows), tongue),
    ...(lot.hazards ? { hazards: lot.hazards } : {}),
    ...(evaluated.kind === 'foil'
      ? { foil: openFoil(evaluated.entry.record, lookOf(evaluated, grade)) }
      : {})
  }
}

const openSampling = ({ plan, increments, on }: Sampling): NonNullable<LotView['sampling']> => ({
  ...(plan === undefined ? {} : { plan }),
  ...(increments === undefined ? {} : { increments }),
  ...(on === undefined ? {} : { on })
})

/** How foil was formed is private but for its direction. */
function openFoil(record: Foil, look: DemandStanding | undefined): NonNullable<LotView['foil']> {
  const { inhibitor, pressing } = record
  const visual = judgeVisual(record)
  return {
    ...(pressing.direction === undefined ? {} : { direction: pressing.direction }),
    ...(inhibitor === undefined ? {} : { inhibitor }),
    ...(visual ? { visual } : {}),
    ...(look === undefined ? {} : { look })
  }
}

/** Copy what may be public of a grade; its papers follow the producer where it says nothing itself. */
export const viewGrade = (grade: Grade, producer: Papers): GradeView => ({
  ...(Object.fromEntries(openGradeFields.map(field => [field, grade[field]])) as OpenGrade),
  hazards: hazardsFor(grade, producer),
  article: openStatement(grade),
  service: openService(grade)
})

/** Reports on a grade in service; a laboratory that did not agree is not named. */
function openService({ service }: Grade): OpenService | undefined {
  if (!service) return undefined
  const open = (report: ServiceReport | undefined): ServiceParts | undefined =>
    report && {
      says: report.says,
      method: report.method,
      ...(report.namePublic ? { laboratory: report.laboratory } : {}),
      number: report.report,
      date: report.date
    }
  return { fireSafe: open(service.fireSafe), oxygen: open(service.oxygen) }
}

/** What a grade declares, with the editions and languages of its papers. */
export function hazardsFor(
  { hazards }: Pick<Grade, 'hazards'>,
  producer: Papers
): Grade['hazards'] {
  if (!hazards) return undefined
  const editions = hazards.editions ?? producer.editions
  const languages = hazards.languages ?? producer.languages
  return { ...hazards, ...(editions ? { editions } : {}), ...(languages ? { languages } : {}) }
}

export const resultsOf = (rows: readonly JudgedRow[]): Result[] =>
  rows.flatMap(({ result }) => (result ? [result] : []))
