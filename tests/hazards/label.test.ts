/** Label elements: precedence of pictograms, signal words and statements; the choice of precautions. */

import { describe, expect, test } from 'vitest'
import { classEntry, type ClassName, classNames } from '../../src/hazards/classes.ts'
import { editions, isIn, precautionsIn } from '../../src/hazards/editions.ts'
import { labelElements } from '../../src/hazards/label-elements.ts'
import { choosePrecautions, MOST_STATEMENTS, precautionsOf } from '../../src/hazards/precautions.ts'
import { codesIn } from '../../src/hazards/statements.ts'

const label = (...names: ClassName[]) => labelElements(names.map(name => ({ class: name })))
const codes = (...names: ClassName[]) => label(...names).statements.map(({ code }) => code)

/** CLP, Articles 20(3), 26(1) and 27. */
describe('precedence', () => {
  test.for([
    // 26(1)(b): with the skull no exclamation mark, all statements stay.
    [['Acute Tox. 3 inhalation', 'Acute Tox. 4 oral', 'Skin Irrit. 2'], 'GHS06', 'Danger'],
    // 26(1)(c): with corrosion no exclamation mark for irritation, but for other reasons.
    [['Skin Irrit. 2', 'Eye Dam. 1'], 'GHS05', 'Danger'],
    [['Skin Corr. 1B', 'STOT SE 3 airways'], 'GHS05 GHS07', 'Danger'],
    [['Skin Corr. 1A', 'Acute Tox. 4 oral'], 'GHS05 GHS07', 'Danger'],
    // Corrosion of metals alone spares no irritation.
    [['Met. Corr. 1', 'Skin Irrit. 2'], 'GHS05 GHS07', 'Warning'],
    // 26(1)(d).
    [['Resp. Sens. 1', 'Skin Sens. 1', 'Eye Irrit. 2'], 'GHS08', 'Danger'],
    [['Resp. Sens. 1', 'Acute Tox. 4 oral'], 'GHS07 GHS08', 'Danger'],
    [['Repr. 2', 'Skin Sens. 1'], 'GHS07 GHS08', 'Warning'],
    [['Aquatic Chronic 2'], 'GHS09', undefined],
    [['Aquatic Chronic 3'], '', undefined],
    [[], '', undefined]
  ] as const)('%j: %s, %s', ([names, pictograms, signal]) => {
    const found = label(...names)
    expect(found.pictograms.join(' ')).toBe(pictograms)
    expect(found.signal).toBe(signal)
  })

  test('what is left out is kept with its article', () => {
    expect(label('Skin Irrit. 2', 'Eye Dam. 1').omitted.join()).toContain('26(1)(c)')
    expect(label('Met. Corr. 1', 'Skin Irrit. 2').omitted.join()).toContain('kept')
    expect(label('Skin Corr. 1A', 'Eye Dam. 1').omitted.join()).toContain(
      'H318 left out, said by H314'
    )
    expect(label('Skin Irrit. 2').omitted).toEqual([])
  })

  test('statements: redundant ones out, routes together, closer ones kept', () => {
    expect(codes('Skin Corr. 1A', 'Eye Dam. 1')).toEqual(['H314'])
    expect(codes('Aquatic Acute 1', 'Aquatic Chronic 1')).toEqual(['H410'])
    expect(codes('Aquatic Acute 1', 'Aquatic Chronic 2')).toEqual(['H400', 'H411'])
    expect(codes('Acute Tox. 4 oral', 'Acute Tox. 4 inhalation', 'Skin Irrit. 2')).toEqual([
      'H302+H332',
      'H315'
    ])
    expect(codes('Acute Tox. 3 oral', 'Acute Tox. 4 inhalation')).toEqual(['H301', 'H332'])
    expect(codes('Acute Tox. 1 oral', 'Acute Tox. 2 dermal', 'Acute Tox. 1 inhalation')).toEqual([
      'H300+H310+H330'
    ])
    expect(labelElements([{ class: 'Repr. 2', statement: 'H361d' }]).statements).toEqual([
      { code: 'H361d' }
    ])
  })

  test('every statement a class can carry has its text', () => {
    for (const edition of editions)
      for (const name of classNames.filter(one => isIn(edition, one))) {
        expect(codesIn(edition)).toContain(classEntry(name).statement)
        for (const code of precautionsIn(edition, precautionsOf(name), [name]))
          expect(codesIn(edition)).toContain(code)
      }
  })

  test('every class has precautions', () => {
    expect(classNames.filter(name => precautionsOf(name).length === 0)).toEqual([])
  })
})

describe('precautions', () => {
  // Public data sheet of German statutory accident insurers, nitric acid 26 to 65 %: 5 of the 12.
  test('what an authority chooses for nitric acid is among ours', () => {
    const chosen = choosePrecautions(['Acute Tox. 3 inhalation', 'Skin Corr. 1A', 'Eye Dam. 1'])
    expect(chosen).toEqual(
      expect.arrayContaining(['P260', 'P280', 'P303+P361+P353', 'P305+P351+P338', 'P310'])
    )
    expect(chosen).toHaveLength(MOST_STATEMENTS)
  })

  test('redundant ones go', () => {
    const chosen = choosePrecautions(['Skin Corr. 1A', 'STOT SE 3 airways', 'Skin Sens. 1'])
    for (const code of ['P261', 'P302+P352', 'P312', 'P333+P313'])
      expect(chosen).not.toContain(code)
  })

  test('goods for the public carry one on disposal', () => {
    expect(choosePrecautions(['Skin Corr. 1A'], { public: true })).toContain('P501')
    expect(choosePrecautions(['Skin Corr. 1A'], { public: true })).toHaveLength(MOST_STATEMENTS)
    expect(choosePrecautions([], { public: true })).toEqual([])
  })

  test('the producer may choose others', () => {
    const chosen = ['P280', 'P264', 'P260', 'P310', 'P405', 'P501', 'P363']
    expect(choosePrecautions(['Skin Corr. 1A'], { chosen })).toEqual(chosen)
  })
})
