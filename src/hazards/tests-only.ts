/**
 * Hazards that no arithmetic gives: what may oxidise, corrode metals, burn. A substance has its class
 * as such, and within bands of its own; of any other mixture only a test can tell, or a reason a
 * competent person writes down. Until then the question stays open.
 *
 * Source: CLP Annex I, 2.6, 2.13, 2.14 and 2.16 (from memory, not checked against the print).
 */

import { type ClassName, classEntry } from './classes.ts'
import { type Clause, clauses } from './clauses.ts'
import { ACID_PH, ALKALINE_PH } from './extreme-ph.ts'
import { type Finding, nameOf, type Point, reason, type Share, shown } from './mixture.ts'
import type { Substance, Trait } from './substances.ts'

/** A hazard to be tested or argued about. */
export type Topic = 'oxidising' | 'metals' | 'flammable'

export interface Question {
  readonly topic: Topic
  /** What is asked, and why: one sentence without a full stop. */
  readonly text: string
  readonly clause: Clause
}

/** What is known from outside: a class, or that there is none. */
export interface Answer {
  readonly topic: Topic
  readonly class?: ClassName
  /** Test report or reason, and who stands for it. */
  readonly because: string
}

const physical = (name: ClassName) => /^(?:Ox|Flam|Met|Press)\./u.test(name)

/** A mixture is a substance as such from here on. */
const AS_SUCH_PERCENT = 99

/** Physical classes of the substance itself, and of mixtures within its own bands. */
export const classifyPhysical = ({ shares }: Point): Finding[] =>
  shares.flatMap(share => [...asSuch(share), ...inBand(share)])

function asSuch({ substance, percent }: Share): Finding[] {
  if (percent < AS_SUCH_PERCENT) return []
  return substance.classes
    .filter(line => physical(line.class) && !bandsOf(substance).length)
    .map(line => ({
      class: line.class,
      reasons: [
        reason([{ substance, percent }], { is: 'as such', name: nameOf(substance) }, [
          clauses.asSuch,
          line
        ])
      ]
    }))
}

const bandsOf = ({ limits }: Substance) => limits.filter(line => physical(line.class))

const inBand = ({ substance, percent }: Share): Finding[] =>
  bandsOf(substance)
    .filter(
      ({ from_percent: from, below_percent: below = Infinity }) =>
        percent >= from && percent < below
    )
    .map(line => ({
      class: line.class,
      reasons: [
        reason(
          [{ substance, percent }],
          {
            is: 'band',
            part: {
              name: nameOf(substance),
              percent: shown(percent, line.from_percent),
              limit: shown(line.from_percent),
              own: true
            }
          },
          [line]
        )
      ]
    }))

const asked: readonly {
  trait: Trait
  topic: Topic
  families: RegExp
  clause: Clause
  what: string
}[] = [
  {
    trait: 'oxidiser',
    topic: 'oxidising',
    families: /^oxidising/u,
    clause: clauses.oxidisingSolid,
    what: 'may oxidise: test it (UN O.1, O.2 or O.3) or justify why not'
  },
  {
    trait: 'corrosive to metals',
    topic: 'metals',
    families: /^metals/u,
    clause: clauses.metals,
    what: 'may be corrosive to metals: test it (UN C.1) or justify why not'
  },
  {
    trait: 'flammable',
    topic: 'flammable',
    families: /^flammable/u,
    clause: clauses.flammableLiquid,
    what: 'may be flammable: measure its flash point or justify why not'
  }
]

/**
 * What only a test can tell, where neither a class nor an answer settles it.
 *
 * @param measured whose figures are told where they ask it already
 */
export function questionsOf(
  point: Point,
  found: readonly Finding[],
  answers: readonly Answer[],
  measured: Point
): Question[] {
  const isSettled = (topic: Topic, families: RegExp) =>
    answers.some(answer => answer.topic === topic) ||
    found.some(({ class: name }) => families.test(classEntry(name).family))
  return asked.flatMap(({ trait, topic, families, clause, what }) => {
    const at = (one: Point) => [
      ...bearers(one, trait),
      ...(topic === 'metals' ? extremePH(one) : [])
    ]
    const asMeasured = at(measured)
    const by = asMeasured.length > 0 ? asMeasured : at(point)
    return by.length === 0 || isSettled(topic, families)
      ? []
      : [{ topic, text: `${what} (${by.join(', ')})`, clause }]
  })
}

/** Ingredients with a trait, from the concentration on at which it is asked about. */
const bearers = ({ shares }: Point, wanted: Trait): string[] =>
  shares.flatMap(({ substance, percent }) =>
    substance.traits.some(
      ({ trait, from_percent: from = 0 }) => trait === wanted && percent >= from
    )
      ? [`${nameOf(substance)} ${shown(percent)} %`]
      : []
  )

const extremePH = ({ pH }: Point): string[] =>
  pH !== undefined && (pH <= ACID_PH || pH >= ALKALINE_PH) ? [`pH ${shown(pH)}`] : []

/** Classes that answers bring. */
export const classifyAnswers = (answers: readonly Answer[]): Finding[] =>
  answers.flatMap(({ class: name, because }) =>
    name === undefined
      ? []
      : [{ class: name, reasons: [reason([], { is: 'recorded', because }, [clauses.tested])] }]
  )
