/** The substances file: its shape, its identifiers, and a source to every line. */

import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { classEntry, classNames } from '../../src/hazards/classes.ts'
import { corrosive } from '../../src/hazards/skin.ts'
import { statementCodes } from '../../src/hazards/statements.ts'
import { findSubstance, substances, withSupplier } from '../../src/hazards/substances.ts'
import file from '../../src/hazards/substances.json' with { type: 'json' }

const cited = { source: z.string().min(10), sure: z.enum(['print', 'second hand', 'memory']) }
const className = z.enum(classNames)
const percent = z.number().min(0).max(100)
const form = z.enum(['oral', 'dermal', 'gas', 'vapour', 'mist'])

const substance = z.strictObject({
  id: z.string().regex(/^[a-z]+(-[a-z]+)*$/u),
  names: z.array(z.string().regex(/^[^A-Z]|\(VI\)/u)).min(1),
  formula: z.string().optional(),
  cas: z.string().regex(/^\d{2,7}-\d\d-\d$/u),
  ec: z.string().regex(/^\d{3}-\d{3}-\d$/u),
  index: z
    .string()
    .regex(/^\d{3}-\d{3}-\d\d-[\dX]$/u)
    .optional(),
  basis: z.enum(['harmonised', 'registration', 'self', 'not classified']),
  state: z.string().optional(),
  least_percent: percent.optional(),
  most_percent: percent.optional(),
  identity: z.strictObject(cited),
  classes: z.array(
    z.strictObject({
      class: className,
      form: form.optional(),
      statement: z.enum(statementCodes).optional(),
      fill: z.string().optional(),
      minimum: z.literal(true).optional(),
      ...cited
    })
  ),
  limits: z.array(
    z.strictObject({
      class: className,
      from_percent: percent,
      below_percent: percent.optional(),
      ...cited
    })
  ),
  ates: z.array(z.strictObject({ form, ate: z.number().positive(), ...cited })),
  mFactors: z.array(
    z.strictObject({ kind: z.enum(['acute', 'chronic']), m: z.number().min(1), ...cited })
  ),
  traits: z.array(
    z.strictObject({
      trait: z.enum([
        'strong acid',
        'strong base',
        'corrosive to metals',
        'oxidiser',
        'flammable',
        'combustible dust'
      ]),
      from_percent: percent.optional(),
      ...cited
    })
  ),
  statements: z.array(z.strictObject({ code: z.enum(statementCodes), ...cited })),
  notes: z.array(z.strictObject({ note: z.string(), ...cited }))
})

test('the file has the shape its type says, and nothing else', () => {
  expect(z.strictObject({ substances: z.array(substance) }).safeParse(file).error).toBeUndefined()
})

describe.each(substances.map(one => [one.id, one] as const))('%s', (_, one) => {
  test('its CAS number has the right check digit', () => {
    const [digits, check] = [one.cas.slice(0, -2).replace('-', ''), Number(one.cas.at(-1))]
    const sum = [...digits]
      .reverse()
      .reduce((total, digit, index) => total + Number(digit) * (index + 1), 0)
    expect(sum % 10).toBe(check)
  })

  test('its EC number has the right check digit', () => {
    const digits = one.ec.replaceAll('-', '')
    const sum = [...digits.slice(0, 6)].reduce(
      (total, digit, index) => total + Number(digit) * (index + 1),
      0
    )
    expect(sum % 11).toBe(Number(digits[6]))
  })

  test('its bands do not overlap, and stand in the order of severity', () => {
    for (const { class: name, from_percent: from, below_percent: below } of one.limits) {
      const family = classEntry(name).family
      const others = one.limits.filter(line => classEntry(line.class).family === family)
      expect(from).toBeLessThan(below ?? Infinity)
      for (const other of others.filter(line => line.from_percent > from))
        expect(below).toBeLessThanOrEqual(other.from_percent)
      const milder = others.filter(
        line => classNames.indexOf(line.class) > classNames.indexOf(name)
      )
      for (const other of milder) expect(other.from_percent).toBeLessThan(from)
    }
  })

  test('an entry of the law has its number, any other has none', () => {
    expect(one.index !== undefined).toBe(one.basis === 'harmonised')
    expect(one.classes.length > 0).toBe(one.basis === 'harmonised' || one.basis === 'self')
  })

  test('the form of what is inhaled is said', () => {
    for (const line of one.classes) {
      const inhaled = /^Acute.*inhalation$/u.test(line.class)
      expect(line.form !== undefined).toBe(inhaled)
    }
  })
})

// Index number, CAS and EC of these: CLP Annex VI, Table 3, as data sheets of statutory accident
// insurers in Germany and the registration of expandable graphite print them.
test.for([
  ['sulfuric acid', '016-020-00-8', '7664-93-9', '231-639-5'],
  ['nitric acid', '007-030-00-3', '7697-37-2', '231-714-2'],
  ['potassium permanganate', '025-002-00-9', '7722-64-7', '231-760-3'],
  ['hydrogen peroxide', '008-003-00-9', '7722-84-1', '231-765-0'],
  ['ammonia', '007-001-01-2', '1336-21-6', '215-647-6'],
  ['sodium hydroxide', '011-002-00-6', '1310-73-2', '215-185-5'],
  ['expandable graphite', undefined, '12777-87-6', '235-819-4']
] as const)('%s is %s, %s, %s', ([name, index, cas, ec]) => {
  expect(findSubstance(name)).toMatchObject({ cas, ec, ...(index ? { index } : {}) })
  expect(findSubstance(cas)?.id).toBe(findSubstance(name)?.id)
})

describe('finding one', () => {
  test('a name is taken whole, in any case', () => {
    expect(findSubstance(' Sulphuric Acid ')?.id).toBe('sulfuric-acid')
    expect(
      findSubstance('multi-walled carbon tubes (synthetic graphite in tubular shape)')
    ).toBeUndefined()
    expect(findSubstance('constructor')).toBeUndefined()
  })

  test('every name means one substance', () => {
    const names = substances.flatMap(one => one.names)
    expect(new Set(names).size).toBe(names.length)
    for (const one of substances)
      for (const name of one.names) expect(findSubstance(name)).toBe(one)
  })
})

describe("a supplier's sheet", () => {
  const line = { source: "supplier's data sheet, 2026", sure: 'print' } as const

  test('adds to a harmonised classification', () => {
    const more = withSupplier(findSubstance('potassium permanganate'), 'x', {
      mFactors: [{ kind: 'acute', m: 10, ...line }],
      classes: [{ class: 'Skin Corr. 1C', ...line }]
    })
    expect(more.classes.map(({ class: name }) => name)).toEqual(
      expect.arrayContaining(['Ox. Sol. 2', 'Repr. 2', 'Skin Corr. 1C'])
    )
    expect(more.basis).toBe('harmonised')
  })

  test('replaces a classification that is not', () => {
    const milder = withSupplier(findSubstance('calcium hydroxide'), 'x', {
      classes: [{ class: 'Skin Irrit. 2', ...line }]
    })
    expect(milder.classes.map(({ class: name }) => name)).toEqual(['Skin Irrit. 2'])
  })

  test('makes a substance of one not listed', () => {
    const own = withSupplier(undefined, 'wetting agent', {
      classes: [{ class: 'Eye Dam. 1', ...line }]
    })
    expect(own).toMatchObject({ names: ['wetting agent'], basis: 'supplier' })
  })
})

test('corrosive sub-categories stand in order', () => {
  const places = corrosive.map(name => classNames.indexOf(name))
  expect(places).toEqual([...places].sort((a, b) => a - b))
})
