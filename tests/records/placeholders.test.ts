import { expect, test } from 'vitest'
import { isPlaceholder } from '../../src/records/placeholders.ts'

test.for([
  ['conditions', 'conditions not written down yet', true],
  ['conditions', 'Conditions not  written\ndown yet.', true],
  ['conditions', 'conditions not written down yet: 950 °C', false],
  ['conditions', '0.5 g at 950 °C for 20 s', false],
  ['description', 'no description yet', true],
  ['description', 'No description yet of its size; flake of 250 mL/g.', false]
] as const)('%s: %j is one: %j', ([name, text, is]) => {
  expect(isPlaceholder(name, text)).toBe(is)
})
