/** Process figures beyond yields and furnace runs: never public. */

import type { Quantity } from './quantity.ts'

export const processQuantities = {
  sulfurExplained_percent: {
    key: 'sulfur-explained',
    title: 'Uptake explained by sulfur',
    unit: '%',
    band: [5, 105],
    side: 'process',
    meaning: 'sulfur as sulfuric acid over everything the graphite took up'
  }
} as const satisfies Record<string, Quantity>
