/** The figures of some lots with all that comparing them takes, as pages load them. */

import type { KnownFigure, KnownLot, Part } from '../archive/compare.ts'
import type { CauseText } from '../documents/budgets.ts'
import { reportMark } from '../documents/report-text.ts'
import type { LotPage, ResultRow } from '../documents/types.ts'

/** Numbers for names, the same for every lot of a site: a page needs to know them apart, not to read them. */
export type Numbering = (name: string) => number

export function numbering(): Numbering {
  const numbers = new Map<string, number>()
  return name => {
    const number = numbers.get(name) ?? numbers.size
    numbers.set(name, number)
    return number
  }
}

/** The text of one such file. */
export function knownLotsText(pages: readonly LotPage[], numbered: Numbering): string {
  const lots = Object.fromEntries(pages.map(page => [page.document.lot, knownLot(page, numbered)]))
  return `Object.assign((globalThis.lotfolioKnown ??= {}), ${JSON.stringify(lots)})\n`
}

function knownLot({ document, budgets }: LotPage, numbered: Numbering): KnownLot {
  return {
    lot: document.lot,
    figures: document.results
      .filter(({ basis, value }) => basis === 'measured' && value)
      .map(row => knownFigure(row, document.lot, budgets?.[row.key], numbered))
  }
}

function knownFigure(
  row: ResultRow,
  lot: string,
  causes: readonly CauseText[] | undefined,
  numbered: Numbering
): KnownFigure {
  const { key, value, expandedUncertainty, below, limit, verdict, method, report } = row
  return {
    key,
    value: value!.printed,
    ...(expandedUncertainty ? { uncertainty: expandedUncertainty.printed } : {}),
    exact: Number(value!.exact),
    ...(below ? { below } : {}),
    ...(limit ? { limit: limit.printed } : {}),
    ...(verdict ? { verdict: verdict.word } : {}),
    method: method ? `${method.id}, edition ${method.edition}` : report ? reportMark(report) : '',
    ...(causes ? { parts: partsOf(causes, lot, numbered) } : sumOf(row))
  }
}

/** What is known of an uncertainty whose causes are not published. */
function sumOf({ standardUncertainty, degreesOfFreedom }: ResultRow) {
  const df = Number(degreesOfFreedom?.exact)
  if (!standardUncertainty) return {}
  return {
    u: Number(standardUncertainty.exact),
    ...(Number.isFinite(df) ? { df } : {})
  }
}

/** Causes by pool; those that bear the lot's own number no other lot has, and are summed. */
function partsOf(causes: readonly CauseText[], lot: string, numbered: Numbering): Part[] {
  const pools = new Map<string, CauseText[]>()
  for (const cause of causes) pools.set(cause.pool, [...(pools.get(cause.pool) ?? []), cause])
  return [...pools].map(([pool, all]) => {
    // Most names are other lots' or no lot's at all: only the rest are taken apart.
    const isOwn = ({ name }: CauseText) =>
      name.includes(lot) && name.split(/[\s:,]+/u).includes(lot)
    const own = all.filter(isOwn).reduce((sum, { exact: u }) => sum + u * u, 0)
    const others = all.filter(cause => !isOwn(cause))
    const [{ df } = { df: undefined }] = all
    return {
      pool: numbered(`pool ${pool}`),
      ...(df === undefined ? {} : { df }),
      ...(own > 0 ? { own: short(own) } : {}),
      ...(others.length > 0
        ? { by: Object.fromEntries(others.map(({ name, exact: u }) => [numbered(name), short(u)])) }
        : {})
    }
  })
}

/** Digits enough for a difference of nearly equal effects. */
const short = (number: number) => Number(number.toPrecision(9))
