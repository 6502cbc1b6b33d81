/** Thickness over the sheets of a lot: maps, and the same in words and figures. */

import { capital } from './capital.ts'
import type { SheetField } from '../evaluate/types.ts'
import { drawSheetMap, shadeOf } from '../figures/sheet-map.ts'
import { expand } from '../metrology/coverage.ts'
import type { Estimate } from '../metrology/estimate.ts'
import { meanValue } from '../metrology/readings.ts'
import { roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import { spread } from '../physics/thickness.ts'
import { resultFigures } from './figure.ts'
import type { FieldText, Table } from './types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { withMinus } from './words.ts'

/** The maps of a lot's sheets, all to one scale of shades. */
export function fieldText(field: readonly SheetField[], tongue = english): FieldText {
  const all = field.flatMap(({ readings }) => readings.map(({ thickness_mm }) => thickness_mm))
  const { min, max } = spread(all)
  const text = placesOf(field, tongue)
  return {
    legend: tongue.series.field.legend(`${text(min)} mm`, `${text(max)} mm`),
    maps: field.map(sheet => mapText(sheet, [min, max], text, tongue)),
    places: placesTable(field, tongue)
  }
}

/** Numbers at the place of the finest reading. */
function placesOf(field: readonly SheetField[], { numbers } = english): (value: number) => string {
  const decimals = field.flatMap(({ readings }) => readings.map(({ decimal }) => decimal))
  const places = Math.max(...decimals.map(decimal => decimal.split('.')[1]?.length ?? 0))
  return value => numbers.number(withMinus(roundToPlaces(toDecimal(value), places)))
}

function mapText(
  sheet: SheetField,
  [least, greatest]: readonly [number, number],
  text: (value: number) => string,
  tongue: Tongue
): FieldText['maps'][number] {
  const { series, numbers, results } = tongue
  const { label, length_mm, width_mm, readings } = sheet
  return {
    id: `thickness-${label.replace(/[^A-Za-z0-9]+/gu, '-')}`,
    title: capital(results.place(label)),
    summary: summaryOf(sheet, text, tongue),
    drawing: drawSheetMap({
      length: length_mm,
      width: width_mm,
      lengthText: series.field.length(numbers.number(sheet.length)),
      widthText: series.field.width(numbers.number(sheet.width)),
      spots: readings.map(({ x_mm, y_mm, thickness_mm, decimal }) => ({
        x: x_mm,
        y: y_mm,
        text: numbers.number(decimal),
        shade: shadeOf(thickness_mm, least, greatest)
      }))
    })
  }
}

const plain = (value: number) => withMinus(toDecimal(value).toSignificantDigits(9).toFixed())

function summaryOf(sheet: SheetField, text: (value: number) => string, tongue: Tongue): string {
  const { field: words } = tongue.series
  const { readings, along_mm: along, across_mm: across } = sheet
  const values = readings.map(({ thickness_mm }) => thickness_mm)
  const { min, max, range } = spread(values)
  const shown = (value: number) => `${text(value)} mm`
  const mean = meanValue(values.map(value => ({ value, terms: new Map() })))
  return [
    words.readings(values.length, shown(mean), shown(min), shown(max), shown(range)),
    along && across
      ? words.taper(taperText(along, tongue), taperText(across, tongue))
      : words.noTaper
  ].join(' ')
}

/** '+0.012 mm ± 0.006 mm': the sign says which end is the thicker. */
function taperText(taper: Estimate, { numbers }: Tongue): string {
  const { value, expandedUncertainty } = resultFigures(taper.value, expand(taper).U)
  return numbers.number(`${signed(value.printed)} mm ± ${expandedUncertainty.printed} mm`)
}

const signed = (printed: string) => (/^−|^[0.,]+$/u.test(printed) ? printed : `+${printed}`)

function placesTable(field: readonly SheetField[], tongue: Tongue): Table {
  const { working, numbers } = tongue
  const { caption, sheet, thickness, above } = working.places
  const places = placesOf(field, tongue)
  const number = (title: string) => ({ title, numeric: true })
  return {
    caption,
    columns: [
      { title: sheet, numeric: false },
      number('x, mm'),
      number('y, mm'),
      number(thickness),
      number(above)
    ],
    rows: field.flatMap(({ label, readings }) =>
      readings.map(({ x_mm, y_mm, decimal, above_mm }) => [
        label.replace('sheet ', ''),
        numbers.number(plain(x_mm)),
        numbers.number(plain(y_mm)),
        numbers.number(decimal),
        above_mm === undefined ? '' : signed(places(above_mm))
      ])
    )
  }
}
