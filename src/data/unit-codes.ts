/**
 * UN/CEFACT common codes of the units quantities are in, by UCUM code; a unit without one is absent.
 *
 * Source: UNECE Recommendation 20, annex III, from memory.
 */
export const unitCodes: Readonly<Record<string, string>> = {
  '1': 'C62',
  '%': 'P1',
  '[pH]': 'Q30',
  mm: 'MMT',
  'g/cm3': '23',
  'g/L': 'GL',
  'g/m2': 'GM',
  'mmol/g': 'H68'
}
