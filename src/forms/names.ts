/** How a form names its fields, and what it calls them. */

import type { FieldPath } from '../problem.ts'

/**
 * A field's name in a form: '/tests/free-acid/blanks/0'.
 *
 * Source: RFC 6901, JSON Pointer.
 */
export const pointer = (path: FieldPath): string =>
  path.map(step => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')

/** 'free-acid' as a label: 'Free acid'. */
export function labelOf(name: string): string {
  const words = name.replaceAll('-', ' ').replace(/\bph\b/gu, 'pH')
  return /^ph\b/iu.test(words) ? words : words.charAt(0).toUpperCase() + words.slice(1)
}

/** What one entry of a list is called: 'Readings' has 'Reading 1'. */
export function entryLabel(list: string, index: number): string {
  const one = list.replace(/ies$/u, 'y').replace(/(?<![su])s$/u, '')
  return `${labelOf(one)} ${index + 1}`
}

/** A field's id in its page, from its name: ids hold no spaces. */
export const fieldId = (name: string): string => `f${name.replace(/\s/gu, '_')}`
