/**
 * Atomic weights of the elements met in this trade.
 *
 * Source: IUPAC Commission on Isotopic Abundances and Atomic Weights, standard atomic weights 2021,
 * abridged to five digits (from memory, not checked against the print).
 */

/** Abridged standard atomic weight by symbol, g/mol. */
export const atomicWeights_g_per_mol: ReadonlyMap<string, number> = new Map([
  ['H', 1.008],
  ['He', 4.0026],
  ['C', 12.011],
  ['N', 14.007],
  ['O', 15.999],
  ['Na', 22.99],
  ['P', 30.974],
  ['S', 32.06],
  ['Cl', 35.45],
  ['K', 39.098],
  ['Ca', 40.078],
  ['Cr', 51.996],
  ['Mn', 54.938],
  ['Ba', 137.33]
])
