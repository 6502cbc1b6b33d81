/**
 * The systems a paper can follow: CLP of the European Union, the UN's GHS, and the Hazard Communication
 * Standard of the United States. They share chapters and tables, and differ in categories, in some
 * limits, and in the numbers and wording of statements.
 *
 * Specific limits of CLP Annex VI count in all of them, as what is known of a substance: GHS 1.3.3.2
 * lets a classifier go by it (from memory, not checked against the print).
 */

import type { ClassName } from './classes.ts'

export const editions = ['clp', 'un', 'us'] as const
export type Edition = (typeof editions)[number]

export const editionNames: Readonly<Record<Edition, string>> = {
  clp: 'CLP (European Union)',
  un: 'UN GHS, revision 10',
  us: 'OSHA Hazard Communication Standard (United States)'
}

/**
 * Categories CLP did not take over. The United States took over none of them, and no class of the
 * environment.
 *
 * Source: UN GHS 3.1, 3.2 and 4.1; 29 CFR 1910.1200, Appendix A (from memory, not checked against the
 * print).
 */
const ofUNAlone: readonly ClassName[] = [
  'Acute Tox. 5 oral',
  'Acute Tox. 5 dermal',
  'Acute Tox. 5 inhalation',
  'Skin Irrit. 3',
  'Aquatic Acute 2',
  'Aquatic Acute 3'
]

/** Whether an edition has a class. */
export const isIn = (edition: Edition, name: ClassName): boolean =>
  edition === 'un' || !(ofUNAlone.includes(name) || (edition === 'us' && /^Aquatic/u.test(name)))

/** What an edition calls a class: outside CLP, irritation of the eyes has two sub-categories. */
export const nameIn = (edition: Edition, name: ClassName): string =>
  edition !== 'clp' && name === 'Eye Irrit. 2' ? 'Eye Irrit. 2A' : name

/** Precautions revision 10 of the GHS numbers or words otherwise, by the code others use. */
const inUN: Readonly<Record<string, string>> = {
  P201: 'P203',
  P202: 'P203',
  P310: 'P316',
  P311: 'P316',
  P312: 'P317',
  P314: 'P319',
  'P301+P310': 'P301+P316',
  'P301+P312': 'P301+P317',
  'P308+P311': 'P308+P316',
  'P308+P313': 'P318',
  'P332+P313': 'P332+P317',
  'P333+P313': 'P333+P317',
  'P337+P313': 'P337+P317'
}

/** Where eyes or skin are destroyed, the UN rinses at once. */
const ofCorrosive: Readonly<Record<string, string>> = {
  'P303+P361+P353': 'P302+P361+P354',
  'P305+P351+P338': 'P305+P354+P338'
}

/** The codes of an edition for precautions chosen by CLP's codes, each once. */
export function precautionsIn(
  edition: Edition,
  codes: readonly string[],
  names: readonly ClassName[]
): string[] {
  if (edition === 'clp') return [...codes]
  if (edition === 'us') return codes.filter(code => code !== 'P273' && code !== 'P391')
  const destroys = names.some(name => /^(?:Skin Corr|Eye Dam)/u.test(name))
  const hurtsEyes = names.some(name => /^Eye/u.test(name))
  const mapped = codes.map(code => {
    if (code === 'P264' && hurtsEyes) return 'P264+P265'
    return (destroys ? ofCorrosive[code] : undefined) ?? inUN[code] ?? code
  })
  return [...new Set(mapped)]
}
