/** The fields of the archive page: what is typed as a query, and a query put back into them. */

import type { ListedQuantity } from '../archive/lots.ts'
import { boundOf, type Query, type Range, type Sorting } from '../archive/query.ts'
import { fill } from '../archive/words.ts'
import { make, part } from './elements.ts'
import { words } from './words.ts'

/** The form, once it knows which figures there are. */
export interface ArchiveForm {
  /** What the fields say; chosen lots are not among them. */
  read(): Omit<Query, 'chosen'>
  show(query: Query): void
}

interface RangeFields {
  readonly group: HTMLElement
  readonly from: HTMLInputElement
  readonly to: HTMLInputElement
}

const fieldNames = ['grade', 'year', 'state'] as const

const selectOf = (name: (typeof fieldNames)[number]) => part(`find-${name}`, HTMLSelectElement)

/**
 * Ready the form.
 *
 * @param first quantities that have their fields from the beginning; others are added on demand
 */
export function archiveForm(
  quantities: readonly ListedQuantity[],
  first: readonly string[]
): ArchiveForm {
  const text = part('find-text', HTMLInputElement)
  const order = part('find-order', HTMLSelectElement)
  const figures = part('find-figures', HTMLDetailsElement)
  const ranges = rangesOf(quantities)
  for (const key of first) ranges.add(key)
  offerOrders(order, quantities)
  figures.hidden = quantities.length === 0
  figures.open = matchMedia('(min-width: 56rem)').matches
  return {
    read: () => ({
      text: text.value,
      grade: selectOf('grade').value,
      year: selectOf('year').value,
      state: selectOf('state').value,
      sort: sortingOf(order.value),
      ranges: ranges.read()
    }),
    show(query) {
      text.value = query.text
      for (const name of fieldNames) selectOf(name).value = query[name]
      order.value = `${query.sort.by}${query.sort.down ? ' down' : ''}`
      // An order that no choice stands for, such as the lots' numbers backwards.
      if (order.selectedIndex < 0) order.value = query.sort.by
      if (query.ranges.size > 0) figures.open = true
      ranges.show(query.ranges)
    }
  }
}

/** The fields of all ranges: those shown from the beginning, and more as they are chosen. */
function rangesOf(quantities: readonly ListedQuantity[]) {
  const shown = new Map<string, RangeFields>()
  const place = part('find-ranges', HTMLDivElement)
  const more = part('find-more', HTMLSelectElement)
  const add = (key: string): RangeFields | undefined => {
    const quantity = quantities.find(one => one.key === key)
    if (!quantity || shown.has(key)) return shown.get(key)
    const fields = rangeFields(quantity)
    shown.set(key, fields)
    place.append(fields.group)
    more.querySelector(`option[value="${key}"]`)?.remove()
    return fields
  }
  for (const { key, title } of inOrder(quantities))
    more.append(make('option', { value: key }, title))
  more.addEventListener('input', event => {
    event.stopPropagation()
    add(more.value)?.from.focus()
    more.value = ''
  })
  return {
    add,
    read: () => new Map([...shown].map(([key, fields]) => [key, rangeIn(fields)])),
    show(ranges: Query['ranges']) {
      for (const key of ranges.keys()) add(key)
      for (const [key, { from, to }] of shown) {
        from.value = ranges.get(key)?.from ?? ''
        to.value = ranges.get(key)?.to ?? ''
      }
    }
  }
}

function offerOrders(order: HTMLSelectElement, quantities: readonly ListedQuantity[]): void {
  for (const { key, title } of inOrder(quantities))
    order.append(
      make('option', { value: key }, fill(words.lowestFirst, { title })),
      make('option', { value: `${key} down` }, fill(words.highestFirst, { title }))
    )
}

const inOrder = (quantities: readonly ListedQuantity[]) =>
  [...quantities].sort((a, b) => (a.title < b.title ? -1 : 1))

function sortingOf(choice: string): Sorting {
  const [by = '', way] = choice.split(' ')
  return { by, down: way === 'down' }
}

/** What is typed, and a mark on what is no number. */
function rangeIn({ from, to }: RangeFields): Range {
  for (const input of [from, to]) {
    const isFaulty = input.value.trim() !== '' && boundOf(input.value) === undefined
    if (isFaulty) input.setAttribute('aria-invalid', 'true')
    else input.removeAttribute('aria-invalid')
  }
  return { from: from.value.trim(), to: to.value.trim() }
}

function rangeFields({ key, title, unit }: ListedQuantity): RangeFields {
  const field = (end: string, said: string) =>
    make('input', {
      type: 'text',
      inputmode: 'decimal',
      autocomplete: 'off',
      size: '6',
      id: `find-${key}-${end}`,
      'aria-label': fill(unit === '' ? words.field : words.fieldIn, { title, end: said, unit })
    })
  const [from, to] = [field('from', words.atLeast), field('to', words.atMost)]
  const group = make(
    'div',
    { class: 'range' },
    make('span', { class: 'range-title' }, title),
    make('span', { class: 'range-ends' }, from, ` ${words.to} `, to, ` ${unit}`)
  )
  return { group, from, to }
}
