/** Every rule at one set of values, and the most severe outcome of each family of classes. */

import { classifyAcute } from './acute-toxicity.ts'
import { classifyAquatic } from './aquatic.ts'
import { classEntry, type ClassName, placeOf } from './classes.ts'
import { classifyByCutOff } from './cut-offs.ts'
import { classifyEye, eyeOfCorrosive } from './eye.ts'
import { classifyExtremePH } from './extreme-ph.ts'
import type { Finding, Point, Rule } from './mixture.ts'
import { classifySkin, corrosive } from './skin.ts'
import { classifyTransient } from './stot-single.ts'
import { classifyPhysical } from './tests-only.ts'

const byComposition: readonly Rule[] = [
  classifyPhysical,
  classifyAcute,
  classifySkin,
  classifyEye,
  classifyByCutOff,
  classifyTransient,
  classifyAquatic
]

export const isCorrosive = ({ class: name }: Pick<Finding, 'class'>): boolean =>
  corrosive.some(one => one === name)

/**
 * Classes of a mixture at one set of values.
 *
 * @param more what tests and answers say
 * @param withPH whether the pH rule speaks too
 */
export function findingsAt(point: Point, more: readonly Finding[], withPH: boolean): Finding[] {
  const found = mostSevere([
    ...byComposition.flatMap(rule => rule(point)),
    ...(withPH ? classifyExtremePH(point) : []),
    ...more
  ])
  const corroding = found.find(isCorrosive)
  return corroding ? mostSevere([...found, eyeOfCorrosive(corroding.class)]) : found
}

/** The most severe class of each family with every reason for it, in the order of the list. */
export function mostSevere(findings: readonly Finding[]): Finding[] {
  const best = new Map<string, Finding>()
  for (const finding of findings) {
    const { family } = classEntry(finding.class)
    const before = best.get(family)
    if (before?.class === finding.class) best.set(family, joined(before, finding))
    else if (!before || placeOf(finding.class) < placeOf(before.class)) best.set(family, finding)
  }
  return [...best.values()].sort((a, b) => placeOf(a.class) - placeOf(b.class))
}

/** One class for several reasons. Where closer statements differ, the class's own says it all. */
function joined(one: Finding, other: Finding): Finding {
  return {
    class: one.class,
    ...(one.statement !== undefined && one.statement === other.statement
      ? { statement: one.statement }
      : {}),
    ...(one.fill !== undefined && one.fill === other.fill ? { fill: one.fill } : {}),
    reasons: [...one.reasons, ...other.reasons]
  }
}

/** Class names of findings, for comparing them. */
export const namesOf = (findings: readonly Finding[]): Set<ClassName> =>
  new Set(findings.map(({ class: name }) => name))
