/**
 * Every quantity a lot can have a figure for: its name in code, its key in records, its title, its
 * unit and the band outside which a figure is probably a slip.
 *
 * Declarations only. The table from quantity to model is `evaluate/models.ts`. Bands are this
 * project's own judgement of what a small workshop can meet; outside one a check warns, never fails.
 */

import { flakeQuantities } from './quantities/flake.ts'
import { foilQuantities } from './quantities/foil.ts'
import { panelQuantities } from './quantities/panel.ts'
import { processQuantities } from './quantities/process.ts'
import type { Quantity } from './quantities/quantity.ts'

export type { Quantity }

export const quantities = {
  expansionVolume_mL_per_g: {
    key: 'expansion-volume',
    title: 'Expansion volume',
    unit: 'mL/g',
    band: [10, 600],
    side: 'product',
    meaning: 'volume of the expanded worms per gram of flake before expansion'
  },
  expansionRatio: {
    key: 'expansion-ratio',
    title: 'Expansion ratio',
    unit: '1',
    band: [5, 400],
    side: 'product',
    meaning:
      'volume of the worms over the loose volume of the flake; it is not the expansion volume'
  },
  freeAcid_percent: {
    key: 'free-acid',
    title: 'Free acidity as H₂SO₄',
    unit: '%',
    band: [0, 20],
    side: 'product',
    meaning:
      'acid that leaches out, titrated and given as sulfuric acid; intercalated acid is not in it'
  },
  freeAcid_mmol_per_g: {
    key: 'free-acid-amount',
    title: 'Free acidity as H⁺',
    unit: 'mmol/g',
    band: [0, 4],
    side: 'product',
    meaning: 'amount of hydrogen ion that leaches out of one gram'
  },
  slurryPH: {
    key: 'slurry-ph',
    title: 'pH of the slurry',
    unit: '1',
    band: [1, 11],
    side: 'product',
    meaning: 'pH of the filtrate of a slurry in water'
  },
  moisture_percent: {
    key: 'moisture',
    title: 'Moisture',
    unit: '%',
    band: [0, 5],
    side: 'product',
    meaning: 'loss on drying, of the mass as received'
  },
  volatile_percent: {
    key: 'volatile',
    title: 'Volatile matter, dry basis',
    unit: '%',
    band: [2, 35],
    side: 'product',
    meaning: 'loss in the stated furnace programme, of the dry mass'
  },
  ash_percent: {
    key: 'ash',
    title: 'Ash, dry basis',
    unit: '%',
    band: [0, 25],
    side: 'product',
    meaning: 'residue after burning, of the dry mass'
  },
  fixedCarbon_percent: {
    key: 'fixed-carbon',
    title: 'Fixed carbon by difference, dry basis',
    unit: '%',
    band: [50, 100],
    side: 'product',
    meaning: '100 % less ash and volatile matter; intercalated acid counts as volatile'
  },
  devolatilisedCarbon_percent: {
    key: 'devolatilised-carbon',
    title: 'Carbon, devolatilised basis',
    unit: '%',
    band: [50, 100],
    side: 'product',
    meaning: '100 % less ash, of what is left once the volatile matter is gone'
  },
  ...flakeQuantities,
  thickness_mm: {
    key: 'thickness',
    title: 'Thickness',
    unit: 'mm',
    band: [0.05, 6],
    side: 'product',
    meaning: 'mean of the readings over a sheet'
  },
  taperAlong_mm: {
    key: 'taper-along',
    title: 'Taper along the length',
    unit: 'mm',
    band: [-0.5, 0.5],
    side: 'product',
    meaning: 'rise of the thickness from one end to the other, of the plane through the readings'
  },
  taperAcross_mm: {
    key: 'taper-across',
    title: 'Taper across the width',
    unit: 'mm',
    band: [-0.5, 0.5],
    side: 'product',
    meaning: 'the same from one edge to the other'
  },
  arealMass_g_per_m2: {
    key: 'areal-mass',
    title: 'Areal mass',
    unit: 'g/m²',
    band: [30, 6000],
    side: 'product',
    meaning: 'mass of a sheet per area'
  },
  foilDensity_g_per_cm3: {
    key: 'foil-density',
    title: 'Foil density',
    unit: 'g/cm³',
    band: [0.3, 2.1],
    side: 'product',
    meaning: 'bulk density of a sheet after pressing: mass over length, width and thickness'
  },
  porosity_percent: {
    key: 'porosity',
    title: 'Porosity',
    unit: '%',
    band: [5, 90],
    side: 'product',
    meaning: 'part of the sheet that is not graphite, from its density and that of the crystal'
  },
  ...foilQuantities,
  wormDensity_g_per_L: {
    key: 'worm-density',
    title: 'Worm density',
    unit: 'g/L',
    band: [1, 60],
    side: 'process',
    meaning: 'mass of poured worms per volume'
  },
  runExpansionVolume_mL_per_g: {
    key: 'run-expansion-volume',
    title: 'Expansion volume of the furnace run',
    unit: 'mL/g',
    band: [10, 600],
    side: 'process',
    meaning: 'volume of worms out per gram of flake in'
  },
  lossOnExpansion_percent: {
    key: 'loss-on-expansion',
    title: 'Loss on expansion',
    unit: '%',
    band: [2, 45],
    side: 'process',
    meaning: 'mass lost in the furnace, of the mass put in'
  },
  massYield_percent: {
    key: 'mass-yield',
    title: 'Mass yield',
    unit: '%',
    band: [90, 175],
    side: 'process',
    meaning: 'dry product per graphite charged'
  },
  uptake_percent: {
    key: 'uptake',
    title: 'Uptake, dry basis',
    unit: '%',
    band: [0, 75],
    side: 'process',
    meaning: 'mass gained by the graphite, both sides dry'
  },
  uptakeWithoutSalt_percent: {
    key: 'uptake-without-salt',
    title: 'Uptake without leachable salt, dry basis',
    unit: '%',
    band: [0, 75],
    side: 'process',
    meaning: 'uptake less the salt of neutralising that water leaches out of the product'
  },
  lossCeiling_percent: {
    key: 'loss-ceiling',
    title: 'Ceiling of the loss on expansion',
    unit: '%',
    band: [0, 45],
    side: 'process',
    meaning: 'loss if all that was taken up left and no carbon burned'
  },
  carbonRecovery_percent: {
    key: 'carbon-recovery',
    title: 'Recovery after expansion',
    unit: '%',
    band: [70, 120],
    side: 'process',
    meaning: 'worms per graphite charged: above 100 % something stayed, below it carbon was lost'
  },
  trimYield_percent: {
    key: 'trim-yield',
    title: 'Trim yield',
    unit: '%',
    band: [40, 100],
    side: 'process',
    meaning: 'saleable foil per worms used'
  },
  overallYield_percent: {
    key: 'overall-yield',
    title: 'Overall yield',
    unit: '%',
    band: [40, 140],
    side: 'process',
    meaning: 'saleable foil per graphite charged, along the chain of lots'
  },
  ...processQuantities,
  ...panelQuantities
} as const satisfies Record<string, Quantity>

export type QuantityName = keyof typeof quantities
export type QuantityKey = (typeof quantities)[QuantityName]['key']

/** Quantities of a product; those of the process stand on no paper. */
export type ProductName = {
  [Name in QuantityName]: (typeof quantities)[Name]['side'] extends 'product' ? Name : never
}[QuantityName]

export type ProcessName = Exclude<QuantityName, ProductName>

export const quantityNames = Object.keys(quantities) as QuantityName[]

/** Key of the test block a quantity is read in. */
export const testOf = (quantity: QuantityName): string => {
  const { key, test }: Quantity = quantities[quantity]
  return test ?? key
}

/** The quantity a record's key names, or undefined. */
export const quantityOf = (key: string): QuantityName | undefined =>
  quantityNames.find(name => quantities[name].key === key)

/** 'Moisture' in a sentence: lower case but for abbreviations such as pH. */
export const inSentence = (title: string): string =>
  /^\p{Lu}\p{Ll}/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title

/** A quantity's title in a sentence. */
export const titleInSentence = (quantity: QuantityName): string =>
  inSentence(quantities[quantity].title)
