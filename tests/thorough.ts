/** Whether all of a test's repetitions are asked for, as `.ci/run` does, or what five minutes have room for. */

/** More random cases, more kills, every width: the same behaviour, looked at more often. */
export const thorough = process.env['LOTFOLIO_THOROUGH'] === '1'

/** How many of a kind to try. */
export const sized = (plain: number, whole: number): number => (thorough ? whole : plain)
