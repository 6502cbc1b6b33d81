/** Safety data sheets: whether the goods sent had theirs, and who needs a later revision. */

import { compareText, type Problem, problemAt } from '../problem.ts'
import { monthsLater } from '../records/dates.ts'
import type { Entry, Producer, Records, Shipment } from '../records/types.ts'
import { gradeOf } from './judge-lot.ts'
import type { JudgedLot } from './types.ts'

type Sheet = NonNullable<Producer['safetyDataSheets']>[number]

const sheetsOf = ({ producer }: Records): readonly Sheet[] =>
  producer?.record.safetyDataSheets ?? []

/** A sheet's revision in force on a day. */
const inForce = (sheets: readonly Sheet[], id: string, day: string): Sheet | undefined =>
  sheets
    .filter(sheet => sheet.id === id && sheet.validFrom <= day)
    .reduce<Sheet | undefined>((a, b) => (a && a.revision > b.revision ? a : b), undefined)

/** Whether a lot has a hazard class, declared or computed. */
export const isClassified = ({ hazards }: JudgedLot): boolean =>
  hazards !== undefined &&
  (hazards.declared.length > 0 || hazards.classification.classes.length > 0)

/** A classified lot goes with the sheet that is in force for its grade. */
export function checkSheets(
  records: Records,
  entry: Entry<Shipment>,
  index: number,
  lot: JudgedLot
): Problem[] {
  if (!isClassified(lot)) return []
  const { sent, contents } = entry.record
  const grade = gradeOf(records, lot.evaluated.entry.record, sent).id
  const sheets = sheetsOf(records)
  const ids = [...new Set(sheets.filter(({ grades }) => grades.includes(grade)).map(s => s.id))]
  const given = (entry.record.safetyDataSheets ?? []).filter(
    one => one.sent <= sent && ids.includes(one.sheet)
  )
  const isCurrent = given.some(
    ({ sheet, revision }) => revision === inForce(sheets, sheet, sent)?.revision
  )
  if (isCurrent) return []
  const older = given.at(-1)
  const current = older && inForce(sheets, older.sheet, sent)
  return [
    problemAt(
      entry.at(['contents', index, 'lot']),
      'NOT_SHIPPABLE',
      `${contents[index]!.lot} has a hazard classification and went ${
        older && current
          ? `with revision ${older.revision} of ${older.sheet}, when revision ${current.revision} was in force since ${current.validFrom}`
          : 'without a safety data sheet'
      }`,
      ids.length === 0
        ? `enter the sheet of grade ${grade} in the producer's record under 'safety-data-sheets:', then that it was sent under the same field of the shipment`
        : `write under 'safety-data-sheets:' of the shipment which revision of ${ids.join(' or ')} went to the customer, in which language and when`
    )
  ]
}

/** Sheets a shipment names that the producer does not have, or did not have yet. */
export function checkSentSheets(records: Records, entry: Entry<Shipment>): Problem[] {
  const sheets = sheetsOf(records)
  return (entry.record.safetyDataSheets ?? []).flatMap(({ sheet, revision, sent }, index) => {
    const known = sheets.find(one => one.id === sheet && one.revision === revision)
    const at = (field: string) => entry.at(['safetyDataSheets', index, field])
    if (!known)
      return [
        problemAt(
          at('revision'),
          'UNKNOWN_REFERENCE',
          `the producer's record has no revision ${revision} of a safety data sheet ${sheet}`,
          "enter it there under 'safety-data-sheets:', or mend the two"
        )
      ]
    return sent < known.validFrom
      ? [
          problemAt(
            at('sent'),
            'DATE_ORDER',
            `was sent on ${sent}, before revision ${revision} of ${sheet} of ${known.validFrom}`,
            'check the two dates'
          )
        ]
      : []
  })
}

/** Months back from a new revision in which whoever was supplied needs it. */
const LOOK_BACK = 12

/**
 * Who was supplied in the year before the present revision of each sheet and has not been sent it.
 *
 * Source: Regulation (EC) No 1907/2006, Article 31(9); from memory, not checked against the print.
 */
export function checkOwed(
  records: Records,
  lots: ReadonlyMap<string, JudgedLot>,
  asOf: string
): Problem[] {
  const { producer } = records
  const sheets = sheetsOf(records)
  return sheets.flatMap((sheet, index) => {
    if (!producer || inForce(sheets, sheet.id, asOf) !== sheet) return []
    const owed = owedBy(records, lots, sheet, asOf)
    return owed.length === 0
      ? []
      : [
          problemAt(
            producer.at(['safetyDataSheets', index, 'revision']),
            'SHEET_OWED',
            `revision ${sheet.revision} of ${sheet.id} is not yet with ${owed.join(', ')}, supplied in the ${LOOK_BACK} months before it`,
            "send it, and write so under 'safety-data-sheets:' of one of their shipments"
          )
        ]
  })
}

/** 'Brask Seals (SH-1, SH-4)', a customer each. */
function owedBy(
  records: Records,
  lots: ReadonlyMap<string, JudgedLot>,
  { id, revision, validFrom, grades }: Sheet,
  asOf: string
): string[] {
  const shipments = [...records.shipments.values()].map(({ record }) => record)
  const has = new Set(
    shipments
      .filter(({ safetyDataSheets = [] }) =>
        safetyDataSheets.some(
          one => one.sheet === id && one.revision >= revision && one.sent <= asOf
        )
      )
      .map(({ customer }) => customer)
  )
  const isCovered = ({ sent, contents }: Shipment) =>
    contents.some(({ lot }) => {
      const judged = lots.get(lot)
      return (
        judged !== undefined &&
        isClassified(judged) &&
        grades.includes(gradeOf(records, judged.evaluated.entry.record, sent).id)
      )
    })
  const before = shipments.filter(
    one => one.sent < validFrom && monthsLater(one.sent, LOOK_BACK) >= validFrom && isCovered(one)
  )
  const customers = [...new Set(before.map(({ customer }) => customer))].filter(
    customer => !has.has(customer)
  )
  return customers.sort(compareText).map(customer => {
    const numbers = before.filter(one => one.customer === customer).map(({ number }) => number)
    return `${customer} (${numbers.join(', ')})`
  })
}
