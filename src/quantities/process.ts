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
  },
  residualNitrate_mg_per_kg: {
    key: 'residual-nitrate',
    title: 'Residual nitrate',
    unit: 'mg/kg',
    band: [-20, 5000],
    side: 'process',
    meaning: 'nitrate that water leaches out before drying'
  },
  residualPermanganate_mg_per_kg: {
    key: 'residual-permanganate',
    title: 'Residual permanganate',
    unit: 'mg/kg',
    band: [-20, 5000],
    side: 'process',
    meaning: 'permanganate that water leaches out before drying'
  },
  residualManganese_mg_per_kg: {
    key: 'residual-manganese',
    title: 'Residual manganese',
    unit: 'mg/kg',
    band: [-20, 20000],
    side: 'process',
    meaning: 'dissolved manganese of any kind that water leaches out before drying'
  }
} as const satisfies Record<string, Quantity>
