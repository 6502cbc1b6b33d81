/** What a site tells programs beside each lot's data.json. */

import { atomFeed } from './atom-feed.ts'
import { lotLines, lotTableHead } from './lot-table.ts'
import { lotListWriter } from './lot-list.ts'
import { sitemapFiles } from './sitemap.ts'

/** The archive as a table and as a list to search, the feed, and the sitemap. */
export const feeds = { lotTableHead, lotLines, atomFeed, sitemapFiles, lotListWriter } as const

export type Feeds = typeof feeds
