/** German. */

import type { Catalogue } from '../catalogue.ts'
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
import { product } from './quantities.ts'
import { register } from './register.ts'
import { results } from './results.ts'
import { safety } from './safety.ts'
import { checkPage, checks, scripts } from './scripts.ts'
import { series } from './series.ts'
import { working } from './working.ts'
import { substanceName } from './substances.ts'

export const de: Catalogue = {
  name: 'German',
  quantities: product,
  knowsSubstance: name => substanceName(name) !== undefined,
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
  scripts,
  checks,
  checkPage
}
