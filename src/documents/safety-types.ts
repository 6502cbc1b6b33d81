/** What a grade's datasheet says of hazards beyond the label. */

import type { Table } from './text-types.ts'

export interface SafetyNotes {
  /** In the order of reading; each text a sentence, its source behind it. */
  readonly sections: readonly { readonly heading: string; readonly texts: readonly string[] }[]
  readonly exposure: Table
  /** Beside the table. */
  readonly exposureNote: string
  /** What it is not, and who decides. */
  readonly disclaimer: string
}
