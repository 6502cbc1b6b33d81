/** The table of lots beside each other. */

import type { ComparedCell, ComparedRow } from '../archive/comparison.ts'
import { differenceText } from '../archive/comparison.ts'
import { type LotList, wordAt } from '../archive/lots.ts'
import { markOf } from '../archive/marks.ts'
import { type Stroke, strokesOf } from '../archive/strip.ts'
import { figureText } from './found-columns.ts'
import { fill } from '../archive/words.ts'
import { make } from './elements.ts'
import { dayText, figureIn, stateText, verdictText, words } from './words.ts'

export interface Compared {
  readonly list: LotList
  /** Rows of the list. */
  readonly lots: readonly number[]
  readonly rows: readonly ComparedRow[]
  readonly against: number
}

export function comparedTable(compared: Compared): HTMLElement {
  const { list, lots, rows } = compared
  const table = make('table', { class: 'compared' })
  table.append(
    make('caption', { class: 'unseen', id: 'compared-caption' }, words.beside),
    make(
      'thead',
      {},
      make(
        'tr',
        {},
        make('th', { scope: 'col' }, words.property),
        ...lots.map(row => make('th', { scope: 'col' }, lotLink(list, row)))
      )
    ),
    make('tbody', {}, ...plainRows(compared), ...rows.map(row => quantityRow(row, compared)))
  )
  return make(
    'div',
    { class: 'scroll', role: 'group', 'aria-labelledby': 'compared-caption', tabindex: '0' },
    table
  )
}

const lotLink = ({ lots }: LotList, row: number) =>
  make('a', { href: `../lots/${lots[row]}/index.html` }, lots[row]!)

/** What each lot is. */
const plainRows = ({ list, lots }: Compared): HTMLElement[] =>
  [
    { title: words.product, of: (row: number) => wordAt(list.kind, row) },
    { title: words.grade, of: (row: number) => wordAt(list.grade, row) },
    { title: words.made, of: (row: number) => dayText(list.made[row]!) },
    { title: words.status, of: (row: number) => stateText(wordAt(list.state, row)) },
    { title: words.meets, of: (row: number) => verdict(wordAt(list.answer, row)) }
  ].map(({ title, of }) =>
    make('tr', {}, make('th', { scope: 'row' }, title), ...lots.map(row => make('td', {}, of(row))))
  )

const verdict = (word: string) =>
  make(
    'span',
    { class: `verdict ${word.replaceAll(' ', '-')}` },
    make('span', { class: 'mark', 'aria-hidden': 'true' }, markOf(word)),
    ` ${verdictText(word)}`
  )

function quantityRow({ quantity, cells }: ComparedRow, { against }: Compared): HTMLElement {
  const strokes = strokesOf(cells.map(cell => cell?.figure))
  return make(
    'tr',
    {},
    make('th', { scope: 'row' }, quantity.title),
    ...cells.map((cell, place) =>
      cell
        ? figureCell(cell, strokes[place], quantity.unit, place === against)
        : make('td', {}, make('span', { class: 'none' }, words.notMeasured))
    )
  )
}

function figureCell(
  { figure, difference }: ComparedCell,
  stroke: Stroke | undefined,
  unit: string,
  isAgainst: boolean
): HTMLElement {
  const limit =
    figure.limit === undefined ? '' : fill(words.limit, { limit: limitIn(figure.limit) })
  const cell = make('td', {}, make('b', {}, figureText(figure, unit)))
  if (stroke) cell.append(strip(stroke))
  if (limit || figure.verdict)
    cell.append(
      make(
        'span',
        { class: 'fine' },
        limit,
        ' ',
        ...(figure.verdict ? [verdict(figure.verdict)] : [])
      )
    )
  if (isAgainst) cell.append(make('span', { class: 'fine' }, words.comparedWith))
  if (difference)
    cell.append(
      make(
        'span',
        { class: `difference ${difference.is.replace(' ', '-')}` },
        figureIn(differenceText(difference, unit, words))
      )
    )
  return cell
}

/** A limit of the list; a range is joined by the language's own word. */
const limitIn = (limit: string) => figureIn(limit.replace(' to ', ` ${words.to} `))

const SVG = 'http://www.w3.org/2000/svg'
const LENGTH = 200

/** A figure and its interval on the scale of its row; said in words beside it. */
function strip({ at, from, to }: Stroke): SVGElement {
  const svg = document.createElementNS(SVG, 'svg')
  const draw = (name: string, attributes: Record<string, number>) => {
    const shape = document.createElementNS(SVG, name)
    for (const [attribute, value] of Object.entries(attributes))
      shape.setAttribute(attribute, value.toFixed(1))
    svg.append(shape)
  }
  for (const [name, value] of Object.entries({
    class: 'strip',
    viewBox: `0 0 ${LENGTH} 12`,
    'aria-hidden': 'true',
    focusable: 'false'
  }))
    svg.setAttribute(name, value)
  const line = (x1: number, x2: number, y1: number, y2: number) =>
    draw('line', { x1: x1 * LENGTH, x2: x2 * LENGTH, y1, y2 })
  line(from, to, 6, 6)
  line(from, from, 3, 9)
  line(to, to, 3, 9)
  draw('circle', { cx: at * LENGTH, cy: 6, r: 3 })
  return svg
}
