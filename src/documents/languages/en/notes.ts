/** Sentences beside a working, in English. */

import { reportingLimitBasis } from '../../../chemistry/reporting-limit.ts'
import type { FixedNote, Note } from '../../../evaluate/notes.ts'

const fixed: Readonly<Record<FixedNote, string>> = {
  'budget bends':
    'The budget is not linear to two digits: within these uncertainties the formula bends, and U is of the first order.',
  'scatter between sheets':
    'The scatter between sheets is reported beside the mean; the uncertainty is that of measuring these sheets.',
  'bulk density tested': 'Loose bulk density of the flake as tested on this lot.',
  'scatter of ash':
    'Readings further apart than ASTM C561-91, 10.2, lets them lie (0.0127 % within a laboratory at 0.73 % of ash, in proportion above) are told when records are checked.',
  'water not read': 'The water was not read: it counts as none.',
  'foil taken as alike':
    'The correction for thickness takes the foil as alike in all directions; it is less conducting through its thickness.',
  'bounds of L':
    'L is in 10⁻⁶ W·Ω/K²; that of this foil is not known, its bounds are those of other foils.',
  'bolt and rig': 'What the bolt and the rig let go of is part of the figure.',
  'ideal gas': 'The gas is taken as ideal, all that the volume loses as gone past the ring.',
  'no blank read': 'No blank was carried through: it counts as none.',
  'no blank weighed': 'No blank was weighed: it counts as none.',
  'whole extract titrated': 'The whole extract was titrated.',
  'reporting limit': `Reporting limit as net titre: ${reportingLimitBasis.formula}. Source: ${reportingLimitBasis.source}.`
}

export function note(said: Note): string {
  switch (said.is) {
    case 'pooled':
      return `The method’s pooled repeatability stands in for the scatter of these ${said.n} readings.`
    case 'bulk density recorded':
      return `Loose bulk density of the flake: ${said.written}, as recorded.`
    case 'water':
      return `Water: ${said.written}.`
    case 'heat capacity':
      return `Heat capacity taken as ${said.written}.`
    case 'leached with':
      return `Leached with ${said.written} of water.`
    case 'blank':
      return `Blank: ${said.written}.`
    case 'titrated to pH':
      return `Titrated to pH ${said.written}.`
    case 'blanks':
      return `Blanks: ${said.written.join(', ')}.`
    case 'aliquot':
      return `Of an extract of ${said.extract}, ${said.aliquot} was titrated.`
    case 'points':
      return said.disc === undefined
        ? `Points ${said.apart} apart on a sheet taken as without end.`
        : `Points ${said.apart} apart at the middle of a disc of ${said.disc}.`
    case 'closed volume':
      return `Closed volume ${said.volume}, mean diameter of the ring ${said.diameter}.`
    case 'retained':
      return `Retained figures are of the mass recovered. '+${said.sieve}' means retained on No. ${said.sieve}.`
    default:
      return fixed[said.is]
  }
}
