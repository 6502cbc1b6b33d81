/** What stands around every page, in English. */

export const chrome = {
  description: (producer: string) => `Lots, grades and certificates of ${producer}.`,
  feed: 'Lots and certificates',
  skip: 'Skip to content',
  site: 'Site',
  lots: 'Lots',
  grades: 'Grades',
  certificates: 'Certificates',
  howToRead: 'How to read a figure',
  onThisPage: 'On this page',
  notices: 'Notices',
  asOf: 'As of',
  setBy: (version: string) => `Set by Lotfolio ${version}.`
}

/** The page sent for an address that is not there. */
export const lost = {
  title: 'Page not found',
  heading: 'There is no such page',
  lead: 'Check the lot number against the label: letters, digits and hyphens as printed.',
  list: 'list of all lots',
  unlinked: 'list of all lots, which the site’s first page leads to',
  where: (list: string, email: string) =>
    `Every published lot stands in the ${list}. If yours is not there, write to ${email}.`
}
