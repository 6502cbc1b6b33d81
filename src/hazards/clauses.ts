/**
 * Clauses the rules rest on, and how surely each was read.
 *
 * Chapter and table numbers of CLP Annex I are those of the UN GHS, which CLP took over.
 */

/** 'print': as the text prints it; 'second hand': as others quote it; 'memory': not checked. */
export type Certainty = 'print' | 'second hand' | 'memory'

export interface Clause {
  readonly source: string
  readonly sure: Certainty
}

const clause = (place: string, sure: Certainty): Clause => ({
  source: `CLP Annex I, ${place}`,
  sure
})

export const clauses = {
  additivity: clause('3.2.3.3.2 and Table 3.2.3', 'print'),
  nonAdditivity: clause('3.2.3.3.4 and Table 3.2.4', 'second hand'),
  subCategories: clause('3.2.3.3 (sub-categories of mixtures)', 'memory'),
  mildIrritation: { source: 'UN GHS, 3.2.3.3 and Table 3.2.3', sure: 'memory' },
  aquaticAcuteUN: { source: 'UN GHS, 4.1.3.5.5.3 and Table 4.1.3', sure: 'memory' },
  lowerCutOffs: { source: '29 CFR 1910.1200, Appendix A, tables of cut-offs', sure: 'memory' },
  extremePH: clause('3.2.3.1.2', 'print'),
  eyeAdditivity: clause('3.3.3.3 and Table 3.3.3', 'memory'),
  eyeNonAdditivity: clause('3.3.3.3.4 and Table 3.3.4', 'memory'),
  eyeOfCorrosive: clause('3.3.1 and 3.3.3 (what corrodes skin damages eyes)', 'memory'),
  acuteKnown: clause('3.1.3.6.1, Tables 3.1.1 and 3.1.2', 'memory'),
  acuteUnknown: clause('3.1.3.6.2.3, Tables 3.1.1 and 3.1.2', 'memory'),
  mutagenic: clause('3.5.3 and Table 3.5.2', 'print'),
  carcinogenic: clause('3.6.3 and Table 3.6.2', 'print'),
  reproductive: clause('3.7.3 and Table 3.7.2', 'print'),
  sensitising: clause('3.4.3 and Table 3.4.5', 'memory'),
  oneExposure: clause('3.8.3.4 and Table 3.8.3', 'memory'),
  transient: clause('3.8.3.4.5', 'memory'),
  repeatedExposure: clause('3.9.3.4 and Table 3.9.4', 'memory'),
  aquaticAcute: clause('4.1.3.5.5.3 and Table 4.1.1', 'print'),
  aquaticChronic: clause('4.1.3.5.5.4 and Table 4.1.2', 'print'),
  metals: clause('2.16 (UN test C.1)', 'memory'),
  oxidisingLiquid: clause('2.13 (UN test O.2)', 'memory'),
  oxidisingSolid: clause('2.14 (UN tests O.1 and O.3)', 'memory'),
  flammableLiquid: clause('2.6 (flash point)', 'memory'),
  tested: { source: 'test result or recorded reason', sure: 'print' },
  asSuch: { source: 'the substance itself, as classified', sure: 'print' },
  article: { source: 'Regulation (EC) No 1907/2006 (REACH), article 3(3)', sure: 'memory' },
  dust: { source: '29 CFR 1910.1200, Appendix C.4.30', sure: 'memory' }
} as const satisfies Record<string, Clause>

/** What a reader is told of it. */
export const certaintyTexts: Record<Certainty, string> = {
  print: '',
  'second hand': 'quoted at second hand',
  memory: 'from memory, not checked against the print'
}

/** A source with how sure it is: 'CLP Annex I, 3.8.3.4.5 (from memory, …)'. */
export const cited = ({ source, sure }: Clause): string =>
  sure === 'print' ? source : `${source} (${certaintyTexts[sure]})`
