/** Styles that a page carries itself. */

import { createHash } from 'node:crypto'

/** How a content security policy names one style element, by its text (CSP level 3, hash-source). */
export const styleHash = (text: { toString(): string }): string =>
  `sha256-${createHash('sha256').update(text.toString(), 'utf8').digest('base64')}`
