/** A form as a browser sends it: from a page of this very server, small, and nothing else. */

import type { IncomingMessage } from 'node:http'
import { capital } from '../documents/capital.ts'
import { messagePage } from '../forms/page.ts'

/** Why something sent is not taken. */
export interface Refusal {
  readonly status: number
  readonly why: string
}

/** Bytes that the largest record's form takes several times over. */
const MOST_BYTES = 1_000_000

/** Fields by name, or why they are not taken. */
export async function sentIn(request: IncomingMessage): Promise<Map<string, string> | Refusal> {
  const refusal = refusalOf(request)
  if (refusal) return refusal
  const chunks: Buffer[] = []
  let bytes = 0
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length
    if (bytes > MOST_BYTES) return TOO_LARGE
    chunks.push(chunk)
  }
  return new Map(new URLSearchParams(Buffer.concat(chunks).toString('utf8')))
}

const TOO_LARGE: Refusal = { status: 413, why: 'more was sent than any record holds' }

function refusalOf({ headers }: IncomingMessage): Refusal | undefined {
  const { host, origin, 'sec-fetch-site': site = 'same-origin' } = headers
  if (origin !== `http://${host}` || site !== 'same-origin')
    return { status: 403, why: 'only forms of this very page are taken' }
  if (!/^application\/x-www-form-urlencoded\b/iu.test(headers['content-type'] ?? ''))
    return { status: 415, why: 'this is no form' }
  return Number(headers['content-length'] ?? 0) > MOST_BYTES ? TOO_LARGE : undefined
}

/** The page that says so. */
export const refusedBody = ({ why }: Refusal): string =>
  messagePage('Nothing written', `${capital(why)}.`)
