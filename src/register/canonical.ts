/**
 * One text for one piece of JSON: what is hashed, signed and kept.
 *
 * Source: RFC 8785, JSON Canonicalization Scheme.
 */

import canonicalize from 'canonicalize'

export type Json =
  null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json }

/**
 * The canonical text of a piece of JSON: names sorted, no spaces, numbers as ECMAScript prints them.
 *
 * @throws Error for NaN, an infinity, half a surrogate pair or a circle, which JSON cannot hold
 */
export function canonicalText(value: Json): string {
  const text = canonicalize(value)
  if (text === undefined) throw new TypeError('canonicalText requires JSON')
  return text
}

/** Text read as JSON, and whether it is the canonical text of what it says. */
export type ReadJson =
  { readonly is: 'canonical' | 'not canonical'; readonly value: Json } | { readonly is: 'not JSON' }

/**
 * Read JSON and compare it with its canonical text: a name given twice, a space or a number written
 * otherwise shows.
 */
export function readJson(text: string): ReadJson {
  const value = parsed(text)
  if (value === undefined) return { is: 'not JSON' }
  try {
    const isCanonical = isPlainlyCanonical(value, text) || canonicalText(value) === text
    return { is: isCanonical ? 'canonical' : 'not canonical', value }
  } catch {
    // Half a surrogate pair, or nesting deeper than the stack.
    return { is: 'not canonical', value }
  }
}

/**
 * Whether a text is canonical without ordering its names anew, at a quarter of the cost: ECMAScript
 * writes JSON as RFC 8785 does, but for the order of names and for half surrogate pairs.
 */
const isPlainlyCanonical = (value: Json, text: string): boolean =>
  !text.includes('\\ud') && JSON.stringify(value) === text && isInOrder(value)

function isInOrder(value: Json): boolean {
  if (typeof value !== 'object' || value === null) return true
  const names = Array.isArray(value) ? [] : Object.keys(value)
  return (
    names.every((name, index) => index === 0 || names[index - 1]! < name) &&
    Object.values(value).every(isInOrder)
  )
}

function parsed(text: string): Json | undefined {
  try {
    return JSON.parse(text) as Json
  } catch {
    return undefined
  }
}

/** The named members of a JSON object; nothing of any other kind of JSON. */
export const membersOf = (value: Json | undefined): Readonly<Record<string, Json>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Readonly<Record<string, Json>>)
    : {}
