/** Lists too large to stand in memory at once. */

/**
 * A list that makes an item each time it is read and keeps none.
 *
 * @param makers one function an item, which returns the same item at every call
 */
export function onDemand<Item>(makers: readonly (() => Item)[]): readonly Item[] {
  const list: Item[] = []
  for (const [index, get] of makers.entries())
    Object.defineProperty(list, index, { get, enumerable: true })
  return list
}
