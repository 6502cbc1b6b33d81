/**
 * Densities of the solutions a workshop of this kind meets, by mass fraction, as tables.
 *
 * A second temperature, where there is one, is held as the fall of density from the first, at nodes of
 * its own: falls vary smoothly where densities do not.
 *
 * Sources, all recalled and none checked against the print: International Critical Tables as reprinted
 * in Perry's Chemical Engineers' Handbook (sulfuric and nitric acid, ammonia); Laliberté's model of 2009,
 * computed (hydrogen peroxide, sodium hydroxide). Each table was held against a second one: sulfuric
 * acid against a published linear-in-temperature fit of the same data (0.0006 g/cm³ from 5 to 100 %),
 * nitric acid and ammonia against Laliberté's model (0.0035 and 0.0015 g/cm³ at most), hydrogen
 * peroxide against handbook values (0.0016 g/cm³). `limit_g_per_cm3` is that agreement.
 */

export interface DensityTable {
  readonly source: string
  /** Mass fraction, %, rising. Of ammonia as NH3, never as NH4OH. */
  readonly massFraction_percent: readonly number[]
  /** Density at 20 °C at those, g/cm³. */
  readonly density_g_per_cm3: readonly number[]
  /** How far density falls a kelvin, g/cm³, at mass fractions of their own. */
  readonly fall: {
    readonly massFraction_percent: readonly number[]
    readonly per_K: readonly number[]
  }
  /** Temperatures the table is used at, °C. */
  readonly from_C: number
  readonly to_C: number
  /** The table lies within this of the truth, g/cm³. */
  readonly limit_g_per_cm3: number
}

export const sulfuricAcid: DensityTable = {
  source:
    "International Critical Tables, as in Perry's Chemical Engineers' Handbook (from memory, not checked against the print)",
  massFraction_percent: [
    0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25,
    26, 27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49,
    50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71, 72, 73,
    74, 75, 76, 77, 78, 79, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89, 90, 91, 92, 93, 94, 95, 96, 97,
    98, 99, 100
  ],
  density_g_per_cm3: [
    0.9982, 1.0051, 1.0118, 1.0184, 1.025, 1.0317, 1.0385, 1.0453, 1.0522, 1.0591, 1.0661, 1.0731,
    1.0802, 1.0874, 1.0947, 1.102, 1.1094, 1.1168, 1.1243, 1.1318, 1.1394, 1.1471, 1.1548, 1.1626,
    1.1704, 1.1783, 1.1862, 1.1942, 1.2023, 1.2104, 1.2185, 1.2267, 1.2349, 1.2432, 1.2515, 1.2599,
    1.2684, 1.2769, 1.2855, 1.2941, 1.3028, 1.3116, 1.3205, 1.3294, 1.3384, 1.3476, 1.3569, 1.3663,
    1.3758, 1.3854, 1.3951, 1.4049, 1.4148, 1.4248, 1.435, 1.4453, 1.4557, 1.4662, 1.4768, 1.4875,
    1.4983, 1.5091, 1.52, 1.531, 1.5421, 1.5533, 1.5646, 1.576, 1.5874, 1.5989, 1.6105, 1.6221,
    1.6338, 1.6456, 1.6574, 1.6692, 1.681, 1.6927, 1.7043, 1.7158, 1.7272, 1.7383, 1.7491, 1.7594,
    1.7693, 1.7786, 1.7872, 1.7951, 1.8022, 1.8087, 1.8144, 1.8195, 1.824, 1.8279, 1.8312, 1.8337,
    1.8355, 1.8364, 1.8361, 1.8342, 1.8305
  ],
  fall: {
    massFraction_percent: [
      0, 5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 93, 95, 96, 97, 98, 100
    ],
    per_K: [
      0.00024, 0.00034, 0.00042, 0.00052, 0.00058, 0.00066, 0.0007, 0.00074, 0.0008, 0.00086,
      0.00092, 0.00102, 0.00106, 0.00104, 0.00102, 0.001, 0.001, 0.00102, 0.001
    ]
  },
  from_C: 15,
  to_C: 30,
  limit_g_per_cm3: 0.0006
}

export const nitricAcid: DensityTable = {
  source: "Perry's Chemical Engineers' Handbook (from memory, not checked against the print)",
  massFraction_percent: [0, 1, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 68, 70],
  density_g_per_cm3: [
    0.9982, 1.0036, 1.0256, 1.0543, 1.0842, 1.115, 1.1469, 1.18, 1.214, 1.2463, 1.2783, 1.31,
    1.3393, 1.3667, 1.3913, 1.4048, 1.4134
  ],
  fall: { massFraction_percent: [0], per_K: [0] },
  from_C: 18,
  to_C: 22,
  limit_g_per_cm3: 0.0035
}

export const ammonia: DensityTable = {
  source:
    "Perry's Chemical Engineers' Handbook, % as NH3 (from memory, not checked against the print)",
  massFraction_percent: [0, 1, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 25, 26, 28, 30],
  density_g_per_cm3: [
    0.9982, 0.9939, 0.9895, 0.9811, 0.973, 0.9651, 0.9575, 0.9501, 0.943, 0.9362, 0.9295, 0.9229,
    0.9164, 0.9101, 0.907, 0.904, 0.898, 0.892
  ],
  fall: { massFraction_percent: [0], per_K: [0] },
  from_C: 18,
  to_C: 22,
  limit_g_per_cm3: 0.0015
}

export const hydrogenPeroxide: DensityTable = {
  source: 'M. Laliberté, J. Chem. Eng. Data 54 (2009) 1725, computed from its model',
  massFraction_percent: [0, 3, 5, 10, 15, 20, 25, 27.5, 30, 32.5, 35, 40, 45, 50, 60, 70, 80, 90],
  density_g_per_cm3: [
    0.9982, 1.0093, 1.0167, 1.0353, 1.0542, 1.0733, 1.0928, 1.1027, 1.1126, 1.1227, 1.1328, 1.1534,
    1.1744, 1.196, 1.2406, 1.2876, 1.3374, 1.3902
  ],
  fall: {
    massFraction_percent: [0, 3, 5, 10, 15, 20, 25, 27.5, 30, 32.5, 35, 40, 45, 50, 60, 70, 80, 90],
    per_K: [
      0.00024, 0.00028, 0.0003, 0.00036, 0.00042, 0.00046, 0.00052, 0.00056, 0.00058, 0.00062,
      0.00064, 0.0007, 0.00074, 0.0008, 0.0009, 0.00098, 0.0011, 0.00118
    ]
  },
  from_C: 15,
  to_C: 30,
  limit_g_per_cm3: 0.0016
}

export const sodiumHydroxide: DensityTable = {
  source: 'M. Laliberté, J. Chem. Eng. Data 54 (2009) 1725, computed from its model',
  massFraction_percent: [0, 4, 10, 20],
  density_g_per_cm3: [0.9982, 1.0422, 1.1085, 1.2187],
  fall: { massFraction_percent: [0], per_K: [0] },
  from_C: 18,
  to_C: 22,
  limit_g_per_cm3: 0.002
}
