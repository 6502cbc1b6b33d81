/** What differs between two revisions, in English. */

export const changes = {
  lot: 'Lot',
  issued: 'Issued',
  producer: 'Producer',
  overall: 'Overall',
  notMeasured: 'Not measured',
  cautions: 'Cautions',
  traceability: 'Traceability',
  signatory: 'Signatory',
  hazards: 'Hazards',
  added: (what: string, is: string) => `${what}: added, ${is}.`,
  leftOut: (what: string, was: string) => `${what}: left out, was ${was}.`,
  textDiffers: (what: string) => `${what}: the text differs.`,
  differs: (what: string, was: string, is: string) => `${what}: was ${was}, now ${is}.`,
  /** Parts of a row. */
  row: {
    result: 'result',
    standing: 'standing',
    limit: 'limit',
    verdict: 'verdict',
    decidedBy: 'decided by',
    method: 'method',
    tested: 'tested',
    readings: 'readings',
    spread: 'spread',
    report: 'report',
    file: 'file of the report'
  },
  /** A report's sentence without the words that mark it on a paper. */
  bareReport: (sentence: string) => sentence.replace(/^(?:External|Own earlier) result: /u, ''),
  edition: (id: string, edition: string) => `${id} edition ${edition}`,
  /** Parts of the hazard block. */
  block: {
    pictograms: 'Hazards, pictograms',
    classes: 'Hazards, classes',
    computed: 'Hazards, computed',
    agreement: 'Hazards, beside the declaration',
    reasons: 'Hazards, reasons',
    dust: 'Hazards, dust',
    basis: 'Hazards, basis',
    edition: 'Hazards, edition of the wording',
    editions: 'Hazards, other editions',
    transport: 'Hazards, transport'
  },
  words: (code: string) => `Hazards, words of ${code}`
}
