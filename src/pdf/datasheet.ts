/** The datasheet of a grade as a PDF file: PDF/A-3a, tagged after PDF/UA-1. Lengths in points. */

import type { Datasheet, MeasuredProperty, TypicalProperty } from '../documents/grade-types.ts'
import type { TableSection } from '../documents/shipment-types.ts'
import { drawChart, drawPairs } from './charts.ts'
import { drawFacts } from './facts.ts'
import { openFile } from './file.ts'
import { drawFeet, drawRunningHead, footHeight, wrapFoot } from './furniture.ts'
import { drawHazardBody, leastHazardHeight } from './hazards.ts'
import { drawProducer, drawTitleLine } from './head.ts'
import { lastSection } from './online.ts'
import type { PdfFile, Subset } from './pdfkit.ts'
import { drawTableSection } from './plain-table.ts'
import { bodyX, drawSection, END_HEIGHT } from './section.ts'
import { drawEnd, drawTexts } from './sections.ts'
import { areaOf, Sheet, textWidthOn } from './sheet.ts'
import { styles } from './text.ts'
import { type Words, wordsIn } from './words.ts'

/**
 * The PDF of a datasheet.
 *
 * @throws MissingGlyph where a text holds a sign the font lacks
 * @throws Error where a row, a fact or a statement is taller than a page
 */
export function datasheetPdf(sheet: Datasheet, subset: Subset = 'PDF/A-3a'): Uint8Array {
  const words = wordsIn(sheet.language)
  const pdf = openFile(
    {
      title: `${words.datasheet}, ${sheet.title}`,
      author: sheet.producer.name,
      subject: `${words.grade} ${sheet.id}, ${words.revision} ${sheet.revision}`,
      language: sheet.language,
      dated: sheet.dated
    },
    subset
  )
  draw(pdf, sheet, words)
  return pdf.finish()
}

function draw(pdf: PdfFile, document: Datasheet, words: Words): void {
  const size = document.paper === 'A4' ? 'A4' : 'LETTER'
  const identity = `${words.datasheet}  ·  ${document.id}, ${words.revision} ${document.revision}  ·  ${words.asOf} ${document.asOf}`
  const foot = wrapFoot(pdf, identity, words, textWidthOn(size))
  const head = { producer: document.producer, title: `${words.datasheet}, ${document.title}` }
  const sheet = new Sheet(pdf, areaOf(size, footHeight(foot)), page => drawRunningHead(page, head))
  drawTop(sheet, document, words)
  drawFigures(sheet, document, words)
  drawRest(sheet, document, words)
  drawFeet(sheet, foot, words)
  sheet.root.end()
}

function drawTop(sheet: Sheet, document: Datasheet, words: Words): void {
  drawProducer(sheet, document)
  sheet.y += 5
  sheet.rule(0.8)
  sheet.y += 9
  const details = [
    `${words.revision} ${document.revision}`,
    `${words.validFrom} ${document.validFrom}`,
    `${words.asOf} ${document.asOf}`
  ]
  drawTitleLine(sheet, document.title, `${words.datasheet} ${document.id}`, details.join('  ·  '))
  sheet.y += 5
  sheet.paragraph(sheet.root, 'P', styles.lead, document.description)
  sheet.y += 5
  drawFacts(sheet, document.facts)
  sheet.y += 8
}

/** What is measured and what is typical. */
function drawFigures(sheet: Sheet, document: Datasheet, words: Words): void {
  if (document.measured.length > 0) drawTableSection(sheet, measuredTable(document, words), words)
  if (document.observed.length > 0) drawTableSection(sheet, typicalTable(document, words), words)
}

const dash = (words: Words, text: string | undefined) => text || words.noUnit

function measuredTable({ measured, decisionRule }: Datasheet, words: Words): TableSection {
  const { property, limit, unit, holdsFor, method } = words.datasheetColumns
  const rowOf = ({ title, limit: bound, unit: own, method: cited }: MeasuredProperty) => [
    title,
    bound?.printed ?? words.noLimit,
    dash(words, own.printed),
    dash(words, bound?.of),
    cited ? `${cited.id}, ${words.edition} ${cited.edition}` : words.notStated
  ]
  return {
    heading: words.measuredOnEach,
    table: {
      caption: words.measuredOnEach,
      columns: columnsOf([property], [limit], [unit, holdsFor, method]),
      rows: measured.map(rowOf)
    },
    texts: [decisionRule]
  }
}

