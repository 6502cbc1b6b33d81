/** Two to six lots beside each other; which they are stands in the address. */

import type { KnownLot } from '../archive/compare.ts'
import { compareLots, comparisonTable } from '../archive/comparison.ts'
import { finderOf, type Finder } from '../archive/find.ts'
import type { LotList } from '../archive/lots.ts'
import { csvOf } from '../archive/plain-csv.ts'
import { addressOf, MOST_COMPARED, noQuery, queryFrom } from '../archive/query.ts'
import { fill } from '../archive/words.ts'
import { comparedTable } from './compare-table.ts'
import { make, part } from './elements.ts'
import { loadKnown, loadLots } from './load.ts'
import { words } from './words.ts'

const ROOT = '../'

interface State {
  readonly list: LotList
  readonly finder: Finder
  chosen: readonly string[]
  against: string
  known: readonly KnownLot[]
}

const says = (text: string) => {
  part('compare-said', HTMLParagraphElement).textContent = text
}

/** Show the lots chosen, and keep them in the address. */
async function choose(state: State, lots: readonly string[]): Promise<void> {
  state.chosen = lots
  history.replaceState(null, '', `#${addressOf({ ...noQuery, chosen: lots })}`)
  state.known = await loadKnown(state.list, lots)
  if (!lots.includes(state.against)) state.against = lots[0] ?? ''
  show(state)
}

function show(state: State): void {
  const { list, known, against, chosen } = state
  part('compare-chosen', HTMLUListElement).replaceChildren(
    ...chosen.map(lot => chosenItem(state, lot))
  )
  const isEnough = known.length > 1
  part('compare-acts', HTMLParagraphElement).hidden = !isEnough
  const place = part('compared', HTMLDivElement)
  if (!isEnough) {
    place.replaceChildren()
    return says(chosen.length === 0 ? words.addTwo : words.addAnother)
  }
  const lots = known.map(({ lot }) => list.lots.indexOf(lot))
  const at = Math.max(
    0,
    known.findIndex(({ lot }) => lot === against)
  )
  const rows = compareLots(known, list.quantities, at)
  place.replaceChildren(comparedTable({ list, lots, rows, against: at }))
  const select = part('compare-against', HTMLSelectElement)
  select.replaceChildren(...known.map(({ lot }) => make('option', {}, lot)))
  select.value = known[at]!.lot
  const larger = rows
    .flatMap(({ cells }) => cells)
    .filter(cell => cell?.difference?.is === 'larger')
  says(fill(words.differ, { n: known.length, larger: larger.length, lot: known[at]!.lot }))
}

function chosenItem(state: State, lot: string): HTMLElement {
  const button = make(
    'button',
    { type: 'button', 'aria-label': fill(words.takeAway, { lot }) },
    '✕'
  )
  button.addEventListener('click', () => {
    attempt(
      choose(
        state,
        state.chosen.filter(other => other !== lot)
      )
    )
    part('compare-lot', HTMLInputElement).focus()
  })
  return make('li', {}, lot, ' ', button)
}

/** The lot that what was typed finds first is added. */
function add(state: State, field: HTMLInputElement): void {
  const text = field.value.trim()
  const [row] = text === '' ? [] : state.finder.find({ ...noQuery, text }, new Map())
  const lot = row === undefined ? undefined : state.list.lots[row]
  if (text === '') return says(words.writeFirst)
  if (lot === undefined) return says(fill(words.notFound, { text }))
  if (state.chosen.includes(lot)) return says(fill(words.isThere, { lot }))
  if (state.chosen.length >= MOST_COMPARED) return says(fill(words.most, { n: MOST_COMPARED }))
  field.value = ''
  attempt(choose(state, [...state.chosen, lot]))
}

function download({ known, list }: State): void {
  const text = csvOf(comparisonTable(known, list.quantities))
  const url = URL.createObjectURL(new Blob([text], { type: 'text/csv' }))
  const name = `${known.map(({ lot }) => lot).join(' ')}.csv`
  make('a', { href: url, download: name }).click()
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

function listen(state: State): void {
  const form = part('compare-add', HTMLFormElement)
  form.addEventListener('submit', event => {
    event.preventDefault()
    add(state, part('compare-lot', HTMLInputElement))
  })
  part('compare-against', HTMLSelectElement).addEventListener('input', event => {
    if (event.target instanceof HTMLSelectElement) state.against = event.target.value
    show(state)
  })
  part('compare-csv', HTMLButtonElement).addEventListener('click', () => download(state))
  part('compare-print', HTMLButtonElement).addEventListener('click', () => window.print())
  window.addEventListener('hashchange', () => attempt(choose(state, chosenIn(state.list))))
}

/** Lots named in the address, as far as there are such lots. */
const chosenIn = ({ lots }: LotList): string[] => {
  const known = new Set(lots)
  return queryFrom(location.hash, []).chosen.filter(lot => known.has(lot))
}

async function begin(): Promise<void> {
  part('unscripted', HTMLParagraphElement).hidden = true
  part('compare-add', HTMLFormElement).hidden = false
  says(words.fetching)
  const list = await loadLots(ROOT)
  const state: State = { list, finder: finderOf(list), chosen: [], against: '', known: [] }
  listen(state)
  await choose(state, chosenIn(list))
}

function attempt(work: Promise<unknown>): void {
  work.catch((error: unknown) => {
    says(words.figuresFailed)
    console.error(error)
  })
}

attempt(begin())
