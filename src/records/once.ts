/**
 * What is made once and shared. A schema takes a thousand times as long to make as to apply, and the
 * records name the same few kinds of field in hundreds of places.
 */

/** The same result for the same arguments, made at the first call. */
export function once<Args extends readonly (string | number)[], Made>(
  make: (...args: Args) => Made
): (...args: Args) => Made {
  const known = new Map<string, Made>()
  return (...args) => {
    const key = args.join('\n')
    const made = known.get(key) ?? make(...args)
    known.set(key, made)
    return made
  }
}

/**
 * The same result for the same object: work that several share, done once. What is remembered goes with
 * the object.
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
