/** Formulas as MathML Core, which browsers set without script. */

import type { FormulaText, Maths, NamePart } from '../documents/formula-types.ts'
import { escaped } from '../markup.ts'

/** One statement as a `math` element on a line of its own. */
export const mathml = ({ maths, text }: FormulaText): string =>
  maths ? `<math display="block">${elements(maths)}</math>` : escaped(text)

const element = (tag: string, ...content: readonly string[]): string =>
  `<${tag}>${content.join('')}</${tag}>`

/** Elements that stand in a row. */
function elements(maths: Maths): string {
  if (maths.is === 'row') return maths.parts.map(elements).join('')
  if (maths.is === 'bracket') return bracketed(maths.of)
  return one(maths)
}

const bracketed = (of: Maths) => `<mo>(</mo>${elements(of)}<mo>)</mo>`

/** Exactly one element, as a place above or below a stroke takes. */
function one(maths: Maths): string {
  switch (maths.is) {
    case 'row':
    case 'bracket':
      return element('mrow', elements(maths))
    case 'name':
      return named(maths.parts)
    case 'number':
      return element('mn', escaped(maths.text))
    case 'sign':
      return element('mo', escaped(maths.text))
    case 'function':
      return element('mi', escaped(maths.text))
    case 'subscript':
      return element('msub', one(maths.base), word(maths.below))
    case 'power':
      return element('msup', one(maths.base), element('mn', maths.power))
    case 'fraction':
      return element('mfrac', one(maths.above), one(maths.below))
    case 'root':
      return element('msqrt', elements(maths.of))
  }
}

const word = (text: string) => element('mtext', escaped(text))

/** 'H', '2', 'SO', '4': each lowered or raised part hangs on the letters before it. */
function named(parts: readonly NamePart[]): string {
  const written: string[] = []
  for (const { text, at } of parts) {
    if (at === 'line') written.push(element('mi', escaped(text)))
    else {
      const tag = at === 'below' ? 'msub' : 'msup'
      const inner = /^\d+$/u.test(text) ? element('mn', text) : element('mtext', escaped(text))
      written.push(element(tag, written.pop() ?? '<mrow></mrow>', inner))
    }
  }
  return written.length === 1 ? written[0]! : element('mrow', ...written)
}
