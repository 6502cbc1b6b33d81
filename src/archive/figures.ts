/** The figures of one quantity over all lots: printed texts, and numbers to filter and sort by. */

/** A figure as a reader sees it, without its unit. */
export interface PrintedFigure {
  /** '269.5', '−0.05', '< 0.02'. */
  readonly value: string
  /** '3.4'; absent where none is stated. */
  readonly uncertainty?: string
}

/** As it is written. */
export interface FigureColumn {
  /** Values, a comma between; nothing where a lot has no figure. */
  readonly values: string
  /**
   * Uncertainties: as a whole number of the last place of the value, '34' for 269.5 ± 3.4, or behind
   * '=' as printed.
   */
  readonly uncertainties: string
}

/** As it is used: one row a lot, in the order of the lots. */
export interface Figures {
  readonly printed: readonly (PrintedFigure | undefined)[]
  /** Not a number where there is no figure. */
  readonly numbers: Float64Array
  /** 1 where the number is an upper bound: the figure is less than it. */
  readonly below: Uint8Array
}

/** Digits behind the point. */
const placesOf = (text: string) => text.split('.')[1]?.length ?? 0

export function writeFigures(figures: readonly (PrintedFigure | undefined)[]): FigureColumn {
  return {
    values: figures
      .map(figure => figure?.value.replace('−', '-').replace('< ', '<') ?? '')
      .join(','),
    uncertainties: figures.map(writtenUncertainty).join(',')
  }
}

function writtenUncertainty(figure: PrintedFigure | undefined): string {
  if (figure?.uncertainty === undefined) return ''
  const { value, uncertainty } = figure
  const whole = uncertainty.replace('.', '').replace(/^0+(?=\d)/u, '')
  return uncertaintyText(whole, placesOf(value)) === uncertainty ? whole : `=${uncertainty}`
}

const uncertaintyText = (whole: string, places: number) => {
  const digits = whole.padStart(places + 1, '0')
  return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`
}

export function readFigures({ values, uncertainties }: FigureColumn): Figures {
  const texts = values.split(',')
  const each = uncertainties.split(',')
  const numbers = new Float64Array(texts.length).fill(NaN)
  const below = new Uint8Array(texts.length)
  const printed = texts.map((text, row): PrintedFigure | undefined => {
    if (text === '') return undefined
    const isBelow = text.startsWith('<')
    const digits = isBelow ? text.slice(1) : text
    numbers[row] = Number(digits)
    below[row] = isBelow ? 1 : 0
    const value = `${isBelow ? '< ' : ''}${digits.replace('-', '−')}`
    const written = each[row] ?? ''
    if (written === '') return { value }
    const uncertainty = written.startsWith('=')
      ? written.slice(1)
      : uncertaintyText(written, placesOf(digits))
    return { value, uncertainty }
  })
  return { printed, numbers, below }
}
