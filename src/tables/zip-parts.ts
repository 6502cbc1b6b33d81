/** The parts of a spreadsheet file, unpacked with an eye on their size. */

import { unzipSync, strFromU8 } from 'fflate'

/** Unpacked bytes past which a spreadsheet is no list of readings: some 300,000 cells. */
const LARGEST_PART = 60_000_000

const isWanted = (name: string) =>
  /^xl\/(?:workbook\.xml|styles\.xml|sharedStrings\.xml|_rels\/workbook\.xml\.rels|worksheets\/[^/]+\.xml)$/u.test(
    name
  )

/** The parts that hold cells, by name; undefined where the file is no .xlsx, a sentence where too large. */
export function zipParts(bytes: Uint8Array): ReadonlyMap<string, string> | 'too large' | undefined {
  let size = 0
  try {
    const parts = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!isWanted(name)) return false
        size += originalSize
        return size <= LARGEST_PART
      }
    })
    if (size > LARGEST_PART) return 'too large'
    if (!parts['xl/workbook.xml']) return undefined
    return new Map(Object.entries(parts).map(([name, part]) => [name, strFromU8(part)]))
  } catch {
    return undefined
  }
}
