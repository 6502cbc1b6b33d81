import { expect, test } from 'vitest'
import { whole } from '../../src/html/whole.ts'

const kept = (number: string) => `<span class="unbroken">${number}</span>`

test.for([
  ['Foil (foil-100), revision 2', `Foil (${kept('foil-100')}), revision 2`],
  ['sheet 03-1 & EB-26-003', `sheet ${kept('03-1')} &amp; ${kept('EB-26-003')}`],
  ['CAS 12777-87-6', `CAS ${kept('12777-87-6')}`],
  ['a well-known flake', 'a well-known flake'],
  ['<b>−0.5</b>', '&lt;b&gt;−0.5&lt;/b&gt;'],
  ['a-number-longer-than-24-signs', 'a-number-longer-than-24-signs']
] as const)('%s', ([text, html]) => {
  expect(whole(text)).toBe(html)
})

test('reads as it was, hyphens included', () => {
  const text = 'lots EB-26-003 and FL-26-1, half-done'
  expect(whole(text).replace(/<[^>]*>/gu, '')).toBe(text)
})
