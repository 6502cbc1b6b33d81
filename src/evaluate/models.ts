/**
 * The table from quantity to model: how each figure of a lot is computed from its record.
 *
 * Rows run in order, so a figure may use those above it.
 */

import type { QuantityName } from '../quantities.ts'
import type { Batch, Expansion, Foil } from '../records/types.ts'
import * as batchProcess from './batch-process.ts'
import type { Bench } from './bench.ts'
import * as flake from './flake.ts'
import * as electrical from './foil-electrical.ts'
import * as expansions from './expansion-tests.ts'
import * as tests from './flake-tests.ts'
import * as foil from './foil.ts'
import * as foilTests from './foil-tests.ts'
import * as field from './thickness-field.ts'
import { freeAcidAmountResult, freeAcidResult } from './free-acid.ts'
import * as gasket from './gasket-tests.ts'
import { leachResult } from './leach.ts'
import * as gas from './furnace-gas.ts'
import * as liquor from './liquor-results.ts'
import * as process from './process.ts'
import { rollLengthResult, rollWidthResult } from './roll.ts'
import * as sieve from './sieve.ts'
import * as sulfur from './sulfur.ts'
import * as thermal from './thermal.ts'
import type { Result, Results } from './types.ts'

/** What a model may look at beside its own record. */
export interface Surroundings {
  /** Method the lot's grade names for a quantity's key. */
  readonly methodOf: flake.MethodOf
  /** Figures above it in the table. */
  readonly sofar: Results
  /** Figures of the lots this one was made from. */
  readonly earlier: process.Earlier
}

type Models<Kind> = Partial<
  Record<QuantityName, (bench: Bench, record: Kind, around: Surroundings) => Result | undefined>
>

