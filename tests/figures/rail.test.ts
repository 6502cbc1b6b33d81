/** Strokes beside a list: each leads where it says, and none through a mark that is not its own. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { drawRail, type RailItem, type RailLine } from '../../src/figures/rail.ts'

/** Lists in any order, each item from some of those before it in the alphabet. */
const lists: fc.Arbitrary<RailItem[]> = fc
  .array(fc.array(fc.nat({ max: 7 }), { maxLength: 3 }), { minLength: 1, maxLength: 8 })
  .map(rows =>
    rows.map((row, index) => ({
      id: `L${index}`,
      from: [...new Set(row.filter(at => at < index))].map(at => `L${at}`)
    }))
  )
  .chain(items => fc.shuffledSubarray(items, { minLength: items.length }))

/** Where strokes enter a line from above, and which of them end in its mark. */
function entering({ path, x, y }: RailLine) {
  const pieces = path.split('M').filter(Boolean)
  const from = (piece: string) => Number(/^\d+/u.exec(piece)![0])
  return {
    through: pieces.filter(piece => /^\d+ 0V2000$/u.test(piece)).map(from),
    ending: pieces
      .filter(piece => piece === `${x} 0V${y}` || piece.endsWith(` ${x} ${y}`))
      .map(from),
    leaving: pieces.filter(piece => piece === `${x} ${y}V2000`).map(from)
  }
}

test('following the strokes down gives back what each is from', () => {
  fc.assert(
    fc.property(lists, items => {
      const { width, lines } = drawRail(items)
      const holder = new Map<number, string>()
      const found = lines.map(line => {
        const { through, ending, leaving } = entering(line)
        const from = ending.map(x => holder.get(x)).sort()
        expect(through).not.toContain(line.x)
        expect(line.x).toBeLessThan(width)
        // Each lane that comes from above goes on or ends here, and none begins in mid-air.
        for (const x of [...through, ...ending]) expect(holder.has(x)).toBe(true)
        for (const x of holder.keys()) if (!through.includes(x)) holder.delete(x)
        for (const x of leaving) holder.set(x, line.id)
        return { id: line.id, from }
      })
      const wanted = new Map(items.map(({ id, from }) => [id, [...from].sort()]))
      expect(found.map(({ id }) => id).sort()).toEqual(items.map(({ id }) => id).sort())
      for (const { id, from } of found) expect(from).toEqual(wanted.get(id))
      expect(holder.size).toBe(0)
    })
  )
})

test('a plain line of descent is one straight stroke', () => {
  const { width, lines } = drawRail([
    { id: 'foil', from: ['run'] },
    { id: 'run', from: ['batch'] },
    { id: 'batch', from: [] }
  ])
  expect(lines.map(({ id, path }) => [id, path])).toEqual([
    ['batch', 'M8 12V2000'],
    ['run', 'M8 0V12M8 12V2000'],
    ['foil', 'M8 0V12']
  ])
  expect(width).toBe(16)
})
