/** What must hold of any composition, on random ones. */

import { setImmediate } from 'node:timers/promises'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { classEntry, type ClassName, covers } from '../../src/hazards/classes.ts'
import { certaintyTexts } from '../../src/hazards/clauses.ts'
import { type Classification, classify, type Mixture } from '../../src/hazards/classify.ts'
import { type Edition, editions, isIn, precautionsIn } from '../../src/hazards/editions.ts'
import { explain } from '../../src/hazards/explain.ts'
import { labelElements } from '../../src/hazards/label-elements.ts'
import type { Ingredient, Reason } from '../../src/hazards/mixture.ts'
import { choosePrecautions, MOST_STATEMENTS } from '../../src/hazards/precautions.ts'
import { codesIn, statementText } from '../../src/hazards/statements.ts'
import { substances, findSubstance, unknownSubstance } from '../../src/hazards/substances.ts'
import { sized } from '../thorough.ts'

/** Compositions for the crash test, others take a tenth each. */
const RUNS = Number(process.env['HAZARD_RUNS'] ?? sized(2000, 10_000))

/** A process that is silent for a minute counts as hung: on a busy machine it is heard in between. */
const AT_A_TIME = 100

const water = findSubstance('water')!
const acting = substances.filter(one => one !== water)

/** Up to five substances in hundredths of a percent, the rest water. */
const composition = fc
  .uniqueArray(fc.tuple(fc.nat({ max: acting.length }), fc.integer({ min: 1, max: 2000 })), {
    minLength: 1,
    maxLength: 5,
    selector: ([index]) => index
  })
  .map(parts =>
    parts.map(([index, hundredths]): Ingredient => ({
      substance: acting[index] ?? unknownSubstance('something'),
      percent: hundredths / 100
    }))
  )

const withWater = (parts: readonly Ingredient[]): Ingredient[] => [
  ...parts,
  {
    substance: water,
    percent: (10_000 - parts.reduce((sum, { percent }) => sum + Math.round(100 * percent), 0)) / 100
  }
]

const pH = fc.option(fc.integer({ min: -10, max: 140 }), { nil: undefined })

const mixture = fc
  .tuple(composition, pH, fc.nat({ max: 100 }))
  .map(([parts, tenths, U]): Mixture => ({
    ingredients: withWater(parts.map(part => ({ ...part, U: (part.percent * U) / 1000 }))),
    ...(tenths === undefined ? {} : { pH: { value: tenths / 10, U: U / 1000 } })
  }))

const namesOf = ({ classes }: Classification) => classes.map(({ class: name }) => name)

/** Every class of one is matched or exceeded in the other. */
const isAsSevere = (more: readonly ClassName[], less: readonly ClassName[]) =>
  less.every(name => more.some(other => covers(other, name)))

/**
 * What is wrong with a reason. Told in words, as asking `expect` half a million times takes longer than
 * all classifying.
 */
