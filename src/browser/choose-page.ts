/** From a need to a grade: what is typed is held against each grade and its released lots. */

import type { Figures } from '../archive/figures.ts'
import { type LotList, wordAt } from '../archive/lots.ts'
import {
  matchOf,
  type Needs,
  type OfferedLot,
  reasonOf,
  type Span,
  spanAt
} from '../archive/need.ts'
import { addressOf, boundOf, noQuery, queryFrom, type Range } from '../archive/query.ts'
import { fill as filled } from '../archive/words.ts'
import { make, part } from './elements.ts'
import { loadFigures, loadLots } from './load.ts'
import { words } from './words.ts'

const ROOT = '../'
/** Lots named for each grade; the others are counted. */
const MOST_NAMED = 8
const REST_ms = 600

const columns = new Map<string, Figures>()
const inputs = () => [...document.querySelectorAll<HTMLInputElement>('.needs input')]
const keys = () => [...new Set(inputs().map(input => input.dataset['key'] ?? ''))]

/** Fields as typed; what is no number is marked, and asks nothing. */
function typed(): Map<string, Range> {
  const ranges = new Map<string, Range>()
  for (const input of inputs()) {
    const { key = '', end = '' } = input.dataset
    const text = input.value.trim()
    const isFaulty = text !== '' && boundOf(text) === undefined
    if (isFaulty) input.setAttribute('aria-invalid', 'true')
    else input.removeAttribute('aria-invalid')
    ranges.set(key, { ...(ranges.get(key) ?? { from: '', to: '' }), [end]: text })
  }
  return ranges
}

const spanOf = (from: string | undefined, to: string | undefined): Span => {
  const [low, high] = [boundOf(from ?? ''), boundOf(to ?? '')]
  return {
    ...(low === undefined ? {} : { from: low }),
    ...(high === undefined ? {} : { to: high })
  }
}

const needsIn = (ranges: ReadonlyMap<string, Range>): Needs =>
  new Map(
    [...ranges]
      .map(([key, { from, to }]) => [key, spanOf(from, to)] as const)
      .filter(([, { from, to }]) => from !== undefined || to !== undefined)
  )

/** What the page says of a grade beside its needs. */
function saidOf(item: HTMLElement, name: 'limit' | 'typical'): Map<string, Span> {
  const said = [...item.querySelectorAll<HTMLElement>(`data[data-of=${name}]`)]
  return new Map(
    said.map(({ dataset }) => [dataset['key'] ?? '', spanOf(dataset['from'], dataset['to'])])
  )
}

function lotsOf(list: LotList, grade: string, needs: Needs): OfferedLot[] {
  return list.lots.flatMap((lot, row) => {
    const isOffered = wordAt(list.grade, row) === grade && wordAt(list.state, row) === 'released'
    if (!isOffered) return []
    const figures = [...needs.keys()].flatMap(key => {
      const span = spanAt(columns.get(key), row)
      return span ? [[key, span] as const] : []
    })
    return [{ lot, figures: new Map(figures) }]
  })
}

/** The lots' list and the figures asked for, fetched when first needed. */
async function load(needs: Needs): Promise<LotList> {
  const list = await loadLots(ROOT)
  for (const key of needs.keys())
    if (!columns.has(key) && list.quantities.some(one => one.key === key))
      columns.set(key, await loadFigures(key))
  return list
}

function answerIn(list: LotList, item: HTMLElement, needs: Needs): string {
  const titles = new Map(
    inputs().map(({ dataset }) => [dataset['key'] ?? '', dataset['title'] ?? ''])
  )
  const offer = {
    limits: saidOf(item, 'limit'),
    typical: saidOf(item, 'typical'),
    lots: lotsOf(list, item.dataset['grade'] ?? '', needs)
  }
  const match = matchOf(offer, needs)
  const named = match.lots.slice(0, MOST_NAMED)
  const more = match.lots.length - named.length
  const links = named.flatMap(lot => [' ', make('a', { href: `../lots/${lot}/index.html` }, lot)])
  item
    .querySelector('.standing')
    ?.replaceChildren(
      make('b', {}, words.answers[match.answer]),
      make('span', { class: 'fine' }, reasonOf(match, titles, words)),
      ...(named.length > 0 ? [words.lotsThatAnswer, ...links] : []),
      more > 0 ? ` ${filled(words.andMore, { n: more })}` : ''
    )
  return `${item.dataset['grade']}: ${words.answers[match.answer]}`
}

let turn = 0
let resting: number | undefined

async function update(): Promise<void> {
  const ranges = typed()
  const needs = needsIn(ranges)
  const address = addressOf({ ...noQuery, ranges })
  history.replaceState(null, '', address === '' ? location.pathname : `#${address}`)
  const own = (turn += 1)
  const list = needs.size > 0 ? await load(needs) : undefined
  if (own !== turn) return
  const said = [...document.querySelectorAll<HTMLFormElement>('form.needs')].flatMap(form => {
    const mine = [...form.querySelectorAll('input')].map(({ dataset }) => dataset['key'] ?? '')
    const asked = new Map([...needs].filter(([key]) => mine.includes(key)))
    return [...form.querySelectorAll<HTMLElement>('[data-grade]')].map(item => {
      if (list && asked.size > 0) return answerIn(list, item, asked)
      item.querySelector('.standing')?.replaceChildren(words.nothingAsked)
      return ''
    })
  })
  clearTimeout(resting)
  resting = setTimeout(() => {
    part('choose-said', HTMLParagraphElement).textContent = said.filter(Boolean).join('; ')
  }, REST_ms)
}

function fill(): void {
  const { ranges } = queryFrom(location.hash, keys())
  for (const input of inputs()) {
    const range = ranges.get(input.dataset['key'] ?? '')
    input.value = (input.dataset['end'] === 'from' ? range?.from : range?.to) ?? ''
  }
}

const attempt = () =>
  void update().catch((error: unknown) => {
    const told = part('choose-said', HTMLParagraphElement)
    told.textContent = words.lotsFailed
    told.classList.remove('unseen')
    console.error(error)
  })

function begin(): void {
  for (const form of document.querySelectorAll<HTMLFormElement>('form.needs')) {
    form.classList.add('on')
    form.addEventListener('input', attempt)
    form.addEventListener('submit', event => {
      event.preventDefault()
      form.querySelector<HTMLElement>('.answers a')?.focus()
    })
    form.addEventListener('reset', event => {
      event.preventDefault()
      for (const input of form.querySelectorAll('input')) input.value = ''
      form.querySelector('input')?.focus()
      attempt()
    })
  }
  window.addEventListener('hashchange', () => {
    fill()
    attempt()
  })
  fill()
  if (location.hash.includes('=')) attempt()
}

begin()
