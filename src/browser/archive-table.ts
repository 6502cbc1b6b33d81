/**
 * The table of lots found. It stays on the page while what is found changes: a cell is made anew only
 * where it has to say something else, which a browser shows in a fraction of the time of a new table.
 */

import type { Sorting } from '../archive/query.ts'
import { make } from './elements.ts'
import { type FoundColumn, foundColumns, type FoundLots } from './found-columns.ts'
import { words } from './words.ts'

export interface TableContent extends FoundLots {
  readonly rows: Uint32Array
  readonly sort: Sorting
}

export interface TableActs {
  /** Asked to sort by what a column holds. */
  readonly onSort: (by: string) => void
  /** Told that a lot was put aside for comparing, or taken back. */
  readonly onChoose: (lot: string, isChosen: boolean) => void
}

export interface FoundTable {
  readonly element: HTMLElement
  /**
   * Show other lots.
   *
   * @param isAtOnce whether also rows below the edge of the screen must be there at once, not only after
   * those in sight were painted
   */
  show(content: TableContent, isAtOnce: boolean): void
}

/** Rows taken to be in sight until that is known. */
const FIRST_ROWS = 15

/** A row that shows one lot after the other. */
interface ShownRow {
  readonly element: HTMLTableRowElement
  show(columns: readonly FoundColumn[], row: number): void
}

export function foundTable(acts: TableActs): FoundTable {
  const table = make('table', { class: 'stack lots found' })
  const head = make('tr')
  const body = make('tbody')
  const caption = make('caption', { class: 'unseen', id: 'found-caption' }, words.found)
  table.append(caption, make('thead', {}, head), body)
  listen(head, body, acts)
  const sight = sightOf(body)
  const afterPainting = painter()
  let titles = ''
  let rows: ShownRow[] = []
  return {
    element: make(
      'div',
      { class: 'scroll', role: 'group', 'aria-labelledby': 'found-caption', tabindex: '0' },
      table
    ),
    show(content, isAtOnce) {
      const columns = foundColumns(content)
      const wanted = columns.map(({ title }) => title).join('\n')
      if (wanted !== titles) {
        titles = wanted
        rows = []
        body.replaceChildren()
        head.replaceChildren(...columns.map(headCell))
        setWidths(table, content.shown.length)
      }
      markSorted(head, content.sort)
      const showFirst = (count: number) => {
        const first = content.rows.subarray(0, count)
        first.forEach((row, at) => (rows[at] ??= shownRow(columns)).show(columns, row))
        fit(body, rows, first.length, content.rows.length)
      }
      showFirst(isAtOnce ? content.rows.length : sight.rows())
      afterPainting(() => {
        showFirst(content.rows.length)
        sight.measure()
      })
    }
  }
}

/** How many rows are in sight, as far as is known without laying the page out for it. */
function sightOf(body: HTMLElement) {
  let known = FIRST_ROWS
  return {
    rows: () => known,
    measure() {
      const { top, height } = body.getBoundingClientRect()
      const count = body.childElementCount
      // One row more, for what is partly in sight, and a few for a page that moves up meanwhile.
      if (height > 0) known = Math.max(5, Math.ceil(((innerHeight - top) / height) * count)) + 3
    }
  }
}

/** Does one thing once the next frame is painted, unless there is something newer to be done then. */
function painter(): (act: () => void) => void {
  let latest = 0
  return act => {
    const mine = (latest += 1)
    requestAnimationFrame(() =>
      setTimeout(() => {
        if (mine === latest) act()
      })
    )
  }
}

function listen(head: HTMLElement, body: HTMLElement, { onSort, onChoose }: TableActs): void {
  head.addEventListener('click', ({ target }) => {
    const button = target instanceof Element ? target.closest('[data-by]') : null
    const by = button?.getAttribute('data-by')
    if (by) onSort(by)
  })
  body.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return
    const lot = target.getAttribute('data-lot')
    if (lot !== null) onChoose(lot, target.checked)
  })
}

/** As many columns of figures as there are say how wide the table must be at least. */
function setWidths(table: HTMLElement, figures: number): void {
  table.classList.toggle('figured', figures > 0)
  table.style.setProperty('--figures', String(figures))
}

function headCell({ title, by, kind }: FoundColumn): HTMLElement {
  const cell = make('th', { scope: 'col', class: kind === 'number' ? kind : undefined })
  if (by === undefined) {
    cell.append(title)
    return cell
  }
  const button = make('button', { type: 'button', class: 'order', 'data-by': by }, title)
  // Where the head is there for screen readers alone, buttons in it would be stops nobody sees.
  cell.append(button, make('span', { class: 'order-plain' }, title))
  return cell
}

function markSorted(head: HTMLElement, { by, down }: Sorting): void {
  for (const button of head.querySelectorAll('[data-by]')) {
    const isSorted = button.getAttribute('data-by') === by
    const way = isSorted ? (down ? 'descending' : 'ascending') : null
    const cell = button.parentElement!
    if (cell.getAttribute('aria-sort') === way) continue
    button.querySelector('span')?.remove()
    if (way === null) cell.removeAttribute('aria-sort')
    else {
      cell.setAttribute('aria-sort', way)
      button.append(make('span', { 'aria-hidden': 'true' }, down ? ' ↓' : ' ↑'))
    }
  }
}

function shownRow(columns: readonly FoundColumn[]): ShownRow {
  const element = make('tr')
  const cells = columns.map(({ title, kind }, at) => ({
    place:
      at === 0 ? make('th', { scope: 'row' }) : make('td', { 'data-label': title, class: kind }),
    said: undefined as string | undefined
  }))
  element.append(...cells.map(({ place }) => place))
  return {
    element,
    show(columns, row) {
      for (const [at, cell] of cells.entries()) {
        const { says, fill } = columns[at]!
        const said = says(row)
        if (cell.said === said) continue
        cell.said = said
        fill(cell.place, row)
      }
    }
  }
}

/** Have at least some rows on the page, and at most as many as there are lots; the others wait. */
function fit(body: HTMLElement, rows: readonly ShownRow[], least: number, most: number): void {
  while (body.childElementCount > most) body.lastElementChild!.remove()
  const missing = rows.slice(body.childElementCount, least)
  if (missing.length > 0) body.append(...missing.map(({ element }) => element))
}
