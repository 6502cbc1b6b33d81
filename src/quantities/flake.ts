/** Quantities of flake beyond those every lot of it has. */

import type { Quantity } from './quantity.ts'

export const flakeQuantities = {
  retained500_percent: {
    key: 'retained-500',
    title: 'Retained on 500 µm (+35 mesh)',
    unit: '%',
    band: [0, 100],
    side: 'product',
    test: 'sieve',
    meaning: 'mass on sieve No. 35 of ASTM E11 and all coarser ones, of the mass recovered'
  },
  retained300_percent: {
    key: 'retained-300',
    title: 'Retained on 300 µm (+50 mesh)',
    unit: '%',
    band: [0, 100],
    side: 'product',
    test: 'sieve',
    meaning: 'mass on sieve No. 50 of ASTM E11 and all coarser ones, of the mass recovered'
  },
  retained180_percent: {
    key: 'retained-180',
    title: 'Retained on 180 µm (+80 mesh)',
    unit: '%',
    band: [0, 100],
    side: 'product',
    test: 'sieve',
    meaning: 'mass on sieve No. 80 of ASTM E11 and all coarser ones, of the mass recovered'
  },
  retained150_percent: {
    key: 'retained-150',
    title: 'Retained on 150 µm (+100 mesh)',
    unit: '%',
    band: [0, 100],
    side: 'product',
    test: 'sieve',
    meaning: 'mass on sieve No. 100 of ASTM E11 and all coarser ones, of the mass recovered'
  },
  retained75_percent: {
    key: 'retained-75',
    title: 'Retained on 75 µm (+200 mesh)',
    unit: '%',
    band: [0, 100],
    side: 'product',
    test: 'sieve',
    meaning: 'mass on sieve No. 200 of ASTM E11 and all coarser ones, of the mass recovered'
  },
  d10_um: {
    key: 'd10',
    title: 'Sieve size d10',
    unit: 'µm',
    band: [20, 2000],
    side: 'product',
    test: 'sieve',
    meaning: 'size that 10 % of the mass is finer than, interpolated between sieves'
  },
  d50_um: {
    key: 'd50',
    title: 'Sieve size d50',
    unit: 'µm',
    band: [20, 2000],
    side: 'product',
    test: 'sieve',
    meaning: 'size that 50 % of the mass is finer than, interpolated between sieves'
  },
  d90_um: {
    key: 'd90',
    title: 'Sieve size d90',
    unit: 'µm',
    band: [20, 2000],
    side: 'product',
    test: 'sieve',
    meaning: 'size that 90 % of the mass is finer than, interpolated between sieves'
  },
  d97_um: {
    key: 'd97',
    title: 'Top cut d97',
    unit: 'µm',
    band: [20, 3000],
    side: 'product',
    test: 'sieve',
    meaning: 'size that 97 % of the mass is finer than, interpolated between sieves'
  },
  sieveLoss_percent: {
    key: 'sieve-loss',
    title: 'Loss on sieving',
    unit: '%',
    band: [-0.5, 2],
    side: 'product',
    test: 'sieve',
    meaning: 'mass charged that no sieve and no pan held afterwards'
  },
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
  },
  sulfur_percent: {
    key: 'sulfur',
    title: 'Total sulfur',
    unit: '%',
    band: [0, 10],
    side: 'product',
    meaning: 'all sulfur of the product, intercalated or free, of the mass as received'
  },
  acidEquivalent_percent: {
    key: 'acid-equivalent',
    title: 'Total sulfur as H₂SO₄',
    unit: '%',
    band: [0, 30],
    side: 'product',
    meaning: 'the same sulfur expressed as sulfuric acid; it is not the free acidity'
  },
  freeSulfate_percent: {
    key: 'free-sulfate',
    title: 'Free sulfate as SO₄²⁻',
    unit: '%',
    band: [0, 10],
    side: 'product',
    meaning: 'sulfate that water leaches out, of the mass as received'
  },
  conductivity_uS_per_cm: {
    key: 'conductivity',
    title: 'Conductivity of the slurry at 25 °C',
    unit: 'µS/cm',
    band: [1, 5000],
    side: 'product',
    meaning: 'conductivity of the filtrate of a slurry, less that of the water, at 25 °C'
  },
  onset_C: {
    key: 'onset',
    title: 'Onset temperature',
    unit: '°C',
    band: [120, 350],
    side: 'product',
    meaning: 'temperature at which the flake begins to expand, by the definition stated'
  },
  expansionAt400_mL_per_g: {
    key: 'expansion-at-400',
    title: 'Expansion volume at 400 °C',
    unit: 'mL/g',
    band: [5, 600],
    side: 'product',
    test: 'expansion-curve',
    meaning: 'volume of the worms per gram of flake, out of a furnace at 400 °C'
  },
  expansionAt600_mL_per_g: {
    key: 'expansion-at-600',
    title: 'Expansion volume at 600 °C',
    unit: 'mL/g',
    band: [5, 600],
    side: 'product',
    test: 'expansion-curve',
    meaning:
      'volume of the worms per gram of flake at 600 °C, near what a coating sees: the fire curve of ISO 834-1 is there after 6 minutes'
  },
  expansionAt800_mL_per_g: {
    key: 'expansion-at-800',
    title: 'Expansion volume at 800 °C',
    unit: 'mL/g',
    band: [5, 600],
    side: 'product',
    test: 'expansion-curve',
    meaning: 'volume of the worms per gram of flake, out of a furnace at 800 °C'
  },
  soakedExpansion_mL_per_g: {
    key: 'soaked-expansion',
    title: 'Expansion volume after a water soak',
    unit: 'mL/g',
    band: [5, 600],
    side: 'product',
    test: 'water-soak',
    meaning: 'volume of the worms per gram of flake that was soaked in water and dried'
  },
  soakKept_percent: {
    key: 'soak-kept',
    title: 'Expansion kept after a water soak',
    unit: '%',
    band: [10, 120],
    side: 'product',
    test: 'water-soak',
    meaning: 'expansion volume after the soak over that before it'
  },
  crystallineSilica_percent: {
    key: 'crystalline-silica',
    title: 'Crystalline silica',
    unit: '%',
    band: [0, 10],
    side: 'product',
    meaning: 'quartz and its kin, by mass of the product; the respirable part is less'
  }
} as const satisfies Record<string, Quantity>
