/** A grade's page and that of its figures lot by lot, in English. */

export const grade = {
  title: (title: string) => `Grade ${title}`,
  description: (kind: string, description: string) => `${kind}: ${description}`,
  status: (id: string, revision: string, from: string) =>
    `${id}, revision ${revision}, valid from ${from}.`,
  datasheet: 'Datasheet (PDF)',
  keyFacts: 'Key facts',
  measured: 'Measured on each lot',
  measuredCaption: 'What each lot of this grade is measured for',
  certifiedLimit: 'Certified limit',
  holdsFor: 'Holds for',
  reportedAlone: 'reported alone',
  noLimits: 'This grade has no limits.',
  rule: 'Decision rule.',
  typical: 'Typical, from the lots made so far',
  typicalCaption: (confidence: string) =>
    `Between which values lots lie, and how many of them at least, with ${confidence} % confidence`,
  from: 'From',
  to: 'To',
  ofLots: 'Of lots, at least',
  lotsSeen: 'Lots seen',
  scatter: 'Shape of the scatter',
  shape: 'Shape',
  shapes: { normal: 'taken as normal', 'distribution-free': 'none assumed' },
  tooFew: 'Too few lots yet to say what is typical of others.',
  lotByLot: 'Figures lot by lot',
  charts: 'Charts',
  chartFigures: 'Figures of the chart',
  stated: 'Stated as typical, not measured on each lot',
  notMeasured: 'Not measured',
  declared: 'Declared, not tested on lots',
  supply: 'Supply and storage',
  hazards: 'Hazards',
  cautions: 'Cautions',
  safety: 'Handling, exposure and waste',
  revisions: 'Revisions',
  revision: (n: string, from: string) => `Revision ${n}, valid from ${from}`,
  isNot: 'What this is not',
  lots: 'Lots of this grade',
  lotsCaption: (title: string) => `Lots of grade ${title}`,
  allLots: (n: number) => `All lots of this grade (${n})`,
  noLot: 'No lot of this grade is published yet.'
}

export const watch = {
  title: (title: string) => `Grade ${title}, lot by lot`,
  grade: 'Grade',
  heading: 'Lots over time',
  typical: 'Typical.',
  how: 'How to read this',
  caption: (title: string) => `${title}, lot by lot`,
  figure: 'Figure',
  note: 'Note'
}