function faultsOf(reason: Reason): string[] {
  const sentence = explain(reason)
  const small = sentence.toLowerCase()
  const faults: [string, boolean][] = [
    ['not fit to print', /NaN|Infinity|undefined|\[object|\d{13}/u.test(sentence)],
    ['no clause', reason.clauses.length === 0],
    ['its first clause unsaid', !sentence.includes(reason.clauses[0]?.source ?? '')],
    ['a part unnamed', reason.parts.some(({ name }) => !small.includes(name.toLowerCase()))]
  ]
  return faults.flatMap(([what, is]) => (is ? [`${what}: ${sentence}`] : []))
}

test(
  `${RUNS} compositions: each result is explained, and fit to print`,
  { timeout: 60_000 + RUNS * 20 },
  async () => {
    let looked = 0
    const explained = fc.asyncProperty(mixture, async one => {
      if ((looked += 1) % AT_A_TIME === 0) await setImmediate()
      const { classes, gaps, questions, conflicts, state } = classify(one)
      const families = new Set(classes.map(({ class: name }) => classEntry(name).family))
      const isOpen = gaps.length + questions.length > 0 || conflicts.some(({ settled }) => !settled)
      expect({
        unexplained: classes.filter(({ reasons }) => reasons.length === 0),
        faults: classes.flatMap(({ reasons }) => reasons.flatMap(faultsOf)),
        families: families.size,
        state
      }).toEqual({
        unexplained: [],
        faults: [],
        families: classes.length,
        state: isOpen ? 'incomplete' : 'complete'
      })
    })
    await fc.assert(explained, { numRuns: RUNS })
    expect(looked).toBe(RUNS)
  }
)

describe('labels', () => {
  test('exclusive pictograms, one signal word, at most six precautions, no text missing', () => {
    fc.assert(
      fc.property(mixture, one => {
        const { classes, supplements } = classify(one)
        const label = labelElements(classes, supplements)
        const has = (code: string) => label.pictograms.some(pictogram => pictogram === code)
        const codes = label.statements.map(({ code }) => code)
        expect(has('GHS06') && has('GHS07')).toBe(false)
        expect(codes.includes('H314') && codes.includes('H318')).toBe(false)
        expect(codes.includes('H410') && codes.includes('H400')).toBe(false)
        const signals = classes.map(({ class: name }) => classEntry(name).signal)
        expect(label.signal).toBe(
          signals.includes('Danger')
            ? 'Danger'
            : signals.includes('Warning')
              ? 'Warning'
              : undefined
        )
        for (const { code, fill } of label.statements)
          for (const language of ['en', 'de', 'fr', 'es', 'it'] as const)
            if (!statementText(code, language, fill).ok) expect([code, language]).toBe('said')
        if (classes.length > 0) expect(codes).not.toContain('EUH210')
        const chosen = choosePrecautions(classes.map(({ class: name }) => name))
        expect(chosen.length).toBeLessThanOrEqual(MOST_STATEMENTS)
        const missing = chosen.filter(code => {
          const statement = statementText(code, 'en')
          return !statement.ok && statement.reason !== 'gap not filled'
        })
        expect(missing).toEqual([])
      }),
      { numRuns: RUNS / 10 }
    )
  })
})

describe('editions', () => {
  const inEdition = (one: Mixture, edition: Edition) => classify({ ...one, edition })

  test('each has its own categories alone, each with a text', () => {
    fc.assert(
      fc.property(mixture, fc.constantFrom(...editions), (one, edition) => {
        const { classes, supplements } = inEdition(one, edition)
        const strange = classes.filter(({ class: name }) => !isIn(edition, name))
        expect(strange).toEqual([])
        if (edition !== 'clp') expect(supplements).toEqual([])
        const names = classes.map(({ class: name }) => name)
        const codes = [
          ...labelElements(classes).statements.map(({ code }) => code),
          ...precautionsIn(edition, choosePrecautions(names), names)
        ]
        const known = new Set(codesIn(edition))
        expect(codes.filter(code => !known.has(code))).toEqual([])
        expect(new Set(codes).size).toBe(codes.length)
      }),
      { numRuns: RUNS / 10 }
    )
  })

  test('the UN finds what CLP finds, and milder categories besides', () => {
    fc.assert(
      fc.property(mixture, one => {
        const clp = namesOf(classify(one))
        const un = namesOf(inEdition(one, 'un'))
        expect(un.filter(name => isIn('clp', name))).toEqual(clp)
      }),
      { numRuns: RUNS / 10 }
    )
  })

  test('the United States are never milder for health', () => {
    fc.assert(
      fc.property(mixture, one => {
        const clp = namesOf(classify(one)).filter(name => isIn('us', name))
        expect(isAsSevere(namesOf(inEdition(one, 'us')), clp)).toBe(true)
      }),
      { numRuns: RUNS / 10 }
    )
  })
})

describe('metamorphic', () => {
  test('the order of rows makes no difference', () => {
    fc.assert(
      fc.property(mixture, fc.infiniteStream(fc.nat()), (one, stream) => {
        const shuffled = one.ingredients
          .map(ingredient => ({ ingredient, key: stream.next().value }))
          .sort((a, b) => a.key - b.key)
          .map(({ ingredient }) => ingredient)
        expect(classify({ ...one, ingredients: shuffled })).toEqual(classify(one))
      }),
      { numRuns: RUNS / 10 }
    )
  })

  test('splitting a row in two makes no difference', () => {
    fc.assert(
      fc.property(mixture, fc.nat(), fc.integer({ min: 1, max: 99 }), (one, pick, share) => {
        const index = pick % one.ingredients.length
        const whole = one.ingredients[index]!
        const part = (hundredths: number): Ingredient => ({
          substance: whole.substance,
          percent: (whole.percent * hundredths) / 100,
          U: ((whole.U ?? 0) * hundredths) / 100
        })
        const split = one.ingredients.toSpliced(index, 1, part(share), part(100 - share))
        expect(namesOf(classify({ ...one, ingredients: split }))).toEqual(namesOf(classify(one)))
      }),
      { numRuns: RUNS / 10 }
    )
  })

  test('more of an ingredient for water is never milder', () => {
    fc.assert(
      fc.property(composition, fc.nat(), fc.integer({ min: 1, max: 1000 }), (parts, pick, more) => {
        const index = pick % parts.length
        const raised = parts.map((part, place) =>
          place === index
            ? { ...part, percent: (Math.round(100 * part.percent) + more) / 100 }
            : part
        )
        fc.pre(raised.reduce((sum, { percent }) => sum + percent, 0) <= 100)
        const before = namesOf(classify({ ingredients: withWater(parts) }))
        const after = namesOf(classify({ ingredients: withWater(raised) }))
        expect({ before, after, ok: isAsSevere(after, before) }).toEqual({
          before,
          after,
          ok: true
        })
      }),
      { numRuns: RUNS / 10 }
    )
  })

  test('more of one substance in water is never milder, through all its bands', () => {
    for (const substance of acting) {
      let before: ClassName[] = []
      for (let hundredths = 10; hundredths < 9900; hundredths += hundredths < 2000 ? 10 : 50) {
        const after = namesOf(
          classify({ ingredients: withWater([{ substance, percent: hundredths / 100 }]) })
        )
        if (!isAsSevere(after, before))
          expect({ id: substance.id, hundredths, before, after }).toBe('never')
        before = after
      }
    }
  })

  test('more uncertainty is never milder', () => {
    fc.assert(
      fc.property(
        composition,
        fc.nat({ max: 50 }),
        fc.integer({ min: 1, max: 50 }),
        (parts, U, more) => {
          const at = (percent: number) =>
            namesOf(
              classify({
                ingredients: withWater(parts).map(part => ({
                  ...part,
                  U: (part.percent * percent) / 100
                }))
              })
            )
          expect(isAsSevere(at(U + more), at(U))).toBe(true)
        }
      ),
      { numRuns: RUNS / 10 }
    )
  })
})

test('every degree of certainty but print is said', () => {
  expect(Object.entries(certaintyTexts).filter(([, text]) => text === '')).toEqual([['print', '']])
})
