/**
 * The archive: finds lots as one types. The list of lots is fetched when somebody first turns to the
 * fields, a quantity's figures when they are first asked for.
 */

import { finderOf, type Finder } from '../archive/find.ts'
import type { Figures } from '../archive/figures.ts'
import { type LotList } from '../archive/lots.ts'
import {
  addressOf,
  MOST_COMPARED,
  newestFirst,
  noQuery,
  type Query,
  queryFrom
} from '../archive/query.ts'
import { type ArchiveForm, archiveForm } from './archive-form.ts'
import { type FoundTable, foundTable } from './archive-table.ts'
import { fill } from '../archive/words.ts'
import { make, part } from './elements.ts'
import { loadFigures, loadLots } from './load.ts'
import { keepInAddress, leaveFrom, type Spot, spotLeft } from './view-address.ts'
import { words } from './words.ts'

const ROOT = '../'
/** Rows shown at first, and added at each asking: all of them may have to change with a key. */
const ROWS = 30
/** Words to a screen reader wait until typing rests, in ms. */
const REST_ms = 600

interface State {
  readonly list: LotList
  readonly finder: Finder
  readonly form: ArchiveForm
  readonly columns: Map<string, Figures>
  readonly table: FoundTable
  readonly more: HTMLButtonElement
  query: Query
  found: Uint32Array
  shown: number
}

/** Quantities that a query asks for. */
const figuresIn = ({ ranges, sort }: Query): string[] => [
  ...new Set([
    ...[...ranges].filter(([, { from, to }]) => from !== '' || to !== '').map(([key]) => key),
    sort.by
  ])
]

const chiefKeys = ({ chief }: LotList): string[] => [
  ...new Set(chief.words.flatMap(words => words.split(' ').filter(Boolean)))
]

/** Fetch what is missing of the figures named, then show again. */
async function need(state: State, keys: readonly string[]): Promise<void> {
  const known = new Set(state.list.quantities.map(({ key }) => key))
  const missing = keys.filter(key => known.has(key) && !state.columns.has(key))
  if (missing.length === 0) return
  const loaded = await Promise.all(missing.map(loadFigures))
  missing.forEach((key, at) => state.columns.set(key, loaded[at]!))
  show(state)
}

/** Find and show, and keep the view in the address. */
function update(state: State, query: Query): void {
  state.query = query
  state.shown = ROWS
  show(state)
  keepInAddress(query)
  attempt(need(state, figuresIn(query)))
}

/** @param isAtOnce whether every row is needed now, not only those in sight */
function show(state: State, isAtOnce = false): void {
  const { list, finder, table, more, query, columns } = state
  const { sort, chosen } = query
  state.found = finder.find(query, columns)
  const asked = figuresIn(query)
  const shown = list.quantities.filter(({ key }) => asked.includes(key))
  const rows = state.found.subarray(0, state.shown)
  const stop = stopIn(part('found', HTMLDivElement))
  part('find-count', HTMLElement).textContent = countText(state)
  table.show({ list, columns, rows, shown, sort, chosen }, isAtOnce || stop !== '')
  table.element.hidden = rows.length === 0
  const left = state.found.length - rows.length
  more.hidden = left === 0
  more.textContent = fill(words.more, { n: Math.min(left, ROWS) })
  showChosen(state)
  if (stop !== '') part('found', HTMLDivElement).querySelector<HTMLElement>(stop)?.focus()
  say(state)
}

/** What has the focus among the lots found, as a selector: rows made anew must not lose it. */
function stopIn(place: HTMLElement): string {
  const focused = document.activeElement
  if (!(focused instanceof HTMLElement) || !place.contains(focused)) return ''
  for (const name of ['data-by', 'data-lot', 'href']) {
    const value = focused.getAttribute(name)
    if (value !== null) return `[${name}="${value}"]`
  }
  return ''
}

/** The table and the button below it, which stay there whatever is found. */
function readyPlace(stateNow: () => State): Pick<State, 'table' | 'more'> {
  const table = foundTable({
    onSort(by) {
      const state = stateNow()
      const query = { ...state.query, sort: turned(state.query, by) }
      state.form.show(query)
      update(state, query)
    },
    onChoose(lot, isChosen) {
      const state = stateNow()
      const others = state.query.chosen.filter(other => other !== lot)
      const chosen = isChosen ? [...others, lot].slice(-MOST_COMPARED) : others
      update(state, { ...state.query, chosen })
    }
  })
  const more = make('button', { type: 'button' })
  more.addEventListener('click', () => showMore(stateNow()))
  const place = part('found', HTMLDivElement)
  place.replaceChildren(table.element, more)
  place.addEventListener('click', ({ target }) => {
    const link = target instanceof Element ? target.closest('tbody a') : null
    if (link) leaveFrom({ shown: stateNow().shown, lot: link.textContent })
  })
  return { table, more }
}

