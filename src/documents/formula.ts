/**
 * Formulas as mathematics: the plain text a model's file states, read as fractions, subscripts and sums.
 *
 * Statements stand apart by commas or semicolons; one that is no mathematics ('m before expansion') is
 * kept as words. `m dry` and `R_a` are subscripts, and so are digits behind a letter (`V0`, `H2SO4`); a
 * word in brackets behind a name says of what (`M(H2SO4)`); Σ and Π take the rest of their product.
 */

import { type Token, tokensOf } from './formula-tokens.ts'
import type { FormulaText, Maths } from './formula-types.ts'

/** As a line of text: a lowered letter stands beside its name, a lowered word behind it. */
export const plainFormula = (text: string): string =>
  text.replace(/_(\p{L}{2,})/gu, ' $1').replaceAll('_', '')

/** Read a formula, statement by statement. */
export const readFormula = (text: string): readonly FormulaText[] =>
  statementsOf(text).map(statement => {
    const maths = readStatement(statement)
    return maths ? { text: plainFormula(statement), maths } : { text: statement }
  })

/** Between statements: a comma before a digit is a decimal one, as languages beside English have it. */
const STOP = /^(?:;|,(?!\d))/u

/** Parts of a formula between commas and semicolons that stand in no bracket. */
function statementsOf(text: string): string[] {
  const parts = ['']
  let depth = 0
  const signs = [...text]
  for (const [index, sign] of signs.entries()) {
    depth += sign === '(' ? 1 : sign === ')' ? -1 : 0
    if (depth === 0 && STOP.test(signs.slice(index, index + 2).join(''))) parts.push('')
    else parts[parts.length - 1] += sign
  }
  return parts.map(part => part.trim())
}

/** An equation; undefined where the text is none. */
function readStatement(text: string): Maths | undefined {
  const tokens = tokensOf(text)
  if (!tokens) return undefined
  const reader: Reader = { tokens, at: 0 }
  const left = readSum(reader)
  const relation = left && take(reader, '=', '≥')
  if (!relation) return undefined
  const right = readSum(reader)
  if (!right || reader.at < tokens.length) return undefined
  return row(left, sign(relation), right)
}

interface Reader {
  readonly tokens: readonly Token[]
  at: number
}

const row = (...parts: Maths[]): Maths => ({ is: 'row', parts })
const sign = (text: string): Maths => ({ is: 'sign', text })

/** Go past a sign, if it is the next. */
function take(reader: Reader, ...signs: string[]): string | undefined {
  const token = reader.tokens[reader.at]
  if (token?.is !== 'sign' || !signs.includes(token.text)) return undefined
  reader.at += 1
  return token.text
}

function readSum(reader: Reader): Maths | undefined {
  const parts: Maths[] = []
  const lead = take(reader, '−')
  if (lead) parts.push(sign(lead))
  for (;;) {
    const product = readProduct(reader)
    if (!product) return undefined
    parts.push(product)
    const next = take(reader, '+', '−')
    if (!next) return parts.length === 1 ? parts[0] : row(...parts)
    parts.push(sign(next))
  }
}

/** From left to right; what stands left of a stroke goes above it. */
function readProduct(reader: Reader): Maths | undefined {
  let product = readPower(reader)
  for (;;) {
    const next = product && take(reader, '·', '/')
    if (!product || !next) return product
    const factor = readPower(reader)
    if (!factor) return undefined
    product = next === '·' ? times(product, factor) : over(product, factor)
  }
}

const times = (left: Maths, right: Maths): Maths => row(alone(left), sign('·'), alone(right))

/** A fraction needs no brackets among factors. */
const alone = (maths: Maths): Maths =>
  maths.is === 'bracket' && maths.of.is === 'fraction' ? maths.of : maths

/** a / b / c is a over b · c. */
const over = (above: Maths, below: Maths): Maths =>
  above.is === 'fraction'
    ? { is: 'fraction', above: above.above, below: times(above.below, bare(below)) }
    : { is: 'fraction', above: bare(above), below: bare(below) }

/** Without the brackets that a fraction's stroke makes needless. */
const bare = (maths: Maths): Maths => (maths.is === 'bracket' ? maths.of : maths)

function readPower(reader: Reader): Maths | undefined {
  const base = readPrimary(reader)
  const token = reader.tokens[reader.at]
  if (!base || token?.is !== 'power') return base
  reader.at += 1
  return { is: 'power', base, power: token.text === '²' ? '2' : '3' }
}

function readPrimary(reader: Reader): Maths | undefined {
  const large = take(reader, 'Σ', 'Π')
  if (large) {
    const of = readProduct(reader)
    return of && row(sign(large), of)
  }
  if (take(reader, '√')) {
    const of = readPrimary(reader)
    return of && { is: 'root', of: bare(of) }
  }
  if (take(reader, '(')) return readBracket(reader)
  return readNamed(reader)
}

/** What stands in brackets; several parts apart by commas. */
function readBracket(reader: Reader): Maths | undefined {
  const parts: Maths[] = []
  for (;;) {
    const part = readSum(reader)
    if (!part) return undefined
    parts.push(part)
    if (take(reader, ')')) return { is: 'bracket', of: parts.length === 1 ? part : row(...parts) }
    if (!take(reader, ',')) return undefined
    parts.push(sign(','))
  }
}

/** Says that a name is applied to what follows; nothing is seen of it. */
const APPLIED: Maths = { is: 'sign', text: '\u2061' }

const functions: ReadonlySet<string> = new Set(['ln', 'exp'])

/** A number or a name, with what is said of it behind. */
function readNamed(reader: Reader): Maths | undefined {
  const token = reader.tokens[reader.at]
  if (token?.is === 'number') {
    reader.at += 1
    return { is: 'number', text: token.text }
  }
  if (token?.is !== 'name') return undefined
  reader.at += 1
  if (functions.has(token.text)) {
    const of = readPrimary(reader)
    return of && row({ is: 'function', text: token.text }, APPLIED, of)
  }
  return readName(reader, { is: 'name', parts: token.parts })
}

/** A name with its subscript, or with what it is taken of. */
function readName(reader: Reader, name: Maths): Maths | undefined {
  const next = reader.tokens[reader.at]
  if (next?.is === 'name' && !functions.has(next.text)) {
    reader.at += 1
    return { is: 'subscript', base: name, below: next.text }
  }
  if (!take(reader, '(')) return name
  const of = readBracket(reader)
  return of && row(name, APPLIED, of)
}
