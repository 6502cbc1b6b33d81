/** A grade's page: what is promised, and the lots made to it. */

import { boundsOf } from '../judge/judge-lot.ts'
import { quantities, quantityOf } from '../quantities.ts'
import { versionOn } from '../records/references.ts'
import type { Content } from '../records/types.ts'
import { unitText, withUnit } from './figure.ts'
import { hazardText } from './hazards.ts'
import { gradeUrl } from './lot.ts'
import type { GradeView } from './lot-view.ts'
import { limitText, methodText } from './result-row.ts'
import { safetyNotes } from './safety-notes.ts'
import type { GradeDocument, LotSummary } from './types.ts'
import { hasWatchPage, typicals, type WatchInputs, watchUrl } from './watch.ts'
import { dateText, kindTexts, ruleTexts, unparted, withMinus } from './words.ts'

/** Build the page of a grade's revision in force on day `asOf`. */
export function gradeDocument(
  content: Content,
  watch: WatchInputs,
  lots: readonly LotSummary[],
  asOf: string
): GradeDocument {
  const { grade } = watch
  const { packing, storage } = grade
  return {
    id: grade.id,
    title: grade.title,
    revision: String(grade.revision),
    validFrom: dateText(grade.validFrom),
    url: gradeUrl(grade.id),
    kind: grade.kind === 'flake' ? kindTexts.batch : kindTexts.foil,
    description: grade.description,
    decisionRule: ruleTexts[grade.decisionRule ?? 'simple'],
    limits: limitRows(content, grade, asOf),
    typical: Object.entries(grade.typical ?? {}).flatMap(([key, reading]) => {
      const quantity = quantityOf(key)
      if (!quantity || !reading) return []
      const value = withUnit(withMinus(reading.decimal), unitText(quantity).printed)
      return [{ title: quantities[quantity].title, value }]
    }),
    observed: typicals(watch),
    ...(hasWatchPage(watch) ? { watchUrl: watchUrl(grade.id) } : {}),
    notMeasured: grade.notMeasured ?? [],
    ...(packing === undefined ? {} : { packing: unparted(packing) }),
    ...(storage === undefined ? {} : { storage: unparted(storage) }),
    ...hazardText(grade.hazards, { day: asOf, languages: true }),
    cautions: grade.cautions ?? [],
    safety: safetyNotes(grade, asOf),
    lots
  }
}

function limitRows(content: Content, grade: GradeView, asOf: string): GradeDocument['limits'] {
  return Object.entries(grade.limits).flatMap(([key, limit]) => {
    const quantity = quantityOf(key)
    if (!quantity || !limit) return []
    const method = versionOn(content.methods.get(limit.method ?? ''), asOf)?.record
    return [
      {
        key,
        title: quantities[quantity].title,
        limit: limitText(boundsOf(limit), limit.of ?? 'lot mean'),
        unit: unitText(quantity),
        ...(method ? { method: methodText(method) } : {})
      }
    ]
  })
}
