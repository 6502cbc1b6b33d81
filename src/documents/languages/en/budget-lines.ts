/** What budget lines are called, in English: as evaluation names them. */

import type { BudgetLineParts, ReadOf } from '../../../metrology/budget-line.ts'
import type { Titled } from '../parts.ts'

function readOf(of: ReadOf, titled: Titled): string {
  if ('sheet' in of) return `${of.lot} sheet ${of.sheet} thickness`
  if ('blanks' in of)
    return of.quantity === undefined ? `${of.lot} blanks` : `${of.lot} ${of.quantity} blanks`
  return `${of.lot} ${titled(of.quantity)}`
}

/**
 * @param titled a quantity's title by its key
 * @param own what a record says, in the language
 */
export function budgetLine(
  said: BudgetLineParts,
  titled: Titled,
  own: (text: string) => string
): string {
  switch (said.is) {
    case 'calibration':
    case 'tolerance':
      return `${said.instrument} ${said.is}${said.of === undefined ? '' : ` of ${said.of}`}`
    case 'resolution':
      return `${said.instrument} resolution`
    case 'written digits':
      return 'written digits'
    case 'repeatability':
      return `${said.method} repeatability${said.ofResult === undefined ? '' : `, ${said.ofResult} of the result`} (${own(said.from)})`
    case 'concentration':
      return `${said.titrant} concentration`
    case 'scatter':
      return `${readOf(said.of, titled)}, scatter of ${said.n} readings${said.plane ? ' about the plane' : ''}`
    case 'stated':
      return `${said.lot} ${said.what}`
    case 'time of leak':
      return `${said.lot} gas leak, time of ${said.time}`
    case 'reported':
      return `${said.lot} ${said.quantity} by report ${said.report}`
    case 'aperture':
      return `mean aperture of sieve ${said.aperture_um} µm`
    case 'known':
      return said.what
  }
}
