/** The feed of lots let go and certificates issued (Atom, RFC 4287). */

import type { News, NewsEntry } from '../documents/news-types.ts'
import type { ProducerText, SiteDocument } from '../documents/types.ts'
import { xmlText } from './xml.ts'

/** Address of the feed. */
export const feedFile = 'feed.xml'

/** The text of a site's feed; undefined where it has no news to tell. */
export function atomFeed({ news, producer, asOf }: SiteDocument): string | undefined {
  if (!news) return undefined
  const self = xmlText(news.site + feedFile)
  return `${[
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en">',
    `<id>${self}</id>`,
    `<title>${xmlText(producer.name)}: lots and certificates</title>`,
    `<updated>${instant(news.entries[0]?.updated ?? asOf)}</updated>`,
    `<link rel="self" type="application/atom+xml" href="${self}"/>`,
    `<link rel="alternate" type="text/html" href="${xmlText(news.site)}"/>`,
    author(producer),
    ...news.entries.map(entry => entryText(news, entry)),
    '</feed>'
  ].join('\n')}\n`
}

const author = ({ name, email }: ProducerText) =>
  `<author><name>${xmlText(name)}</name><email>${xmlText(email)}</email></author>`

const entryText = ({ site }: News, { id, title, url, published, updated, summary }: NewsEntry) =>
  [
    '<entry>',
    `<id>${xmlText(id)}</id>`,
    `<title>${xmlText(title)}</title>`,
    `<link rel="alternate" type="text/html" href="${xmlText(site + encodeURI(url))}"/>`,
    `<published>${instant(published)}</published>`,
    `<updated>${instant(updated)}</updated>`,
    `<summary>${xmlText(summary)}</summary>`,
    '</entry>'
  ].join('\n')

/** A day as RFC 3339 wants it; records know no hour, so it is the day's first in UTC. */
const instant = (day: string) => `${day}T00:00:00Z`
