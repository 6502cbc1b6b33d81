/** Substances in German, by the first English name in the list. */

import { de as label } from '../../label-words/de.ts'

const names: Readonly<Record<string, string>> = {
  ...label.substances,
  'ammonia, anhydrous': 'Ammoniak, wasserfrei',
  'sodium hydrogen carbonate': 'Natriumhydrogencarbonat',
  'ammonium sulfate': 'Ammoniumsulfat',
  'sodium sulfate': 'Natriumsulfat',
  water: 'Wasser',
  graphite: 'Graphit',
  'expandable graphite': 'Blähgraphit',
  'nitrogen dioxide': 'Stickstoffdioxid',
  'sulfur dioxide': 'Schwefeldioxid',
  'nitrogen monoxide': 'Stickstoffmonoxid',
  'sulfur trioxide': 'Schwefeltrioxid'
}

/** Undefined of a substance that only a record knows. */
export const substanceName = (name: string): string | undefined =>
  Object.hasOwn(names, name) ? names[name] : undefined
