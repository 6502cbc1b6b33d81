/**
 * The symbols inside the hazard pictograms, drawn by their names in the law: black, within the white
 * square. White parts cut into black ones below them.
 */

import {
  black,
  circle,
  curve,
  type Part,
  polygon,
  type Spot,
  star,
  stroke,
  turned,
  white
} from './path.ts'
import { corrosion } from './symbol-corrosion.ts'
import { environment } from './symbol-environment.ts'

/** Flame with five tongues, its foot at y = `foot`, `scale` times 30 units high. */
function flame(foot: number, scale: number): string {
  const at = (x: number, y: number): Spot => [50 + scale * x, foot + scale * y]
  return curve(at(-7, 0), [
    [at(-15, -6), at(-14, -15), at(-9, -20)],
    [at(-10, -15), at(-8, -13), at(-6, -12)],
    [at(-7, -20), at(-2, -25), at(1, -31)],
    [at(2, -25), at(5, -22), at(5, -16)],
    [at(7, -18), at(8, -20), at(7, -23)],
    [at(13, -16), at(15, -6), at(7, 0)],
    [at(10, -5), at(8, -9), at(5, -11)],
    [at(5, -7), at(3, -5), at(2, -4)],
    [at(2, -9), at(-1, -12), at(-2, -15)],
    [at(-3, -10), at(-7, -7), at(-7, 0)]
  ])
}

const flameSymbol: Part[] = [black(flame(66, 1.35)), black(stroke([33, 71], [67, 71], 3.5))]

const flameOverCircle: Part[] = [
  black(flame(50, 0.95)),
  black(circle([50, 61], 11)),
  white(circle([50, 61], 7.5)),
  black(stroke([35.5, 74.5], [64.5, 74.5], 3.5))
]

/** A cylinder lying askew: body with a round end, shoulder, neck. */
function gasCylinder(): Part[] {
  const centre: Spot = [50, 50]
  const tilt = (spots: readonly Spot[]) => turned(spots, centre, -35)
  const body: Spot[] = [
    [27, 43],
    [29, 41],
    [63, 41],
    [68, 45],
    [72, 46],
    [76, 46],
    [76, 54],
    [72, 54],
    [68, 55],
    [63, 59],
    [29, 59],
    [27, 57]
  ]
  return [black(polygon(tilt(body)))]
}

/** Two long bones crossed, with knobs at their ends. */
function bones(): Part[] {
  const ends: readonly (readonly [Spot, Spot])[] = [
    [
      [33, 56],
      [64, 70]
    ],
    [
      [67, 56],
      [36, 70]
    ]
  ]
  return ends.flatMap(([from, to]) => [
    black(stroke(from, to, 4.4)),
    ...[from, to].flatMap(([x, y]) => [black(circle([x, y - 2], 3)), black(circle([x, y + 2], 3))])
  ])
}

const skullAndBones: Part[] = [
  ...bones(),
  white(circle([50, 38], 16)),
  white(
    polygon([
      [41, 46],
      [59, 46],
      [58, 61],
      [42, 61]
    ])
  ),
  black(circle([50, 37], 14)),
  black(
    polygon([
      [42.5, 46],
      [57.5, 46],
      [56.5, 58],
      [43.5, 58]
    ])
  ),
  white(circle([44.2, 39], 3.8)),
  white(circle([55.8, 39], 3.8)),
  white(
    polygon([
      [50, 43],
      [52.2, 47.5],
      [47.8, 47.5]
    ])
  ),
  ...[46.2, 50, 53.8].map(x => white(stroke([x, 51.5], [x, 58.5], 1)))
]

const exclamation: Part[] = [
  black(
    curve(
      [44, 27],
      [
        [
          [44, 21],
          [56, 21],
          [56, 27]
        ],
        [
          [55.6, 37],
          [53.6, 51],
          [52.6, 58]
        ],
        [
          [52, 61],
          [48, 61],
          [47.4, 58]
        ],
        [
          [46.4, 51],
          [44.4, 37],
          [44, 27]
        ]
      ]
    )
  ),
  black(circle([50, 70.5], 5.2))
]

/** Head and shoulders, with a star bursting on the chest. */
const bust: Part[] = [
  black(circle([50, 26], 8.6)),
  black(
    curve(
      [29, 62],
      [
        [
          [29, 45],
          [36, 39],
          [45, 37]
        ],
        [
          [47, 41],
          [53, 41],
          [55, 37]
        ],
        [
          [64, 39],
          [71, 45],
          [71, 62]
        ],
        [
          [66, 69],
          [60, 75],
          [54, 79]
        ],
        [
          [51, 81],
          [49, 81],
          [46, 79]
        ],
        [
          [40, 75],
          [34, 69],
          [29, 62]
        ]
      ]
    )
  ),
  white(star([50, 57], 6, 14, 4.2))
]

/** By the pictogram's code. */
export const symbols = {
  GHS02: flameSymbol,
  GHS03: flameOverCircle,
  GHS04: gasCylinder(),
  GHS05: corrosion,
  GHS06: skullAndBones,
  GHS07: exclamation,
  GHS08: bust,
  GHS09: environment
} as const satisfies Record<string, readonly Part[]>
