/** What each revision of a grade changed, computed from the revisions themselves. */

import { boundsOf } from '../judge/judge-lot.ts'
import { quantities, quantityOf } from '../quantities.ts'
import type { Grade } from '../records/types.ts'
import { change, changedItems } from './changes.ts'
import { declaredOn } from './declared.ts'
import { unitText, withUnit } from './figure.ts'
import type { GradeRevision } from './grade-types.ts'
import type { GradeView } from './lot-view.ts'
import { english } from './languages/tongue.ts'
import { serviceText } from './not-measured.ts'
import { limitText } from './result-row.ts'
import { supplyOf } from './supply.ts'
import { planAsked } from './visual.ts'
import { dateText, kindTexts, ruleTexts, withMinus } from './words.ts'

/** Every revision, latest first; `views` begin with the first. */
export const historyOf = (views: readonly GradeView[], day: string): GradeRevision[] =>
  views
    .map((view, index) => {
      const before = views[index - 1]
      return {
        revision: String(view.revision),
        validFrom: dateText(view.validFrom),
        changes: before ? changesIn(before, view, day) : ['First revision.']
      }
    })
    .reverse()

/** One sentence a difference; what readers are not told, such as what is published, is left out. */
function changesIn(was: GradeView, is: GradeView, day: string): string[] {
  const groups = [parts, limitsOf, typicalOf, supplied, hazardsOf]
  const found = [
    ...groups.flatMap(told => changedItems(told(was), told(is), change)),
    ...changedItems(declaredOf(was, day), declaredOf(is, day), changedStatement)
  ]
  return found.length > 0 ? found : ['Nothing that is said here.']
}

/** What is told of a grade, by what it is of. */
type Told = (grade: GradeView) => ReadonlyMap<string, string>

const told = (entries: readonly (readonly [what: string, text: string | undefined])[]) =>
  new Map(entries.flatMap(([what, text]) => (text ? [[what, text] as const] : [])))

const parts: Told = grade =>
  told([
    ['Title', grade.title],
    ['Product', grade.kind === 'flake' ? kindTexts.batch : kindTexts.foil],
    ['Description', grade.description],
    ['CAS number', grade.casNumber],
    ['Safety data sheet', grade.safetyDataSheet],
    ['Decision rule', ruleTexts[grade.decisionRule ?? 'simple'].split(':')[0]],
    ['Visual inspection', grade.visual && planAsked(grade.visual, english)],
    ['Not measured', grade.notMeasured?.join(', ')],
    ['Fire-safe test', grade.service?.fireSafe && serviceText(grade.service.fireSafe, english)],
    ['Oxygen service', grade.service?.oxygen && serviceText(grade.service.oxygen, english)],
    ['Cautions', grade.cautions?.join(' ')]
  ])

const titleOf = (key: string): string => {
  const quantity = quantityOf(key)
  return quantity ? quantities[quantity].title : key
}

/** Limits, and figures that are reported without one. */
const limitsOf: Told = grade =>
  told([
    ...Object.entries(grade.limits).map(
      ([key, limit]) => [titleOf(key), limit && byMethod(limitSentence(key, limit), limit)] as const
    ),
    ...Object.entries(reportedOf(grade))
      .filter(([key]) => isOpen(key, grade.limits))
      .map(([key, how]) => [titleOf(key), how && byMethod('no limit', how)] as const)
  ])

/** What is measured without a limit; customers see it where they see results. */
export const reportedOf = ({ public: open = [], measured = {} }: GradeView) =>
  open.includes('results') ? measured : {}

/** Figures of the process are nobody else's business; one with a limit stands among those. */
function isOpen(key: string, limits: GradeView['limits']): boolean {
  const quantity = quantityOf(key)
  return !(key in limits) && !!quantity && quantities[quantity].side === 'product'
}

const byMethod = (text: string, { method }: { readonly method?: string | undefined }) =>
  method === undefined ? text : `${text}, by ${method}`

function limitSentence(key: string, limit: NonNullable<Grade['limits'][keyof Grade['limits']]>) {
  const { printed, of } = limitText(boundsOf(limit), limit.of ?? 'lot mean')
  const quantity = quantityOf(key)
  return `${withUnit(printed, quantity ? unitText(quantity).printed : '')} (${of})`
}

const typicalOf: Told = ({ typical = {} }) =>
  told(
    Object.entries(typical).map(([key, reading]) => {
      const quantity = quantityOf(key)
      const text =
        reading && quantity && withUnit(withMinus(reading.decimal), unitText(quantity).printed)
      return [`${titleOf(key)}, stated as typical`, text] as const
    })
  )

const supplied: Told = grade => told(supplyOf(grade).map(({ label, text }) => [label, text]))

const declaredOf = (grade: GradeView, day: string) =>
  told(
    declaredOn(grade, day).map(({ about, says, basis }) => [
      `Declared, ${about.toLowerCase()}`,
      basis && `${says} ${basis}`
    ])
  )

/** Statements are long, and those in force stand in full beside the revisions. */
function changedStatement(what: string, was?: string, is?: string): string[] {
  if (was === is) return []
  return [`${what}: ${was ? (is ? 'the text differs' : 'left out') : 'added'}.`]
}

const hazardsOf: Told = ({ hazards }) =>
  told([
    ['Hazards', hazards?.classified.join(', ')],
    ['Precautionary statements', hazards?.precautions?.join(', ')],
    ['Basis of the classification', hazards?.basis],
    ['Dust', hazards?.dust],
    ['Transport', hazards?.transport?.decision]
  ])
