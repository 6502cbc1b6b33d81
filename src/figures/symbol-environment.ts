/** The symbol of harm to the environment. */

import { black, curve, type Part, polygon, stroke, white } from './path.ts'

/** A bare tree on the left, a dead fish on the right, ground and water below. */
export const environment: Part[] = [
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
          [79.5, 52.5]
        ],
        [
          [80, 56],
          [80, 59],
          [79.5, 62]
        ],
        [
          [78, 61.5],
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
