/** Labels and texts in a compact block of two columns. Lengths in points. */

import type { Fact } from '../documents/types.ts'
import type { Element } from './pdfkit.ts'
import type { Sheet } from './sheet.ts'
import { drawLines, GREY, heightOf, styles, wrapText } from './text.ts'

const LABEL_WIDTH = 62
const LABEL_GAP = 8
const ROW_GAP = 2

const labelStyle = { ...styles.body, colour: GREY }

interface PlannedFact {
  readonly label: readonly string[]
  readonly text: readonly string[]
  readonly height: number
}

/** Draw facts at the cursor, left to right, then down: a table of row headers and texts. */
export function drawFacts(sheet: Sheet, facts: readonly Fact[]): void {
  if (facts.length === 0) return
  const table = sheet.element(sheet.root, 'Table')
  const planned = facts.map(fact => planFact(sheet, fact))
  for (let index = 0; index < planned.length; index += 2) {
    const pair = planned.slice(index, index + 2)
    const [taller] = [...pair].sort((a, b) => b.height - a.height)
    const { height } = taller!
    sheet.ensureSpace(height, taller!.text.join(''))
    pair.forEach((fact, column) =>
      drawFact(sheet, table, fact, column === 0 ? sheet.area.left : sheet.middle)
    )
    sheet.y += height + ROW_GAP
  }
  table.end()
}

function planFact(sheet: Sheet, fact: Fact): PlannedFact {
  const label = wrapText(sheet.pdf, labelStyle, fact.label, LABEL_WIDTH)
  const text = wrapText(sheet.pdf, styles.body, fact.text, sheet.half - LABEL_WIDTH - LABEL_GAP)
  return { label, text, height: heightOf(styles.body, label.length > text.length ? label : text) }
}

function drawFact(sheet: Sheet, table: Element, fact: PlannedFact, x: number): void {
  const row = sheet.element(table, 'TR')
  const { pdf, y } = sheet
  const label = () => drawLines(pdf, labelStyle, fact.label, x, y)
  const text = () => drawLines(pdf, styles.body, fact.text, x + LABEL_WIDTH + LABEL_GAP, y)
  sheet.tagged(row, 'TH', label, { scope: 'Row' })
  sheet.tagged(row, 'TD', text)
  row.end()
}
