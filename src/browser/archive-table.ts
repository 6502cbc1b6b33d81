/** The lots found, as rows of a table like those of the plain lists. */

import { markOf } from '../archive/marks.ts'
import type { Figures, PrintedFigure } from '../archive/figures.ts'
import type { Columns } from '../archive/find.ts'
import { type ListedQuantity, type LotList, wordAt } from '../archive/lots.ts'
import type { Sorting } from '../archive/query.ts'
import { fill } from '../archive/words.ts'
import { make } from './elements.ts'
import { dayText, figureIn, stateText, verdictText, words } from './words.ts'

export interface TableContent {
  readonly list: LotList
  readonly columns: Columns
  readonly rows: Uint32Array
  /** Quantities looked for or sorted by, which have a column of their own. */
  readonly shown: readonly ListedQuantity[]
  readonly sort: Sorting
  /** Asked to sort by what a column holds. */
  readonly onSort: (by: string) => void
  /** Lots put aside for comparing, and being told of a change. */
  readonly chosen: readonly string[]
  readonly onChoose: (lot: string, isChosen: boolean) => void
}

interface Head {
  readonly title: string
  readonly by?: string
  readonly isNumber?: boolean
}

const plainHeads: readonly Head[] = [
  { title: words.lot, by: 'lot' },
  { title: words.made, by: 'made' },
  { title: words.grade, by: 'grade' },
  { title: words.product },
  { title: words.meets, by: 'answer' },
  { title: words.status, by: 'state' }
]

/** '269.5 ± 3.4 mL/g' */
export const figureText = ({ value, uncertainty }: PrintedFigure, unit: string): string =>
  figureIn(
    [value, uncertainty === undefined ? '' : `± ${uncertainty}`, unit].filter(Boolean).join(' ')
  )

/** The whole table, for some of the rows found. */
export function foundTable(content: TableContent): HTMLElement {
  const { rows, shown } = content
  const heads = [
    ...plainHeads,
    ...shown.map(({ key, title, unit }) => ({
      title: unit === '' ? title : `${title}, ${unit}`,
      by: key,
      isNumber: true
    })),
    ...(shown.length === 0 ? [{ title: words.keyFigures }] : [])
  ]
  const table = make('table', { class: 'stack lots found' })
  table.append(
    make('caption', { class: 'unseen', id: 'found-caption' }, words.found),
    make('thead', {}, make('tr', {}, ...heads.map(head => headCell(head, content)))),
    make('tbody', {}, ...Array.from(rows, row => lotRow(content, row)))
  )
  return make(
    'div',
    { class: 'scroll', role: 'group', 'aria-labelledby': 'found-caption', tabindex: '0' },
    table
  )
}

function headCell({ title, by, isNumber }: Head, { sort, onSort }: TableContent): HTMLElement {
  const cell = make('th', { scope: 'col', class: isNumber ? 'number' : undefined })
  if (by === undefined) {
    cell.append(title)
    return cell
  }
  const isSorted = sort.by === by
  if (isSorted) cell.setAttribute('aria-sort', sort.down ? 'descending' : 'ascending')
  const button = make('button', { type: 'button', class: 'order', 'data-by': by }, title)
  if (isSorted) button.append(' ', make('span', { 'aria-hidden': 'true' }, sort.down ? '↓' : '↑'))
  button.addEventListener('click', () => onSort(by))
  // Where the head is there for screen readers alone, buttons in it would be stops nobody sees.
  cell.append(button, make('span', { class: 'order-plain' }, title))
  return cell
}

function lotRow(content: TableContent, row: number): HTMLElement {
  const { list, columns, shown } = content
  const lot = list.lots[row]!
  const made = list.made[row]!
  const answer = wordAt(list.answer, row)
  const state = wordAt(list.state, row)
  return make(
    'tr',
    {},
    make('th', { scope: 'row' }, pick(content, lot), make('a', { href: `${lot}/index.html` }, lot)),
    cell(words.made, make('time', { datetime: made }, dayText(made))),
    cell(words.grade, wordAt(list.grade, row) || none(words.nothing)),
    cell(words.product, wordAt(list.kind, row)),
    cell(
      words.meets,
      make(
        'span',
        { class: `verdict ${classOf(answer)}` },
        make('span', { class: 'mark', 'aria-hidden': 'true' }, markOf(answer)),
        ` ${verdictText(answer)}`
      )
    ),
    cell(words.status, make('span', { class: `state ${classOf(state)}` }, stateText(state))),
    ...shown.map(quantity => figureCell(quantity, columns.get(quantity.key), row)),
    ...(shown.length === 0 ? [keyCell(content, row)] : [])
  )
}

/** A box that puts a lot aside for comparing. */
function pick({ chosen, onChoose }: TableContent, lot: string): HTMLElement {
  const box = make('input', {
    type: 'checkbox',
    'aria-label': fill(words.compareLot, { lot }),
    'data-lot': lot
  })
  box.checked = chosen.includes(lot)
  box.addEventListener('change', () => onChoose(lot, box.checked))
  return make('label', { class: 'pick' }, box)
}

const classOf = (word: string) => word.replaceAll(' ', '-')

const cell = (label: string, ...children: (Node | string)[]): HTMLElement =>
  make('td', { 'data-label': label }, ...children)

const none = (said: string): DocumentFragment => {
  const fragment = document.createDocumentFragment()
  fragment.append(
    make('span', { class: 'none', 'aria-hidden': 'true' }, '–'),
    make('span', { class: 'unseen' }, said)
  )
  return fragment
}

function figureCell(
  { title, unit }: ListedQuantity,
  figures: Figures | undefined,
  row: number
): HTMLElement {
  const figure = figures?.printed[row]
  const label = unit === '' ? title : `${title}, ${unit}`
  return make(
    'td',
    { 'data-label': label, class: 'number' },
    figure ? figureText(figure, '') : none(words.notMeasured)
  )
}

function keyCell({ list, columns }: TableContent, row: number): HTMLElement {
  const parts = wordAt(list.chief, row)
    .split(' ')
    .flatMap(key => {
      const quantity = list.quantities.find(one => one.key === key)
      const figure = columns.get(key)?.printed[row]
      return quantity && figure ? [{ quantity, figure }] : []
    })
    .flatMap(({ quantity, figure }, index) => [
      `${index > 0 ? '; ' : ''}${quantity.title} `,
      make('b', {}, figureText(figure, quantity.unit))
    ])
  return make(
    'td',
    { 'data-label': words.keyFigures, class: 'wide' },
    ...(parts.length > 0 ? parts : [none(words.nothing)])
  )
}
