/** The symbol of corrosion. */

import { black, circle, curve, type Part, polygon, type Spot, turned, white } from './path.ts'

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
export const corrosion: Part[] = [
  ...tube([36.5, 39], -140),
  ...tube([62.5, 39], 140),
  drop([33, 43]),
  drop([33, 49]),
  drop([66, 43]),
  drop([66, 48.6]),
  ...slab,
  ...hand
]
