/** The columns of the lots found, like those of the plain lists. */

import { markOf } from '../archive/marks.ts'
import type { Figures, PrintedFigure } from '../archive/figures.ts'
import type { Columns } from '../archive/find.ts'
import { type ListedQuantity, type LotList, wordAt } from '../archive/lots.ts'
import { fill } from '../archive/words.ts'
import { type Child, make } from './elements.ts'
import { dayText, figureIn, stateText, verdictText, words } from './words.ts'

/** What the cells are made of. */
export interface FoundLots {
  readonly list: LotList
  readonly columns: Columns
  /** Quantities looked for or sorted by, which have a column of their own. */
  readonly shown: readonly ListedQuantity[]
  /** Lots put aside for comparing. */
  readonly chosen: readonly string[]
}

export interface FoundColumn {
  readonly title: string
  /** What lots are sorted by when its head is pressed. */
  readonly by?: string
  readonly kind?: 'number' | 'wide'
  /** What a lot's cell says: a cell that says it already is left as it is. */
  readonly says: (row: number) => string
  /** Have a cell, which may show another lot, show this one. */
  readonly fill: (cell: HTMLElement, row: number) => void
}

/** For cells that say little: what they show is made anew. */
const filledWith =
  (parts: (row: number) => readonly Child[]) =>
  (cell: HTMLElement, row: number): void =>
    cell.replaceChildren(...parts(row))

export function foundColumns(lots: FoundLots): FoundColumn[] {
  const { list, shown } = lots
  const wordColumn = (title: string, by: 'grade' | 'answer' | 'state') => ({
    title,
    by,
    says: (row: number) => wordAt(list[by], row)
  })
  return [
    lotColumn(lots),
    {
      title: words.made,
      by: 'made',
      says: row => list.made[row]!,
      fill: filledWith(row => [
        make('time', { datetime: list.made[row] }, dayText(list.made[row]!))
      ])
    },
    {
      ...wordColumn(words.grade, 'grade'),
      fill: filledWith(row => [wordAt(list.grade, row) || none(words.nothing)])
    },
    {
      title: words.product,
      says: row => wordAt(list.kind, row),
      fill: filledWith(row => [wordAt(list.kind, row)])
    },
    {
      ...wordColumn(words.meets, 'answer'),
      fill: filledWith(row => [verdict(wordAt(list.answer, row))])
    },
    {
      ...wordColumn(words.status, 'state'),
      fill: filledWith(row => [state(wordAt(list.state, row))])
    },
    ...shown.map(quantity => figureColumn(quantity, lots.columns.get(quantity.key))),
    ...(shown.length === 0 ? [keyColumn(lots)] : [])
  ]
}

function lotColumn({ list, chosen }: FoundLots): FoundColumn {
  const isChosen = (row: number) => chosen.includes(list.lots[row]!)
  return {
    title: words.lot,
    by: 'lot',
    says: row => `${list.lots[row]!} ${isChosen(row)}`,
    fill: (cell, row) => showLot(cell, list.lots[row]!, isChosen(row))
  }
}

/** A box that puts a lot aside for comparing, and the way to the lot: boxes take long to make anew. */
function showLot(cell: HTMLElement, lot: string, isChosen: boolean): void {
  const box = cell.querySelector('input') ?? make('input', { type: 'checkbox' })
  const link = cell.querySelector('a') ?? make('a')
  if (cell.childElementCount === 0) cell.append(make('label', { class: 'pick' }, box), link)
  box.setAttribute('aria-label', fill(words.compareLot, { lot }))
  box.setAttribute('data-lot', lot)
  box.checked = isChosen
  link.setAttribute('href', `${lot}/index.html`)
  link.textContent = lot
}

const classOf = (word: string) => word.replaceAll(' ', '-')

const verdict = (answer: string): HTMLElement =>
  make(
    'span',
    { class: `verdict ${classOf(answer)}` },
    make('span', { class: 'mark', 'aria-hidden': 'true' }, markOf(answer)),
    ` ${verdictText(answer)}`
  )

const state = (word: string): HTMLElement =>
  make('span', { class: `state ${classOf(word)}` }, stateText(word))

const none = (said: string): DocumentFragment => {
  const fragment = document.createDocumentFragment()
  fragment.append(
    make('span', { class: 'none', 'aria-hidden': 'true' }, '–'),
    make('span', { class: 'unseen' }, said)
  )
  return fragment
}

/** '269.5 ± 3.4 mL/g' */
export const figureText = ({ value, uncertainty }: PrintedFigure, unit: string): string =>
  figureIn(
    [value, uncertainty === undefined ? '' : `± ${uncertainty}`, unit].filter(Boolean).join(' ')
  )

function figureColumn(
  { key, title, unit }: ListedQuantity,
  figures: Figures | undefined
): FoundColumn {
  const says = (row: number) => {
    const figure = figures?.printed[row]
    return figure ? figureText(figure, '') : ''
  }
  return {
    title: unit === '' ? title : `${title}, ${unit}`,
    by: key,
    kind: 'number',
    says,
    fill: filledWith(row => [says(row) || none(words.notMeasured)])
  }
}

function keyColumn({ list, columns }: FoundLots): FoundColumn {
  const quantities = new Map(list.quantities.map(quantity => [quantity.key, quantity]))
  const figuresAt = (row: number): [string, string][] =>
    wordAt(list.chief, row)
      .split(' ')
      .flatMap(key => {
        const quantity = quantities.get(key)
        const figure = columns.get(key)?.printed[row]
        return quantity && figure ? [[quantity.title, figureText(figure, quantity.unit)]] : []
      })
  return {
    title: words.keyFigures,
    kind: 'wide',
    says: row => figuresAt(row).flat().join(' '),
    fill: filledWith(row => {
      const parts = figuresAt(row).flatMap(([title, text], index) => [
        `${index > 0 ? '; ' : ''}${title} `,
        make('b', {}, text)
      ])
      return parts.length > 0 ? parts : [none(words.nothing)]
    })
  }
}
