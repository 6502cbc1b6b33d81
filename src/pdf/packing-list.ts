/** The packing list of a shipment. Lengths in points. */

import type { PackingList } from '../documents/shipment-types.ts'
import { drawFacts } from './facts.ts'
import { openFile } from './file.ts'
import { drawFeet, drawRunningHead, footHeight, wrapFoot } from './furniture.ts'
import { drawProducer, drawTitleLine } from './head.ts'
import type { Element, PdfFile, Subset } from './pdfkit.ts'
import { drawTableSection } from './plain-table.ts'
import { drawEnd, drawTexts } from './sections.ts'
import { areaOf, Sheet, textWidthOn } from './sheet.ts'
import { type Words, wordsIn } from './words.ts'

/** The PDF of a packing list. */
export async function packingListPdf(
  list: PackingList,
  subset: Subset = 'PDF/A-3a'
): Promise<Uint8Array> {
  const words = wordsIn(list.language)
  const pdf = openFile(
    {
      title: `${list.title}, ${list.number}`,
      author: list.producer.name,
      subject: `${words.shipment} ${list.number}`,
      language: list.language,
      dated: list.dated
    },
    subset
  )
  drawPackingList(pdf, list, words)
  return pdf.finish()
}

/**
 * Draw a packing list on pages of its own.
 *
 * @param whole what it is a part of, where a file holds several papers
 */
export function drawPackingList(
  pdf: PdfFile,
  list: PackingList,
  words: Words,
  whole?: Element
): void {
  const size = list.paper === 'A4' ? 'A4' : 'LETTER'
  const foot = wrapFoot(
    pdf,
    `${list.title}  ·  ${words.shipment} ${list.number}`,
    words,
    textWidthOn(size)
  )
  const sheet = new Sheet(
    pdf,
    areaOf(size, footHeight(foot)),
    page => drawRunningHead(page, list),
    { whole }
  )
  drawProducer(sheet, list)
  sheet.y += 5
  sheet.rule(0.8)
  sheet.y += 9
  drawTitleLine(sheet, list.title, list.number, '')
  sheet.y += 7
  drawFacts(sheet, list.facts)
  sheet.y += 8
  drawTableSection(sheet, list.containers, words)
  for (const { heading, texts } of list.sections) drawTexts(sheet, heading, texts)
  drawEnd(sheet, words.endOfList)
  drawFeet(sheet, foot, words)
  sheet.root.end()
}
