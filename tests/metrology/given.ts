/** Short ways to write the inputs of a row. */

import { type Estimate, exact, measured } from '../../src/metrology/estimate.ts'

/** Every value of `inputs` as exact. */
export const exactly = <Name extends string>(
  inputs: Record<Name, number>
): Record<Name, Estimate> => mapped(inputs, (_, value) => exact(value))

/** Every `[value, u]` of `inputs` as an estimate with a cause of its own. */
export const uncertain = <Name extends string>(
  inputs: Record<Name, readonly [value: number, u: number]>
): Record<Name, Estimate> => mapped(inputs, (name, [value, u]) => measured(value, u, name))

function mapped<Name extends string, Value>(
  inputs: Record<Name, Value>,
  make: (name: Name, value: Value) => Estimate
): Record<Name, Estimate> {
  const names = Object.keys(inputs) as Name[]
  return Object.fromEntries(names.map(name => [name, make(name, inputs[name])])) as Record<
    Name,
    Estimate
  >
}
