/**
 * Molar mass from a chemical formula: the sum of its atoms' weights.
 *
 * Source: the definition of molar mass; atomic weights in atomic-weights.ts.
 */

import { atomicWeights_g_per_mol } from './atomic-weights.ts'

/** An element, an opening or a closing bracket; elements and closing brackets carry a count. */
const TOKEN = /([A-Z][a-z]?|\(|\))(\d*)/g

/**
 * Molar mass of a compound.
 *
 * The abridged atomic weights hold it to about 2 in 10⁴ (sulfur), which no titration here can see.
 *
 * @param formula element symbols, counts and brackets, an adduct after a raised dot: 'Ca(OH)2',
 *   'NH3·H2O'
 * @returns molar mass, g/mol
 * @throws RangeError for an element outside the table or a formula that cannot be read
 */
export function molarMass_g_per_mol(formula: string): number {
  const known = read.get(formula)
  if (known !== undefined) return known
  const mass = formula.split('·').reduce((sum, part) => sum + massOfPart(part, formula), 0)
  read.set(formula, mass)
  return mass
}

/** Formulas read before: the same few stand in every lot, some of them dozens of times. */
const read = new Map<string, number>()

function massOfPart(part: string, formula: string): number {
  const tokens = [...part.matchAll(TOKEN)]
  const read = tokens.map(([token]) => token).join('')
  if (part === '' || read !== part) throw unreadable(formula)
  const open = [0]
  for (const [, symbol, count] of tokens) {
    if (symbol === '(') open.push(0)
    else add(open, symbol === ')' ? open.pop()! : weightOf(symbol!, formula), count!, formula)
  }
  if (open.length !== 1) throw unreadable(formula)
  return open[0]!
}

/** Add `count` times `mass` to the innermost bracket still open. */
function add(open: number[], mass: number, count: string, formula: string): void {
  const top = open.length - 1
  if (top < 0 || count.startsWith('0')) throw unreadable(formula)
  open[top] = open[top]! + mass * (count === '' ? 1 : Number(count))
}

function weightOf(symbol: string, formula: string): number {
  const weight = atomicWeights_g_per_mol.get(symbol)
  if (weight === undefined) throw new RangeError(`${formula}: no atomic weight for ${symbol}`)
  return weight
}

const unreadable = (formula: string): RangeError =>
  new RangeError(`${formula === '' ? 'an empty text' : formula} is not a chemical formula`)
