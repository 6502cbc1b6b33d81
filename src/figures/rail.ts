/**
 * A list of things that come from one another, as strokes beside its lines.
 *
 * Each line has a mark. A thing that leads further keeps a lane of its own down to the last that comes
 * from it; strokes bend out of lanes into the marks. Drawn line by line, so that the words beside each
 * may take whatever room they need: a stroke that goes on runs far below, to be cut off where the line
 * ends.
 */

/** Something in the list, and what it comes from. */
export interface RailItem {
  readonly id: string
  readonly from: readonly string[]
}

/** The strokes of one line. */
export interface RailLine {
  readonly id: string
  /** Centre of the mark. */
  readonly x: number
  readonly y: number
  /** Data of one SVG path. */
  readonly path: string
}

export interface Rail {
  /** Room the strokes take, left to right. */
  readonly width: number
  readonly lines: readonly RailLine[]
}

/** Distance of lanes, and of the mark from the top of its line. */
const LANE = 16
const MARK = 12

/** Longer than any line is high. */
const FAR = 2000

/** The items in an order in which each comes after those it is from, else as they stand. */
function inOrder(items: readonly RailItem[]): RailItem[] {
  const known = new Map(items.map(item => [item.id, item]))
  const ordered = new Set<RailItem>()
  const open = new Set<string>()
  const visit = (item: RailItem | undefined): void => {
    if (!item || open.has(item.id)) return
    open.add(item.id)
    for (const id of item.from) visit(known.get(id))
    ordered.add(item)
  }
  items.forEach(visit)
  return [...ordered]
}

/** Draw the strokes; lines come in the order they are to stand in. */
export function drawRail(list: readonly RailItem[]): Rail {
  const items = inOrder(list)
  const row = new Map(items.map(({ id }, index) => [id, index]))
  const last = new Map<string, number>()
  for (const { id, from } of items)
    for (const source of from) if (row.has(source)) last.set(source, row.get(id)!)

  /** What holds each lane; a lane is free again at the line of the last that comes from its holder. */
  const lanes: (string | undefined)[] = []
  const laneOf = new Map<string, number>()
  const lines = items.map(({ id, from }, index) => {
    const before = [...lanes]
    for (const [lane, holder] of lanes.entries())
      if (holder !== undefined && last.get(holder) === index) lanes[lane] = undefined
    const lane = freeLane(
      lanes,
      from.flatMap(source => laneOf.get(source) ?? [])
    )
    laneOf.set(id, lane)
    const through = lanes.flatMap((holder, at) => (holder === undefined ? [] : [at]))
    lanes[lane] = last.has(id) ? id : undefined
    const sources = before.flatMap((holder, at) =>
      holder !== undefined && from.includes(holder) ? [at] : []
    )
    return {
      id,
      x: centre(lane),
      y: MARK,
      path: [
        ...through.map(at => `M${centre(at)} 0V${FAR}`),
        ...sources.map(at => bend(at, lane)),
        ...(last.has(id) ? [`M${centre(lane)} ${MARK}V${FAR}`] : [])
      ].join('')
    }
  })
  return { width: LANE * Math.max(1, ...[...laneOf.values()].map(lane => lane + 1)), lines }
}

const centre = (lane: number) => LANE * lane + LANE / 2

/** The first free lane, one that an item comes down by where there is one. */
function freeLane(lanes: readonly (string | undefined)[], own: readonly number[]): number {
  const free = own.filter(lane => lanes[lane] === undefined)
  if (free.length > 0) return Math.min(...free)
  const first = lanes.findIndex(holder => holder === undefined)
  return first < 0 ? lanes.length : first
}

const bend = (from: number, to: number): string =>
  from === to
    ? `M${centre(to)} 0V${MARK}`
    : `M${centre(from)} 0Q${centre(from)} ${MARK} ${centre(to)} ${MARK}`
