/** Numbers of lots, sheets, grades and methods: on paper none is to end its line at a hyphen of its own. */

import { escaped } from '../markup.ts'

const HYPHENED = /[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)+/gu

/** What is longer may have a column for itself that is narrower. */
const LONGEST = 24

/** The text as HTML, each number with a hyphen in it marked; its characters stay as they are. */
export const whole = (text: string): string =>
  escaped(text).replace(HYPHENED, number =>
    /\p{N}/u.test(number) && number.length <= LONGEST
      ? `<span class="unbroken">${number}</span>`
      : number
  )
