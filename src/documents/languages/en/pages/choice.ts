/** Choosing a grade, and comparing lots, in English: what stands on these pages before a script runs. */

export const choose = {
  title: 'Choosing a grade',
  lead: 'What each grade must meet, what is typical of its lots, and which lots are released.',
  needed: (kind: string) => `What is needed of ${kind}`,
  ends: { from: 'at least', to: 'at most' },
  to: 'to',
  field: (title: string, end: string, unit: string) =>
    `${title}, ${end}${unit === '' ? '' : `, in ${unit}`}`,
  go: 'Go to the answers',
  clear: 'Clear',
  nothing: 'nothing is asked yet',
  caption: 'Grades against needs',
  lots: 'Lots',
  certified: (of: string) => `certified for ${of}`,
  typical: (printed: string, n: number) => `typical ${printed}, of ${n} lots`,
  silent: 'nothing is said',
  noGrade: 'No grade is published yet.',
  how: 'How to read this',
  limits:
    'A certified limit is what each lot is judged by before it is released. Typical figures are of lots that were let go, and promise nothing of the next lot; a grade’s page says how many lots lie between them at least.',
  temperature: (allLots: string) =>
    `No grade states a highest temperature of use: onset is where flake begins to expand, oxidation loss what foil loses in hot air at the temperature and after the hours of its method. Figures of a single lot can be looked for among ${allLots}.`,
  allLots: 'all lots',
  answers:
    'A need is met by a certified limit where that limit lies within what is asked, and by typical figures where those do. A released lot answers where its figure does with its whole expanded uncertainty; a figure without a stated uncertainty is not counted, and where a lot has no figure the grade’s limit speaks for it.',
  stock: 'Where nothing is said of stock, the producer does not publish it.'
}

export const compare = {
  title: 'Compare lots',
  lead: 'Two to six lots beside each other, and whether their figures differ by more than they are uncertain.',
  unscripted: (table: string) =>
    `This page needs JavaScript. Without it, open two lots side by side, or take ${table} into a spreadsheet.`,
  table: 'the table of every figure',
  lot: 'A lot’s number, or part of it',
  add: 'Add',
  against: 'Differences from',
  csv: 'Download as CSV',
  print: 'Print',
  how: 'How lots are compared',
  differences:
    'A difference is held against its own expanded uncertainty, for about 95 % confidence, not against those of the two figures. Where one instrument or one standard solution stands behind both, what it does to both alike falls out of their difference; scatter of readings does not.',
  independent:
    'Where the workings of a grade are not published, its figures are taken as independent of all others, and it says so. Figures below a reporting limit, or without an uncertainty, are not compared. Figures by different methods, or different editions of one, are compared and marked: such a difference may be the methods’.',
  chance:
    'Of many figures compared, about one in twenty differs by chance alone. The strokes of a row share one scale, which holds all intervals of that row.'
}

export const verify = {
  title: 'Check a certificate',
  lead: 'Is the copy you hold the one that was issued, and does it still stand? Your browser compares it with the register of this site. The file is not sent anywhere.',
  copy: 'Your copy',
  drop: 'The certificate as PDF, or its JSON file: drop it here, or choose it',
  unscripted: (page: string) =>
    `This page needs JavaScript to read your file. Without it, compare the fingerprint printed on the certificate with the one on ${page}, by eye.`,
  page: 'its page',
  answers: 'What the answers mean',
  genuine: 'Genuine',
  genuineMeans: 'The copy is what was issued, byte for byte, and it stands.',
  superseded: 'Superseded',
  supersededMeans: 'It was issued, and a later revision has taken its place.',
  withdrawn: 'Withdrawn',
  withdrawnMeans: 'It was issued, and must no longer be relied on.',
  altered: 'Altered',
  alteredMeans: 'It carries the number of an issued certificate, but is not what was issued.',
  unknown: 'Unknown',
  unknownMeans: 'The register of this site has no such certificate.',
  proves: 'What this proves',
  provesText:
    'That a copy agrees with what this producer entered in its register, and that the register was only added to. It says nothing about the material beyond what the certificate says.'
}
