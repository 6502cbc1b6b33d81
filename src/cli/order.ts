/** The order a certificate is issued from: the record that waits, or a new one. */

import type { SourceFile } from '../problem.ts'
import { certificateFile, certificateText } from '../records/certificate-text.ts'
import { loadContent } from '../records/content.ts'
import { nextNumber } from '../records/draft.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import type { InspectionType } from '../records/schemas/lots.ts'
import type { CertificateOrder, Content } from '../records/types.ts'
import type { IssuedRegister } from '../documents/issued.ts'
import { nextOrder } from '../documents/to-issue.ts'
import { numberKey } from '../register/standing.ts'
import { Failure } from '../site/failure.ts'

/** What the command was told. */
export interface Wishes {
  readonly date: string
  readonly by?: string
  readonly number?: string
  readonly reason?: string
  readonly type?: InspectionType
  readonly shipment?: string
  readonly language?: PaperLanguage
}

/** A new record to be written beside the others. */
export interface NewOrder {
  readonly order: CertificateOrder
  readonly name: string
  readonly text: string
}

/**
 * The record a lot's next certificate needs and does not have yet; undefined where one waits.
 *
 * @param files all records, for the numbers in use
 * @param chain the lot's own records
 * @throws Failure where what was asked for does not fit what there is
 */
export function orderNeeded(
  files: readonly SourceFile[],
  chain: readonly SourceFile[],
  lot: string,
  register: IssuedRegister,
  wishes: Wishes
): NewOrder | undefined {
  const content = loadContent(chain)
  // Its faults are told where the certificate is made ready.
  if (!content.ok) return undefined
  const waiting = nextOrder(content.value, lot, register)
  if (waiting) return refuseWishes(waiting.record, wishes)
  const order = newOrder(content.value, files, lot, register, wishes)
  return { order, name: certificateFile(order), text: certificateText(order) }
}

/** The record that waits says it all: what was asked for otherwise is not passed over. */
function refuseWishes(
  { number, revision, signatory, reason, type, shipment, language }: CertificateOrder,
  wishes: Wishes
): undefined {
  const waits = `${number}, revision ${revision}, waits to be issued`
  for (const [option, wish, said] of [
    ['--number', wishes.number, number],
    ['--by', wishes.by, signatory],
    ['--reason', wishes.reason, reason],
    ['--type', wishes.type, type],
    ['--shipment', wishes.shipment, shipment],
    ['--language', wishes.language, language]
  ] as const)
    if (wish !== undefined && wish !== said)
      throw new Failure(
        `${waits}: leave out ${option}, or change it in ${certificateFile({ number, revision })}`
      )
}

function newOrder(
  content: Content,
  files: readonly SourceFile[],
  lot: string,
  register: IssuedRegister,
  { date, by, number, reason, ...wishes }: Wishes
): CertificateOrder {
  const signatory = by ?? decidedBy(content, lot)
  const current = register.issued.findLast(
    ({ revision, state }) => revision.lot === lot && state === 'current'
  )?.revision
  if (current && reason === undefined)
    throw new Failure(
      `${lot} has certificate ${current.number}, revision ${current.revision}, which stands; a correction needs --reason "..."`
    )
  if (current)
    return {
      number: current.number,
      revision: current.revision + 1,
      lot,
      issued: date,
      signatory,
      ...typeOf(content, current, wishes),
      reason
    }
  if (reason !== undefined)
    throw new Failure(`${lot} has no certificate that stands: there is nothing to correct`)
  if (number !== undefined) refuseTaken(number, files, register)
  return {
    number: number ?? followingNumber(files, register),
    revision: 1,
    lot,
    issued: date,
    signatory,
    type: wishes.type,
    shipment: wishes.shipment,
    reason: undefined,
    language: wishes.language
  }
}

/** A revision keeps type and language of what it corrects, unless told otherwise. */
function typeOf(
  { certificates }: Content,
  { number, revision }: Pick<CertificateOrder, 'number' | 'revision'>,
  wishes: Pick<Wishes, 'type' | 'shipment' | 'language'>
): Pick<CertificateOrder, 'type' | 'shipment' | 'language'> {
  const before = certificates.find(
    ({ record }) => record.number === number && record.revision === revision
  )?.record
  return {
    type: wishes.type ?? before?.type,
    shipment: wishes.shipment ?? before?.shipment,
    language: wishes.language ?? before?.language
  }
}

/** Who let the lot go answers for the certificate, unless told otherwise. */
function decidedBy({ batches, foils }: Content, lot: string): string {
  const record = (batches.get(lot) ?? foils.get(lot))?.record
  const by = record?.status?.at(-1)?.by
  if (by !== undefined) return by
  throw new Failure(`nobody has let ${lot} go yet: a certificate needs a lot that is released`)
}

/** Numbers of the records and the register together. */
const numbersIn = (files: readonly SourceFile[], { log }: IssuedRegister): string[] => [
  ...files.flatMap(numberIn),
  ...[...log.standing.certificates.values()].flatMap(([first]) => (first ? [first.number] : []))
]

function refuseTaken(number: string, files: readonly SourceFile[], register: IssuedRegister): void {
  const taken = numbersIn(files, register).find(one => numberKey(one) === numberKey(number))
  if (taken !== undefined) throw new Failure(`the number ${taken} is taken`)
}

/** The number after the last. */
function followingNumber(files: readonly SourceFile[], register: IssuedRegister): string {
  const next = nextNumber(numbersIn(files, register))
  if (next !== undefined) return next
  throw new Failure('the first certificate needs a number: give one with --number')
}

/** The number a certificate's file goes by. */
const numberIn = ({ path }: SourceFile): string[] => {
  const name = /(?:^|\/)certificates\/(?<number>[^/]+?)(?:-r\d+)?\.ya?ml$/u.exec(path)
  return name?.groups ? [name.groups['number']!] : []
}
