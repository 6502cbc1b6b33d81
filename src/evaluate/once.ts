/** Work that several figures share, done once. */

/**
 * The same function, which remembers what it gave for each object: figures that share a step of their
 * working need not repeat it. What is remembered goes with the object.
 *
 * @param work gives the same for the same first argument, whatever the others are
 */
export function oncePer<Key extends object, Rest extends readonly unknown[], Value>(
  work: (key: Key, ...rest: Rest) => Value
): (key: Key, ...rest: Rest) => Value {
  const done = new WeakMap<Key, { readonly value: Value }>()
  return (key, ...rest) => {
    const known = done.get(key) ?? { value: work(key, ...rest) }
    done.set(key, known)
    return known.value
  }
}
