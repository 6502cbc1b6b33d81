/**
 * The closed table of units a record may use: no unit outside it is ever guessed at.
 *
 * `suffix` ends the name of a field that holds the unit (`mass` in g becomes `mass_g`), `ucum` is
 * the code in data files (UCUM 2.1), `factor` the exact number of base units in one of this unit.
 *
 * Source of factors: BIPM, The International System of Units, 9th edition (2019), chapters 2 to 4.
 */

export type Dimension =
  | 'mass'
  | 'volume'
  | 'length'
  | 'slope'
  | 'area'
  | 'time'
  | 'temperature'
  | 'temperature rate'
  | 'time per length'
  | 'time per areal mass'
  | 'fraction'
  | 'density'
  | 'specific volume'
  | 'areal mass'
  | 'amount concentration'
  | 'amount per mass'
  | 'pressure'
  | 'force'
  | 'force per width'
  | 'conductivity'
  | 'resistance'
  | 'resistivity'
  | 'voltage'
  | 'current'
  | 'leak rate'
  | 'thermal conductivity'
  | 'thermal diffusivity'
  | 'heat capacity'
  | 'number'

export interface Unit {
  readonly dimension: Dimension
  readonly suffix: string
  readonly ucum: string
  /** Base units in one of this unit, as an exact decimal. */
  readonly factor: string
  /** Added after scaling, for scales whose zero differs from the base's. */
  readonly offset?: string
}

export const units = {
  kg: { dimension: 'mass', suffix: 'kg', ucum: 'kg', factor: '1000' },
  g: { dimension: 'mass', suffix: 'g', ucum: 'g', factor: '1' },
  mg: { dimension: 'mass', suffix: 'mg', ucum: 'mg', factor: '0.001' },
  'm³': { dimension: 'volume', suffix: 'm3', ucum: 'm3', factor: '1000000' },
  L: { dimension: 'volume', suffix: 'L', ucum: 'L', factor: '1000' },
  mL: { dimension: 'volume', suffix: 'mL', ucum: 'mL', factor: '1' },
  µL: { dimension: 'volume', suffix: 'uL', ucum: 'uL', factor: '0.001' },
  m: { dimension: 'length', suffix: 'm', ucum: 'm', factor: '1000' },
  cm: { dimension: 'length', suffix: 'cm', ucum: 'cm', factor: '10' },
  mm: { dimension: 'length', suffix: 'mm', ucum: 'mm', factor: '1' },
  µm: { dimension: 'length', suffix: 'um', ucum: 'um', factor: '0.001' },
  'mm/m': { dimension: 'slope', suffix: 'mm_per_m', ucum: 'mm/m', factor: '1' },
  'm²': { dimension: 'area', suffix: 'm2', ucum: 'm2', factor: '1' },
  'cm²': { dimension: 'area', suffix: 'cm2', ucum: 'cm2', factor: '0.0001' },
  d: { dimension: 'time', suffix: 'd', ucum: 'd', factor: '86400' },
  h: { dimension: 'time', suffix: 'h', ucum: 'h', factor: '3600' },
  min: { dimension: 'time', suffix: 'min', ucum: 'min', factor: '60' },
  s: { dimension: 'time', suffix: 's', ucum: 's', factor: '1' },
  '°C': { dimension: 'temperature', suffix: 'C', ucum: 'Cel', factor: '1' },
  K: { dimension: 'temperature', suffix: 'K', ucum: 'K', factor: '1', offset: '-273.15' },
  'K/min': { dimension: 'temperature rate', suffix: 'K_per_min', ucum: 'K/min', factor: '1' },
  'min/mm': { dimension: 'time per length', suffix: 'min_per_mm', ucum: 'min/mm', factor: '1' },
  's·m²/g': { dimension: 'time per areal mass', suffix: 'sm2_per_g', ucum: 's.m2/g', factor: '1' },
  '%': { dimension: 'fraction', suffix: 'percent', ucum: '%', factor: '1' },
  'mg/kg': { dimension: 'fraction', suffix: 'mg_per_kg', ucum: 'mg/kg', factor: '0.0001' },
  'g/kg': { dimension: 'fraction', suffix: 'g_per_kg', ucum: 'g/kg', factor: '0.1' },
  'g/cm³': { dimension: 'density', suffix: 'g_per_cm3', ucum: 'g/cm3', factor: '1' },
  'g/mL': { dimension: 'density', suffix: 'g_per_mL', ucum: 'g/mL', factor: '1' },
  'g/L': { dimension: 'density', suffix: 'g_per_L', ucum: 'g/L', factor: '0.001' },
  'mg/L': { dimension: 'density', suffix: 'mg_per_L', ucum: 'mg/L', factor: '0.000001' },
  'mg/m³': { dimension: 'density', suffix: 'mg_per_m3', ucum: 'mg/m3', factor: '0.000000001' },
  'kg/m³': { dimension: 'density', suffix: 'kg_per_m3', ucum: 'kg/m3', factor: '0.001' },
  'mL/g': { dimension: 'specific volume', suffix: 'mL_per_g', ucum: 'mL/g', factor: '1' },
  'cm³/g': { dimension: 'specific volume', suffix: 'cm3_per_g', ucum: 'cm3/g', factor: '1' },
  'g/m²': { dimension: 'areal mass', suffix: 'g_per_m2', ucum: 'g/m2', factor: '1' },
  'mol/L': {
    dimension: 'amount concentration',
    suffix: 'mol_per_L',
    ucum: 'mol/L',
    factor: '1'
  },
  'mmol/L': {
    dimension: 'amount concentration',
    suffix: 'mmol_per_L',
    ucum: 'mmol/L',
    factor: '0.001'
  },
  'mmol/g': { dimension: 'amount per mass', suffix: 'mmol_per_g', ucum: 'mmol/g', factor: '1' },
  MPa: { dimension: 'pressure', suffix: 'MPa', ucum: 'MPa', factor: '1' },
  kPa: { dimension: 'pressure', suffix: 'kPa', ucum: 'kPa', factor: '0.001' },
  bar: { dimension: 'pressure', suffix: 'bar', ucum: 'bar', factor: '0.1' },
  N: { dimension: 'force', suffix: 'N', ucum: 'N', factor: '1' },
  kN: { dimension: 'force', suffix: 'kN', ucum: 'kN', factor: '1000' },
  'N/mm': { dimension: 'force per width', suffix: 'N_per_mm', ucum: 'N/mm', factor: '1' },
  'µS/cm': { dimension: 'conductivity', suffix: 'uS_per_cm', ucum: 'uS/cm', factor: '0.0000001' },
  'mS/cm': { dimension: 'conductivity', suffix: 'mS_per_cm', ucum: 'mS/cm', factor: '0.0001' },
  'kS/m': { dimension: 'conductivity', suffix: 'kS_per_m', ucum: 'kS/m', factor: '1' },
  mΩ: { dimension: 'resistance', suffix: 'mOhm', ucum: 'mOhm', factor: '0.001' },
  Ω: { dimension: 'resistance', suffix: 'Ohm', ucum: 'Ohm', factor: '1' },
  'µΩ·m': { dimension: 'resistivity', suffix: 'uOhmm', ucum: 'uOhm.m', factor: '1' },
  mV: { dimension: 'voltage', suffix: 'mV', ucum: 'mV', factor: '0.001' },
  V: { dimension: 'voltage', suffix: 'V', ucum: 'V', factor: '1' },
  mA: { dimension: 'current', suffix: 'mA', ucum: 'mA', factor: '0.001' },
  A: { dimension: 'current', suffix: 'A', ucum: 'A', factor: '1' },
  'mg/(s·m)': {
    dimension: 'leak rate',
    suffix: 'mg_per_sm',
    ucum: 'mg/(s.m)',
    factor: '1'
  },
  'W/(m·K)': {
    dimension: 'thermal conductivity',
    suffix: 'W_per_mK',
    ucum: 'W/(m.K)',
    factor: '1'
  },
  'mm²/s': { dimension: 'thermal diffusivity', suffix: 'mm2_per_s', ucum: 'mm2/s', factor: '1' },
  'J/(g·K)': { dimension: 'heat capacity', suffix: 'J_per_gK', ucum: 'J/(g.K)', factor: '1' },
  '1': { dimension: 'number', suffix: '', ucum: '1', factor: '1' }
} as const satisfies Record<string, Unit>

