/** The parts of jsonld that tests use; the package has no types of its own. */
declare module 'jsonld' {
  interface Quad {
    readonly subject: { readonly value: string }
    readonly predicate: { readonly value: string }
    readonly object: { readonly value: string }
  }
  const jsonld: { toRDF(document: object, options: object): Promise<readonly Quad[]> }
  export default jsonld
}

/** The part of papaparse that tests use. */
declare module 'papaparse' {
  const papaparse: {
    parse(
      text: string,
      options: { readonly header: true; readonly skipEmptyLines?: boolean }
    ): {
      readonly data: readonly Record<string, string>[]
      readonly errors: readonly unknown[]
      readonly meta: { readonly linebreak: string; readonly fields: readonly string[] }
    }
  }
  export default papaparse
}
