/** Nothing but a type, to see whether this Node loads TypeScript. */
export type Probe = never
