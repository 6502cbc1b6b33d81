/** Records that name other records: each name must stand for one, of the right kind. */

import { type FieldPath, type Problem, problemAt, quoted } from '../problem.ts'
import { quantityOf, testOf } from '../quantities.ts'
import type { Batch, Calibration, Entry, Grade, Instrument, Method, Records } from './types.ts'
import { panelReferences } from './panel-references.ts'
import { upkeepReferences } from './upkeep-references.ts'
import { suggestion } from './validate.ts'

/** Collects the references of one content. */
interface Check {
  readonly content: Records
  /** Names whose records could not be read: their own problems say so. */
  readonly unread: ReadonlySet<string>
  readonly problems: Problem[]
}

/** Every reference that stands for nothing, or for a record of the wrong kind. */
export function checkReferences(content: Records, unread: ReadonlySet<string>): Problem[] {
  const check: Check = { content, unread, problems: [] }
  for (const versions of content.methods.values())
    for (const entry of versions) checkInstruments(check, entry, [], entry.record.instruments)
  for (const versions of content.grades.values())
    for (const entry of versions) checkGrade(check, entry)
  for (const versions of content.grades.values())
    checkVersions(check, versions, ({ revision }) => revision, 'revision')
  for (const versions of content.methods.values())
    checkVersions(check, versions, ({ edition }) => edition, 'edition')
  checkChargeLimits(check)
  checkBatches(check)
  checkExpansions(check)
  checkFoils(check)
  checkCertificates(check)
  checkComplaints(check)
  check.problems.push(...upkeepReferences(content, unread), ...panelReferences(content, unread))
  checkSheetsOnce(check)
  return check.problems
}

/** The version of a record in force on a day: the last one valid from then or before. */
export function versionOn<Kind extends { validFrom: string }>(
  versions: readonly Entry<Kind>[] | undefined,
  day: string
): Entry<Kind> | undefined {
  return versions?.findLast(({ record }) => record.validFrom <= day)
}

/** Versions follow one another in number and in date, so that one alone is in force on a day. */
function checkVersions<Kind extends { validFrom: string }>(
  check: Check,
  versions: readonly Entry<Kind>[],
  numberOf: (record: Kind) => number,
  what: 'revision' | 'edition'
): void {
  const sorted = [...versions].sort((a, b) => numberOf(a.record) - numberOf(b.record))
  for (const [index, entry] of sorted.entries()) {
    const before = sorted[index - 1]?.record
    if (!before || before.validFrom < entry.record.validFrom) continue
    check.problems.push(
      problemAt(
        entry.at(['validFrom']),
        'DATE_ORDER',
        `${what} ${numberOf(entry.record)} is valid from ${entry.record.validFrom}, not later than ${what} ${numberOf(before)} from ${before.validFrom}`,
        `each ${what} is valid from a later day than the one before it`
      )
    )
  }
}

/** The calibration a reading of a day was made under; the first of all for a reading before it. */
export function calibrationOn(
  { calibration, earlierCalibrations = [] }: Instrument,
  day: string
): Calibration | undefined {
  if (earlierCalibrations.length === 0) return calibration
  const all = [...earlierCalibrations, ...(calibration ? [calibration] : [])].sort((a, b) =>
    a.on < b.on ? -1 : a.on > b.on ? 1 : 0
  )
  return all.findLast(({ on }) => on <= day) ?? all[0]
}

function refer(
  check: Check,
  entry: Entry<unknown>,
  field: FieldPath,
  name: string | undefined,
  known: ReadonlyMap<string, unknown> | undefined,
  what: string
): void {
  if (name === undefined || !known || known.has(name) || check.unread.has(name)) return
  check.problems.push(
    problemAt(
      entry.at(field),
      'UNKNOWN_REFERENCE',
      `there is no ${what} ${quoted(name)}`,
      suggestion(name, [...known.keys()], `each ${what} recorded`)
    )
  )
}

function checkInstruments(
  check: Check,
  entry: Entry<unknown>,
  field: FieldPath,
  instruments: Partial<Record<string, string>> | undefined
): void {
  for (const [role, id] of Object.entries(instruments ?? {}))
    refer(
      check,
      entry,
      [...field, 'instruments', role],
      id,
      check.content.instruments,
      'instrument'
    )
}

function checkGrade(check: Check, entry: Entry<Grade>): void {
  const groups = [
    ['limits', entry.record.limits],
    ['measured', entry.record.measured ?? {}]
  ] as const
  for (const [group, rows] of groups)
    for (const [key, row] of Object.entries(rows))
      checkMethod(check, entry, [group, key, 'method'], row?.method, key)
  const { origin, substancesOfConcern, others = [] } = entry.record.declared ?? {}
  referToRole(check, entry, ['declared', 'origin', 'by'], origin?.by)
  referToRole(check, entry, ['declared', 'substancesOfConcern', 'by'], substancesOfConcern?.by)
  for (const [index, { by }] of others.entries())
    referToRole(check, entry, ['declared', 'others', index, 'by'], by)
}