export const batchModels: Models<Batch> = {
  looseDensity_g_per_mL: (bench, record, { methodOf }) =>
    tests.bulkDensityResult(bench, record, methodOf, 'looseDensity_g_per_mL'),
  tappedDensity_g_per_mL: (bench, record, { methodOf }) =>
    tests.bulkDensityResult(bench, record, methodOf, 'tappedDensity_g_per_mL'),
  expansionVolume_mL_per_g: (bench, record, { methodOf }) =>
    flake.expansionVolumeResult(bench, record, methodOf),
  expansionRatio: (bench, record, { methodOf, sofar }) =>
    flake.expansionRatioResult(bench, record, methodOf, sofar),
  freeAcid_percent: (bench, record, { methodOf }) => freeAcidResult(bench, record, methodOf),
  freeAcid_mmol_per_g: (bench, record, { methodOf, sofar }) =>
    freeAcidAmountResult(bench, record, methodOf, sofar),
  slurryPH: (bench, record, { methodOf }) => flake.slurryPHResult(bench, record, methodOf),
  moisture_percent: (bench, record, { methodOf }) => flake.moistureResult(bench, record, methodOf),
  volatile_percent: (bench, record, { methodOf, sofar }) =>
    flake.volatileResult(bench, record, methodOf, sofar),
  ash_percent: (bench, record, { methodOf, sofar }) =>
    flake.ashResult(bench, record, methodOf, sofar),
  fixedCarbon_percent: (bench, record, { methodOf, sofar }) =>
    flake.fixedCarbonResult(bench, record, methodOf, sofar),
  devolatilisedCarbon_percent: (bench, record, { methodOf, sofar }) =>
    flake.devolatilisedCarbonResult(bench, record, methodOf, sofar),
  retained500_percent: (bench, record, { methodOf }) =>
    sieve.retainedResult(bench, record, methodOf, 'retained500_percent', 500),
  retained300_percent: (bench, record, { methodOf }) =>
    sieve.retainedResult(bench, record, methodOf, 'retained300_percent', 300),
  retained180_percent: (bench, record, { methodOf }) =>
    sieve.retainedResult(bench, record, methodOf, 'retained180_percent', 180),
  retained150_percent: (bench, record, { methodOf }) =>
    sieve.retainedResult(bench, record, methodOf, 'retained150_percent', 150),
  retained75_percent: (bench, record, { methodOf }) =>
    sieve.retainedResult(bench, record, methodOf, 'retained75_percent', 75),
  d10_um: (bench, record, { methodOf }) => sieve.sizeResult(bench, record, methodOf, 'd10_um', 10),
  d50_um: (bench, record, { methodOf }) => sieve.sizeResult(bench, record, methodOf, 'd50_um', 50),
  d90_um: (bench, record, { methodOf }) => sieve.sizeResult(bench, record, methodOf, 'd90_um', 90),
  d97_um: (bench, record, { methodOf }) => sieve.sizeResult(bench, record, methodOf, 'd97_um', 97),
  sieveLoss_percent: (bench, record, { methodOf }) =>
    sieve.sieveLossResult(bench, record, methodOf),
  conductivity_uS_per_cm: (bench, record, { methodOf }) =>
    tests.conductivityResult(bench, record, methodOf),
  onset_C: (bench, record, { methodOf }) => tests.onsetResult(bench, record, methodOf),
  sulfur_percent: (bench, record, { methodOf }) =>
    sulfur.sulfateResult(bench, record, methodOf, 'sulfur_percent'),
  acidEquivalent_percent: (bench, record, { methodOf, sofar }) =>
    sulfur.acidEquivalentResult(bench, record, methodOf, sofar),
  freeSulfate_percent: (bench, record, { methodOf }) =>
    sulfur.sulfateResult(bench, record, methodOf, 'freeSulfate_percent'),
  residualNitrate_mg_per_kg: (bench, { tests: blocks }, { methodOf }) =>
    leachResult(
      bench,
      methodOf,
      blocks?.residualNitrate,
      'residualNitrate',
      'residualNitrate_mg_per_kg'
    ),
  residualPermanganate_mg_per_kg: (bench, { tests: blocks }, { methodOf }) =>
    leachResult(
      bench,
      methodOf,
      blocks?.residualPermanganate,
      'residualPermanganate',
      'residualPermanganate_mg_per_kg'
    ),
  residualManganese_mg_per_kg: (bench, { tests: blocks }, { methodOf }) =>
    leachResult(
      bench,
      methodOf,
      blocks?.residualManganese,
      'residualManganese',
      'residualManganese_mg_per_kg'
    ),
  expansionAt400_mL_per_g: (bench, record, { methodOf }) =>
    expansions.expansionAtResult(bench, record, methodOf, 'expansionAt400_mL_per_g', 400),
  expansionAt600_mL_per_g: (bench, record, { methodOf }) =>
    expansions.expansionAtResult(bench, record, methodOf, 'expansionAt600_mL_per_g', 600),
  expansionAt800_mL_per_g: (bench, record, { methodOf }) =>
    expansions.expansionAtResult(bench, record, methodOf, 'expansionAt800_mL_per_g', 800),
  soakedExpansion_mL_per_g: (bench, record, { methodOf }) =>
    expansions.soakedExpansionResult(bench, record, methodOf),
  soakKept_percent: (bench, record, { methodOf, sofar }) =>
    expansions.soakKeptResult(bench, record, methodOf, sofar),
  // Measured elsewhere alone.
  crystallineSilica_percent: () => undefined,
  massYield_percent: (bench, record) => batchProcess.massYieldResult(bench, record),
  uptake_percent: (bench, record, { sofar }) => batchProcess.uptakeResult(bench, record, sofar),
  uptakeWithoutSalt_percent: (bench, record, { sofar }) =>
    batchProcess.uptakeWithoutSaltResult(bench, record, sofar),
  stageIndex: (bench, record, { sofar }) => batchProcess.stageIndexResult(bench, record, sofar),
  lossCeiling_percent: (bench, record, { sofar }) =>
    batchProcess.lossCeilingResult(bench, record, sofar),
  sulfurExplained_percent: (bench, record, { sofar }) =>
    sulfur.sulfurExplainedResult(bench, record, sofar),
  neutraliserDemand_g: (bench, record) => liquor.neutraliserDemandResult(bench, record),
  neutraliserExcess: (bench, record) => liquor.neutraliserExcessResult(bench, record),
  dilutionRise_K: (bench, record) => liquor.dilutionRiseResult(bench, record),
  neutralisationRise_K: (bench, record) => liquor.neutralisationRiseResult(bench, record),
  washedAcid_percent: (bench, record, { sofar }) => liquor.washedAcidResult(bench, record, sofar),
  washedSalt_percent: (bench, record) => liquor.washedSaltResult(bench, record),
  washedConductivity_uS_per_cm: (bench, record, { sofar }) =>
    liquor.washedConductivityResult(bench, record, sofar)
}

export const expansionModels: Models<Expansion> = {
  lossOnExpansion_percent: (bench, record) => process.lossOnExpansionResult(bench, record),
  wormDensity_g_per_L: (bench, record) => process.wormDensityResult(bench, record),
  runExpansionVolume_mL_per_g: (bench, record) => process.runExpansionVolumeResult(bench, record),
  carbonRecovery_percent: (bench, record, { sofar, earlier }) =>
    process.carbonRecoveryResult(bench, record, sofar, earlier),
  gasBound_L: (bench, record, { sofar }) => gas.gasBoundResult(bench, record, sofar),
  sulfurDioxideBound_g: (bench, record, { sofar }) =>
    gas.sulfurDioxideBoundResult(bench, record, sofar),
  sulfurDioxideInRoom_mg_per_m3: (bench, record, { sofar }) =>
    gas.sulfurDioxideInRoomResult(bench, record, sofar)
}

