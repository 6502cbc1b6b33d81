/** Texts in XML. */

import { escaped } from '../markup.ts'

/** Signs that XML 1.0 (fifth edition, section 2.2) cannot hold at all, and halves of pairs. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu

/** A text as content or attribute; what XML cannot hold becomes the replacement character. */
export const xmlText = (text: string): string => escaped(text.replace(FORBIDDEN, '\ufffd'))