/** Which lots are put aside, and the way to compare them. */
function showChosen(state: State): void {
  const { chosen } = state.query
  const place = part('find-chosen', HTMLParagraphElement)
  place.hidden = chosen.length === 0
  const href = `../compare/index.html#${addressOf({ ...noQuery, chosen })}`
  const clear = make('button', { type: 'button' }, words.chooseNone)
  clear.addEventListener('click', () => {
    update(state, { ...state.query, chosen: [] })
    part('find-text', HTMLInputElement).focus()
  })
  place.replaceChildren(
    chosen.length > 1
      ? make('a', { href }, fill(words.compare, { n: chosen.length }))
      : words.another,
    `: ${chosen.join(', ')} `,
    clear
  )
}

/** A column asked for again goes the other way; days begin with the newest. */
const turned = ({ sort }: Query, by: string) =>
  sort.by === by ? { by, down: !sort.down } : { by, down: by === newestFirst.by }

function showMore(state: State): void {
  const next = state.shown
  state.shown += ROWS
  show(state, true)
  document.querySelectorAll<HTMLElement>('#found tbody a')[next]?.focus()
}

function countText({ list, found }: State): string {
  const { count: all } = list
  if (found.length === 0) return words.noneFound
  return found.length === all
    ? fill(words.all, { n: all })
    : fill(words.some, { n: found.length, all })
}

let resting: number | undefined

/** Tell a screen reader how many were found, once typing rests. */
function say(state: State): void {
  clearTimeout(resting)
  resting = setTimeout(() => {
    const first = state.found[0]
    const count = countText(state)
    part('find-said', HTMLParagraphElement).textContent =
      first === undefined ? count : fill(words.first, { count, lot: state.list.lots[first]! })
  }, REST_ms)
}

/** The way from field to lots and back by keys. */
function moveByKeys(event: KeyboardEvent): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  const field = part('find-text', HTMLInputElement)
  const stops = [field, ...document.querySelectorAll<HTMLElement>('#found tbody th a')]
  const at = stops.indexOf(document.activeElement as HTMLElement)
  const next = at < 0 ? undefined : stops[at + (event.key === 'ArrowDown' ? 1 : -1)]
  if (!next) return
  event.preventDefault()
  next.focus()
}

function listen(state: State, form: HTMLFormElement): void {
  form.addEventListener('input', () => update(state, { ...state.query, ...state.form.read() }))
  form.addEventListener('reset', event => {
    event.preventDefault()
    state.form.show(noQuery)
    update(state, { ...noQuery, chosen: state.query.chosen })
    part('find-text', HTMLInputElement).focus()
  })
  window.addEventListener('hashchange', () => {
    const query = queryFrom(location.hash, keysOf(state.list))
    state.form.show(query)
    update(state, query)
  })
}

const keysOf = ({ quantities }: LotList): string[] => quantities.map(({ key }) => key)

async function open(form: HTMLFormElement): Promise<State> {
  // Writing the address anew forgets it.
  const spot = spotLeft()
  const list = await loadLots(ROOT)
  const chief = chiefKeys(list)
  const state: State = {
    list,
    finder: finderOf(list),
    form: archiveForm(list.quantities, chief),
    columns: new Map(),
    ...readyPlace(() => state),
    query: queryFrom(location.hash, keysOf(list)),
    found: new Uint32Array(),
    shown: ROWS
  }
  part('plain-lists', HTMLDivElement).hidden = true
  // What was typed while the list was on its way counts.
  const typed = part('find-text', HTMLInputElement).value
  state.form.show({ ...state.query, text: state.query.text || typed })
  listen(state, form)
  update(state, { ...state.query, text: state.form.read().text })
  await need(state, chief)
  if (spot) returnToSpot(state, spot)
  return state
}

/** As many lots as when one was opened from here, and that one in sight. */
function returnToSpot(state: State, { shown, lot }: Spot): void {
  state.shown = shown
  show(state, true)
  const links = [...document.querySelectorAll<HTMLElement>('#found tbody a')]
  const left = links.find(link => link.textContent === lot)
  left?.focus({ preventScroll: true })
  left?.scrollIntoView({ block: 'center' })
}

function attempt(work: Promise<unknown>): void {
  work.catch((error: unknown) => {
    part('find-count', HTMLElement).textContent = words.listFailed
    part('plain-lists', HTMLDivElement).hidden = false
    console.error(error)
  })
}

function begin(): void {
  const form = part('finder', HTMLFormElement)
  form.hidden = false
  let opened: Promise<State> | undefined
  const wake = () => {
    if (!opened) attempt((opened = open(form)))
  }
  form.addEventListener('focusin', wake)
  form.addEventListener('pointerover', wake)
  form.addEventListener('submit', event => {
    event.preventDefault()
    wake()
    attempt(opened!.then(() => document.querySelector<HTMLElement>('#found tbody a')?.click()))
  })
  document.addEventListener('keydown', moveByKeys)
  if (location.hash.includes('=') || spotLeft()) wake()
}

begin()
