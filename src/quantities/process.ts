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
  stageIndex: {
    key: 'stage-index',
    title: 'Equivalent stage, index only',
    unit: '1',
    band: [0.8, 30],
    side: 'process',
    meaning: 'stage whose filled galleries would weigh as much as the uptake; it proves no stage'
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
  },
  neutraliserDemand_g: {
    key: 'neutraliser-demand',
    title: 'Neutraliser for all acid charged',
    unit: 'g',
    band: [0, 1e6],
    side: 'process',
    meaning: 'mass of the neutraliser, as sold, that would take up every hydrogen ion charged'
  },
  neutraliserExcess: {
    key: 'neutraliser-excess',
    title: 'Neutraliser added over needed',
    unit: '1',
    band: [0.2, 20],
    side: 'process',
    meaning:
      'added, over what the acid still in the liquor takes at that step; below 1 it stays acid'
  },
  dilutionRise_K: {
    key: 'dilution-rise',
    title: 'Adiabatic rise on quenching',
    unit: 'K',
    band: [0, 100],
    side: 'process',
    meaning:
      'rise by the heat of dilution if none escapes; the heat of the reaction itself is not included'
  },
  neutralisationRise_K: {
    key: 'neutralisation-rise',
    title: 'Adiabatic rise on neutralising',
    unit: 'K',
    band: [0, 100],
    side: 'process',
    meaning:
      'rise by the heat of neutralising if none escapes; the heat of the reaction itself is not included'
  },
  washedAcid_percent: {
    key: 'washed-acid',
    title: 'Free acidity that washing leaves',
    unit: '%',
    band: [0, 20],
    side: 'process',
    meaning: 'dissolved acid left by well-mixed washes, as sulfuric acid, of the product'
  },
  washedSalt_percent: {
    key: 'washed-salt',
    title: 'Salt that washing leaves',
    unit: '%',
    band: [0, 20],
    side: 'process',
    meaning: 'dissolved salt of neutralising left by well-mixed washes, of the product'
  },
  washedConductivity_uS_per_cm: {
    key: 'washed-conductivity',
    title: 'Conductivity that washing leaves',
    unit: 'µS/cm',
    band: [0, 100000],
    side: 'process',
    meaning: 'of a slurry of 10 g in 100 mL, from the acid and salt that washing leaves, 25 °C'
  },
  gasBound_L: {
    key: 'gas-bound',
    title: 'Gas of the furnace run, upper bound',
    unit: 'L',
    band: [0, 10000],
    side: 'process',
    meaning: 'volume at 25 °C, as though all that left were water vapour'
  },
  sulfurDioxideBound_g: {
    key: 'sulfur-dioxide-bound',
    title: 'Sulfur dioxide of the furnace run, upper bound',
    unit: 'g',
    band: [0, 10000],
    side: 'process',
    meaning: 'as though all that left were sulfuric acid, and its sulfur left as dioxide'
  },
  sulfurDioxideInRoom_mg_per_m3: {
    key: 'sulfur-dioxide-in-room',
    title: 'Sulfur dioxide in the room, upper bound',
    unit: 'mg/m³',
    band: [0, 1e7],
    side: 'process',
    meaning: 'all at once, evenly mixed, no air changed; nearer the furnace it is more'
  }
} as const satisfies Record<string, Quantity>