function typicalTable({ observed, population }: Datasheet, words: Words): TableSection {
  const { property, limit, from, to, unit, part, lots, made } = words.datasheetColumns
  const fromOf = ({ period, kind }: TypicalProperty) => `${period}; ${words.shapes[kind]}`
  const origins = [...new Set(observed.map(fromOf))]
  const isOne = origins.length === 1
  const rowOf = (one: TypicalProperty) => [
    one.title,
    one.limit?.printed ?? words.noLimit,
    one.lower.printed,
    one.upper.printed,
    dash(words, one.unit.printed),
    `${one.coverage.printed} %`,
    String(one.n),
    ...(isOne ? [] : [fromOf(one)])
  ]
  return {
    heading: words.typicalOf(observed[0]!.confidence.printed),
    table: {
      caption: words.typicalOf(observed[0]!.confidence.printed),
      columns: [
        ...columnsOf([property], [limit, from, to], [unit]),
        ...columnsOf([], [part, lots], isOne ? [] : [made])
      ],
      rows: observed.map(rowOf)
    },
    texts: [...(isOne ? [words.made(origins[0]!)] : []), ...population]
  }
}

const columnsOf = (
  names: readonly string[],
  numbers: readonly string[],
  texts: readonly string[]
) => [
  ...names.map(title => ({ title, numeric: false })),
  ...numbers.map(title => ({ title, numeric: true })),
  ...texts.map(title => ({ title, numeric: false }))
]

/** Each on one page, so they stand behind what can fill the page before them. */
function drawCharts(sheet: Sheet, { charts, density }: Datasheet): void {
  for (const chart of charts) drawChart(sheet, chart, sheet.area.left, sheet.area.width)
  drawPairs(sheet, density)
}

function drawRest(sheet: Sheet, document: Datasheet, words: Words): void {
  const text = (heading: string, texts: readonly string[]) => drawTexts(sheet, heading, texts)
  const facts = (list: Datasheet['supply']) => list.map(({ label, text }) => `${label}: ${text}`)
  text(words.statedAsTypical, facts(document.typical))
  text(words.notMeasured, document.notMeasured.length ? [document.notMeasured.join(', ')] : [])
  text(words.methods, methodTexts(document, words))
  text(
    words.declared,
    document.declared.map(({ about, says, basis }) =>
      [`${about}: ${says}`, basis].filter(Boolean).join(' ')
    )
  )
  text(words.supply, facts(document.supply))
  drawCharts(sheet, document)
  const { hazards } = document
  if (hazards)
    drawSection(sheet, words.hazards, leastHazardHeight(hazards), () =>
      drawHazardBody(sheet, hazards, words, bodyX(sheet))
    )
  text(words.cautions, document.cautions)
  drawSafety(sheet, document, words)
  text(
    words.revisions,
    document.revisions.map(
      ({ revision, validFrom, changes }) =>
        `${words.revisionNamed} ${revision}, ${words.validFrom} ${validFrom}. ${changes.join(' ')}`
    )
  )
  text(words.statements, document.statements)
  const last = lastSection(sheet, document.address, undefined, {
    ...words,
    online: words.gradeOnline,
    linkTo: words.linkToGrade
  })
  sheet.keepTogether(last.height + END_HEIGHT)
  last.draw()
  drawEnd(sheet, words.endOfDatasheet)
}

/** Handling, exposure, waste, and who decides. */
function drawSafety(sheet: Sheet, { safety }: Datasheet, words: Words): void {
  const { sections, exposure, exposureNote, disclaimer } = safety
  for (const { heading, texts } of sections) drawTexts(sheet, heading, texts)
  if (exposure.rows.length > 0) {
    sheet.y += 5
    const table = { heading: exposure.caption, table: exposure, texts: [exposureNote] }
    drawTableSection(sheet, table, words)
  }
  drawTexts(sheet, words.disclaimer, [disclaimer])
}

/** Each method once, as it is cited. */
function methodTexts({ measured }: Datasheet, words: Words): string[] {
  const cited = measured.flatMap(({ method }) => (method ? [method] : []))
  const texts = cited.map(({ id, edition, title, conditions, reference }) =>
    [`${id}, ${words.edition} ${edition}: ${title}`, conditions, reference]
      .filter(Boolean)
      .join('; ')
  )
  return [...new Set(texts)].map(text => `${text.replace(/\.$/u, '')}.`)
}
