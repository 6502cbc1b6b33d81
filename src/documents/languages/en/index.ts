/** English, from which every other language has its shape. */

import { quantities } from '../../../quantities.ts'
import { changes } from './changes.ts'
import { copy } from './copy.ts'
import { described } from './described.ts'
import { foil } from './foil.ts'
import { grade } from './grade.ts'
import { hazards } from './hazards.ts'
import { inspection } from './inspection.ts'
import { lot } from './lot.ts'
import { numbers } from './numbers.ts'
import { packing } from './packing.ts'
import { pages } from './pages/index.ts'
import { paper } from './paper.ts'
import { register } from './register.ts'
import { scriptWords } from '../../../archive/words.ts'
import { checkPageWords, checkWords } from '../../../register/words.ts'
import { results } from './results.ts'
import { safety } from './safety.ts'
import { series } from './series.ts'
import { working } from './working.ts'

export const en = {
  name: 'English',
  /** Whether the language has a name for a substance, by its first English one. */
  knowsSubstance: (_name: string): boolean => true,
  quantities,
  numbers,
  lot,
  grade,
  series,
  register,
  safety,
  foil,
  results,
  inspection,
  hazards,
  changes,
  copy,
  described,
  working,
  packing,
  pages,
  paper,
  scripts: scriptWords,
  checks: checkWords,
  checkPage: checkPageWords
}
