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

/** The same result for the same object, made at the first call. */
export function onceEach<From extends object, Made>(make: (from: From) => Made) {
  const known = new WeakMap<From, Made>()
  return (from: From): Made => {
    const made = known.get(from) ?? make(from)
    known.set(from, made)
    return made
  }
}
