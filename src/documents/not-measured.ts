/** What a grade says is not measured; of foil, also what customers take for granted and nobody reported. */

import type { QuantityKey } from '../quantities.ts'
import type { GradeView } from './lot-view.ts'
import type { ServiceParts } from './languages/parts.ts'
import type { Tongue } from './languages/tongue.ts'

/** Two constants that belong together. */
const GASKET: readonly QuantityKey[] = ['gasket-factor-m', 'gasket-stress-y']

/**
 * @param known quantities that a figure is given for, measured or reported
 */
export function notMeasuredOf(
  { kind, notMeasured = [], service, typical = {} }: GradeView,
  known: readonly string[],
  { own, foil }: Tongue
): string[] {
  const stated = notMeasured.map(own)
  if (kind !== 'foil') return stated
  const { gasketFactors, fireSafe, oxygen } = foil.missing
  return [
    ...stated,
    ...(GASKET.every(key => known.includes(key) || typical[key]) ? [] : [gasketFactors]),
    ...(service?.fireSafe ? [] : [fireSafe]),
    ...(service?.oxygen ? [] : [oxygen])
  ]
}

/** A report on a grade in service, in one sentence. */
export const serviceText = (report: ServiceParts, { own, foil }: Tongue): string =>
  foil.service({ ...report, says: own(report.says), method: own(report.method) })
