/** Items in groups, in the order they come. */
export function groupedBy<Item>(
  items: readonly Item[],
  key: (item: Item) => string
): Map<string, Item[]> {
  const groups = new Map<string, Item[]>()
  for (const item of items) {
    const group = groups.get(key(item))
    if (group) group.push(item)
    else groups.set(key(item), [item])
  }
  return groups
}
