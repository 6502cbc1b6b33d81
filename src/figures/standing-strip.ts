/** One figure among others on a line: a tick for each other, a dot with its uncertainty, limits across. */

import { scaleLinear } from 'd3-scale'
import type { Drawing, Shape } from './drawing.ts'
import { extent, round, segment, word } from './shapes.ts'

export interface StandingStrip {
  readonly value: number
  /** Half length of the stroke that shows how surely the value is known. */
  readonly half: number
  /** At least one. */
  readonly others: readonly number[]
  /** Limits, drawn only where they lie among the figures or beside them. */
  readonly bounds: readonly number[]
  /** Words under the least and the greatest of the others. */
  readonly ends: readonly [string, string]
}

/** Lengths in points. */
const WIDTH = 240
const SIDE = 12
const LINE = 16
const TICK = 5
const TALL = 10
const FOOT = 34
const HEIGHT = 40
const DOT = 4
/** Two words nearer than this stand under the middle of both, as one. */
const APART = 90

/** A limit further off than the figures are from each other would press them together. */
const NEAR = 1

/** Draw it. Ticks are one stroke, however many: a hundred lots weigh what ten do. */
export function drawStandingStrip(strip: StandingStrip): Drawing {
  const { value, half, others } = strip
  const [low, high] = extent([...others, value - half, value + half])
  const reach = (high - low) * NEAR
  const bounds = strip.bounds.filter(bound => bound >= low - reach && bound <= high + reach)
  const scale = scaleLinear(extent([low, high, ...bounds]), [SIDE, WIDTH - SIDE])
  const x = (at: number) => round(scale(at))
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      segment('axis', 0, LINE, WIDTH, LINE),
      ...bounds.map(bound => segment('bound', x(bound), LINE - TALL, x(bound), LINE + TALL)),
      { is: 'path', role: 'tick', d: ticksAt(others.map(x)) },
      segment('whisker', x(value - half), LINE, x(value + half), LINE),
      { is: 'dot', role: 'plain', x: x(value), y: LINE, r: DOT },
      ...endWords(strip, x)
    ]
  }
}

/** Figures at one place are one tick. */
const ticksAt = (places: readonly number[]): string =>
  [...new Set(places)]
    .sort((a, b) => a - b)
    .map(at => `M${at},${LINE - TICK}v${2 * TICK}`)
    .join('')

function endWords({ others, ends }: StandingStrip, x: (value: number) => number): Shape[] {
  const [low, high] = [x(Math.min(...others)), x(Math.max(...others))]
  if (high - low < APART) {
    const text = ends[0] === ends[1] ? ends[0] : ends.join(' … ')
    return [word('name', middleOf(low, high), FOOT, text, 'middle')]
  }
  return [
    word('name', Math.max(0, low - SIDE), FOOT, ends[0], 'start'),
    word('name', Math.min(WIDTH, high + SIDE), FOOT, ends[1], 'end')
  ]
}

/** So that words about it stay on the strip. */
const middleOf = (low: number, high: number): number =>
  round(Math.min(WIDTH - APART / 2, Math.max(APART / 2, (low + high) / 2)))
