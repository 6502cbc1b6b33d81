/**
 * Links that work from a sub-path and from an opened file alike.
 *
 * Documents name addresses from the site's root; a page links to them from where it stands itself.
 * A folder is linked by its index.html, which a web server would find but a file manager would not.
 */

const INDEX = 'index.html'

/** 'lots/X/#ash' → ['lots/X/', '#ash'] */
function splitSuffix(address: string): readonly [path: string, suffix: string] {
  const at = address.search(/[?#]/u)
  return at < 0 ? [address, ''] : [address.slice(0, at), address.slice(at)]
}

const segmentsOf = (path: string): string[] => path.replace(/^\/+/u, '').split('/')

/** Named in full, so the same from everywhere. */
const isAbsolute = (address: string): boolean => /^(?:https?:\/\/|mailto:|tel:)/iu.test(address)

/** A first segment with a colon would read as a scheme. */
const guardColon = (path: string): string => (/^[^/]*:/u.test(path) ? `./${path}` : path)

/**
 * The link from one page to another address of the site.
 *
 * @param target address from the site's root: 'lots/X/', 'lots/X/data.json#n'; one with a scheme
 *   is returned as it stands
 * @param fromPageUrl the linking page, from the root: '/', '/lots/X/', '/404.html'
 */
export function relative(target: string, fromPageUrl: string): string {
  if (isAbsolute(target)) return target
  const [path, suffix] = splitSuffix(target)
  const to = segmentsOf(path)
  const from = segmentsOf(splitSuffix(fromPageUrl)[0]).slice(0, -1)
  const folders = to.slice(0, -1)
  const parted = folders.findIndex((folder, index) => folder !== from[index])
  const shared = parted < 0 ? folders.length : parted
  const up = '../'.repeat(from.length - shared)
  const down = [...folders.slice(shared), to.at(-1) || INDEX].join('/')
  return guardColon(up + down) + suffix
}
