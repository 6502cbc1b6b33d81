/** What the public may see of the figures of many lots: the allow-list. */

import { openWatch, type Series, type WatchedFigure } from '../judge/watched.ts'
import { quantities } from '../quantities.ts'

/**
 * The series of lots that are open, under the grade each is sold as. A lot that is not open leaves
 * neither name nor point.
 *
 * @param isOpen whether a lot's page and results are public
 */
export function openSeries(series: readonly Series[], isOpen: (lot: string) => boolean): Series[] {
  const watch = openWatch()
  for (const { quantity, figures } of series)
    if (quantities[quantity].side === 'product')
      watch.add(figures.filter(({ lot }) => isOpen(lot)).map(openFigure))
  return watch.series()
}

/** Copied field by field, so that nothing else can follow. */
const openFigure = (figure: WatchedFigure): WatchedFigure => ({
  lot: figure.lot,
  made: figure.made,
  grade: figure.soldAs,
  soldAs: figure.soldAs,
  quantity: figure.quantity,
  value: figure.value,
  u: figure.u,
  U: figure.U,
  ...(figure.below === undefined ? {} : { below: figure.below }),
  isExternal: figure.isExternal,
  readings: [],
  place: figure.place
})
