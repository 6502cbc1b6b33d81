/** What a feed tells of a site: lots let go, certificates issued. */

export interface NewsEntry {
  /** Tag URI (RFC 4151): the same for good, whatever is decided later. */
  readonly id: string
  readonly title: string
  /** Relative to the site's root. */
  readonly url: string
  /** Days of the first and of the last decision, YYYY-MM-DD. */
  readonly published: string
  readonly updated: string
  readonly summary: string
}

export interface News {
  /** Address of the site, with a slash at its end. */
  readonly site: string
  /** The last change first. */
  readonly entries: readonly NewsEntry[]
}
