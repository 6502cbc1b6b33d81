/** Quantities of foil beyond those of its sheets' sizes and masses. */

import type { Quantity } from './quantity.ts'

export const foilQuantities = {
  tensileAlong_MPa: {
    key: 'tensile-along',
    title: 'Tensile strength along',
    unit: 'MPa',
    band: [0.5, 30],
    side: 'product',
    test: 'tensile',
    meaning: 'highest force over the original cross-section, pulled in the direction of forming'
  },
  tensileAcross_MPa: {
    key: 'tensile-across',
    title: 'Tensile strength across',
    unit: 'MPa',
    band: [0.5, 30],
    side: 'product',
    test: 'tensile',
    meaning: 'the same, pulled across the direction of forming'
  },
  forceAlong_N_per_mm: {
    key: 'force-per-width-along',
    title: 'Force per width along',
    unit: 'N/mm',
    band: [0.1, 60],
    side: 'product',
    test: 'tensile',
    meaning: 'highest force over the width, which no error of thickness is in'
  },
  forceAcross_N_per_mm: {
    key: 'force-per-width-across',
    title: 'Force per width across',
    unit: 'N/mm',
    band: [0.1, 60],
    side: 'product',
    test: 'tensile',
    meaning: 'the same, pulled across the direction of forming'
  },
  compressibility_percent: {
    key: 'compressibility',
    title: 'Compressibility',
    unit: '%',
    band: [1, 80],
    side: 'product',
    test: 'compression',
    meaning: 'thickness lost under the total load, of that under the preload'
  },
  recovery_percent: {
    key: 'recovery',
    title: 'Recovery',
    unit: '%',
    band: [1, 90],
    side: 'product',
    test: 'compression',
    meaning: 'part of the compression that goes back once the load is taken off'
  },
  resiliency_percent: {
    key: 'resiliency',
    title: 'Resiliency',
    unit: '%',
    band: [0.5, 40],
    side: 'product',
    test: 'compression',
    meaning: 'thickness gained when unloaded, of that under the load'
  },
  sheetResistance_mOhm: {
    key: 'sheet-resistance',
    title: 'Sheet resistance, four points',
    unit: 'mΩ',
    band: [1, 500],
    side: 'product',
    meaning: 'resistance of a square of any size, by four points in a line'
  },
  vanDerPauw_mOhm: {
    key: 'van-der-pauw-resistance',
    title: 'Sheet resistance, van der Pauw',
    unit: 'mΩ',
    band: [1, 500],
    side: 'product',
    meaning: 'resistance of a square of any size, by contacts on the rim of a piece'
  },
  resistivity_uOhmm: {
    key: 'resistivity',
    title: 'Resistivity of a strip',
    unit: 'µΩ·m',
    band: [2, 50],
    side: 'product',
    test: 'strip-resistance',
    meaning: 'four-wire resistance times cross-section over length'
  },
  foilConductivity_kS_per_m: {
    key: 'electrical-conductivity',
    title: 'Conductivity of a strip',
    unit: 'kS/m',
    band: [20, 500],
    side: 'product',
    test: 'strip-resistance',
    meaning: 'reciprocal of the resistivity'
  },
  leachableChloride_mg_per_kg: {
    key: 'leachable-chloride',
    title: 'Leachable chloride',
    unit: 'mg/kg',
    band: [-5, 500],
    side: 'product',
    meaning: 'chloride that water leaches out; total chlorine is another, larger figure'
  },
  leachableFluoride_mg_per_kg: {
    key: 'leachable-fluoride',
    title: 'Leachable fluoride',
    unit: 'mg/kg',
    band: [-5, 500],
    side: 'product',
    meaning: 'fluoride that water leaches out; total fluorine is another, larger figure'
  },
  leachableAcid_percent: {
    key: 'leachable-acid',
    title: 'Leachable acid as H₂SO₄',
    unit: '%',
    band: [-0.01, 2],
    side: 'product',
    meaning: 'acid that water leaches out of the foil, given as sulfuric acid'
  },
  oxidationLoss_percent: {
    key: 'oxidation-loss',
    title: 'Oxidation loss',
    unit: '%',
    band: [0, 100],
    side: 'product',
    meaning: 'mass lost in hot air, of the dry mass, at the temperature and after the hours stated',
    conditions: 'temperature and hours'
  },
  creepRelaxation_percent: {
    key: 'creep-relaxation',
    title: 'Creep relaxation',
    unit: '%',
    band: [0, 60],
    side: 'product',
    meaning: 'part of the clamping load that is lost at the temperature and after the time stated',
    conditions: 'load or stress, temperature and time'
  },
  leakRate_mg_per_sm: {
    key: 'gas-leak',
    title: 'Gas leak rate',
    unit: 'mg/(s·m)',
    band: [-0.001, 10],
    side: 'product',
    meaning: 'mass of the gas stated that is lost per time and per mean circumference of a ring',
    conditions: 'gas, pressure, gasket stress and temperature'
  },
  thermalConductivity_W_per_mK: {
    key: 'thermal-conductivity',
    title: 'Thermal conductivity in the plane',
    unit: 'W/(m·K)',
    band: [20, 700],
    side: 'product',
    meaning: 'heat that flows along the sheet, by its diffusivity, density and heat capacity',
    conditions: 'method and temperature'
  },
  thermalEstimate_W_per_mK: {
    key: 'thermal-conductivity-estimate',
    title: 'Thermal conductivity in the plane, estimate only',
    unit: 'W/(m·K)',
    band: [20, 700],
    side: 'product',
    test: 'strip-resistance',
    meaning: 'estimated from the conductivity of a strip, not measured'
  },
  rollLength_m: {
    key: 'roll-length',
    title: 'Roll length',
    unit: 'm',
    band: [0.05, 500],
    side: 'product',
    test: 'roll',
    meaning: 'all pieces of the roll together, from splice to splice'
  },
  rollWidth_mm: {
    key: 'roll-width',
    title: 'Roll width',
    unit: 'mm',
    band: [2, 1600],
    side: 'product',
    test: 'roll',
    meaning: 'mean over several places along the roll'
  },
  totalChlorine_mg_per_kg: {
    key: 'total-chlorine',
    title: 'Total chlorine',
    unit: 'mg/kg',
    band: [0, 2000],
    side: 'product',
    meaning: 'all chlorine there is, leachable or not'
  },
  totalFluorine_mg_per_kg: {
    key: 'total-fluorine',
    title: 'Total fluorine',
    unit: 'mg/kg',
    band: [0, 2000],
    side: 'product',
    meaning: 'all fluorine there is, leachable or not'
  },
  totalHalogen_mg_per_kg: {
    key: 'total-halogen',
    title: 'Total halogen',
    unit: 'mg/kg',
    band: [0, 5000],
    side: 'product',
    meaning: 'fluorine, chlorine, bromine and iodine together, each by its own mass'
  },
  gasketFactorM: {
    key: 'gasket-factor-m',
    title: 'Gasket factor m',
    unit: '1',
    band: [0.5, 10],
    side: 'product',
    meaning: 'stress on the gasket in service over the pressure inside, for calculating a flange',
    conditions: 'the rule it belongs to and the tightness it stands for'
  },
  gasketStressY_MPa: {
    key: 'gasket-stress-y',
    title: 'Gasket seating stress y',
    unit: 'MPa',
    band: [0, 200],
    side: 'product',
    meaning: 'stress that seats the gasket, for calculating a flange',
    conditions: 'the rule it belongs to and the tightness it stands for'
  }
} as const satisfies Record<string, Quantity>