/** A method named for a quantity must exist and measure it. */
function checkMethod(
  check: Check,
  entry: Entry<unknown>,
  field: FieldPath,
  id: string | undefined,
  quantity: string
): void {
  refer(check, entry, field, id, check.content.methods, 'method')
  const wrong = (check.content.methods.get(id ?? '') ?? []).find(
    ({ record }: Entry<Method>) => blockOf(record.quantity) !== blockOf(quantity)
  )
  if (wrong)
    check.problems.push(
      problemAt(
        entry.at(field),
        'UNKNOWN_REFERENCE',
        `method ${id} measures ${wrong.record.quantity}, not ${quantity}`,
        'name a method of this quantity'
      )
    )
}

/** One method serves all that its test gives. */
const blockOf = (key: string): string => {
  const quantity = quantityOf(key)
  return quantity ? testOf(quantity) : key
}

interface JudgedLot {
  readonly lot: string
  readonly made: string
  readonly grade: string
  readonly status?: readonly { by: string }[] | undefined
  readonly regraded?: readonly { to: string; on: string; by: string }[] | undefined
  readonly hazards?:
    { readonly decisions?: readonly { readonly by: string }[] | undefined } | undefined
}

function checkJudgedLot(check: Check, entry: Entry<JudgedLot>, kind: Grade['kind']): void {
  const { grade, made, regraded = [] } = entry.record
  checkGradeOf(check, entry, ['grade'], grade, made, kind)
  for (const [index, { to, on, by }] of regraded.entries()) {
    checkGradeOf(check, entry, ['regraded', index, 'to'], to, on, kind)
    referToRole(check, entry, ['regraded', index, 'by'], by)
  }
  checkDecisions(check, entry)
}

/** A grade must exist, be of the lot's kind, and have been in force on the day. */
function checkGradeOf(
  check: Check,
  entry: Entry<unknown>,
  field: FieldPath,
  grade: string,
  day: string,
  kind: Grade['kind']
): void {
  refer(check, entry, field, grade, check.content.grades, 'grade')
  const versions = check.content.grades.get(grade)
  if (!versions) return
  const first = versions[0]!.record
  if (!versionOn(versions, day))
    check.problems.push(
      problemAt(
        entry.at(field),
        'NO_VALID_REVISION',
        `grade ${grade} has no revision valid on ${day}`,
        `its first is valid from ${first.validFrom}`
      )
    )
  if (first.kind !== kind)
    check.problems.push(
      problemAt(
        entry.at(field),
        'UNKNOWN_REFERENCE',
        `grade ${grade} is a grade of ${first.kind}, not of ${kind}`,
        `name a grade of ${kind}`
      )
    )
}

/** Roles of the producer decide on a lot, and on its hazards. */
function checkDecisions(check: Check, entry: Entry<JudgedLot>): void {
  for (const [index, { by }] of (entry.record.status ?? []).entries())
    referToRole(check, entry, ['status', index, 'by'], by)
  for (const [index, { by }] of (entry.record.hazards?.decisions ?? []).entries())
    referToRole(check, entry, ['hazards', 'decisions', index, 'by'], by)
}

const rolesOf = ({ content }: Check) =>
  content.producer && new Map(content.producer.record.roles.map(({ role }) => [role, role]))

const referToRole = (check: Check, entry: Entry<unknown>, field: FieldPath, by?: string) =>
  refer(check, entry, field, by, rolesOf(check), 'role of the producer')

function checkUses(
  check: Check,
  entry: Entry<{ from?: readonly { lot: string }[] | undefined }>,
  lots: ReadonlyMap<string, unknown>,
  what: string
): void {
  for (const [index, use] of (entry.record.from ?? []).entries())
    refer(check, entry, ['from', index, 'lot'], use.lot, lots, what)
}

function checkTests(
  check: Check,
  entry: Entry<{ tests?: Partial<Record<string, Tested>> | undefined }>
): void {
  for (const [key, test] of Object.entries(entry.record.tests ?? {})) {
    const quantity = key.replace(/[A-Z]+/gu, letters => `-${letters.toLowerCase()}`)
    checkMethod(check, entry, ['tests', key, 'method'], test?.method, quantity)
    checkInstruments(check, entry, ['tests', key], test?.instruments)
  }
}

interface Tested {
  readonly method?: string | undefined
  readonly instruments?: Partial<Record<string, string>> | undefined
}

function checkBatches(check: Check): void {
  const { batches, materials, titrants } = check.content
  for (const entry of batches.values()) {
    checkJudgedLot(check, entry, 'flake')
    checkInstruments(check, entry, [], entry.record.instruments)
    for (const [index, line] of (entry.record.charge ?? []).entries())
      refer(check, entry, ['charge', index, 'material'], line.material, materials, 'material lot')
    checkAdditions(check, entry)
    const review = entry.record.overLimit?.by
    refer(check, entry, ['overLimit', 'by'], review, rolesOf(check), 'role of the producer')
    checkUses(check, entry, batches, 'batch')
    checkTests(check, entry)
    const acid = entry.record.tests?.freeAcid
    refer(check, entry, ['tests', 'freeAcid', 'titrant'], acid?.titrant, titrants, 'titrant')
  }
}

