/** The first page, lists of lots, and grades, in English. */

export const home = {
  title: 'Lots and grades',
  kicker: 'Expandable graphite and graphite foil',
  made: 'What is made',
  noGrade: 'No grade is published yet.',
  latest: 'Latest lots',
  latestCaption: 'Latest lots, newest first',
  findAmong: (n: number) => `Find a lot among all ${n}`,
  noLot: 'No lot is published yet.'
}

export const grades = {
  title: 'Grades',
  choose: 'Choose a grade by what it must do',
  caption: 'Grades made here',
  forWhat: 'For what'
}

/** Lists without a script. */
export const lists = {
  madeIn: 'Lots made in',
  ofGrade: 'Lots of grade',
  page: (n: number) => `page ${n}`,
  status: (n: number, of: number) => `Page ${n} of ${of}, newest first.`,
  pages: 'Pages of this list',
  newest: 'Newest',
  newer: 'Newer',
  older: 'Older',
  oldest: 'Oldest'
}

export const archive = {
  title: 'All lots',
  table: 'Every figure of every lot as one table (CSV)',
  find: 'Find lots',
  text: 'Lot number, certificate or words',
  hint: 'Any part of a number will do. Enter opens the first lot found, arrow keys go down the list.',
  every: { grade: 'every grade', year: 'every year', state: 'every status' },
  year: 'Year made',
  order: 'Order',
  orders: {
    'made down': 'newest first',
    made: 'oldest first',
    lot: 'by lot number',
    grade: 'by grade',
    state: 'by status',
    answer: 'by verdict'
  },
  between: 'Figures between two values',
  another: 'Another figure',
  choose: 'choose …',
  open: 'Open the first lot',
  clear: 'Clear',
  byYear: 'By year',
  byGrade: 'By grade'
}
