/** Addresses of a producer's site, however its record ends them. */

/** The site's address without a slash at its end. */
export const siteRoot = (site: string): string => site.replace(/\/$/u, '')

/** The whole address of a page, from its path. */
export const siteAddress = (site: string, path: string): string => `${siteRoot(site)}/${path}`