function checkChargeLimits(check: Check): void {
  const { producer } = check.content
  for (const [index, { by }] of (producer?.record.chargeLimits ?? []).entries())
    referToRole(check, producer!, ['chargeLimits', index, 'by'], by)
}

/** A step adds only what the charge lists: its mass stands there. */
function checkAdditions(check: Check, entry: Entry<Batch>): void {
  const charged = new Map((entry.record.charge ?? []).map(line => [line.material, line]))
  for (const [index, { adds = [] }] of (entry.record.steps ?? []).entries())
    for (const [place, lot] of adds.entries())
      refer(check, entry, ['steps', index, 'adds', place], lot, charged, 'line of the charge with')
}

function checkExpansions(check: Check): void {
  const { batches, expansions, materials } = check.content
  const bought = [...materials].filter(([, { record }]) => record.kind === 'expandable graphite')
  const usable = new Map<string, unknown>([...batches, ...bought])
  for (const entry of expansions.values()) {
    checkUses(check, entry, usable, 'batch or bought expandable graphite')
    checkInstruments(check, entry, [], entry.record.instruments)
    refer(check, entry, ['furnace'], entry.record.furnace, check.content.instruments, 'instrument')
  }
}

function checkFoils(check: Check): void {
  const { foils, expansions, methods } = check.content
  for (const entry of foils.values()) {
    const { instruments, measured } = entry.record
    checkJudgedLot(check, entry, 'foil')
    checkUses(check, entry, expansions, 'furnace run')
    checkInstruments(check, entry, [], instruments)
    checkInstruments(check, entry, ['measured'], measured?.instruments)
    checkTests(check, entry)
    refer(check, entry, ['measured', 'method'], measured?.method, methods, 'method')
  }
}

function checkCertificates(check: Check): void {
  const { batches, foils, certificates, shipments } = check.content
  const sellable = new Map<string, unknown>([...batches, ...foils])
  const roles = rolesOf(check)
  for (const entry of certificates) {
    refer(check, entry, ['lot'], entry.record.lot, sellable, 'batch or foil lot')
    refer(check, entry, ['signatory'], entry.record.signatory, roles, 'role of the producer')
    checkShipmentOf(check, entry)
  }
  for (const entry of shipments.values())
    for (const [index, { lot }] of entry.record.contents.entries())
      refer(check, entry, ['contents', index, 'lot'], lot, sellable, 'batch or foil lot')
}

/** Whoever names a shipment and a lot means a lot that was in it. */
function checkShipmentOf(
  check: Check,
  entry: Entry<{ readonly shipment?: string | undefined; readonly lot: string }>
): void {
  const { shipment, lot } = entry.record
  const { shipments } = check.content
  refer(check, entry, ['shipment'], shipment, shipments, 'shipment')
  const contents = shipments.get(shipment ?? '')?.record.contents
  const sent = contents && new Map(contents.map(part => [part.lot, part]))
  refer(check, entry, ['lot'], lot, sent, `lot in shipment ${shipment}`)
}

/**
 * Each revision of a safety data sheet stands once. Its grades are not looked up: one lot's own chain of
 * records has few of them, and a lot whose grade no sheet names cannot be sent.
 */
function checkSheetsOnce(check: Check): void {
  const { producer } = check.content
  const seen = new Set<string>()
  for (const [index, { id, revision }] of (producer?.record.safetyDataSheets ?? []).entries()) {
    const key = JSON.stringify([id, revision])
    if (seen.has(key))
      check.problems.push(
        problemAt(
          producer!.at(['safetyDataSheets', index, 'revision']),
          'DUPLICATE_ID',
          `revision ${revision} of ${id} is there twice`,
          'a later sheet has the next revision'
        )
      )
    seen.add(key)
  }
}

/** A complaint names a shipment, and a lot that was in it. */
function checkComplaints(check: Check): void {
  const { complaints } = check.content
  const roles = rolesOf(check)
  for (const entry of complaints.values()) {
    const { returned = [], decision } = entry.record
    checkShipmentOf(check, entry)
    refer(check, entry, ['decision', 'by'], decision?.by, roles, 'role of the producer')
    for (const [index, { container, decision: fate }] of returned.entries()) {
      const field = ['returned', index]
      refer(check, entry, [...field, 'decision', 'by'], fate?.by, roles, 'role of the producer')
      const known = containersOf(check, entry.record)
      refer(
        check,
        entry,
        [...field, 'container'],
        container,
        known,
        'such container in the shipment'
      )
    }
  }
}

/** Containers of a lot in a shipment, by number; undefined where the shipment is not there. */
function containersOf(
  { content }: Check,
  { shipment, lot }: { readonly shipment: string; readonly lot: string }
): ReadonlyMap<string, unknown> | undefined {
  const contents = content.shipments.get(shipment)?.record.contents.filter(one => one.lot === lot)
  return (
    contents &&
    new Map(contents.flatMap(({ containers = [] }) => containers.map(one => [one.number, one])))
  )
}
