/** Who measured what is only reported, where no name is told: documents in other languages know them by this. */

/** A laboratory that has not agreed to be named. */
export const UNNAMED = 'an external laboratory'

/** The workshop itself, before these records. */
export const PRODUCER = 'the producer'
