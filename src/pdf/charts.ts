/** Charts with what is said of them, on paper. Lengths in points. */

import type { ChartText } from '../documents/watch-types.ts'
import { drawFigure, drawnHeight } from './drawing.ts'
import type { Sheet } from './sheet.ts'
import { heightOf, styles, wrapText } from './text.ts'

/** What of a chart is drawn. */
type Chart = Pick<ChartText, 'title' | 'summary' | 'drawing'>

/** A chart under its title and words, never across a page's end. */
export function drawChart(sheet: Sheet, chart: Chart, x: number, across: number): void {
  const height = chartHeight(sheet, chart, across)
  sheet.ensureSpace(height, chart.title)
  sheet.paragraph(sheet.root, 'P', styles.heading, chart.title, x, across)
  sheet.paragraph(sheet.root, 'P', styles.small, chart.summary, x, across)
  sheet.y += 3
  drawFigure(sheet, chart.drawing, { x, across, alt: `${chart.title}. ${chart.summary}` })
  sheet.y += drawnHeight(chart.drawing, across) + 8
}

const chartHeight = ({ pdf }: Sheet, { title, summary, drawing }: Chart, across: number) =>
  heightOf(styles.heading, wrapText(pdf, styles.heading, title, across)) +
  heightOf(styles.small, wrapText(pdf, styles.small, summary, across)) +
  3 +
  drawnHeight(drawing, across) +
  8

/** Small charts, two beside each other. */
export function drawPairs(sheet: Sheet, charts: readonly Chart[]): void {
  for (let index = 0; index < charts.length; index += 2) {
    const pair = charts.slice(index, index + 2)
    const heights = pair.map(chart => chartHeight(sheet, chart, sheet.half))
    sheet.ensureSpace(Math.max(...heights), pair[0]!.title)
    const top = sheet.y
    pair.forEach((chart, column) => {
      sheet.y = top
      drawChart(sheet, chart, column === 0 ? sheet.area.left : sheet.middle, sheet.half)
    })
    sheet.y = top + Math.max(...heights)
  }
}
