/** What a log can say: one event a line. */

import * as z from 'zod'
import { fromBase64 } from './bytes.ts'
import type { Flaw } from './fault.ts'
import { membersOf, type Json } from './canonical.ts'
import { quoted } from '../problem.ts'
import { KEY_BYTES, SIGNATURE_BYTES } from './keys.ts'

/** A text of one form, with one sentence for whatever else stands there. */
const matching = (form: RegExp, message: string) => z.string(message).regex(form, { message })

/** As the records write identifiers. */
export const name = matching(
  /^[A-Za-z0-9](?:[A-Za-z0-9._-]{0,38}[A-Za-z0-9])?$/u,
  'must be 1 to 40 letters, digits, hyphens, dots or underscores'
)
export const hash = matching(/^[0-9a-f]{64}$/u, 'must be 64 lower-case hex digits')
const keyName = matching(/^[0-9a-f]{16}$/u, 'must be 16 lower-case hex digits')

/** One line of text with nothing in it that cannot be seen. */
export const sentence = matching(
  /^(?!\s)[^\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]{1,500}(?<!\s)$/u,
  'must be one line of 1 to 500 characters without a space at either end'
)

export const count = () => {
  const message = 'must be a whole number from 1'
  return z.int(message).min(1, message)
}

const base64 = (length: number) => {
  const message = `must be ${length} bytes in base64`
  return z.string(message).refine(text => fromBase64(text)?.length === length, { message })
}

const certificate = { number: name, revision: count() }
const frozen = { ...certificate, lot: name, data: hash, sealed: hash.exactOptional() }

const kinds = {
  issued: z.strictObject({ is: z.literal('issued'), ...frozen }),
  amended: z.strictObject({ is: z.literal('amended'), ...frozen, reason: sentence }),
  drawn: z.strictObject({
    is: z.literal('drawn'),
    ...certificate,
    pdf: hash,
    pages: count().exactOptional(),
    /** Of the signature that the PDF bears, where it bears one. */
    cms: hash.exactOptional()
  }),
  withdrawn: z.strictObject({ is: z.literal('withdrawn'), ...certificate, reason: sentence }),
  voided: z.strictObject({ is: z.literal('voided'), ...certificate, data: hash, reason: sentence }),
  'key-added': z.strictObject({
    is: z.literal('key-added'),
    key: keyName,
    publicKey: base64(KEY_BYTES),
    note: sentence.exactOptional()
  }),
  'key-retired': z.strictObject({ is: z.literal('key-retired'), key: keyName, reason: sentence }),
  signed: z.strictObject({
    is: z.literal('signed'),
    ...certificate,
    key: keyName,
    signature: base64(SIGNATURE_BYTES)
  })
}

export type EventKind = keyof typeof kinds
export type EventOf<Kind extends EventKind> = z.output<(typeof kinds)[Kind]>
export type RegisterEvent = { [Kind in EventKind]: EventOf<Kind> }[EventKind]

export const eventKinds = Object.keys(kinds) as EventKind[]

const lineFields = z.strictObject({
  n: count(),
  previous: hash,
  date: z.iso.date('must be a day of the calendar as 2026-03-14'),
  event: z.unknown()
})

/** A line of a log. */
export interface Line<Event> {
  /** Counts the lines from 1. */
  readonly n: number
  /** SHA-256 of the line before, without its line end; 64 zeros where there is none. */
  readonly previous: string
  /** The day it was entered. */
  readonly date: string
  readonly event: Event
}

/** A line of the register's log. */
export type LogLine = Line<RegisterEvent>

/** Reads a line's JSON, or says what about it is none. */
export type LineReader<Event> = (value: Json) => Line<Event> | Flaw[]

/** A reader of lines whose events are of the kinds given. */
export const lineReader =
  <Event>(known: Readonly<Record<string, z.ZodType<Event>>>): LineReader<Event> =>
  value => {
    const line = lineFields.safeParse(value)
    if (!line.success) return flawsOf(line.error, value)
    const { event: said } = membersOf(value)
    const { is: kind } = membersOf(said)
    if (typeof kind !== 'string' || !Object.hasOwn(known, kind))
      return [unknownKind(kind, Object.keys(known))]
    const event = known[kind]!.safeParse(said)
    return event.success ? { ...line.data, event: event.data } : flawsOf(event.error, said ?? null)
  }

/** Read a line of the register's log. */
export const lineOf: LineReader<RegisterEvent> = lineReader<RegisterEvent>(kinds)

function unknownKind(kind: Json | undefined, known: readonly string[]): Flaw {
  const got = quoted(typeof kind === 'string' ? kind : JSON.stringify(kind ?? null))
  return ['REGISTER_UNKNOWN_KIND', `${got} is no kind of event; known are ${known.join(', ')}`]
}

const flawsOf = (error: z.ZodError, value: Json): Flaw[] =>
  error.issues.flatMap((issue): Flaw[] => {
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map(key => ['REGISTER_FIELD', `${quoted(key)} is not a field here`])
    const [first] = issue.path.map(String)
    if (first === undefined) return [['REGISTER_FIELD', 'the line is no group of fields']]
    const isThere = Object.hasOwn(membersOf(value), first)
    return [['REGISTER_FIELD', `${quoted(first)} ${isThere ? issue.message : 'is missing'}`]]
  })
