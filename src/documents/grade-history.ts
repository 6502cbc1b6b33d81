/** What each revision of a grade changed, computed from the revisions themselves. */

import { boundsOf } from '../judge/judge-lot.ts'
import { quantities, quantityOf } from '../quantities.ts'
import type { Grade } from '../records/types.ts'
import { change, changedItems } from './changes.ts'
import { declaredOn } from './declared.ts'
import { unitText, withUnit } from './figure.ts'
import type { GradeRevision } from './grade-types.ts'
import type { GradeView } from './lot-view.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'
import { serviceText } from './not-measured.ts'
import { limitText } from './result-row.ts'
import { supplyOf } from './supply.ts'
import { planAsked } from './visual.ts'
import { withMinus } from './words.ts'

/** Every revision, latest first; `views` begin with the first. */
export const historyOf = (
  views: readonly GradeView[],
  day: string,
  tongue = english
): GradeRevision[] =>
  views
    .map((view, index) => {
      const before = views[index - 1]
      return {
        revision: String(view.revision),
        validFrom: tongue.numbers.date(view.validFrom),
        changes: before ? changesIn(before, view, day, tongue) : [tongue.grade.history.first]
      }
    })
    .reverse()

/** One sentence a difference; what readers are not told, such as what is published, is left out. */
function changesIn(was: GradeView, is: GradeView, day: string, tongue: Tongue): string[] {
  const groups = [parts, limitsOf, typicalOf, supplied, hazardsOf]
  const differ = (what: string, before?: string, now?: string) => change(what, before, now, tongue)
  const statements = (grade: GradeView) => declaredOf(grade, day, tongue)
  const found = [
    ...groups.flatMap(told => changedItems(told(was, tongue), told(is, tongue), differ)),
    ...changedItems(statements(was), statements(is), (what, before, now) =>
      changedStatement(tongue, what, before, now)
    )
  ]
  return found.length > 0 ? found : [tongue.grade.history.nothing]
}

/** What is told of a grade, by what it is of. */
type Told = (grade: GradeView, tongue: Tongue) => ReadonlyMap<string, string>

const told = (entries: readonly (readonly [what: string, text: string | undefined])[]) =>
  new Map(entries.flatMap(([what, text]) => (text ? [[what, text] as const] : [])))

const parts: Told = (grade, tongue) => {
  const { own, lot, foil, changes, grade: words } = tongue
  const { fireSafe, oxygen } = grade.service ?? {}
  return told([
    [words.history.title, own(grade.title)],
    [lot.facts.product, lot.kinds[grade.kind === 'flake' ? 'batch' : 'foil']],
    [words.history.description, own(grade.description)],
    [lot.facts.cas, grade.casNumber],
    [lot.facts.sheet, grade.safetyDataSheet],
    [words.history.rule, lot.rules[grade.decisionRule ?? 'simple'].split(':')[0]],
    [foil.facts.visual, grade.visual && planAsked(grade.visual, tongue)],
    [changes.notMeasured, grade.notMeasured?.map(own).join(', ')],
    [foil.facts.fireSafe, fireSafe && serviceText(fireSafe, tongue)],
    [foil.facts.oxygen, oxygen && serviceText(oxygen, tongue)],
    [changes.cautions, grade.cautions?.map(own).join(' ')]
  ])
}

const titleOf = (key: string, tongue: Tongue): string => {
  const quantity = quantityOf(key)
  return quantity ? wordsOf(tongue, quantity).title : key
}

/** Limits, and figures that are reported without one. */
const limitsOf: Told = (grade, tongue) => {
  const { noLimit, byMethod } = tongue.grade.history
  const by = (text: string, { method }: { readonly method?: string | undefined }) =>
    method === undefined ? text : byMethod(text, method)
  return told([
    ...Object.entries(grade.limits).map(
      ([key, limit]) =>
        [titleOf(key, tongue), limit && by(limitSentence(key, limit, tongue), limit)] as const
    ),
    ...Object.entries(reportedOf(grade))
      .filter(([key]) => isOpen(key, grade.limits))
      .map(([key, how]) => [titleOf(key, tongue), how && by(noLimit, how)] as const)
  ])
}

/** What is measured without a limit; customers see it where they see results. */
export const reportedOf = ({ public: open = [], measured = {} }: GradeView) =>
  open.includes('results') ? measured : {}

/** Figures of the process are nobody else's business; one with a limit stands among those. */
function isOpen(key: string, limits: GradeView['limits']): boolean {
  const quantity = quantityOf(key)
  return !(key in limits) && !!quantity && quantities[quantity].side === 'product'
}

function limitSentence(
  key: string,
  limit: NonNullable<Grade['limits'][keyof Grade['limits']]>,
  tongue: Tongue
) {
  const { printed, of } = limitText(boundsOf(limit), limit.of ?? 'lot mean', tongue)
  const quantity = quantityOf(key)
  return `${withUnit(printed, quantity ? unitText(quantity).printed : '')} (${of})`
}

const typicalOf: Told = ({ typical = {} }, tongue) =>
  told(
    Object.entries(typical).map(([key, reading]) => {
      const quantity = quantityOf(key)
      const { numbers, grade } = tongue
      const said = reading && numbers.number(withMinus(reading.decimal))
      const text = said && quantity && withUnit(said, unitText(quantity).printed)
      return [grade.history.statedAsTypical(titleOf(key, tongue)), text] as const
    })
  )

const supplied: Told = (grade, tongue) =>
  told(supplyOf(grade, tongue).map(({ label, text }) => [label, text]))

const declaredOf = (grade: GradeView, day: string, tongue: Tongue) =>
  told(
    declaredOn(grade, day, tongue).map(({ about, says, basis }) => [
      tongue.grade.history.declared(about),
      basis && `${says} ${basis}`
    ])
  )

/** Statements are long, and those in force stand in full beside the revisions. */
function changedStatement(tongue: Tongue, what: string, was?: string, is?: string): string[] {
  if (was === is) return []
  const { differs, leftOut, added } = tongue.grade.history
  return [was ? (is ? differs(what) : leftOut(what)) : added(what)]
}

const hazardsOf: Told = (
  { hazards },
  { grade: { history: words }, hazards: said, own, ...tongue }
) => {
  const text = (one: string | undefined) => one && own(one)
  return told([
    [tongue.changes.hazards, hazards?.classified.map(said.className).join(', ')],
    [words.precautions, hazards?.precautions?.join(', ')],
    [words.basis, text(hazards?.basis)],
    [words.dust, hazards?.dust && words.dusts[hazards.dust]],
    [words.transport, text(hazards?.transport?.decision)]
  ])
}