export const foilModels: Models<Foil> = {
  thickness_mm: (bench, record, { methodOf }) => foil.thicknessResult(bench, record, methodOf),
  taperAlong_mm: (bench, record, { methodOf }) =>
    field.taperResult(bench, record, methodOf, 'along'),
  taperAcross_mm: (bench, record, { methodOf }) =>
    field.taperResult(bench, record, methodOf, 'across'),
  arealMass_g_per_m2: (bench, record, { methodOf }) =>
    foil.arealMassResult(bench, record, methodOf),
  foilDensity_g_per_cm3: (bench, record, { methodOf }) =>
    foil.foilDensityResult(bench, record, methodOf),
  porosity_percent: (bench, record, { methodOf, sofar }) =>
    foil.porosityResult(bench, record, methodOf, sofar),
  tensileAlong_MPa: (bench, record, { methodOf }) =>
    foilTests.pullResult(bench, record, methodOf, 'tensileAlong_MPa'),
  tensileAcross_MPa: (bench, record, { methodOf }) =>
    foilTests.pullResult(bench, record, methodOf, 'tensileAcross_MPa'),
  forceAlong_N_per_mm: (bench, record, { methodOf }) =>
    foilTests.pullResult(bench, record, methodOf, 'forceAlong_N_per_mm'),
  forceAcross_N_per_mm: (bench, record, { methodOf }) =>
    foilTests.pullResult(bench, record, methodOf, 'forceAcross_N_per_mm'),
  compressibility_percent: (bench, record, { methodOf }) =>
    foilTests.compressionResult(bench, record, methodOf, 'compressibility_percent'),
  recovery_percent: (bench, record, { methodOf }) =>
    foilTests.compressionResult(bench, record, methodOf, 'recovery_percent'),
  resiliency_percent: (bench, record, { methodOf }) =>
    foilTests.compressionResult(bench, record, methodOf, 'resiliency_percent'),
  sheetResistance_mOhm: (bench, record, { methodOf }) =>
    electrical.sheetResistanceResult(bench, record, methodOf),
  vanDerPauw_mOhm: (bench, record, { methodOf }) =>
    electrical.vanDerPauwResult(bench, record, methodOf),
  resistivity_uOhmm: (bench, record, { methodOf }) =>
    electrical.resistivityResult(bench, record, methodOf),
  foilConductivity_kS_per_m: (bench, record, { methodOf, sofar }) =>
    electrical.conductivityOfStrip(bench, record, methodOf, sofar),
  leachableChloride_mg_per_kg: (bench, { tests: blocks }, { methodOf }) =>
    leachResult(
      bench,
      methodOf,
      blocks?.leachableChloride,
      'leachableChloride',
      'leachableChloride_mg_per_kg'
    ),
  leachableFluoride_mg_per_kg: (bench, { tests: blocks }, { methodOf }) =>
    leachResult(
      bench,
      methodOf,
      blocks?.leachableFluoride,
      'leachableFluoride',
      'leachableFluoride_mg_per_kg'
    ),
  // Measured elsewhere alone.
  leachableAcid_percent: () => undefined,
  totalChlorine_mg_per_kg: () => undefined,
  totalFluorine_mg_per_kg: () => undefined,
  totalHalogen_mg_per_kg: () => undefined,
  gasketFactorM: () => undefined,
  gasketStressY_MPa: () => undefined,
  oxidationLoss_percent: (bench, record, { methodOf }) =>
    foilTests.oxidationResult(bench, record, methodOf),
  creepRelaxation_percent: (bench, record, { methodOf }) =>
    gasket.creepResult(bench, record, methodOf),
  leakRate_mg_per_sm: (bench, record, { methodOf }) => gasket.leakResult(bench, record, methodOf),
  thermalConductivity_W_per_mK: (bench, record, { methodOf, sofar }) =>
    thermal.thermalResult(bench, record, methodOf, sofar),
  thermalEstimate_W_per_mK: (bench, record, { methodOf, sofar }) =>
    thermal.thermalEstimateResult(bench, record, methodOf, sofar),
  rollLength_m: (bench, record, { methodOf }) => rollLengthResult(bench, record, methodOf),
  rollWidth_mm: (bench, record, { methodOf }) => rollWidthResult(bench, record, methodOf),
  trimYield_percent: (bench, record) => process.trimYieldResult(bench, record),
  overallYield_percent: (bench, record, { sofar, earlier }) =>
    process.overallYieldResult(bench, record, sofar, earlier)
}