export type UnitName = keyof typeof units

/** Other spellings of the same unit, as keyboards and instruments write them. */
const spellings: Readonly<Record<string, UnitName>> = {
  l: 'L',
  ml: 'mL',
  ul: 'µL',
  uL: 'µL',
  um: 'µm',
  m2: 'm²',
  cm2: 'cm²',
  m3: 'm³',
  'mg/m3': 'mg/m³',
  degC: '°C',
  'g/cm3': 'g/cm³',
  'g/ml': 'g/mL',
  'kg/m3': 'kg/m³',
  'mg/l': 'mg/L',
  'ml/g': 'mL/g',
  'cm3/g': 'cm³/g',
  'g/m2': 'g/m²',
  's.m2/g': 's·m²/g',
  'uS/cm': 'µS/cm',
  mOhm: 'mΩ',
  Ohm: 'Ω',
  'uOhm.m': 'µΩ·m',
  'mg/(s.m)': 'mg/(s·m)',
  'W/(m.K)': 'W/(m·K)',
  'mm2/s': 'mm²/s',
  'J/(g.K)': 'J/(g·K)'
}

/** The unit a record means by `text`, or undefined where the table does not hold it. */
export function unitNamed(text: string): UnitName | undefined {
  if (Object.hasOwn(units, text)) return text as UnitName
  // NFC turns the Kelvin and Ångström signs into letters; the Greek mu is written for micro as often
  // as the micro sign itself.
  const plain = text.normalize('NFC').replaceAll('μ', 'µ')
  if (Object.hasOwn(units, plain)) return plain as UnitName
  return Object.hasOwn(spellings, plain) ? spellings[plain] : undefined
}

/** Every way a record may write a unit. */
export const unitNames = (unit: UnitName): string[] => [
  unit,
  ...Object.keys(spellings).filter(spelling => spellings[spelling] === unit)
]

/** Units of one dimension, for hints: every unit a field of that dimension accepts. */
export const unitsOf = (dimension: Dimension): UnitName[] =>
  (Object.keys(units) as UnitName[]).filter(name => units[name].dimension === dimension)

/** 'mass_g' → { name: 'mass', unit: 'g' }: an input by the name it has in code; '' where it has no unit. */
export function inputParts(input: string): { name: string; unit: string } {
  const [name = input, ...rest] = input.split('_')
  const suffix = rest.join('_')
  const unit = (Object.keys(units) as UnitName[]).find(
    candidate => units[candidate].suffix === suffix && suffix !== ''
  )
  return { name, unit: unit ?? '' }
}
