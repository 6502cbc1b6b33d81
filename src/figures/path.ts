/**
 * Outlines as SVG path data, which HTML takes as it is and the PDF library draws as vectors. Lengths
 * in the units of the drawing, y downward.
 */

export type Spot = readonly [x: number, y: number]

/** A filled outline. */
export interface Part {
  readonly path: string
  readonly ink: 'black' | 'white' | 'red'
}

/** A square drawing, 100 units wide and high. */
export interface Drawing {
  /** What it shows, for who cannot see it. */
  readonly title: string
  readonly parts: readonly Part[]
}

/** Side of every drawing, in its units. */
export const SIZE = 100

const DECIMALS = 100
const number = (value: number) => String(Math.round(value * DECIMALS) / DECIMALS)
const spot = ([x, y]: Spot) => `${number(x)} ${number(y)}`

export const polygon = (spots: readonly Spot[]): string => `M${spots.map(spot).join('L')}Z`

export const circle = ([x, y]: Spot, radius: number): string => {
  const arc = `A${number(radius)} ${number(radius)} 0 1 0`
  return `M${spot([x - radius, y])}${arc} ${spot([x + radius, y])}${arc} ${spot([x - radius, y])}Z`
}

/** A straight stroke with flat ends; tapered where the widths of its ends differ. */
export function stroke(from: Spot, to: Spot, width: number, endWidth = width): string {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const across: Spot = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length]
  const beside = ([x, y]: Spot, away: number): Spot => [x + across[0] * away, y + across[1] * away]
  return polygon([
    beside(from, width / 2),
    beside(to, endWidth / 2),
    beside(to, -endWidth / 2),
    beside(from, -width / 2)
  ])
}

/** Spots turned about a centre, in degrees clockwise as seen. */
export function turned(spots: readonly Spot[], [x, y]: Spot, degrees: number): Spot[] {
  const angle = (degrees * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return spots.map(([px, py]): Spot => [
    x + (px - x) * cos - (py - y) * sin,
    y + (px - x) * sin + (py - y) * cos
  ])
}

/** A star of so many points between two radii. */
export const star = (centre: Spot, points: number, outer: number, inner: number): string =>
  polygon(
    Array.from({ length: 2 * points }, (_, index) => {
      const radius = index % 2 === 0 ? outer : inner
      return turned([[centre[0], centre[1] - radius]], centre, (180 * index) / points)[0]!
    })
  )

/** A closed curve through cubic pieces: a start, then two handles and an end each. */
export const curve = (start: Spot, pieces: readonly (readonly [Spot, Spot, Spot])[]): string =>
  `M${spot(start)}${pieces.map(piece => `C${piece.map(spot).join(' ')}`).join('')}Z`

export const black = (path: string): Part => ({ path, ink: 'black' })
export const white = (path: string): Part => ({ path, ink: 'white' })
