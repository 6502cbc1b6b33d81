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

/** A test tube, its mouth at `mouth`, tilted, as an outline with some liquid in it. */
function tube(mouth: Spot, degrees: number): Part[] {
  const [x, y] = mouth
  const box = (left: number, top: number, right: number, bottom: number) =>
    polygon(
      turned(
        [
          [x + left, y + top],
          [x + right, y + top],
          [x + right, y + bottom],
          [x + left, y + bottom]
        ],
        mouth,
        degrees
      )
    )
  return [
    black(box(-3.4, -1, 3.4, 20)),
    black(circle(turned([[x, y + 20]], mouth, degrees)[0]!, 3.4)),
    white(box(-1.9, -2, 1.9, 12)),
    black(box(-4.4, -1, 4.4, 0.6)),
    white(box(-1.9, -2, 1.9, 3))
  ]
}

const drop = ([x, y]: Spot): Part =>
  black(
    curve(
      [x, y],
      [
        [
          [x + 2.4, y + 4],
          [x + 1.6, y + 5.6],
          [x, y + 5.6]
        ],
        [
          [x - 1.6, y + 5.6],
          [x - 2.4, y + 4],
          [x, y]
        ]
      ]
    )
  )

/** A slab of metal with a hole eaten into it. */
const slab: Part[] = [
  black(
    polygon([
      [24, 60],
      [46, 60],
      [46, 64.5],
      [28.5, 64.5]
    ])
  ),
  white(circle([33, 59.5], 3)),
  white(circle([30.8, 60.2], 1.6)),
  white(circle([35.4, 60.4], 1.5))
]

/** A hand lying flat, fingers to the left, with a hole eaten into its back. */
const hand: Part[] = [
  black(
    curve(
      [76, 59],
      [
        [
          [72, 57.5],
          [68, 57.5],
          [64, 58.5]
        ],
        [
          [60, 59.5],
          [56, 60.5],
          [51.5, 61.5]
        ],
        [
          [49.5, 62],
          [49.5, 64.5],
          [51.5, 64.5]
        ],
        [
          [53, 64.5],
          [54, 64.5],
          [55, 64.5]
        ],
        [
          [54, 66.5],
          [55, 68],
          [57, 67.5]
        ],
        [
          [58, 70],
          [61, 70],
          [63, 68.5]
        ],
        [
          [66, 69],
          [68, 67],
          [69, 65.5]
        ],
        [
          [70, 65.2],
          [70, 65.2],
          [71, 65]
        ]
      ]
    )
  ),
  white(circle([66, 57.5], 3)),
  white(circle([63.6, 58.4], 1.5)),
  white(circle([68.4, 58.2], 1.6))
]

/** Drops from two tubes eat into a slab of metal and into a hand. */
const corrosion: Part[] = [
  ...tube([36.5, 39], -140),
  ...tube([62.5, 39], 140),
  drop([33, 43]),
  drop([33, 49]),
  drop([66, 43]),
  drop([66, 48.6]),
  ...slab,
  ...hand
]

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

/** A bare tree on the left, a dead fish on the right, ground and water below. */
const environment: Part[] = [
  black(stroke([38, 66], [37, 40], 5, 2.6)),
  black(stroke([37.6, 50], [28, 41], 2.2, 1)),
  black(stroke([37.4, 46], [45.5, 37], 2.2, 1)),
  black(stroke([37, 41], [34, 30], 2.4, 1)),
  black(stroke([37, 41], [41.5, 29], 2, 0.9)),
  black(stroke([35, 35], [29.5, 32], 1.4, 0.7)),
  black(stroke([42.5, 40], [48, 40.5], 1.3, 0.7)),
  black(
    curve(
      [20, 59],
      [
        [
          [26, 60],
          [29, 68],
          [38, 66.5]
        ],
        [
          [46, 65],
          [52, 66],
          [56, 70]
        ],
        [
          [48, 74],
          [40, 74],
          [32, 72.5]
        ],
        [
          [29, 70],
          [24, 65],
          [20, 59]
        ]
      ]
    )
  ),
  black(
    curve(
      [50, 57],
      [
        [
          [56, 49],
          [68, 49],
          [75, 56]
        ],
        [
          [78, 54],
          [80, 52],
          [82, 52.5]
        ],
        [
          [80, 56],
          [80, 59],
          [82, 62.5]
        ],
        [
          [79, 62],
          [77, 60.5],
          [75, 58.5]
        ],
        [
          [68, 65],
          [56, 65],
          [50, 57]
        ]
      ]
    )
  ),
  black(
    polygon([
      [60, 52.5],
      [65, 47],
      [70, 53]
    ])
  ),
  ...[-1, 1].map(side =>
    white(stroke([54.3 - 1.4, 56.3 - 1.4 * side], [54.3 + 1.4, 56.3 + 1.4 * side], 0.9))
  ),
  black(stroke([53, 67], [72, 67], 1.6)),
  black(stroke([50, 70.5], [66, 70.5], 1.6))
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
