/** Lots let go and certificates issued, as a feed tells them: dated by decisions, never by a clock. */

import type { JudgedLot } from '../judge/types.ts'
import { compareText } from '../problem.ts'
import { isSellable } from '../quality/status.ts'
import { standingText } from './certificate-page.ts'
import { groupedBy } from './grouped.ts'
import type { Issued, IssuedRegister } from './issued.ts'
import { certificateUrl, lotUrl } from './lot.ts'
import type { News, NewsEntry } from './news-types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { stateText } from './words.ts'
import { siteAddress } from './site-address.ts'

interface NewsInputs {
  readonly lots: readonly JudgedLot[]
  readonly register: IssuedRegister
  readonly asOf: string
  /** English where nothing is said. */
  readonly tongue?: Tongue
}

/** Latest news that a feed holds: what changed before is on the site. */
const MOST = 100

/**
 * The news of a site.
 *
 * @param site the producer's address; without one nothing has a lasting name, and there is no news
 * @param hasPage whether a lot is shown
 */
export function newsOf(
  { lots, register, asOf, tongue = english }: NewsInputs,
  site: string | undefined,
  hasPage: (lot: string) => boolean
): News | undefined {
  if (site === undefined) return undefined
  const root = siteAddress(site, '')
  const shown = lots.filter(({ evaluated }) => hasPage(evaluated.lot))
  const entries = [
    ...shown.flatMap(lot => lotEntry(lot, root, asOf, tongue)),
    ...[...groupedBy(register.issued, ({ revision }) => revision.number).values()].map(revisions =>
      certificateEntry(revisions[0]!, revisions.at(-1)!, root, tongue)
    )
  ]
  const latestFirst = (a: NewsEntry, b: NewsEntry) =>
    compareText(b.updated, a.updated) || compareText(a.id, b.id)
  return { site: root, entries: entries.sort(latestFirst).slice(0, MOST) }
}

/** A lot as first let go, and as it stands now. */
function lotEntry(
  { evaluated: { lot, kind, entry }, state, decision }: JudgedLot,
  root: string,
  asOf: string,
  tongue: Tongue
): NewsEntry[] {
  const { status = [], made } = entry.record
  const first = status.find(({ is, on }) => on <= asOf && isSellable(is))
  if (!first) return []
  return [
    {
      id: tagUri(root, made, lotUrl(lot)),
      title: tongue.register.news.lot(
        lot,
        tongue.lot.kinds[kind],
        tongue.pages.tables.states[state]
      ),
      url: lotUrl(lot),
      published: first.on,
      updated: decision?.on ?? first.on,
      summary: stateText(state, decision, tongue)
    }
  ]
}

function certificateEntry(
  { revision: first }: Issued,
  newest: Issued,
  root: string,
  tongue: Tongue
): NewsEntry {
  const { number, revision, lot, date, withdrawn } = newest.revision
  const url = certificateUrl(number)
  return {
    id: tagUri(root, first.date, url),
    title: tongue.register.news.certificate(number, revision, lot, withdrawn !== undefined),
    url,
    published: first.date,
    updated: withdrawn?.date ?? date,
    summary: standingText(newest, tongue)
  }
}

/**
 * A name for good, of who held which domain when, and what was named (RFC 4151, section 2.1).
 *
 * @param root address of the site
 * @param date a day on which the producer held it, and that no later decision moves
 * @param url what is named, relative to the site's root
 */
export function tagUri(root: string, date: string, url: string): string {
  const { hostname, pathname } = new URL(root)
  return `tag:${hostname},${date}:${pathname}${encodeURI(url)}`
}
