import { expect, test } from 'vitest'
import { readStock } from '../../src/pdf/label-stock.ts'

test('a description of stock is read, labels side by side where no distance is given', () => {
  expect(readStock('A4 2x4 of 99 x 68 at 6 x 12.5')).toEqual({
    paper: [210, 297],
    columns: 2,
    rows: 4,
    label: [99, 68],
    first: [6, 12.5],
    pitch: [99, 68]
  })
  expect(readStock('Letter 1 x 2 of 200x130 mm at 7 x 6 mm every 200x135 mm')).toMatchObject({
    paper: [215.9, 279.4],
    pitch: [200, 135]
  })
})

test.each([
  ['A5 1x1 of 100 x 100 at 0 x 0', 'write stock as'],
  ['A4 2x4 of 99 x 68', 'write stock as'],
  ['A4 0x4 of 99 x 68 at 6 x 12.5', 'there is no label on the sheet'],
  ['A4 2x4 of 99 x 68 at 20 x 12.5', 'labels would reach 218 mm across on paper of 210 mm'],
  ['A4 2x5 of 99 x 68 at 6 x 12.5', 'labels would reach 352.5 mm down on paper of 297 mm'],
  ['A4 2x4 of 99 x 68 at 6 x 12.5 every 98 x 68', 'labels would overlap across'],
  ['A4 2x4 of 99 x 68 at 6 x 12.5 every 99 x 67', 'labels would overlap down']
])('%s is refused: %s', (text, why) => {
  expect(readStock(text)).toContain(why)
})
