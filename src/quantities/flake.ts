/** Quantities of flake beyond those every lot of it has. */

import type { Quantity } from './quantity.ts'

export const flakeQuantities = {
  looseDensity_g_per_mL: {
    key: 'bulk-density',
    title: 'Bulk density, loose',
    unit: 'g/mL',
    band: [0.1, 1.2],
    side: 'product',
    meaning: 'mass of flake poured into a vessel over the volume it fills there'
  },
  tappedDensity_g_per_mL: {
    key: 'tapped-density',
    title: 'Bulk density, tapped',
    unit: 'g/mL',
    band: [0.1, 1.3],
    side: 'product',
    meaning: 'the same once the vessel has been tapped until the flake settles no further'
  }
} as const satisfies Record<string, Quantity>
