/** Names of inputs of the models of product figures: each language has a word for every one. */

import type { ashDry } from '../chemistry/ash.ts'
import type { acidEquivalent, asBariumSulfate } from '../chemistry/barium-sulfate.ts'
import type { moisture } from '../chemistry/drying.ts'
import type { devolatilisedCarbon, fixedCarbon } from '../chemistry/fixed-carbon.ts'
import type { acidAmount, freeAcid } from '../chemistry/free-acidity.ts'
import type { leached } from '../chemistry/leached.ts'
import type { oxidationLoss } from '../chemistry/oxidation-loss.ts'
import type { volatileDry } from '../chemistry/volatile.ts'
import type { bulkDensity } from '../physics/bulk-density.ts'
import type { compressibility, recovery, resiliency } from '../physics/compression.ts'
import type { conductivityAt25 } from '../physics/conductivity.ts'
import type { creepRelaxation } from '../physics/creep.ts'
import type { expansionVolume } from '../physics/expansion-volume.ts'
import type { arealMass, foilDensity } from '../physics/foil-density.ts'
import type { leakRate } from '../physics/leak-rate.ts'
import type { porosity } from '../physics/porosity.ts'
import type {
  foilConductivity,
  fourPointResistance,
  stripResistivity,
  vanDerPauw
} from '../physics/resistivity.ts'
import type { forcePerWidth, tensileStrength } from '../physics/tensile.ts'
import type { thermalConductivity, thermalEstimate } from '../physics/thermal-conductivity.ts'
import type { taper } from '../physics/thickness-field.ts'
import type { soakKept } from '../physics/water-soak.ts'
import type { expansionRatio } from '../physics/worms.ts'

type Models =
  | typeof acidAmount
  | typeof acidEquivalent
  | typeof arealMass
  | typeof asBariumSulfate
  | typeof ashDry
  | typeof bulkDensity
  | typeof compressibility
  | typeof conductivityAt25
  | typeof creepRelaxation
  | typeof devolatilisedCarbon
  | typeof expansionRatio
  | typeof expansionVolume
  | typeof fixedCarbon
  | typeof foilConductivity
  | typeof foilDensity
  | typeof forcePerWidth
  | typeof fourPointResistance
  | typeof freeAcid
  | typeof leached
  | typeof leakRate
  | typeof moisture
  | typeof oxidationLoss
  | typeof porosity
  | typeof recovery
  | typeof resiliency
  | typeof soakKept
  | typeof stripResistivity
  | typeof taper
  | typeof tensileStrength
  | typeof thermalConductivity
  | typeof thermalEstimate
  | typeof vanDerPauw
  | typeof volatileDry

/** Keys of each of several records, not of those alone that all have. */
type KeysOf<Inputs> = Inputs extends unknown ? keyof Inputs & string : never

type InputsOf<Model> = Model extends (inputs: infer Inputs, ...more: never[]) => unknown
  ? KeysOf<Inputs>
  : never

/** 'mass_g' → 'mass'. */
type Unitless<Name extends string> = Name extends `${infer Bare}_${string}` ? Bare : Name

/** What models take beside: constants of their own, readings that are only averaged, a sieve's pan. */
type Further = 'charged' | 'coefficient' | 'crystalDensity' | 'pan' | 'pH'

/** An input by its name in code without the unit; pieces of a roll and sieves are numbered beside. */
export type OpenInput = Unitless<InputsOf<Models>> | Further
