/**
 * Cautions for the products themselves, flake and foil: handling, what must not meet them, gases that
 * can come off, limits of exposure, waste. `product-cautions.json` holds the sentences with their
 * sources.
 *
 * They are the same for every lot and every recipe, so that they tell nothing of how one was made.
 */

import type { CautionLine } from './cautions.ts'
import { type Agent, agents } from './exposure.ts'
import file from './product-cautions.json' with { type: 'json' }

export type Product = 'flake' | 'foil'

export interface ProductCautions {
  readonly handling: readonly CautionLine[]
  readonly incompatible: readonly CautionLine[]
  readonly gases: readonly CautionLine[]
  /** Of its dust, of quartz that natural graphite brings along, and of the gases. */
  readonly exposure: readonly Agent[]
  readonly disposal: readonly CautionLine[]
}

interface ProductFile extends Omit<ProductCautions, 'exposure' | 'gases'> {
  readonly substance: string
  readonly gases: readonly (CautionLine & { readonly agents: readonly string[] })[]
}

// The file's shape is held by a schema in the tests.
const data: Readonly<Record<Product, ProductFile>> = file as Record<Product, ProductFile>

export function cautionsOfProduct(product: Product): ProductCautions {
  const { substance, handling, incompatible, gases, disposal } = data[product]
  const evolved = gases.flatMap(gas => gas.agents)
  const brought = [substance, 'quartz']
  return {
    handling,
    incompatible,
    gases,
    exposure: agents.filter(
      agent =>
        evolved.includes(agent.id) || agent.substances.some(bearer => brought.includes(bearer))
    ),
    disposal
  }
}
