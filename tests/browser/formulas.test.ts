/** The demo's formulas as Chromium sets them. */

import { afterAll, expect, test } from 'vitest'
import { mathml } from '../../src/html/mathml.ts'
import { workshopSite } from '../documents/demo.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'

/** What MathML Core knows of the elements we write, and how many children each takes. */
const CHECK = `(() => {
  const children = { mfrac: 2, msub: 2, msup: 2, mi: 0, mn: 0, mo: 0, mtext: 0 }
  const faults = []
  for (const element of document.querySelectorAll('math, math *')) {
    const { localName: name, namespaceURI, childElementCount: count } = element
    const box = element.getBoundingClientRect()
    if (namespaceURI !== 'http://www.w3.org/1998/Math/MathML') faults.push(name + ' is no MathML')
    else if (name in children && children[name] !== count) faults.push(name + ' has ' + count)
    else if (!(name in children) && !['math', 'mrow', 'msqrt'].includes(name)) faults.push(name)
    if (box.height === 0 && element.textContent.trim() !== '\\u2061') faults.push(name + ' is not seen')
  }
  for (const fraction of document.querySelectorAll('mfrac')) {
    const [above, below] = [...fraction.children].map(part => part.getBoundingClientRect())
    if (above.bottom > below.top + 1) faults.push('a fraction is not stacked: ' + fraction.outerHTML)
  }
  for (const one of document.querySelectorAll('msub')) {
    const [base, low] = [...one.children].map(part => part.getBoundingClientRect())
    if (low.bottom <= base.bottom - 1 || low.left < base.right - 2) faults.push('not lowered: ' + one.outerHTML)
  }
  return faults
})()`

afterAll(leaveChromium)

test.skipIf(!requireChromium())(
  'are MathML with the children each element takes; fractions are stacked, subscripts lowered',
  async () => {
    const formulas = new Set(
      workshopSite.lots
        .flatMap(({ document, process }) => [...document.workings, ...(process?.workings ?? [])])
        .flatMap(({ statements }) => statements.filter(({ maths }) => maths).map(mathml))
    )
    expect(formulas.size).toBeGreaterThan(50)
    const page = await (await sharedChromium()).newPage()
    await page.setContent(`<!DOCTYPE html><body>${[...formulas].join('\n')}`)
    expect(await page.evaluate(CHECK)).toEqual([])
    await page.setContent('<math><mfrac><mi>a</mi></mfrac></math>')
    expect(await page.evaluate(CHECK).catch(String)).not.toEqual([])
  }
)
