/** What a site is made from, and what its edition shows. */

import type { EvaluatedContent } from '../evaluate/types.ts'
import type { JudgedLot } from '../judge/types.ts'
import type { Series } from '../judge/watched.ts'
import { wasLetGo } from '../quality/status.ts'
import { publicSections } from '../records/schemas/grade.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import type { PaperOptions } from './certificate.ts'
import type { IssuedRegister } from './issued.ts'
import type { Tongue } from './languages/tongue.ts'
import type { Sections } from './lot.ts'
import type { Pictures } from './picture-types.ts'

export interface SiteInputs extends PaperOptions {
  readonly evaluated: EvaluatedContent
  readonly lots: readonly JudgedLot[]
  readonly series: readonly Series[]
  readonly edition: 'public' | 'workshop'
  readonly asOf: string
  readonly register: IssuedRegister
  readonly pictures?: Pictures
  /** Of pages and datasheets; English where nothing is said, and in the workshop's edition. */
  readonly tongue?: Tongue
  /** Of previews, where no certificate was issued, or that there are none; English where nothing is said. */
  readonly previewIn?: PaperLanguage | 'none'
}

const allSections: Sections = new Set(publicSections)

/** What an edition shows of the lots of a grade. */
export const sectionsOf = (
  { public: open = [] }: Pick<JudgedLot['grade'], 'public'>,
  edition: SiteInputs['edition']
): Sections => (edition === 'workshop' ? allSections : new Set(open))

export const lotName = ({ evaluated }: JudgedLot): string => evaluated.lot

/** A lot customers may see: let go once, and of a grade that shows its lots at all. */
export const isPublic = ({ evaluated, grade }: JudgedLot, asOf: string): boolean =>
  wasLetGo(evaluated.entry.record.status ?? [], asOf) && (grade.public ?? []).length > 0
