/** Plain lists of the lots, by year and by grade, in pages of a bounded length. */

import { compareText } from '../problem.ts'
import { groupedBy } from './grouped.ts'
import { english } from './languages/tongue.ts'
import { gradeUrl } from './lot.ts'
import type { LotListPage, LotShelf, LotSummary, SiteDocument } from './types.ts'

/** Lots on a page of a list. */
export const LOTS_ON_A_PAGE = 100

interface List extends LotShelf {
  readonly kicker: string
  readonly lots: readonly LotSummary[]
}

/** Every list of a site's lots. */
export function lotLists(
  summaries: readonly LotSummary[],
  { pages: { lists } } = english
): Pick<SiteDocument, 'years' | 'byGrade' | 'lists' | 'states'> {
  const newest = [...summaries].sort(
    (a, b) => compareText(b.made, a.made) || compareText(b.lot, a.lot)
  )
  const years = listsOf(newest, lists.madeIn, ({ made }) => {
    const year = made.slice(0, 4)
    return { name: year, title: year, url: `years/${year}/` }
  })
  const grades = listsOf(
    newest.filter(({ grade }) => grade !== ''),
    lists.ofGrade,
    ({ grade }) => ({ name: grade, title: grade, url: `${gradeUrl(grade)}lots/` })
  ).sort((a, b) => compareText(a.name, b.name))
  return {
    years: years.map(shelfOf),
    byGrade: grades.map(shelfOf),
    lists: [...years, ...grades].flatMap(pagesOf),
    states: [...new Set(newest.map(({ state }) => state))].sort(compareText)
  }
}

const shelfOf = ({ name, title, url, count }: List): LotShelf => ({ name, title, url, count })

function listsOf(
  newest: readonly LotSummary[],
  kicker: string,
  shelf: (lot: LotSummary) => Omit<LotShelf, 'count'>
): List[] {
  const groups = groupedBy(newest, lot => shelf(lot).name)
  return [...groups.values()].map(lots => ({
    ...shelf(lots[0]!),
    kicker,
    lots,
    count: lots.length
  }))
}

function pagesOf({ kicker, title, url, lots }: List): LotListPage[] {
  const pages = Math.ceil(lots.length / LOTS_ON_A_PAGE)
  const addressOf = (page: number) => (page === 1 ? url : `${url}page-${page}/`)
  return Array.from({ length: pages }, (_, index) => {
    const page = index + 1
    return {
      kicker,
      title,
      url: addressOf(page),
      lots: lots.slice(index * LOTS_ON_A_PAGE, page * LOTS_ON_A_PAGE),
      page,
      pages,
      ...(page > 1 ? { first: addressOf(1), previous: addressOf(page - 1) } : {}),
      ...(page < pages ? { next: addressOf(page + 1), last: addressOf(pages) } : {})
    }
  })
}
