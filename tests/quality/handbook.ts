/** Data of examples in the NIST/SEMATECH e-Handbook of Statistical Methods that several tests use. */

/** 6.3.2.2: flow rates, for the chart of individuals. */
export const flowRates = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]

/** 6.3.2.4: figures for the EWMA chart. */
export const averaged = [52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, ...flowRates]

/** 1.3.5.17.1: uranium isotopes, one far out. */
export const isotopes = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]

/** 1.3.5.17.3: the data of B. Rosner, Technometrics 25 (1983), table 1. */
export const rosner = [
  -0.25, 0.68, 0.94, 1.15, 1.2, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65,
  1.69, 1.7, 1.76, 1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.1, 2.14, 2.15, 2.23, 2.24,
  2.26, 2.35, 2.37, 2.4, 2.47, 2.54, 2.62, 2.64, 2.9, 2.92, 2.92, 2.93, 3.21, 3.26, 3.3, 3.59, 3.68,
  4.3, 4.64, 5.34, 5.42, 6.01
]

/** 7.4.3.3: three levels of five readings. */
export const threeLevels = [
  [6.9, 5.4, 5.8, 4.6, 4],
  [8.3, 6.8, 7.8, 9.2, 6.5],
  [8, 10.5, 8.1, 6.9, 9.3]
]
