/** What somebody looks for among the lots, and the same as the end of an address. */

/** Bounds of a figure, each as it was typed; '' where none is set. */
export interface Range {
  readonly from: string
  readonly to: string
}

export interface Sorting {
  /** 'made', 'lot', 'grade', 'state', 'answer', or the key of a quantity. */
  readonly by: string
  readonly down: boolean
}

export interface Query {
  /** A lot's number or part of it, or words. */
  readonly text: string
  readonly grade: string
  readonly year: string
  readonly state: string
  /** By the quantity's key, in the order they were set. */
  readonly ranges: ReadonlyMap<string, Range>
  readonly sort: Sorting
  /** Lots put aside for comparing. */
  readonly chosen: readonly string[]
}

export const newestFirst: Sorting = { by: 'made', down: true }

/** Everything, newest first. */
export const noQuery: Query = {
  text: '',
  grade: '',
  year: '',
  state: '',
  ranges: new Map(),
  sort: newestFirst,
  chosen: []
}

/** Most lots that are compared at a time. */
export const MOST_COMPARED = 6

const own = ['text', 'grade', 'year', 'state', 'sort', 'with'] as const

/** '0.95..1.05', '250..', '..0.5' */
const RANGE = /^(?<from>[^.]*(?:\.(?!\.)[^.]*)?)\.\.(?<to>.*)$/su

/** What follows '#' in the address of a view; '' where nothing is looked for. */
export function addressOf({ ranges, sort, chosen, ...query }: Query): string {
  const parts = new URLSearchParams()
  for (const name of ['text', 'grade', 'year', 'state'] as const)
    if (query[name] !== '') parts.set(name, query[name])
  for (const [key, { from, to }] of ranges)
    if (from !== '' || to !== '') parts.set(key, `${from}..${to}`)
  if (sort.by !== newestFirst.by || sort.down !== newestFirst.down)
    parts.set('sort', `${sort.by}${sort.down ? ' down' : ''}`)
  if (chosen.length > 0) parts.set('with', chosen.join(' '))
  return parts.toString()
}

/**
 * Read such an end of an address.
 *
 * @param keys quantities there are: other names are passed over
 */
export function queryFrom(address: string, keys: readonly string[]): Query {
  const parts = new URLSearchParams(address.replace(/^#/u, ''))
  const said = (name: (typeof own)[number]) => parts.get(name) ?? ''
  const ranges = new Map<string, Range>()
  for (const [key, text] of parts) {
    const bounds = RANGE.exec(text)?.groups
    if (keys.includes(key) && bounds)
      ranges.set(key, { from: bounds['from'] ?? '', to: bounds['to'] ?? '' })
  }
  return {
    text: said('text'),
    grade: said('grade'),
    year: said('year'),
    state: said('state'),
    ranges,
    sort: sortingFrom(said('sort'), keys),
    chosen: [...new Set(said('with').split(' ').filter(Boolean))].slice(0, MOST_COMPARED)
  }
}

/** Orders that need no figure. */
export const plainOrders = ['made', 'lot', 'grade', 'state', 'answer'] as const

function sortingFrom(text: string, keys: readonly string[]): Sorting {
  const [by = '', way] = text.split(' ')
  const isKnown = plainOrders.some(order => order === by) || keys.includes(by)
  return isKnown ? { by, down: way === 'down' } : newestFirst
}

/**
 * A typed bound as a number: with a point or a comma, spaces and a unit let be.
 *
 * @returns undefined where it is blank or no number
 */
export function boundOf(typed: string): number | undefined {
  const plain = typed.trim().replace(',', '.').replace('−', '-')
  const [, number] = /^([+-]?(?:\d+\.?\d*|\.\d+))\s*\D*$/u.exec(plain) ?? []
  return number === undefined ? undefined : Number(number)
}
